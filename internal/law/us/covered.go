package us

import (
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// fruitPH warns of fruit a state does not take in jam by its natural pH.
func (p *pass) fruitPH(pr *place.Programme) {
	if pr.FruitPH <= 0 {
		return
	}
	for _, ln := range p.R.Lines {
		if countsAsFruit(ln) && ln.Row.PHHigh >= pr.FruitPH {
			p.L.Warnf("fruit-ph", p.BatchFile(), draft.LinePath(ln), "%s takes jam only of fruit of a natural pH below %.2f, and that of %s goes up to %.1f", p.Set.Name, pr.FruitPH, ln.Name, ln.Row.PHHigh).
				Hinted("ask the agency before selling").Cited(pr.Law)
		}
	}
}

// jamAllowed passes on what the state says of jam.
func (p *pass) jamAllowed(pr *place.Programme) {
	if pr.Jam == "" || pr.Jam == "yes" {
		return
	}
	words, bound := strings.CutPrefix(pr.Jam, "conditions: ")
	if !bound {
		words, bound = strings.CutPrefix(pr.Jam, "no ")
		words = "it is not listed " + words
	}
	if !bound {
		return // "yes (…)": named in the law
	}
	p.L.Warnf("jam-conditions", p.BatchFile(), "kind", "selling home-made jam in %s: %s", p.Set.Name, words).Hinted("ask the agency whether your jam may be sold").Cited(pr.Law)
}

// coldGoods warns of what does not keep on a shelf: what a state says of jam was
// read for ordinary fruit jam, and curd, freezer jam and the like are none.
func (p *pass) coldGoods(pr *place.Programme) {
	switch p.R.Keeping.Class {
	case cook.Shelf, cook.ShelfShort:
		return
	}
	p.L.Warnf("cold-goods", p.BatchFile(), "kind", "the rules of %s were read for fruit jam that keeps on a shelf, and this must be kept cold", p.Set.Name).
		Hinted("ask the agency whether a home kitchen may sell it at all").Cited(pr.Law)
}

// finishedPH holds a state's limit against the measured pH; unmeasured, against
// what the table says of the fruit.
func (p *pass) finishedPH(pr *place.Programme) {
	if pr.MaxPH <= 0 || p.R.PHHigh <= pr.MaxPH {
		return
	}
	const hint = "measure the cooled jam with a calibrated meter and write ph under [cook]; more acid lowers it"
	if p.R.PHMeasured {
		p.Duty("finished-ph", p.BatchFile(), "cook.ph", "%s takes home-canned fruit up to pH %.1f, and this measures %.2f", p.Set.Name, pr.MaxPH, p.R.PHHigh).Hinted(hint).Cited(pr.Law)
		return
	}
	p.L.Warnf("finished-ph", p.BatchFile(), "cook.ph", "%s takes home-canned fruit up to pH %.1f; the pH is not measured, and this fruit goes up to %.1f", p.Set.Name, pr.MaxPH, p.R.PHHigh).Hinted(hint).Cited(pr.Law)
}

// excluded reports ingredients a programme does not cover.
func (p *pass) excluded(pr *place.Programme) {
	for _, ln := range p.R.Lines {
		if !draft.Has(pr.Excludes, ln.Row.Class) {
			continue
		}
		d := p.L.Errorf("not-covered", p.BatchFile(), draft.LinePath(ln), "the home-kitchen law of %s does not cover food made with %s", p.Set.Name, ln.Name)
		d.Hinted("leave it out, or ask the agency what license such food needs").Cited(pr.ExcludeCite)
		if pr.Confidence != "primary" {
			d.Message += " (read on a page about the law)"
		}
	}
}

// websiteNote asks to compare an address that is ours, not the agency's letter.
func (p *pass) websiteNote(pr *place.Programme) {
	if pr.Website != "" && strings.TrimSpace(p.K.StateWebsite) == "" && p.shows("state_website") {
		p.L.Warnf("state-website", p.KitchenFile(), "place", "%s has you print a web address of the department; the label says %s, from a page about the law", p.Set.Name, pr.Website).
			Hinted("compare it with your registration, and write state_website in kitchen.toml").Cited(pr.Law)
	}
}
