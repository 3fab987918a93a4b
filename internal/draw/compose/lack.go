package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// lack is something that did not fit. How much is missing is worked out only
// for the layout that is reported, by setting the same thing in larger regions.
type lack struct {
	what string
	in   region
	fits func(region) bool
	wide bool // only a wider region can help
}

// lacks notes what did not fit in a region; fits tells whether it would in
// another one.
func (l *layout) lacks(what string, in region, fits func(region) bool) {
	l.missing = append(l.missing, lack{what: what, in: in, fits: fits})
}

// lacksWidth notes what is wider than its region.
func (l *layout) lacksWidth(what string, need unit.Length, in region) {
	l.missing = append(l.missing, lack{what, in, func(r region) bool { return r.W >= need }, true})
}

// overflow measures what did not fit, and says it in millimetres.
func (l *layout) overflow() (out []Overflow, found diag.List) {
	for _, k := range l.missing {
		o := k.measure()
		way := "in height"
		switch {
		case o.Across:
			way = "in width"
		case o.Both:
			way = "in height, and as much more in width"
		}
		out = append(out, o)
		hint := "choose a larger label"
		if l.piece == label.Front || l.piece == label.Wrap {
			hint += ", or move facts to an information label"
		}
		found.Errorf("does-not-fit", "", "label.sheet", "%s on the %s label: needs %.1f mm %s, there are %.1f mm",
			k.what, l.as, o.Need.MM(), way, o.Have.MM()).
			Hinted(hint)
	}
	return out, found
}

// most is how many times larger a region is tried.
const mostLarger = 12

// higher is how many times as much height as width may be asked for.
const higher = 2

// measure finds the least region that would do: a higher one, or a wider one
// where that is far nearer, else one larger both ways. An oval grows both ways at
// once. Needs are rounded up and what there is down, to a tenth of a millimetre.
func (k lack) measure() Overflow {
	const tenth = unit.Millimetre / 10
	type way struct{ w, h unit.Length }
	ways := []way{{0, 1}, {1, 0}, {1, 1}}
	switch {
	case k.in.oval.W > 0:
		ways = ways[2:]
	case k.wide:
		ways = ways[1:2]
	}
	w := ways[len(ways)-1]
	side := max(k.in.W, k.in.H, unit.Millimetre)
	most := side * mostLarger
	hi := most
	for i, try := range ways {
		if i == len(ways)-1 && hi < most {
			break // one way alone does
		}
		if need := k.least(try.w, try.h, most); need < most && (hi == most || need*higher < hi) {
			w, hi = try, need
		}
	}
	o := Overflow{Block: k.what, Have: k.in.H, Across: w.h == 0, Both: w.w > 0 && w.h > 0 && k.in.oval.W == 0}
	if o.Across {
		o.Have = k.in.W
	}
	o.Need = (o.Have + hi + tenth - 1) / tenth * tenth
	o.Have = o.Have / tenth * tenth
	return o
}

// least is how much must be added to the region, in width and in height where
// these are 1; most where more would not do either.
func (k lack) least(w, h, most unit.Length) unit.Length {
	if !k.fits(k.in.larger(w*most, h*most)) {
		return most
	}
	lo, hi := unit.Length(0), most
	for hi-lo > unit.Millimetre/40 {
		if mid := (lo + hi) / 2; k.fits(k.in.larger(w*mid, h*mid)) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi
}

// larger is a region that much wider and higher; an oval keeps its form.
func (r region) larger(w, h unit.Length) region {
	if r.oval.W > 0 {
		f := 1 + float64(h)/float64(max(1, r.H))
		grow := func(b page.Rect) page.Rect {
			return page.Rect{X: share(b.X, f), Y: share(b.Y, f), W: share(b.W, f), H: share(b.H, f)}
		}
		r.Rect, r.oval = grow(r.Rect), grow(r.oval)
		return r
	}
	r.W, r.H = r.W+w, r.H+h
	return r
}

// enlarged is the layout on a label larger by what one region is than another.
func (l *layout) enlarged(from, to region) *layout {
	n := *l
	dw, dh := to.W-from.W, to.H-from.H
	if to.oval.W > 0 {
		n.cell.W, n.cell.H = n.cell.W*to.oval.W/from.oval.W, n.cell.H*to.oval.H/from.oval.H
		dw, dh = n.cell.W-l.cell.W, n.cell.H-l.cell.H
	} else {
		n.cell.W, n.cell.H = n.cell.W+dw, n.cell.H+dh
	}
	n.open.W, n.open.H = n.open.W+dw, n.open.H+dh
	return &n
}
