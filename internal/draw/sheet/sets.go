package sheet

import (
	"cmp"
	"fmt"
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Set is the labels of one jar, of any sizes: front, back, lid, tag.
type Set []Label

// FillSets lays whole sets on plain paper, so that what is cut from one sheet
// is all that its jars need. The labels lie in rows or in columns, smaller ones
// stacked beside larger ones: straight cuts part them. A set too large for a sheet
// is an error, as in [Fill]; nothing can be skipped.
func FillSets(sets []Set, s *Sheet, o Options) (Run, diag.List) {
	var l diag.List
	var all []Label
	for _, set := range sets {
		all = append(all, set...)
	}
	if checkRun(&l, all, s, o); l.HasErrors() {
		return Run{}, l
	}
	s = withOptions(s, o)
	doc, memo := &page.Doc{}, packings{}
	for from := 0; from < len(sets); {
		n, places := memo.most(s, sets[from:])
		if n == 0 {
			l.Errorf("label-too-big", "", "", "the labels of a jar do not fit one sheet of %s, which has %s between its margins", s.ID, size(s.PaperW-s.Left-s.Right, s.PaperH-s.Top-s.Bottom)).
				Hinted("choose larger paper, or print each kind on its own")
			return Run{}, l
		}
		doc.Pages = append(doc.Pages, page.Page{W: s.PaperW, H: s.PaperH, Places: places})
		from += n
	}
	doc.OffsetX, doc.OffsetY, doc.ScaleX, doc.ScaleY = o.OffsetX, o.OffsetY, o.ScaleX, o.ScaleY
	checkCorrection(&l, doc, s)
	if o.CutMarks {
		mark(doc.Pages)
	}
	return Run{Doc: doc, Used: 1, Cells: 1}, l
}

func gapOf(s *Sheet, labels []Label) unit.Length {
	gap := s.Gutter
	for _, b := range labels {
		gap = max(gap, 2*b.Frame.Bleed)
	}
	return gap
}

// packings remembers how labels of the same sizes lie.
type packings map[string][]page.Placement

// most is how many of the first sets a sheet takes, and how they lie on it.
func (m packings) most(s *Sheet, sets []Set) (n int, places []page.Placement) {
	var labels []Label
	for _, set := range sets {
		next := append(labels, set...)
		lie := m.pack(s, next)
		if lie == nil {
			break
		}
		labels, places, n = next, lie, n+1
	}
	out := slices.Clone(places)
	for i := range out {
		out[i].Frame, out[i].Overlay = labels[i].Frame, labels[i].Overlay
	}
	return n, out
}

// pack lays labels on one sheet, the first way found that takes all; nil when
// none does.
func (m packings) pack(s *Sheet, labels []Label) []page.Placement {
	key := ""
	for _, b := range labels {
		key += fmt.Sprint(b.Frame.W, b.Frame.H, b.Frame.Bleed, " ")
	}
	if lie, done := m[key]; done {
		return lie
	}
	kinds, of := sizes(labels)
	gap := gapOf(s, labels)
	w, h := s.PaperW-s.Left-s.Right, s.PaperH-s.Top-s.Bottom
	var best []page.Placement
	for turned := 0; turned < 1<<min(len(kinds), 6) && best == nil; turned++ {
		items := make([]item, len(labels))
		for i, b := range labels {
			items[i] = item{at: i, w: b.Frame.W, h: b.Frame.H}
			if k := of[i]; k < 6 && turned&(1<<k) != 0 {
				items[i].w, items[i].h, items[i].turn = b.Frame.H, b.Frame.W, 90
			}
		}
		for k := 0; k < 2*len(orders) && best == nil; k++ {
			best = shelves(items, w, h, gap, orders[k/2], k%2 == 1)
		}
	}
	for i := range best {
		best[i].At.X += s.Left
		best[i].At.Y += s.Top
	}
	m[key] = best
	return best
}

// sizes numbers the sizes of labels in the order they come.
func sizes(labels []Label) (kinds []*page.Frame, of []int) {
	for _, b := range labels {
		k := slices.IndexFunc(kinds, func(f *page.Frame) bool { return f.W == b.Frame.W && f.H == b.Frame.H })
		if k < 0 {
			k, kinds = len(kinds), append(kinds, b.Frame)
		}
		of = append(of, k)
	}
	return kinds, of
}

// item is a label as it lies.
type item struct {
	at   int
	w, h unit.Length
	turn int
}

// turned is the item the other way round.
func (it item) turned() item { return item{it.at, it.h, it.w, 90 - it.turn} }

// orders are in what order items are laid: the highest first, the widest, the
// largest.
var orders = []func(a, b item) int{
	func(a, b item) int { return cmp.Or(cmp.Compare(b.h, a.h), cmp.Compare(b.w, a.w)) },
	func(a, b item) int { return cmp.Or(cmp.Compare(b.w, a.w), cmp.Compare(b.h, a.h)) },
	func(a, b item) int { return cmp.Compare(b.w.MM()*b.h.MM(), a.w.MM()*a.h.MM()) },
}

// column is a stack of items in a shelf; free is where the next may begin.
type column struct{ x, w, free unit.Length }

// shelf is a row as high as its first item.
type shelf struct {
	y, h, end unit.Length
	columns   []column
}

// shelves lays items in rows (across: in columns), each where it first fits, if
// need be the other way round: under another in a stack, in a new stack, in a
// new row. The block stands in the middle of the width. nil when not all fit.
func shelves(items []item, w, h, gap unit.Length, order func(a, b item) int, across bool) []page.Placement {
	items = slices.Clone(items)
	if across {
		w, h = h, w
		for i := range items {
			items[i].w, items[i].h = items[i].h, items[i].w
		}
	}
	slices.SortStableFunc(items, order)
	out := make([]page.Placement, len(items))
	var rows []shelf
	next, wide := unit.Length(0), unit.Length(0)
	for _, it := range items {
		x, y, ok := it.into(rows, w, gap)
		if side := it.turned(); !ok {
			if x, y, ok = side.into(rows, w, gap); ok {
				it = side
			}
		}
		if !ok {
			if it.w > w || next+it.h > h {
				return nil
			}
			x, y = 0, next
			rows = append(rows, shelf{y: y, h: it.h, end: it.w + gap, columns: []column{{0, it.w, it.h + gap}}})
			next += it.h + gap
		}
		wide = max(wide, x+it.w)
		out[it.at] = page.Placement{At: page.Point{X: x, Y: y}, Turn: it.turn}
	}
	for i := range out {
		if across {
			out[i].At.X, out[i].At.Y = out[i].At.Y, out[i].At.X
		} else {
			out[i].At.X += (w - wide) / 2
		}
	}
	return out
}

// into finds the first place for an item in the rows there are.
func (it item) into(rows []shelf, w, gap unit.Length) (x, y unit.Length, ok bool) {
	for i := range rows {
		r := &rows[i]
		for k := range r.columns {
			c := &r.columns[k]
			if it.w <= c.w && c.free+it.h <= r.h {
				x, y = c.x, r.y+c.free
				c.free += it.h + gap
				return x, y, true
			}
		}
		if it.h <= r.h && r.end+it.w <= w {
			r.columns = append(r.columns, column{r.end, it.w, it.h + gap})
			x, y = r.end, r.y
			r.end += it.w + gap
			return x, y, true
		}
	}
	return 0, 0, false
}
