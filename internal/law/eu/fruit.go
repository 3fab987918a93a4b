package eu

import (
	"slices"
	"sort"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// share is one fruit of a batch as the jam rules count it.
type share struct {
	Line  cook.Line
	Class string
	Mass  unit.Mass // after deduction of water in an extract
}

// countedFruits lists the fruit of a batch as its product counts it, heaviest first.
// Which forms count is the row's; ginger as a spice below 5 % of the batch that
// the name does not say is not counted (our own reading). Water named as a part
// of an extract is deducted (2001/113/EC Annex I, jelly).
func (c *pass) countedFruits() []share {
	p := c.product
	out := c.counted(p.Counts)
	if len(out) == 0 {
		out = c.counted(p.Alone)
	}
	out = c.lessAside(out)
	sort.SliceStable(out, func(i, j int) bool { return out[i].Mass > out[j].Mass })
	return out
}

func (c *pass) counted(list []string) (out []share) {
	for _, ln := range c.R.Lines {
		if c.TakenOut(ln) || !c.counts(list, ln) {
			continue
		}
		class := ln.Row.FruitClassEU
		if class == "" || class == "none" {
			class = "general"
		}
		out = append(out, share{ln, class, lessWater(ln)})
	}
	return out
}

// counts reports whether a list of kinds, keys and words takes an ingredient as
// fruit. A key names the fruit itself, not its juice; a kind takes rows with a
// fruit class alone, so that onions are no fruit.
func (c *pass) counts(list []string, ln cook.Line) bool {
	form := c.form(ln)
	classed := ln.IsFruit || ln.Row.FruitClassEU != "" && ln.Row.FruitClassEU != "none"
	spice := form == "spice" && float64(ln.Mass)*20 < float64(c.R.Input) && !c.mentions(ln)
	switch {
	case spice:
		return false
	case slices.Contains(list, form):
		return classed || form == "juice" || form == "fruit"
	}
	return form != "juice" && c.among(list, ln) && !slices.Contains(list, ln.Row.Class)
}

// lessAside leaves out what is an added ingredient beside other fruit: citrus
// peel, and a lemon or two taken for their juice.
func (c *pass) lessAside(all []share) (out []share) {
	other, sum := false, sumOf(all)
	for _, f := range all {
		other = other || !slices.Contains(c.law.Citrus, f.Line.Key)
	}
	for _, f := range all {
		added := c.among(c.product.Aside, f.Line) || c.among(c.product.Souring, f.Line) && f.Mass*10 < sum
		if !other || !added {
			out = append(out, f)
		}
	}
	return out
}

// lessWater takes the water out of an extract whose parts name it.
func lessWater(ln cook.Line) unit.Mass {
	m := ln.Mass
	for _, p := range ln.Contains {
		if draft.HasWord(p.Name, "water") && p.Percent > 0 && p.Percent <= 100 {
			m -= unit.Mass(float64(ln.Mass) * p.Percent / 100)
		}
	}
	return max(m, 0)
}

// perKilo is the fruit in grams per 1000 g of finished product, rounded
// down; 0 without a yield.
func perKilo(fruit []share, yield unit.Mass) int {
	return int(roundedDown(sumOf(fruit), yield, 1000))
}

func sumOf(fruit []share) (sum unit.Mass) {
	for _, f := range fruit {
		sum += f.Mass
	}
	return sum
}

// roundedDown is part x scale / whole rounded down, safe for any masses. The tiny
// addition keeps an exact quotient (2000/3200) from falling below itself.
func roundedDown(part, whole unit.Mass, scale float64) float64 {
	if whole <= 0 || part <= 0 {
		return 0
	}
	return float64(int64(min(float64(part)/float64(whole)*scale+1e-9, 1e15)))
}

// percentOf is a share in percent, 0 without a whole.
func percentOf(part, whole unit.Mass) float64 {
	if whole <= 0 {
		return 0
	}
	return float64(part) / float64(whole) * 100
}

// leastFruit is the share-weighted mean of the class minima of a product in g
// per 1000 g, rounded up (2001/113/EC Annex I.III). Classes from memory are
// reported; 0 = the product has no floor.
func leastFruit(p place.Product, fruit []share, on unit.Date) (least int, memory bool) {
	total := float64(sumOf(fruit))
	if total <= 0 {
		f, _ := p.FloorOn("general", on)
		return f.Grams, f.Confidence == verifiedNot
	}
	need := 0.0
	for _, s := range fruit {
		f, _ := p.FloorOn(s.Class, on)
		memory = memory || f.Confidence == verifiedNot
		need += float64(s.Mass) / total * float64(f.Grams)
	}
	return int(need + 1 - 1e-6), memory
}
