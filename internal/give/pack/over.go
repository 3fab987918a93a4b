package pack

import (
	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// isOver reports jars whose date is over on the day of packing.
func (b *builder) isOver(s Stock) bool {
	return !b.o.Today.IsZero() && !s.BestBefore.IsZero() && s.BestBefore.Before(b.o.Today)
}

// over tells of jars that are past their date, once a lot, and of markets held
// after it. After a use-by date food is not given or sold at all (Regulation
// (EU) No 1169/2011 Art 24(1)); the rest is common practice.
func (b *builder) over() {
	type sum struct{ first, promised, left int }
	sums, lots := map[int]*sum{}, []int{}
	for i, s := range b.plan.Stock {
		if !b.isOver(s) || s.Promised+s.Left <= 0 {
			continue
		}
		if sums[s.batch] == nil {
			sums[s.batch] = &sum{first: i}
			lots = append(lots, s.batch)
		}
		sums[s.batch].promised += s.Promised
		sums[s.batch].left += s.Left
	}
	for _, k := range lots {
		b.tellOver(b.plan.Stock[sums[k].first], sums[k].promised, sums[k].left)
	}
	b.lateMarkets()
}

func (b *builder) tellOver(s Stock, promised, left int) {
	file, path := fileName(b.results[s.batch]), b.datePath(s)
	if s.UseBy && promised > 0 {
		b.found.Errorf("date-over", file, path, "the use-by date of lot %s, %s, is over: today is %s; %s are promised", s.Lot, b.day(s.BestBefore), b.day(b.o.Today), table.Jars(promised)).
			Hinted("do not give or sell them").Cited("Regulation (EU) No 1169/2011 Art 24(1)")
		return
	}
	b.found.Warnf("date-over", file, path, "the date of lot %s, %s, is over: today is %s; %s promised, %s at home", s.Lot, b.day(s.BestBefore), b.day(b.o.Today), table.Jars(promised), table.Jars(max(left, 0))).
		Hinted("do not give or sell these as fresh; a gift list takes none of them unless it names the lot").Cited("common practice, no source")
}

// datePath is the key the date came from.
func (b *builder) datePath(s Stock) string {
	r := b.results[s.batch]
	switch {
	case r.Batch.UseBy:
		return "use_by"
	case !r.Batch.BestBefore.IsZero():
		return "best_before"
	}
	return "made"
}

// lateMarkets tells of markets to come that are held after the date of the jars.
func (b *builder) lateMarkets() {
	for i, r := range b.results {
		for _, m := range r.Batch.Markets {
			if m.Date.IsZero() || r.BestBefore.IsZero() || !r.BestBefore.Before(m.Date) || m.CameHome >= 0 || b.overToday(i) {
				continue
			}
			b.found.Warnf("market-after-date", fileName(r), m.Path+".date", "on %s the date of lot %s, %s, is over", b.day(m.Date), r.Lot, b.day(r.BestBefore)).
				Hinted("take another lot, or check the dates").Cited("common practice, no source")
		}
	}
}

// overToday reports a batch whose date is over already: told for the lot.
func (b *builder) overToday(batch int) bool {
	best := b.results[batch].BestBefore
	return b.o.Today != (unit.Date{}) && best.Before(b.o.Today)
}
