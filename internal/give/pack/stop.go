package pack

import (
	"jarmark/internal/give/table"
	"sort"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// addLine puts n jars of a stock row to a stop; back of them came home.
func (b *builder) addLine(s *stop, p promise, i, n, back int) {
	if p.kind == Gift && !p.booked {
		w := p.wish
		w.Design = b.design(w)
		run := tagRun{wish: w, to: p.to, stock: i, count: n, file: p.file, path: p.path}
		if p.entry != nil {
			run.path, run.pos = p.entry.Path, p.entry.Pos
		}
		s.tags = append(s.tags, run)
	}
	st := b.plan.Stock[i]
	price := st.Price
	if p.price.Minor > 0 {
		price = p.price
	}
	for k := range s.out.Lines {
		if l := &s.out.Lines[k]; l.stock == i && l.Price == price {
			l.Count, l.CameHome = l.Count+n, l.CameHome+back
			return
		}
	}
	s.out.Lines = append(s.out.Lines, Line{Lot: st.Lot, Name: st.Name, Jar: st.Jar, JarText: st.JarText, Count: n, CameHome: back,
		BestBefore: st.BestBefore, UseBy: st.UseBy, Cold: st.Cold, Price: price, stock: i,
		Contains: table.Join(b.allergyOf(st.batch).Names())})
}

// finish orders a stop's lines first expiry first, weighs and boxes them.
func (b *builder) finish(s *stop) {
	o := &s.out
	sort.SliceStable(o.Lines, func(i, j int) bool {
		x, y := o.Lines[i], o.Lines[j]
		if x.stock == y.stock {
			return false
		}
		if x.BestBefore == y.BestBefore && x.Lot == y.Lot {
			return x.stock < y.stock
		}
		return b.sooner(b.plan.Stock[x.stock], b.plan.Stock[y.stock])
	})
	for i := range o.Lines {
		l := &o.Lines[i]
		st := b.plan.Stock[l.stock]
		l.Net, l.Gross = st.Net*unit.Mass(l.Count), st.Gross*unit.Mass(l.Count)
		o.Jars += l.Count
		o.Net += l.Net
		o.Gross += l.Gross
		o.GrossHow = weaker(o.GrossHow, st.GrossHow)
		if o.Kind == Market {
			o.Value = addMoney(o.Value, l.Price, l.Count)
		}
	}
	if o.Kind == Market || o.Jars > 1 {
		o.Boxes = b.boxes(o.Lines)
	}
}

// filter keeps the stops asked for. Jars were allotted over all promises
// before, so that a filtered list never gives away another's jars.
func (b *builder) filter() {
	if b.o.Event == "" && !b.o.Gifts {
		return
	}
	b.plan.Filter = b.o.Event
	if b.o.Gifts {
		b.plan.Filter = "gifts"
	}
	var kept []*stop
	var events []string
	for _, s := range b.stops {
		if s.out.Kind == Market {
			events = append(events, s.out.To)
		}
		if b.o.Gifts && s.out.Kind == Gift || b.o.Event != "" && s.out.Kind == Market && sameName(s.out.To, b.o.Event) {
			kept = append(kept, s)
		}
	}
	if b.o.Event != "" && len(kept) == 0 {
		b.noEvent(unique(events))
	} else if b.o.Event != "" && !b.o.Gifts {
		b.plan.Filter = kept[0].out.To
	}
	if b.o.Gifts && len(kept) == 0 {
		b.found.Notef("no-gifts", "", "", "no gifts are promised").Hinted("add a [[gift]] to a batch, or give a list")
	}
	b.stops = kept
}

func (b *builder) noEvent(events []string) {
	hint := "no batch names a market"
	if near, ok := diag.DidYouMean(b.o.Event, events); ok {
		hint = "did you mean " + near + "?"
	} else if len(events) > 0 {
		hint = "events in the files: " + table.Join(events)
	}
	b.found.Errorf("unknown-event", diag.Command, "", "no batch has jars for the event %q", b.o.Event).Hinted(hint)
}
