package rule

import (
	"slices"
	"sort"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// euShare is one fruit of a batch as the jam rules count it.
type euShare struct {
	Line  cook.Line
	Class string
	Mass  unit.Mass // after deduction of water in an extract
}

// euFruits lists the fruit of a batch, heaviest first. Lemon or lime juice
// added to other fruit is a permitted added ingredient and not counted, nor is
// citrus peel or a lemon in ten parts of fruit (2001/113/EC Annex II), nor ginger as a spice below 5 % of the
// batch; the counting is our own reading. Water named as a part of an extract
// is deducted (Annex I, jelly).
func (t *euTable) euFruits(r *cook.Result) []euShare {
	var out []euShare
	for _, ln := range r.Lines {
		class := euClass(ln)
		spice := ln.Row.Kind == "spice" && float64(ln.Mass)*20 < float64(r.Input)
		if class == "" || spice || euSkipped(r.Batch, ln) {
			continue
		}
		out = append(out, euShare{ln, class, euLessWater(ln)})
	}
	out = t.lessPeel(out)
	sort.SliceStable(out, func(i, j int) bool { return out[i].Mass > out[j].Mass })
	return out
}

// lessPeel leaves citrus peel, and a lemon or two for their juice, out where
// there is other fruit than citrus.
func (t *euTable) lessPeel(all []euShare) (out []euShare) {
	other, sum := false, euSum(all)
	for _, f := range all {
		other = other || !slices.Contains(t.Citrus, f.Line.Key)
	}
	for _, f := range all {
		added := slices.Contains(t.Peel, f.Line.Key) || slices.Contains(t.Souring, f.Line.Key) && f.Mass*10 < sum
		if !other || !added {
			out = append(out, f)
		}
	}
	return out
}

func euClass(ln cook.Line) string {
	if ln.Row.FruitClassEU != "" && ln.Row.FruitClassEU != "none" {
		return ln.Row.FruitClassEU
	}
	if ln.IsFruit && ln.Row.Kind != "acid" {
		return "general"
	}
	return ""
}

// euLessWater takes the water out of an extract whose parts name it.
func euLessWater(ln cook.Line) unit.Mass {
	m := ln.Mass
	for _, p := range ln.Contains {
		if euWord(p.Name, "water") && p.Percent > 0 && p.Percent <= 100 {
			m -= unit.Mass(float64(ln.Mass) * p.Percent / 100)
		}
	}
	return max(m, 0)
}

// euSkipped reports whether every entry of a line was taken out before the
// finish (a spice bag).
func euSkipped(b *batch.Batch, ln cook.Line) bool {
	if b == nil || len(ln.Paths) == 0 {
		return false
	}
	for _, p := range ln.Paths {
		found := false
		for _, in := range b.Ingredients {
			found = found || in.Path == p && in.Skip
		}
		if !found {
			return false
		}
	}
	return true
}

// euPerKilo is the fruit in grams per 1000 g of finished product, rounded
// down; 0 without a yield.
func euPerKilo(fruit []euShare, yield unit.Mass) int {
	return int(euRatio(euSum(fruit), yield, 1000))
}

func euSum(fruit []euShare) (sum unit.Mass) {
	for _, f := range fruit {
		sum += f.Mass
	}
	return sum
}

// euRatio is part x scale / whole rounded down, safe for any masses. The tiny
// addition keeps an exact quotient (2000/3200) from falling below itself.
func euRatio(part, whole unit.Mass, scale float64) float64 {
	if whole <= 0 || part <= 0 {
		return 0
	}
	return float64(int64(min(float64(part)/float64(whole)*scale+1e-9, 1e15)))
}

// euMinimum is the share-weighted mean of the class minima in g per 1000 g,
// rounded up: [0] jam, [1] extra jam (2001/113/EC Annex I; the weighting after
// the Italian transposition, Art 2(3)). Classes from memory are reported.
func (j euJam) euMinimum(fruit []euShare) (least [2]int, memory bool) {
	total := float64(euSum(fruit))
	if total <= 0 {
		row := j.class("general")
		return [2]int{row.Jam, row.Extra}, row.Confidence == verifiedNot
	}
	var need [2]float64
	for _, f := range fruit {
		row, share := j.class(f.Class), float64(f.Mass)/total
		memory = memory || row.Confidence == verifiedNot
		need[0] += share * float64(row.Jam)
		need[1] += share * float64(row.Extra)
	}
	for i := range need {
		least[i] = int(need[i] + 1 - 1e-6)
	}
	return least, memory
}

// class gives the row of a fruit class, the general one for any other.
func (j euJam) class(name string) (general euLeast) {
	for _, row := range j.Minima {
		if row.Class == name {
			return row
		}
		if row.Class == "general" {
			general = row
		}
	}
	return general
}
