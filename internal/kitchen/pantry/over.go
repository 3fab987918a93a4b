package pantry

import "jarmark/internal/kit/unit"

// over gives own with its unknown values taken from base: numbers below zero
// (zero for weights and pH), empty words and lists.
func over(own, base Ingredient) Ingredient {
	g := own
	words := func(v *string, b string) {
		if *v == "" {
			*v = b
		}
	}
	above := func(v *float64, b, least float64) {
		if *v < least {
			*v = b
		}
	}
	for _, f := range []struct {
		v *string
		b string
	}{{&g.Key, base.Key}, {&g.Class, base.Class}, {&g.USAllergen, base.USAllergen}, {&g.EUAllergen, base.EUAllergen}, {&g.USGroup, base.USGroup},
		{&g.FruitClassEU, base.FruitClassEU}, {&g.Compound, base.Compound}, {&g.Note, base.Note}, {&g.PieceForm, base.PieceForm}} {
		words(f.v, f.b)
	}
	const some = 1e-12 // above zero
	for _, f := range []struct{ v, b *float64 }{{&g.WaterG, &base.WaterG}, {&g.SolubleG, &base.SolubleG}, {&g.OtherSolidsG, &base.OtherSolidsG}, {&g.SugarsG, &base.SugarsG}} {
		above(f.v, *f.b, 0)
	}
	for _, f := range []struct{ v, b *float64 }{{&g.TbspG, &base.TbspG}, {&g.TspG, &base.TspG}, {&g.PieceG, &base.PieceG}, {&g.CFR150Factor, &base.CFR150Factor},
		{&g.CarbG, &base.CarbG}, {&g.FibreG, &base.FibreG}, {&g.ProteinG, &base.ProteinG}, {&g.FatG, &base.FatG}, {&g.RefusePct, &base.RefusePct}} {
		above(f.v, *f.b, some)
	}
	if g.CupG <= 0 {
		g.CupG, g.CupForm, g.Cup2G, g.Cup2Form = base.CupG, base.CupForm, base.Cup2G, base.Cup2Form
	}
	if g.PHHigh <= 0 {
		g.PHLow, g.PHHigh, g.PHSource = base.PHLow, base.PHHigh, base.PHSource
	}
	if g.Allergens == nil {
		g.Allergens = base.Allergens
	}
	if len(g.Contains) == 0 {
		g.Contains = base.Contains
	}
	g.Aliases = append(append([]string{base.Name}, base.Aliases...), own.Aliases...)
	g.AsKin = base.AsKin
	g.SulphiteCheck = g.SulphiteCheck || base.SulphiteCheck
	// Solids that were measured leave no room for more than 100 g in all.
	if sum := g.SolubleG + g.OtherSolidsG; sum > 100 {
		g.OtherSolidsG = max(0, 100-g.SolubleG)
	}
	return g
}

// overJar gives a maker's own jar with what is not given taken from the built-in one
// of its key.
func overJar(own, base Jar) Jar {
	j := own
	if j.Brimful <= 0 && j.Nominal <= 0 {
		j.NamedBy, j.Brimful, j.BrimfulMost = base.NamedBy, base.Brimful, base.BrimfulMost
	}
	if j.Nominal <= 0 && (j.Brimful <= 0 || base.Nominal <= j.Brimful) {
		j.Nominal = base.Nominal
	}
	for _, f := range []struct {
		v *unit.Length
		b unit.Length
	}{{&j.Mouth, base.Mouth}, {&j.Height, base.Height}, {&j.Diameter, base.Diameter}, {&j.Circumference, base.Circumference},
		{&j.Panel, base.Panel}, {&j.Face, base.Face}, {&j.Foot, base.Foot}} {
		if *f.v <= 0 {
			*f.v = f.b
		}
	}
	if j.Lid == "" {
		j.Lid = base.Lid
	}
	if j.TareMass <= 0 {
		j.TareMass = base.TareMass
	}
	if j.Description == "" || j.Description == own.Key {
		j.Description = base.Description
	}
	j.Source += "; what is not measured: " + base.Source
	return j
}
