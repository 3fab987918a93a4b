package unit

import (
	"fmt"
	"math"
	"math/big"
	"strconv"
	"strings"
)

// The systems amounts are shown in.
const (
	US     = "us"
	Metric = "metric"
)

// decimal prints n/per rounded to the given decimals (halves away from zero),
// without trailing zeros.
func decimal(n, per int64, places int) string {
	s := new(big.Rat).SetFrac64(n, per).FloatString(places)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		s = "0"
	}
	return s
}

// fractions prints n/den in lowest terms as a mixed number: "2 3/8", "1/2".
func fractions(n, den int64) string {
	whole, part := n/den, n%den
	if part == 0 {
		return strconv.FormatInt(whole, 10)
	}
	f := big.NewRat(part, den).String()
	if whole == 0 {
		return f
	}
	return fmt.Sprintf("%d %s", whole, f)
}

// nearest divides n by step, rounding halves up; both positive.
func nearest(n, step int64) int64 { return (n + step/2) / step }

// Format shows a mass for people: "10.2 oz", "2 lb 3.5 oz" (us), "289 g",
// "1.85 kg" (metric).
func (m Mass) Format(system string) string {
	if m < 0 {
		return "-" + (-max(m, -math.MaxInt64)).Format(system)
	}
	if system == US {
		return m.pounds()
	}
	switch {
	case m >= Kilogram:
		return decimal(int64(m), int64(Kilogram), 3) + " kg"
	case m >= 100*Gram:
		if nearest(int64(m), int64(Gram)) >= 1000 {
			return "1 kg"
		}
		return decimal(int64(m), int64(Gram), 0) + " g"
	case m >= Gram:
		return decimal(int64(m), int64(Gram), 1) + " g"
	}
	return decimal(int64(m), int64(Gram), 3) + " g"
}

// OnScale shows a mass as a kitchen scale does: to a gram, above 1 kg to 5 g.
func (m Mass) OnScale(system string) string {
	if system == US {
		return m.Format(US)
	}
	g := m.Grams()
	switch {
	case g < 10:
		return strconv.FormatFloat(g, 'f', 1, 64) + " g"
	case g < 1000:
		return strconv.FormatFloat(g, 'f', 0, 64) + " g"
	case g < 10_000:
		return strconv.FormatFloat(math.Round(g/5)*5, 'f', 0, 64) + " g"
	}
	return strconv.FormatFloat(g/1000, 'f', 2, 64) + " kg"
}

// ToCarry shows a mass as who carries it cares: 0.1 kg, or whole pounds and
// ounces.
func (m Mass) ToCarry(system string) string {
	if system == US {
		oz := nearest(int64(m), int64(Ounce))
		switch {
		case oz < 16:
			return fmt.Sprintf("%d oz", oz)
		case oz%16 == 0 || oz >= 20*16:
			return fmt.Sprintf("%d lb", (oz+8)/16)
		}
		return fmt.Sprintf("%d lb %d oz", oz/16, oz%16)
	}
	if m < Kilogram {
		return fmt.Sprintf("%d g", nearest(int64(m), int64(10*Gram))*10)
	}
	tenths := nearest(int64(m), int64(100*Gram))
	return fmt.Sprintf("%d.%d kg", tenths/10, tenths%10)
}

// InGrams prints a mass in grams with so many decimals, rounded down, never up:
// "226.7 g".
func (m Mass) InGrams(decimals int) string {
	step := Gram
	for range decimals {
		step /= 10
	}
	return strconv.FormatFloat((m/step*step).Grams(), 'f', decimals, 64) + " g"
}

func (m Mass) pounds() string {
	tenths := nearest(int64(m), int64(Ounce)/10)
	if m < Ounce {
		return decimal(int64(m), int64(Ounce), 2) + " oz"
	}
	lb, rest := tenths/160, tenths%160
	switch {
	case lb == 0:
		return decimal(rest, 10, 1) + " oz"
	case rest == 0:
		return fmt.Sprintf("%d lb", lb)
	}
	return fmt.Sprintf("%d lb %s oz", lb, decimal(rest, 10, 1))
}

// Format shows a volume for people: kitchen measures (us), "250 ml" or
// "1.5 l" (metric).
func (v Volume) Format(system string) string {
	if v < 0 {
		return "-" + (-max(v, -math.MaxInt64)).Format(system)
	}
	if system == US {
		return v.Kitchen()
	}
	switch {
	case v >= Litre:
		return decimal(int64(v), int64(Litre), 2) + " l"
	case v >= 10*Millilitre:
		if nearest(int64(v), int64(Millilitre)) >= 1000 {
			return "1 l"
		}
		return decimal(int64(v), int64(Millilitre), 0) + " ml"
	}
	return decimal(int64(v), int64(Millilitre), 2) + " ml"
}

// FluidOunces shows a volume as a jar size: "8 fl oz", "4.2 fl oz".
func (v Volume) FluidOunces() string { return decimal(int64(v), int64(FluidOunce), 1) + " fl oz" }

// Kitchen shows a volume as a kitchen measures it, rounded: below 1 tbsp to
// 1/8 tsp, below 1/4 cup to 1/2 tbsp, below 4 cups to 1/4 cup plus 1/2 tbsp,
// else to 1/4 cup. ParseQuantity reads it back.
func (v Volume) Kitchen() string {
	const eighth, half, quarter = int64(Teaspoon) / 8, int64(Tablespoon) / 2, int64(Cup) / 4
	n := nearest(int64(v), eighth)
	if n < 24 {
		return fractions(max(n, 1), 8) + " tsp"
	}
	halves := nearest(int64(v), half)
	if halves < 8 {
		return fractions(halves, 2) + " tbsp"
	}
	quarters, left := halves/8, halves%8
	if v >= 4*Cup {
		quarters, left = nearest(int64(v), quarter), 0
	}
	cups := fractions(quarters, 4) + " cup"
	if quarters > 4 {
		cups += "s"
	}
	if left == 0 {
		return cups
	}
	return cups + " + " + fractions(left, 2) + " tbsp"
}

// Exact shows a mass to the milligram, from a gram on to ten, and a volume to the hundredth of a
// millilitre (metric), or to the hundredth of an ounce or a teaspoon (us).
func (m Mass) Exact(system string) string {
	if system == US {
		return decimal(int64(m), int64(Ounce), 2) + " oz"
	}
	if m >= Gram { // three decimals might part thousands
		return decimal(int64(m), int64(Gram), 2) + " g"
	}
	return decimal(int64(m), int64(Gram), 3) + " g"
}

// Exact shows a volume closely; see Mass.Exact.
func (v Volume) Exact(system string) string {
	if system != US {
		return decimal(int64(v), int64(Millilitre), 2) + " ml"
	}
	switch {
	case v >= Cup/4:
		return decimal(int64(v), int64(Cup), 3) + " cups"
	case v >= Tablespoon:
		return decimal(int64(v), int64(Tablespoon), 2) + " tbsp"
	}
	return decimal(int64(v), int64(Teaspoon), 2) + " tsp"
}

// Format shows a length for people: "2 3/8 in" to 1/32 in, feet from 10 ft up
// (us); "6.4 mm", "1.5 m", whole metres from 10 m up (metric).
func (l Length) Format(system string) string {
	if l < 0 {
		return "-" + (-max(l, -math.MaxInt64)).Format(system)
	}
	if system == US {
		if l >= 10*Foot {
			return decimal(int64(l), int64(Foot), 0) + " ft"
		}
		return fractions(nearest(int64(l), int64(Inch)/32), 32) + " in"
	}
	switch {
	case l >= 10*Metre:
		return decimal(int64(l), int64(Metre), 0) + " m"
	case l >= Metre:
		return decimal(int64(l), int64(Metre), 2) + " m"
	}
	return decimal(int64(l), int64(Millimetre), 1) + " mm"
}
