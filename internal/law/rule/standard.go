package rule

import (
	"fmt"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// standardTable holds the numbers of 21 CFR 150: parts of fruit to parts of
// sweetener solids, finished solids in %, and shares of a mixture.
type standardTable struct {
	GroupI       []int64          `toml:"ratio_group_1"`
	GroupII      []int64          `toml:"ratio_group_2"`
	Jelly        []int64          `toml:"ratio_jelly"`
	Butter       []int64          `toml:"ratio_butter"`
	Solids       int              `toml:"solids"`
	SolidsButter int              `toml:"solids_butter"`
	BrixError    float64          `toml:"brix_error"` // of a computed reading, ± %
	MostFruits   int              `toml:"most_fruits"`
	EachOneIn    int64            `toml:"each_at_least_one_in"`
	PineOneIn    int64            `toml:"pineapple_at_least_one_in"`
	AppleOneIn   int64            `toml:"apple_at_most_one_in"`
	ButterFactor map[string]int64 `toml:"butter_factors"` // × 10, by pantry key
	Acidifiers   []string         `toml:"acidifier_fruits"`
	Marmalade    []int64          `toml:"ratio_marmalade"`
	MarmaladeS   []int64          `toml:"ratio_marmalade_sour"`
	SourCitrus   []string         `toml:"sour_citrus"`
	JamAllows    []string         `toml:"jam_allows"` // kinds of ingredient beside the fruit
	ButterAllows []string         `toml:"butter_allows"`
	Origin
}

// Standards of identity by the name a food bears.
const (
	jamStandard    = "jam"
	jellyStandard  = "jelly"
	butterStandard = "fruit butter"
)

// verdict is how a batch stands to a standard of identity.
type verdict struct {
	Standard string // "" = no federal standard covers it
	Cite     string
	Fruits   []fruitShare
	Why      []shortfall // what the standard asks and the batch lacks
	Outside  string      // why the standard does not cover it
}

// shortfall is one thing lacking; certain when it rests on weighed or measured
// values.
type shortfall struct {
	Path, Text string
	Certain    bool
}

// fruitShare is one fruit as the standard counts it, in µg so that products
// stay inside 64 bits.
type fruitShare struct {
	Line  cook.Line
	Mass  int64
	Named string // singular: "strawberry"
}

// standard tests the batch against the standard its name calls for (21 U.S.C.
// 343(g): what bears a standardized name must meet the standard).
func standard(p *pass) {
	v := p.judge()
	file := p.batchFile()
	switch {
	case v.Standard == "":
		p.l.Notef("standard-not-covered", file, "name", "no federal standard of identity covers this batch: %s", v.Outside).
			Hinted("an honest descriptive name is enough").Cited("21 CFR 150; 21 CFR 101.3(b)")
		p.marmalade()
	case len(v.Why) == 0:
		p.l.Notef("standard-met", file, "name", "the batch meets the standard of identity for %s", v.Standard).Cited(v.Cite)
		p.solidsNote(v)
		p.nameOrder(v)
	default:
		for _, w := range v.Why {
			p.failed(v, w)
		}
	}
	p.outsiders(v)
}

func (p *pass) failed(v verdict, w shortfall) {
	hint := fmt.Sprintf("call it %q and write kind = \"spread\", or change the recipe", suggested(v.Fruits, p.b.Name, "Fruit Spread"))
	if !w.Certain {
		p.l.Warnf("standard-unsure", p.batchFile(), w.Path, "%s", w.Text).Hinted("weigh and measure to be sure; if it stays so, " + hint).Cited(v.Cite)
		return
	}
	if p.o.Gift {
		p.l.Notef("standard-not-met", p.batchFile(), w.Path, "%s", w.Text).Hinted("before selling it: " + hint).Cited(v.Cite)
		return
	}
	p.l.Errorf("standard-not-met", p.batchFile(), w.Path, "%s", w.Text).Hinted(hint).Cited(v.Cite + "; 21 U.S.C. 343(g)")
}

// judge picks the standard and tests it.
func (p *pass) judge() verdict {
	v := verdict{Standard: standardFor(p.b)}
	if v.Standard == "" {
		v.Outside = "it is called " + calledWhat(p.b)
		return v
	}
	v.Cite = map[string]string{jamStandard: "21 CFR 150.160", jellyStandard: "21 CFR 150.140", butterStandard: "21 CFR 150.110"}[v.Standard]
	v.Fruits, v.Outside = p.fruits(v.Standard)
	if v.Outside != "" {
		v.Standard = ""
		return v
	}
	v.Why = append(v.Why, p.mixture(v)...)
	v.Why = append(v.Why, p.ratio(v)...)
	v.Why = append(v.Why, p.solids(v)...)
	return v
}

// standardFor reads the standard off the name, else the kind: a spread that is
// named jam is judged as jam.
func standardFor(b *batch.Batch) string {
	word := productWord(b.Name)
	if word == "" {
		word = string(b.Kind)
	}
	switch word {
	case "jam", "preserve":
		return jamStandard
	case "jelly":
		return jellyStandard
	case "butter":
		return butterStandard
	}
	return ""
}

func calledWhat(b *batch.Batch) string {
	if w := productWord(b.Name); w != "" {
		return w
	}
	if b.Kind != "" {
		return string(b.Kind)
	}
	return "by a name of its own"
}

// fruits lists the fruit the standard counts, heaviest first, or says why the
// standard does not cover it.
func (p *pass) fruits(standard string) (out []fruitShare, outside string) {
	for _, e := range p.list {
		ln := e.line
		juice := ln.Row.Kind == "juice" && standard != jellyStandard // an addition, never the fruit
		if !countsAsFruit(ln) || juice || has(p.set.Standard.Acidifiers, ln.Row.Key) && !mentions(p.b.Name, ln) || p.takenOut(ln) {
			continue
		}
		mass, ok := p.counted(standard, ln)
		if !ok {
			return nil, "it does not list " + ln.Name
		}
		out = append(out, fruitShare{ln, mass, singularName(ln)})
	}
	if len(out) == 0 {
		return nil, "it has no fruit the standard lists"
	}
	return out, ""
}

func countsAsFruit(ln cook.Line) bool {
	switch ln.Row.Kind {
	case "fruit", "juice", "dried fruit":
		return ln.Row.Kind != "fruit" || ln.Row.USGroup != "" || ln.Row.Own || ln.Row.CFR150Factor > 0
	case "vegetable":
		return true
	case "":
		return ln.IsFruit
	}
	return ln.IsFruit && ln.Row.Kind != "acid"
}

// counted is the weight the standard counts: for jam the fruit itself, for
// jelly juice brought to its average solids (juice × solids × factor, 21 CFR
// 150.140), for butter the pulp by its own factor.
func (p *pass) counted(standard string, ln cook.Line) (int64, bool) {
	micro := int64(ln.Mass / 1000)
	switch standard {
	case jamStandard:
		g := ln.Row.USGroup
		return micro, (g == "I" || g == "II" || g == "combination only")
	case jellyStandard:
		factor := int64(ln.Row.CFR150Factor*10 + 0.5)
		return int64(ln.Soluble/1000) * factor / 10, factor > 0
	}
	factor, ok := p.set.Standard.ButterFactor[ln.Row.Key]
	return int64(ln.Soluble/1000) * factor / 10, ok
}

// outsiders warns of ingredients a standard does not provide for.
func (p *pass) outsiders(v verdict) {
	allows := p.set.Standard.JamAllows
	switch v.Standard {
	case "":
		return
	case butterStandard:
		allows = p.set.Standard.ButterAllows
	}
	for _, e := range p.list {
		k := e.line.Row.Kind
		if k == "" || countsAsFruit(e.line) && (k != "juice" || v.Standard == jellyStandard) || e.line.IsSweet || e.line.IsWater || has(allows, k) || has(p.set.Standard.Acidifiers, e.line.Row.Key) || k == "fruit" {
			continue
		}
		hint := fmt.Sprintf("leave it out, or call it %q", suggested(v.Fruits, p.b.Name, "Fruit Spread"))
		if k == "dairy" {
			hint = "an antifoaming agent may not be of animal fat: skim instead; or " + hint[len("leave it out, or "):]
		}
		p.l.Warnf("standard-outsider", p.batchFile(), linePath(e.line), "the standard for %s has no place for %s", v.Standard, e.name).Hinted(hint).Cited(v.Cite)
	}
}

// sweetener adds up the solids of nutritive sweeteners in µg.
func sweetener(r *cook.Result) (sum int64, certain bool) {
	certain = true
	for _, ln := range r.Lines {
		if ln.IsSweet {
			solids := ln.Soluble
			if solids <= 0 || solids > ln.Mass {
				solids = ln.Mass
			}
			sum += int64(solids / 1000)
			certain = certain && !ln.Estimated
		}
	}
	return sum, certain
}

func kilos(micro int64) string { return unit.Mass(micro * 1000).Format(unit.Metric) }
