package eu

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// nbsp keeps a number and its unit on one line.
const nbsp = "\u00a0"

// mass prints a nominal quantity rounded down: whole grams below 1 kg, else
// kilograms with up to three decimals and the language's decimal sign.
func mass(m unit.Mass, decimal string) string {
	if m < unit.Kilogram {
		return strconv.FormatInt(int64(m/unit.Gram), 10) + nbsp + "g"
	}
	kg := strconv.FormatFloat(float64(m/unit.Gram)/1000, 'f', -1, 64)
	return strings.Replace(kg, ".", decimal, 1) + nbsp + "kg"
}

// volume prints a net volume: millilitres below a litre, litres above.
func volume(v unit.Volume, decimal string) string {
	ml := int64(v / unit.Millilitre)
	if ml < 1000 {
		return strconv.FormatInt(ml, 10) + nbsp + "ml"
	}
	l := strconv.FormatFloat(float64(ml)/1000, 'f', -1, 64)
	return strings.Replace(l, ".", decimal, 1) + nbsp + "l"
}

// percent prints a share: whole percent from 5, else one decimal, half up
// (Commission guidance on QUID, from memory, unverified).
func percent(p float64, decimal string) string {
	digits := 0
	if p < 5 {
		digits = 1
	}
	s := strconv.FormatFloat(p+1e-9, 'f', digits, 64)
	return strings.Replace(strings.TrimSuffix(s, ".0"), ".", decimal, 1) + nbsp + "%"
}
