package cook

import (
	"cmp"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// fillTempC is the temperature of filling, 190 °F: common practice, no source.
const fillTempC = 88

// HotDensity gives g/ml of the finished food at the temperature of filling: the
// sucrose formula for syrups, Choi and Okos where fat and protein matter (curd).
func (r *Result) HotDensity() float64 {
	var s pantry.Solids
	for _, ln := range r.Lines {
		if !ln.Removed {
			s = mixed(s, ln)
		}
	}
	total := r.Yield.Mass.Grams()
	if s.Protein+s.Fat > 0.02*total {
		s.Water = positive(total - (s.Carbohydrate + s.Fibre + s.Protein + s.Fat + s.Ash))
		return pantry.MixDensity(s, fillTempC) / 1000
	}
	return pantry.Density(r.Brix.Value, fillTempC) / 1000
}

// FillMass gives what a jar holds of this food, hot filled with the headspace
// of the batch.
func (r *Result) FillMass(j pantry.Jar) unit.Mass {
	return grams(j.FillVolume(r.headspace).ML() * r.HotDensity())
}

// mixed adds the solids of a line, in grams; what is unknown counts as
// carbohydrate.
func mixed(s pantry.Solids, ln Line) pantry.Solids {
	g := ln.Mass.Grams() / 100
	fibre, protein, fat := positive(ln.Row.FibreG)*g, positive(ln.Row.ProteinG)*g, positive(ln.Row.FatG)*g
	solids := (ln.Soluble + ln.Insoluble).Grams()
	carb := positive(min(positive(ln.Row.CarbG)*g-fibre, solids))
	if ln.Row.CarbG <= 0 && fat == 0 && protein == 0 {
		carb = solids
	}
	s.Carbohydrate += carb
	s.Fibre += fibre
	s.Protein += protein
	s.Fat += fat
	s.Ash += positive(solids - carb - fibre - protein - fat)
	return s
}

// usualJar is proposed when the maker names none.
func usualJar(units string) string {
	if units == "metric" {
		return "lug212"
	}
	return "us8"
}

// headspace: the fill's own, the batch's, or that of the tested process.
func (c *calc) headspace(f batch.Fill) unit.Length {
	row, _ := c.p.ProcessTime(c.processKey())
	return cmp.Or(f.Headspace, c.b.Process.Headspace, row.Headspace)
}
