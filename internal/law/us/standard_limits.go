package us

import (
	"cmp"
	"fmt"
	"math/bits"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// mixture tests the number and shares of fruits.
func (p *pass) mixture(v verdict) (why []shortfall) {
	t, n := v.Mixture, len(v.Fruits)
	if t == nil {
		return nil
	}
	var sum int64
	certain := true
	for _, f := range v.Fruits {
		sum += f.Mass
		certain = certain && !f.Line.Estimated
	}
	if n > t.Most {
		why = append(why, shortfall{"name", fmt.Sprintf("%s is made of at most %d fruits, this batch has %d", v.Called(), t.Most, n), true})
	}
	for _, f := range v.Fruits {
		if len(why) >= 5 { // enough to act on
			break
		}
		least := t.EachOneIn
		if one, ok := t.OneIn[f.Line.Row.Key]; ok {
			least = one
		}
		most := t.MostOneIn[f.Line.Row.Key]
		switch {
		case most > 0 && n == 1:
			why = append(why, shortfall{draft.LinePath(f.Line), fmt.Sprintf("%s %s has no standard: %s counts only beside another fruit", f.Named, v.Called(), f.Named), true})
		case n == 1:
		case most > 0 && f.Mass*most > sum:
			why = append(why, shortfall{draft.LinePath(f.Line), fmt.Sprintf("%s may be at most 1/%d of the fruit, here it is %s", f.Named, most, percent(f.Mass, sum)), certain})
		case f.Mass*least < sum:
			why = append(why, shortfall{draft.LinePath(f.Line), fmt.Sprintf("each fruit of a mixture must be at least 1/%d of the fruit, and %s is %s", least, f.Line.Name, percent(f.Mass, sum)), certain})
		}
	}
	return why
}

func percent(part, whole int64) string {
	return unit.Decimals((part*1000+whole/2)/max(whole, 1), 10) + " %"
}

// fruitSum adds up the fruit as counted; certain when all of it was weighed.
func (v verdict) fruitSum() (sum int64, certain bool) {
	certain = true
	for _, f := range v.Fruits {
		sum += f.Mass
		certain = certain && !f.Line.Estimated
	}
	return sum, certain
}

// ratio tests parts of fruit to parts of sweetener solids. It is a minimum:
// more fruit is fine.
func (p *pass) ratio(v verdict) []shortfall {
	r, ok := v.RatioOf(p.class(v))
	if !ok {
		return nil
	}
	fruit, fruitCertain := v.fruitSum()
	sweet, certain := sweetener(p.R)
	text := fmt.Sprintf("%s needs %d parts of fruit to %d parts of sweetener; here %s of fruit meet %s, and %s are needed",
		v.Called(), r.Fruit, r.Sweet, kilos(fruit), kilos(sweet), kilos(sweet/r.Sweet*r.Fruit+sweet%r.Sweet*r.Fruit/r.Sweet))
	if less(fruit, r.Sweet, sweet, r.Fruit) {
		// The notes of a jelly weigh fruit, the standard its strained juice.
		return []shortfall{{"name", text, certain && fruitCertain && v.CountedBy != "juice"}}
	}
	if w, near := p.nearRatio(v, r); near {
		return []shortfall{w}
	}
	if stony, path := p.stonesUnsaid(v); less(fruit-stony, r.Sweet, sweet, r.Fruit) {
		return []shortfall{{path, v.Called() + " counts fruit without its pits, and only with them is there enough: write form = \"pitted\" if they were out when you weighed", false}}
	}
	return nil
}

// nearRatio tells where a recipe measured in cups meets the ratio with the cups of
// the table and not with fruit packed looser and sugar fuller: what the label says
// would rest on how somebody fills a cup.
func (p *pass) nearRatio(v verdict, r place.RatioRule) (shortfall, bool) {
	fruit, _ := v.fruitSum()
	sweet, _ := sweetener(p.R)
	counted := map[string]int64{}
	var fruits, sweets []cook.Line
	for _, f := range v.Fruits {
		fruits, counted[f.Line.Name] = append(fruits, f.Line), f.Mass
	}
	for _, ln := range p.R.Lines {
		if ln.IsSweet {
			sweets = append(sweets, ln)
		}
	}
	loose, path, names := cupped(fruits, func(ln cook.Line) int64 { return counted[ln.Name] })
	full, sweetPath, sweetNames := cupped(sweets, sweetSolids)
	least := fruit - loose/1000*p.Set.Standard.CupError
	most := sweet + full/1000*p.Set.Standard.SugarCupError
	if !less(least, r.Sweet, most, r.Fruit) {
		return shortfall{}, false
	}
	return shortfall{cmp.Or(path, sweetPath), fmt.Sprintf("%s needs %d parts of fruit to %d parts of sweetener; %s were not weighed, and with cups a little looser or fuller %s of fruit meet %s",
		v.Called(), r.Fruit, r.Sweet, strings.Join(append(names, sweetNames...), ", "), kilos(least), kilos(most)), false}, true
}

// stonesUnsaid is what the counted fruit would lose if it was weighed with its
// pits, where the maker does not say.
func (p *pass) stonesUnsaid(v verdict) (sum int64, path string) {
	for _, f := range v.Fruits {
		if draft.Among(v.NotStones, f.Line) && p.stones(f.Line.Paths) == "" {
			sum += refuse(f.Mass, f.Line)
			path = draft.LinePath(f.Line)
		}
	}
	return sum, path
}

// less reports a×b < c×d for non-negative numbers, without overflow.
func less(a, b, c, d int64) bool {
	hi, lo := bits.Mul64(uint64(max(a, 0)), uint64(max(b, 0)))
	hi2, lo2 := bits.Mul64(uint64(max(c, 0)), uint64(max(d, 0)))
	return hi < hi2 || hi == hi2 && lo < lo2
}

// class is the class of the whole fruit: "I" when every fruit of a jam is of
// Group I, else "II"; "sour" when a marmalade is of sour citrus alone.
func (p *pass) class(v verdict) string {
	if v.Advice {
		for _, f := range v.Fruits {
			if !draft.Has(p.Set.Standard.Sour, f.Line.Row.Key) {
				return "general"
			}
		}
		return "sour"
	}
	for _, f := range v.Fruits {
		if f.Line.Row.USGroup != "I" {
			return "II"
		}
	}
	return "I"
}

// shares tests what must be a part of the fruit where it is used at all: juice
// in a butter, half the fruit or none (21 CFR 150.110(c)(6)).
func (p *pass) shares(v verdict) (why []shortfall) {
	fruit, certain := v.fruitSum()
	for _, s := range v.Shares {
		var used int64
		path := ""
		for _, e := range p.list {
			if draft.Among(s.Of, e.line) {
				used += int64(e.mass / 1000)
				path, certain = draft.LinePath(e.line), certain && !e.line.Estimated
			}
		}
		if used > 0 && less(used, s.OneIn, fruit, 1) {
			why = append(why, shortfall{path, fmt.Sprintf("%s may hold juice only from 1/%d of the fruit on; here are %s, and the fruit counts as %s", v.Called(), s.OneIn, kilos(used), kilos(fruit)), certain})
		}
	}
	return why
}

// solids tests the finished soluble solids. A computed reading never condemns
// the batch: it asks for a measurement.
func (p *pass) solids(v verdict) []shortfall {
	if v.Solids == nil {
		return nil
	}
	need, b := v.Solids.Least, p.R.Brix
	if b.Value >= need || !(b.Value > 0) {
		return nil
	}
	text := fmt.Sprintf("%s needs %.0f %% of soluble solids, this batch has %.1f %% (%s)", v.Called(), need, b.Value, b.How)
	sure := b.How == cook.Measured || b.How == cook.Given
	return []shortfall{{"cook.brix", text, sure}}
}

// solidsNote asks for a measurement where a computed reading is close.
func (p *pass) solidsNote(v verdict) {
	b := p.R.Brix
	if v.Solids == nil || b.How != cook.Estimated || b.Value >= v.Solids.Least+p.Set.Standard.BrixError {
		return
	}
	p.L.Notef("solids-not-measured", p.BatchFile(), "cook.brix", "the soluble solids of %.1f %% are computed, and the standard asks %.0f %% by refractometer", b.Value, v.Solids.Least).
		Hinted("a refractometer reading under [cook] brix settles it").Cited(v.Cite)
}
