package pack

import (
	"jarmark/internal/give/table"
	"strings"

	"jarmark/internal/kitchen/cook"
)

// advise finds what a careful packer would ask about.
func (b *builder) advise() {
	for _, s := range append(append([]Stop(nil), b.plan.Stops...), b.plan.Done...) {
		if s.Type == Market && s.CameHome < 0 {
			b.expiring(s)
			b.staying(s)
		}
	}
	b.unchecked()
	b.twice()
}

// expiring finds jars past their date on the day of the event.
func (b *builder) expiring(s Stop) {
	if s.Date.IsZero() {
		return
	}
	for _, l := range s.Lines {
		if l.BestBefore.IsZero() || !l.BestBefore.Before(s.Date) {
			continue
		}
		file := fileName(b.results[b.plan.Stock[l.stock].batch])
		if l.UseBy {
			b.found.Errorf("past-date", file, "", "%s of lot %s go to %s on %s, after their use-by date %s", table.Jars(l.Count), l.Lot, s.To, b.day(s.Date), b.day(l.BestBefore)).
				Hinted("keep them out").Cited("Regulation (EU) No 1169/2011 Art 24(1)")
			continue
		}
		b.found.Warnf("past-date", file, "", "%s of lot %s go to %s on %s, after their best-before date %s", table.Jars(l.Count), l.Lot, s.To, b.day(s.Date), b.day(l.BestBefore)).
			Hinted("keep them for yourself, or ask your food agency whether they may be sold")
	}
}

// staying tells when an earlier lot of the same product stays at home.
func (b *builder) staying(s Stop) {
	for _, l := range s.Lines {
		for _, st := range b.plan.Stock {
			if st.Left > 0 && st.Lot != l.Lot && sameName(st.Name, l.Name) && st.Jar.Key == l.Jar.Key &&
				!st.BestBefore.IsZero() && st.BestBefore.Before(l.BestBefore) {
				b.found.Notef("first-expiry", fileName(b.results[st.batch]), "", "%s of %s, lot %s (%s), stay at home while the later lot %s goes to %s",
					table.Jars(st.Left), st.Name, st.Lot, b.day(st.BestBefore), l.Lot, s.To).
					Hinted("take the jars that expire first")
			}
		}
	}
}

// unchecked reminds that nobody said the seals were checked.
func (b *builder) unchecked() {
	for i, r := range b.results {
		if c := r.Keeping.Class; c == cook.Freezer || c == cook.Refrigerator {
			continue // such jars have no seal to test
		}
		n := 0
		for _, s := range b.plan.Stock {
			if s.batch == i && s.CountHow != cook.Estimated && !s.Checked && s.Count > 0 {
				n += s.Count
			}
		}
		if n > 0 {
			b.found.Notef("seals-unchecked", fileName(r), "fill", "the seals of %s are not noted as checked; all are planned as sealed", table.Jars(n)).
				Hinted("after 12 to 24 hours press each lid, then write sealed = N").
				Cited("USDA Agriculture Information Bulletin 539 (rev. 1994), Guide 1, testing jar seals")
		}
	}
}

// twice tells of people who stand in a batch file and in the gift list.
func (b *builder) twice() {
	inFile := map[string]int{}
	for _, r := range b.results {
		for _, g := range r.Batch.Gifts {
			inFile[FoldName(g.To)] += giftJars(g)
		}
	}
	told := map[string]bool{}
	for _, e := range b.o.List {
		key := FoldName(e.To)
		if n := inFile[key]; n > 0 && key != "" && !told[key] {
			told[key] = true
			d := b.found.Notef("gift-twice", e.File, e.Path, "%s stands in the gift list and in a batch file (%s): both are counted", strings.TrimSpace(e.To), table.Jars(n))
			d.Pos = e.Pos
		}
	}
}

// Ledger checks the sums of a stock row: counted jars = promised + given +
// sold + lost + left + unsealed.
func (s Stock) Ledger() bool {
	return s.Count == s.Promised+s.Given+s.Sold+s.Lost+s.Left+s.Unsealed && s.Left >= 0
}
