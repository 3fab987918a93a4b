package pack

import (
	"fmt"
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
		if o.Type == Market {
			o.Value = addMoney(o.Value, l.Price, l.Count)
		}
	}
	if o.Type == Market || o.Jars > 1 {
		o.Boxes = b.boxes(o.Lines)
	}
}

// filter keeps the stops asked for. Jars were allotted over all promises
// before, so that a filtered list never gives away another's jars.
func (b *builder) filter() {
	if b.o.Event == "" && b.o.Date.IsZero() && !b.o.Gifts {
		return
	}
	b.plan.Filter = b.o.Event
	if b.o.Gifts {
		b.plan.Filter = "gifts"
	}
	var kept, events []*stop
	for _, s := range b.stops {
		if s.out.Type == Market {
			events = append(events, s)
		}
		if b.o.Gifts && s.out.Type == Gift || !b.o.Gifts && b.isMarket(s.out) {
			kept = append(kept, s)
		}
	}
	switch {
	case b.o.Gifts && len(kept) == 0:
		b.found.Notef("no-gifts", "", "", "no gifts are promised").Hinted("add a [[gift]] to a batch, or give a list")
	case !b.o.Gifts && len(kept) == 0:
		b.noEvent(events)
	case !b.o.Gifts:
		kept = b.nextDay(kept)
		b.plan.Filter = kept[0].out.To
	}
	b.stops = kept
}

// isMarket reports whether a stop is the market asked for, on the day asked for.
func (b *builder) isMarket(s Stop) bool {
	return s.Type == Market && (b.o.Event == "" || sameName(s.To, b.o.Event)) && (b.o.Date.IsZero() || s.Date == b.o.Date)
}

// nextDay keeps one day of a market that is held on several, where none is
// named: the next to come, else the last that is open. Days that are over and
// of which nobody noted what came home are told.
func (b *builder) nextDay(kept []*stop) []*stop {
	if !b.o.Date.IsZero() || b.o.Today.IsZero() {
		return kept
	}
	next := -1
	for i, s := range kept {
		switch {
		case s.out.CameHome >= 0:
		case next < 0, kept[next].out.Date.Before(b.o.Today) && kept[next].out.Date.Before(s.out.Date),
			!s.out.Date.Before(b.o.Today) && s.out.Date.Before(kept[next].out.Date):
			next = i
		}
	}
	if next < 0 {
		return kept
	}
	for i, s := range kept {
		switch {
		case i == next || s.out.CameHome >= 0:
		case s.out.Date.IsZero():
			b.found.Notef("market-days", diag.Command, "", "%s stands in the files once more, with no day", s.out.To).Hinted("write date = under that [[market]]")
		case s.out.Date.Before(b.o.Today):
			b.found.Notef("market-open", diag.Command, "", "what came home from %s on %s is not noted", s.out.To, b.day(s.out.Date)).Hinted("jarmark pack --event NAME --date " + s.out.Date.String() + " --came-home \"LOT=N\"")
		default:
			b.found.Notef("market-days", diag.Command, "", "%s is also held on %s", s.out.To, b.day(s.out.Date)).Hinted("choose it with --date " + s.out.Date.String())
		}
	}
	return kept[next : next+1]
}

func (b *builder) noEvent(stops []*stop) {
	var events, days []string
	for _, s := range stops {
		events = append(events, s.out.To)
		if !s.out.Date.IsZero() && (sameName(s.out.To, b.o.Event) || b.o.Event == "") {
			days = append(days, s.out.Date.String())
		}
	}
	what := fmt.Sprintf("the event %q", b.o.Event)
	if b.o.Event == "" {
		what = "a market"
	}
	if !b.o.Date.IsZero() {
		what += " on " + b.day(b.o.Date)
	}
	hint := "no batch names a market"
	if near, ok := diag.DidYouMean(b.o.Event, unique(events)); b.noted() {
		hint = "all that went there that day is noted in the ledger: jarmark ledger --undo takes the last change back, or correct the rows in ledger.csv"
		if len(days) > 0 {
			hint += "; its days to come: " + table.Join(unique(days))
		}
	} else if len(days) > 0 {
		hint = "its days: " + table.Join(unique(days))
	} else if b.markets[FoldName(b.o.Event)] {
		hint = "all that went there is noted in the ledger: jarmark ledger list shows it"
	} else if ok {
		hint = "did you mean " + near + "?"
	} else if len(events) > 0 {
		hint = "events in the files: " + table.Join(unique(events))
	}
	b.found.Errorf("unknown-event", diag.Command, "", "no batch has jars for %s", what).Hinted(hint)
}

// noted reports that the ledger has what was sold at the event on the day
// asked for.
func (b *builder) noted() bool {
	for _, base := range b.base {
		for _, h := range base.Holders {
			for _, d := range h.Days {
				if !b.o.Date.IsZero() && d.Date == b.o.Date && (b.o.Event == "" || sameName(h.Who, b.o.Event)) {
					return true
				}
			}
		}
	}
	return false
}
