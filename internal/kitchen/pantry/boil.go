package pantry

import (
	"fmt"
	"math"
	"sort"

	"jarmark/internal/kit/unit"
)

// point is one pair of a table read by straight lines between its rows.
type point struct{ x, y float64 }

// between reads a table at x; outside it the end value holds.
func between(t []point, x float64) float64 {
	if len(t) == 0 {
		return 0
	}
	i := sort.Search(len(t), func(i int) bool { return t[i].x >= x })
	switch {
	case i == 0:
		return t[0].y
	case i == len(t):
		return t[i-1].y
	}
	a, b := t[i-1], t[i]
	return a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x)
}

// loadBoiling takes Brown 1912 where it has a value, the computed Norrish
// value below 50 %.
func (p *Pantry) loadBoiling() error {
	t := readTable(p.from, "boiling-elevation")
	p.boiling = []point{{0, 0}}
	t.each(func(r row) {
		r.need("source")
		x := r.number("sucrose_pct", 0)
		y := r.number("bpe_C_Brown1912", 0)
		if y == 0 && x < 50 {
			y = r.number("bpe_C_Norrish_sucrose", 0)
		}
		if y > 0 {
			p.boiling = append(p.boiling, point{x, y})
		}
	})
	return t.err
}

// BrixAtBoilingPoint gives the Brix of a syrup that boils at tC °C at an
// altitude. False below 40 % or above 80 %, where the table says nothing. A
// thermometer fixes Brix only to about ±3.
func (p *Pantry) BrixAtBoilingPoint(tC float64, altitude unit.Length) (float64, bool) {
	rise := tC - BoilingPoint(altitude)
	n := len(p.boiling)
	if n < 3 || !(rise >= p.boiling[1].y) || rise > p.boiling[n-1].y {
		return 0, false
	}
	back := make([]point, n)
	for i, b := range p.boiling {
		back[i] = point{b.y, b.x}
	}
	return between(back, rise), true
}

// BoilingPoint gives the boiling point of water in °C at an altitude: standard
// atmosphere and Antoine's equation (A 8.07131, B 1730.63, C 233.426, mmHg).
func BoilingPoint(altitude unit.Length) float64 {
	m := clamp(altitude.MM()/1000, -430, 5000)
	mmHg := 760 * math.Pow(1-2.25577e-5*m, 5.25588)
	return 1730.63/(8.07131-math.Log10(mmHg)) - 233.426
}

// tempRow is the refractometer correction at one temperature.
type tempRow struct {
	t    float64
	corr []point // Brix -> correction
}

func (p *Pantry) loadTemps() error {
	t := readTable(p.from, "refractometer-temp")
	t.each(func(r row) {
		r.need("source")
		one := tempRow{t: r.number("temp_C", 0)}
		for _, b := range []int{0, 10, 20, 30, 40, 50, 60, 65, 70} {
			col := fmt.Sprintf("corr_at_%d_brix", b)
			if r.text(col) != "" {
				one.corr = append(one.corr, point{float64(b), r.number(col, 0)})
			}
		}
		p.temp = append(p.temp, one)
	})
	return t.err
}

// BrixTempCorrection gives what to add to a refractometer reading of brix %
// taken at tC °C to have it at 20 °C. False outside 10-30 °C: the tables (OIV,
// ICUMSA) end there, and hot jam must not be read.
func (p *Pantry) BrixTempCorrection(brix, tC float64) (float64, bool) {
	n := len(p.temp)
	if n == 0 || !(tC >= p.temp[0].t) || tC > p.temp[n-1].t {
		return 0, false
	}
	at := make([]point, n)
	for i, r := range p.temp {
		at[i] = point{r.t, between(r.corr, brix)}
	}
	return between(at, tC), true
}
