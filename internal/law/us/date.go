package us

import (
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// dates adds the best-by date, a quality date no federal rule asks for, and the
// day of making where the state asks.
func dates(p *pass) {
	const cite = "USDA FSIS guidance on food product dating (Dec 2016); no federal rule"
	if d := p.R.BestBefore; !d.IsZero() {
		key := "us.best"
		if p.B.UseBy {
			key = "us.use-by"
		}
		p.add(label.Block{Kind: label.Date, Runs: p.Say.Runs(key, "date", d.Words(true)), Cite: cite, Verified: p.Set.Dates.Confidence, Path: "best_before"})
	} else {
		p.L.Notef("no-best-before", p.BatchFile(), "made", "there is no best-by date, as the day it was made is not given").Hinted("write made = \"2026-06-14\"").Cited(cite)
	}
	if p.shows("made") && hasMade(p) && !p.O.Gift {
		p.add(label.Block{ID: "made", Kind: label.Date, Runs: p.Say.Runs("us.made", "date", p.B.Made.Words(true)),
			Required: true, Cite: p.prog.Law, Verified: p.prog.Confidence, Path: "made"})
	}
}

// lot adds the lot code that ties the jar to the batch record.
func lot(p *pass) {
	if p.R.Lot == "" {
		p.L.Notef("no-lot", p.BatchFile(), "lot", "there is no lot code to tie the jar to its record").Cited("common practice, no source")
		return
	}
	p.add(label.Block{Kind: label.Lot, Runs: p.Say.Runs("us.lot", "lot", draft.PlainStars(p.R.Lot)), Exact: true,
		Cite: "common practice, no source", Verified: "memory", Path: "lot"})
}
