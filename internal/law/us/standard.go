package us

import (
	"fmt"
	"slices"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// verdict is how a batch stands to the product its name calls for.
type verdict struct {
	place.Product
	OK        bool // a product row governs it and lists its fruit
	Fruits    []fruitShare
	Why       []shortfall // what the standard asks and the batch lacks
	Outsiders []entry     // what the standard has no place for
	Unknown   []entry     // what nothing is known of
	Outside   string      // why no standard covers it
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
	file := p.BatchFile()
	switch {
	case !v.OK && len(v.Unknown) > 0:
		p.unknowns(v)
		return
	case !v.OK:
		p.L.Notef("standard-not-covered", file, "name", "no federal standard of identity covers this batch: %s", v.Outside).
			Hinted("an honest descriptive name is enough").Cited("21 CFR 150; 21 CFR 101.3(b)")
		return
	case v.Advice:
		p.advice(v)
		return
	case len(v.Why) > 0:
		sure := false
		for _, w := range v.Why {
			p.failed(v, w)
			sure = sure || w.Certain
		}
		if !sure { // it may well meet the standard, and then its name says its fruit
			p.nameOrder(v)
		}
	case len(v.Outsiders)+len(v.Unknown) == 0 && !p.juiceUnweighed(v):
		p.L.Notef("standard-met", file, "name", "the batch meets the standard of identity for %s", v.Called()).Cited(v.Cite)
		fallthrough
	default:
		p.solidsNote(v)
		p.nameOrder(v)
		p.driedWords(v)
	}
	p.outsiders(v)
	p.unknowns(v)
}

func (p *pass) failed(v verdict, w shortfall) {
	hint := fmt.Sprintf("call it %q and write kind = \"spread\", or change the recipe", suggested(v.Fruits, p.B.Name, "Fruit Spread"))
	if !w.Certain {
		p.L.Warnf("standard-unsure", p.BatchFile(), w.Path, "%s", w.Text).Hinted("weigh and measure to be sure; if it stays so, " + hint).Cited(v.Cite)
		return
	}
	if p.O.Gift {
		p.L.Notef("standard-not-met", p.BatchFile(), w.Path, "%s", w.Text).Hinted("before selling it: " + hint).Cited(v.Cite)
		return
	}
	p.L.Errorf("standard-not-met", p.BatchFile(), w.Path, "%s", w.Text).Hinted(hint).Cited(v.Cite + "; 21 U.S.C. 343(g)")
}

// judge picks the product and tests it.
func (p *pass) judge() verdict {
	row, ok := p.row()
	v := verdict{Product: row}
	if imitation(p.B.Name) {
		v.Outside = "it is called an imitation, and all of that is printed in letters of one size"
		return v
	}
	if !ok || len(row.Counts) == 0 {
		v.Outside = "it is called " + calledWhat(p.B)
		return v
	}
	if v.Fruits, v.Outside = p.fruits(row); v.Outside != "" {
		if v.Outside == noFruit {
			v.Unknown = p.unknownFood()
		}
		v.Why = p.wrongForm(row)
		v.OK = len(v.Why) > 0
		return v
	}
	v.OK = true
	v.Outsiders, v.Unknown = p.outside(v)
	v.Why = append(v.Why, p.mixture(v)...)
	v.Why = append(v.Why, p.ratio(v)...)
	v.Why = append(v.Why, p.shares(v)...)
	v.Why = append(v.Why, p.solids(v)...)
	return v
}

// imitation reports a name that says "imitation" and after it the food imitated:
// 21 U.S.C. 343(c), 21 CFR 101.3(e). Such food is not held to the standard (62 Cases
// of Jam v. United States, 340 U.S. 593 (1951): "not misbranded").
func imitation(name string) bool {
	_, end, ok := draft.FindWord(name, "imitation", false)
	return ok && draft.ProductWord(name[end:]) != ""
}

func calledWhat(b *batch.Batch) string {
	if w := draft.ProductWord(b.Name); w != "" {
		return w
	}
	if b.Product != "" {
		return string(b.Product)
	}
	return "by a name of its own"
}

const noFruit = "it has no fruit the standard lists"

// fruits lists the fruit the standard counts, heaviest first, or says why the
// standard does not cover it. A fruit it does not list takes the batch out of it where
// the name says that fruit; else it is an outsider.
func (p *pass) fruits(row place.Product) (out []fruitShare, outside string) {
	var strays []cook.Line
	for _, e := range p.list {
		ln := e.line
		if !countsAsFruit(ln) || ln.Row.Class != "" && !draft.Among(row.Counts, ln) || draft.Among(row.Unnamed, ln) && !mentions(p.B.Name, ln) || p.TakenOut(ln) {
			continue
		}
		if mass, ok := p.counted(row, ln); ok {
			out = append(out, fruitShare{ln, mass, fruitName(ln)})
		} else {
			strays = append(strays, ln)
		}
	}
	for _, ln := range strays {
		at := fruitAt(p.B.Name, ln)
		same := func(f fruitShare) bool { return fruitAt(p.B.Name, f.Line) == at } // cherries, maraschino cherries
		if len(out) == 0 || at >= 0 && !slices.ContainsFunc(out, same) {
			return nil, "it does not list " + ln.Name
		}
	}
	if len(out) == 0 {
		return nil, noFruit
	}
	return out, ""
}

// wrongForm tells of a batch whose only fruit is listed, in a form the standard
// does not take: dried figs in a jam.
func (p *pass) wrongForm(row place.Product) (why []shortfall) {
	for _, e := range p.list {
		if ln := e.line; ln.Row.Class == "dried fruit" && !draft.Among(row.Counts, ln) && draft.Has(p.Set.Standard.Listed, ln.Row.USGroup) {
			why = append(why, shortfall{draft.LinePath(ln), fmt.Sprintf("the standard for %s takes fresh, frozen, canned or concentrated fruit, and %s are none of these", row.Called(), ln.Name), true})
		}
	}
	return why
}

func countsAsFruit(ln cook.Line) bool {
	switch ln.Row.Class {
	case "fruit", "juice", "dried fruit":
		return ln.Row.Class != "fruit" || ln.Row.USGroup != "" || ln.Row.Own || ln.Row.CFR150Factor > 0
	case "vegetable":
		return true
	case "":
		return ln.IsFruit
	}
	return ln.IsFruit && ln.Row.Class != "acid"
}

// counted is the weight the standard counts: for jam the fruit itself, without
// pits the maker left in; for jelly juice brought to its average solids (juice ×
// solids × factor, 21 CFR 150.140), for butter the pulp by its own factor.
func (p *pass) counted(row place.Product, ln cook.Line) (int64, bool) {
	micro := int64(ln.Mass / 1000)
	switch row.CountedBy {
	case "juice":
		factor := int64(ln.Row.CFR150Factor*10 + 0.5)
		return int64(ln.Soluble/1000) * factor / 10, factor > 0
	case "pulp":
		factor, ok := row.Factors[ln.Row.Key]
		return int64(ln.Soluble/1000) * factor / 10, ok
	}
	if draft.Among(row.NotStones, ln) && p.stones(ln.Paths) == "in" {
		micro -= refuse(micro, ln)
	}
	g := ln.Row.USGroup
	return micro, draft.Has(p.Set.Standard.Listed, g) || g != "" && g == p.Set.Standard.Alone
}

// refuse is what of a fruit's weight is pits and stems (USDA SR28).
func refuse(micro int64, ln cook.Line) int64 {
	return micro / 100 * int64(max(ln.Row.RefusePct, 0)+0.5)
}

// sweetener adds up the solids of nutritive sweeteners in µg.
func sweetener(r *cook.Result) (sum int64, certain bool) {
	certain = true
	for _, ln := range r.Lines {
		if ln.IsSweet {
			sum += sweetSolids(ln)
			certain = certain && !ln.Estimated
		}
	}
	return sum, certain
}

func sweetSolids(ln cook.Line) int64 {
	solids := ln.Soluble
	if solids <= 0 || solids > ln.Mass {
		solids = ln.Mass
	}
	return int64(solids / 1000)
}

// cupped is how much of a sum was measured in cups and pieces and not weighed, by
// the names of what was.
func cupped(lines []cook.Line, mass func(cook.Line) int64) (sum int64, path string, names []string) {
	for _, ln := range lines {
		if ln.Estimated {
			sum, names = sum+mass(ln), append(names, ln.Name)
			if path == "" {
				path = draft.LinePath(ln)
			}
		}
	}
	return sum, path, names
}

func kilos(micro int64) string { return unit.Mass(micro * 1000).Format(unit.Metric) }
