package us

import (
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// lowAcidPH: a low-acid food has a natural pH above it, 21 CFR 114.3(d).
const lowAcidPH = 4.6

// smallAmount is how much low-acid food, in percent of all that went in, an acid
// food may hold and stay one: 21 CFR 114.3(b) says "small amounts" and no figure;
// ten in a hundred is our own choice.
const smallAmount = 10

// acidified warns of low-acid food made acid and kept on a shelf: 21 CFR 114.3(b)
// names peppers and tropical fruits, and takes jams, jellies and preserves out,
// which extension and state pages read of those that a standard covers. What the
// states say of home kitchens was read for jam of acid fruit.
func (p *pass) acidified(pr *place.Programme) {
	if c := p.R.Keeping.Class; c != cook.Shelf && c != cook.ShelfShort || p.judge().OK {
		return
	}
	var low, heaviest unit.Mass
	var line cook.Line
	for _, ln := range p.R.Lines {
		if ln.Row.PHLow > lowAcidPH && draft.Has([]string{"fruit", "vegetable"}, ln.Row.Class) {
			if low += ln.Mass; ln.Mass > heaviest {
				heaviest, line = ln.Mass, ln
			}
		}
	}
	if low*100 <= p.R.Input*smallAmount {
		return
	}
	p.L.Warnf("acidified-food", p.BatchFile(), draft.LinePath(line), "with this much %s in it, no standard covers the food and it may be an acidified food, for which %s may ask more than for jam", line.Name, p.Set.Name).
		Hinted("ask the agency whether a home kitchen may sell it: makers of acidified food take a course, register and file the process").
		Cited("21 CFR 114.3(b), 108.25; " + pr.Law)
}

// standardOnly warns where a state lets home kitchens make such food only as the
// federal standards have it.
func (p *pass) standardOnly(pr *place.Programme) {
	if !pr.StandardOnly {
		return
	}
	v := p.judge()
	what := v.Outside
	switch {
	case len(v.Counts) == 0 || v.Advice:
		return // chutney, curd, marmalade: no standard, and not what was read
	case len(v.Unknown) > 0:
		return // told as unknown: nothing shows it either way
	case v.OK && len(v.Outsiders) > 0:
		what = "it has no place for " + v.Outsiders[0].name
	case v.OK:
		return // what falls short of its standard is told as that
	}
	p.L.Warnf("jam-conditions", p.BatchFile(), "kind", "home kitchens in %s may make only jam, jelly and fruit butter that a federal standard covers, and none covers this: %s", p.Set.Name, what).
		Hinted("ask the agency whether it may be sold").Cited(pr.Law)
}
