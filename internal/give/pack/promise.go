package pack

import (
	"sort"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// promise is one [[gift]], gift list row or [[market]].
type promise struct {
	kind     StopType
	to       string
	date     unit.Date
	wish     Wish
	jars     int
	jar      string
	lot      string
	jam      string // words for the jam, or a lot
	allergy  string
	batch    int // -1: any batch
	price    unit.Money
	cameHome int
	file     string
	path     string
	entry    *Entry
	booked   bool // stands in the ledger
}

func (p promise) settled() bool { return p.cameHome >= 0 }

// promises gathers all promises in the order they are served: markets that
// are over, gifts in file order, markets to come by date, and last the gift
// list, whose rows may take from any batch.
func (b *builder) promises() []promise {
	var gifts, done, next, listed []promise
	for i, r := range b.results {
		for _, g := range r.Batch.Gifts {
			gifts = append(gifts, promise{kind: Gift, to: g.To, jars: giftJars(g), jar: g.Jar, batch: i, cameHome: -1,
				wish: Wish{From: g.From, Message: g.Message, Occasion: g.Occasion, Design: g.Design, Jars: giftJars(g)},
				file: fileName(r), path: g.Path})
		}
		for _, m := range b.stalls(i, r) {
			if m.settled() {
				done = append(done, m)
			} else {
				next = append(next, m)
			}
		}
	}
	for i := range b.o.List {
		listed = append(listed, b.listed(&b.o.List[i]))
	}
	for _, p := range append(append([]promise(nil), gifts...), listed...) {
		b.occasion(p)
	}
	byDate(done)
	byDate(next)
	return append(append(append(done, gifts...), next...), listed...)
}

func byDate(l []promise) {
	sort.SliceStable(l, func(i, j int) bool {
		a, b := l[i].date, l[j].date
		if a.IsZero() || b.IsZero() {
			return !a.IsZero() && b.IsZero()
		}
		return a.Before(b)
	})
}

func (b *builder) stalls(i int, r *cook.Result) []promise {
	var out []promise
	for _, m := range r.Batch.Markets {
		p := promise{kind: Market, to: m.Event, date: m.Date, jars: min(max(m.Jars, 0), maxJars), jar: m.Jar, batch: i,
			price: m.Price, cameHome: max(-1, m.CameHome), file: fileName(r), path: m.Path}
		if p.cameHome > p.jars {
			b.found.Errorf("came-home", p.file, p.path+".came_home", "%d jars came home from %s, but only %d went", p.cameHome, p.to, p.jars).
				Hinted("correct jars or came_home")
			p.cameHome = p.jars
		}
		if p.jars == 0 {
			b.found.Notef("no-jars", p.file, p.path, "no jars are set aside for %s", p.to).Hinted("write jars = 12")
			continue
		}
		out = append(out, p)
	}
	return out
}

func (b *builder) listed(e *Entry) promise {
	n := min(max(e.Jars, 1), maxJars)
	return promise{kind: Gift, to: e.To, jars: n, jar: e.Jar, lot: e.Lot, jam: e.Jam, allergy: stated(e.Allergy), batch: -1, cameHome: -1, file: e.File, entry: e,
		wish: Wish{From: e.From, Message: e.Message, Occasion: e.Occasion, Design: e.Design, Jars: n}}
}
