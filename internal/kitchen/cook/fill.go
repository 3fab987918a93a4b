package cook

import (
	"math"

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
	if total > 0 && s.Protein+s.Fat > 0.02*total {
		solids := s.Carbohydrate + s.Fibre + s.Protein + s.Fat + s.Ash
		s.Water = math.Max(0, total-solids)
		if d := pantry.MixDensity(s, fillTempC); d > 0 {
			return d / 1000
		}
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
	fibre, protein, fat := max(ln.Row.FibreG, 0)*g, max(ln.Row.ProteinG, 0)*g, max(ln.Row.FatG, 0)*g
	solids := (ln.Soluble + ln.Insoluble).Grams()
	carb := math.Max(0, math.Min(max(ln.Row.CarbG, 0)*g-fibre, solids))
	if ln.Row.CarbG <= 0 && fat == 0 && protein == 0 {
		carb = solids
	}
	s.Carbohydrate += carb
	s.Fibre += fibre
	s.Protein += protein
	s.Fat += fat
	s.Ash += math.Max(0, solids-carb-fibre-protein-fat)
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
	if f.Headspace > 0 {
		return f.Headspace
	}
	if c.b.Process.Headspace > 0 {
		return c.b.Process.Headspace
	}
	if row, ok := c.p.ProcessTime(c.processKey()); ok {
		return row.Headspace
	}
	return unit.Inch / 4
}
