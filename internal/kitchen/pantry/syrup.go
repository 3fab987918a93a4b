package pantry

import "math"

// Density gives the density of a sucrose solution in kg/m³ at brix (g soluble
// solids per 100 g, 0-95) and temperature tC (°C, 0-100). Values outside are
// taken at the nearest end.
//
// ICUMSA polynomial as printed in Bubník, Kadlec, Urban and Bruhns, Sugar
// Technologists Manual, 1995, p. 164.
func Density(brix, tC float64) float64 {
	w, t := clamp(brix, 0, 95)/100, clamp(tC, 0, 100)
	tau := (t - 20) / 100
	rho, tk := WaterDensity(t), 1.0
	for _, row := range icumsa {
		wi := 1.0
		for _, a := range row {
			wi *= w
			rho += a * wi * tk
		}
		tk *= tau
	}
	return rho
}

// icumsa[k][i] is the coefficient of w^(i+1)·τ^k.
var icumsa = [][]float64{
	{385.1761, 135.3705, 40.9299, -3.9643, 13.4853, -17.2890},
	{-46.2720, -7.1720, 1.1597, 5.1126, 17.5254},
	{59.7712, 7.2491, 12.3630, -35.4791},
	{-47.2207, -21.6977, 27.6301},
	{18.3184, 12.3081},
}

// WaterDensity gives the density of water in kg/m³ at tC (°C, 0-100), in
// Kell's form.
func WaterDensity(tC float64) float64 {
	t := clamp(tC, 0, 100)
	return (999.83952 + t*(16.952577+t*(-7.9905127e-3+t*(-46.241757e-6+t*(105.84601e-9-t*281.03006e-12))))) /
		(1 + 16.887236e-3*t)
}

// WaterActivity gives the water activity of a syrup cooked from brix % sucrose,
// of which the given share (0-1) has since inverted. Norrish 1966, ln aw = ln xw − (Σ √K x)²,
// K = 6.47 for sucrose and 2.25 for glucose and fructose (K from memory,
// unverified).
func WaterActivity(brix, inverted float64) float64 {
	b, f := clamp(brix, 0, 95), clamp(inverted, 0, 1)
	sucrose, invert, water := b*(1-f)/342.297, 2*b*f/342.297, (100-b)/18.015
	n := sucrose + invert + water
	s := math.Sqrt(6.47)*sucrose/n + math.Sqrt(2.25)*invert/n
	return water / n * math.Exp(-s*s)
}

// Solids are the parts of a food in g, for foods that are not syrups.
type Solids struct{ Water, Carbohydrate, Fibre, Protein, Fat, Ash float64 }

// MixDensity gives the density in kg/m³ of a food with fat and protein at tC
// (°C): Choi and Okos 1986, in ASHRAE Handbook Refrigeration. Zero when the
// food has no mass.
func MixDensity(s Solids, tC float64) float64 {
	t := clamp(tC, -40, 150)
	mass := s.Water + s.Carbohydrate + s.Fibre + s.Protein + s.Fat + s.Ash
	volume := s.Water/(997.18+3.1439e-3*t-3.7574e-3*t*t) + s.Carbohydrate/(1599.1-0.31046*t) +
		s.Fibre/(1311.5-0.36589*t) + s.Protein/(1329.9-0.5184*t) + s.Fat/(925.59-0.41757*t) + s.Ash/(2423.8-0.28063*t)
	if mass <= 0 {
		return 0
	}
	return mass / volume
}

func clamp(v, lo, hi float64) float64 {
	if !(v > lo) { // also NaN
		return lo
	}
	return math.Min(v, hi)
}
