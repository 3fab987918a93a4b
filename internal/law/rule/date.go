package rule

import (
	"jarmark/internal/law/label"
)

// dateTable holds how dates are written.
type dateTable struct {
	Form string `toml:"form"` // "month-day-year"
	Origin
}

// dates adds the best-by date, a quality date no federal rule asks for, and the
// day of making where the state asks.
func dates(p *pass) {
	const cite = "USDA FSIS guidance on food product dating (Dec 2016); no federal rule"
	if d := p.r.BestBefore; !d.IsZero() {
		key := "us.best"
		if p.b.UseBy {
			key = "us.use-by"
		}
		p.add(label.Block{Kind: label.Date, Runs: p.say.Runs(key, "date", americanDate(d)), Min: p.letterO(), Cite: cite, Verified: p.set.Dates.Confidence, Path: "best_before"})
	} else {
		p.l.Notef("no-best-before", p.batchFile(), "made", "there is no best-by date, as the day it was made is not given").Hinted("write made = \"2026-06-14\"").Cited(cite)
	}
	if p.shows("made") && hasMade(p) && !p.o.Gift {
		p.add(label.Block{ID: "made", Kind: label.Date, Runs: p.say.Runs("us.made", "date", americanDate(p.b.Made)), Min: p.letterO(),
			Required: true, Cite: p.prog.Law, Verified: p.prog.Confidence, Path: "made"})
	}
}

// lot adds the lot code that ties the jar to the batch record.
func lot(p *pass) {
	if p.r.Lot == "" {
		p.l.Notef("no-lot", p.batchFile(), "lot", "there is no lot code to tie the jar to its record").Cited("common practice, no source")
		return
	}
	p.add(label.Block{Kind: label.Lot, Runs: p.say.Runs("us.lot", "lot", plainStars(p.r.Lot)), Exact: true, Min: p.letterO(),
		Cite: "common practice, no source", Verified: "memory", Path: "lot"})
}
