package rule

import (
	"fmt"
	"math/bits"

	"jarmark/internal/kitchen/cook"
)

// mixture tests the number and shares of fruits.
func (p *pass) mixture(v verdict) (why []shortfall) {
	t, n := p.set.Standard, len(v.Fruits)
	var sum int64
	certain := true
	for _, f := range v.Fruits {
		sum += f.Mass
		certain = certain && !f.Line.Estimated
	}
	if n > t.MostFruits {
		why = append(why, shortfall{"name", fmt.Sprintf("%s is made of at most %d fruits, this batch has %d", v.Standard, t.MostFruits, n), true})
	}
	for _, f := range v.Fruits {
		if len(why) >= 5 { // enough to act on
			break
		}
		apple := f.Line.Row.USGroup == "combination only" && v.Standard == jamStandard
		switch {
		case apple && n == 1:
			why = append(why, shortfall{linePath(f.Line), "apple jam has no standard: apple counts only beside another fruit", true})
		case n == 1:
		case apple && f.Mass*t.AppleOneIn > sum:
			why = append(why, shortfall{linePath(f.Line), fmt.Sprintf("apple may be at most 1/%d of the fruit, here it is %s", t.AppleOneIn, percent(f.Mass, sum)), certain})
		case f.Mass*p.oneIn(f) < sum:
			why = append(why, shortfall{linePath(f.Line), fmt.Sprintf("each fruit of a mixture must be at least 1/%d of the fruit, and %s is %s", p.oneIn(f), f.Line.Name, percent(f.Mass, sum)), certain})
		}
	}
	return why
}

func (p *pass) oneIn(f fruitShare) int64 {
	if f.Line.Row.Key == "pineapple" && standardFor(p.b) == jamStandard {
		return p.set.Standard.PineOneIn
	}
	return p.set.Standard.EachOneIn
}

func percent(part, whole int64) string { return tenths((part*1000+whole/2)/max(whole, 1)) + " %" }

// ratio tests parts of fruit to parts of sweetener solids. It is a minimum:
// more fruit is fine.
func (p *pass) ratio(v verdict) []shortfall {
	var fruit int64
	fruitCertain := true
	r := p.ratioFor(v)
	for _, f := range v.Fruits {
		fruit += f.Mass
		fruitCertain = fruitCertain && !f.Line.Estimated
	}
	sweet, certain := sweetener(p.r)
	if !less(fruit, r[1], sweet, r[0]) {
		return nil
	}
	if v.Standard == jellyStandard {
		fruitCertain = false // the notes weigh fruit, the standard its strained juice
	}
	return []shortfall{{"name", fmt.Sprintf("%s needs %d parts of fruit to %d parts of sweetener; here %s of fruit meet %s, and %s are needed",
		v.Standard, r[0], r[1], kilos(fruit), kilos(sweet), kilos(sweet/r[1]*r[0]+sweet%r[1]*r[0]/r[1])), certain && fruitCertain}}
}

// less reports a×b < c×d for non-negative numbers, without overflow.
func less(a, b, c, d int64) bool {
	hi, lo := bits.Mul64(uint64(max(a, 0)), uint64(max(b, 0)))
	hi2, lo2 := bits.Mul64(uint64(max(c, 0)), uint64(max(d, 0)))
	return hi < hi2 || hi == hi2 && lo < lo2
}

// ratioFor picks the ratio: 47:55 when every fruit of a jam is of Group I.
func (p *pass) ratioFor(v verdict) []int64 {
	t := p.set.Standard
	switch v.Standard {
	case jellyStandard:
		return t.Jelly
	case butterStandard:
		return t.Butter
	}
	for _, f := range v.Fruits {
		if f.Line.Row.USGroup != "I" {
			return t.GroupII
		}
	}
	return t.GroupI
}

func (p *pass) solidsNeeded(v verdict) float64 {
	if v.Standard == butterStandard {
		return float64(p.set.Standard.SolidsButter)
	}
	return float64(p.set.Standard.Solids)
}

// solids tests the finished soluble solids. A computed reading never condemns
// the batch: it asks for a measurement.
func (p *pass) solids(v verdict) []shortfall {
	need, b := p.solidsNeeded(v), p.r.Brix
	if b.Value >= need || !(b.Value > 0) {
		return nil
	}
	text := fmt.Sprintf("%s needs %.0f %% of soluble solids, this batch has %.1f %% (%s)", v.Standard, need, b.Value, b.How)
	sure := b.How == cook.Measured || b.How == cook.Given
	return []shortfall{{"cook.brix", text, sure}}
}

// solidsNote asks for a measurement where a computed reading is close.
func (p *pass) solidsNote(v verdict) {
	need, b := p.solidsNeeded(v), p.r.Brix
	if b.How != cook.Estimated || b.Value >= need+p.set.Standard.BrixError {
		return
	}
	p.l.Notef("solids-not-measured", p.batchFile(), "cook.brix", "the soluble solids of %.1f %% are computed, and the standard asks %.0f %% by refractometer", b.Value, need).
		Hinted("a refractometer reading under [cook] brix settles it").Cited(v.Cite)
}
