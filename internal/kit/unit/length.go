package unit

import (
	"maps"
	"math/big"
	"slices"
	"strings"
	"unicode"
)

// lengths lists the words for lengths; the inch is 25.4 mm exactly.
var lengths = map[string]Length{
	"mm": Millimetre, "millimetre": Millimetre, "millimetres": Millimetre, "millimeter": Millimetre, "millimeters": Millimetre,
	"cm": Centimetre, "centimetre": Centimetre, "centimetres": Centimetre, "centimeter": Centimetre, "centimeters": Centimetre,
	"m": Metre, "metre": Metre, "metres": Metre, "meter": Metre, "meters": Metre,
	"in": Inch, "ins": Inch, "inch": Inch, "inches": Inch, `"`: Inch, "″": Inch, "”": Inch,
	"ft": Foot, "foot": Foot, "feet": Foot, "'": Foot, "′": Foot,
	"yd": 3 * Foot, "yard": 3 * Foot, "yards": 3 * Foot,
}

var lengthNames = func() []string {
	return slices.Sorted(maps.Keys(lengths))
}()

const maxLength = 100_000 * Metre

// ParseLength reads a length: "1/4 in", "6.35 mm", "5 ft 2 in", "-0.4 mm". A
// minus sign is allowed, since printer offsets and places below the sea have
// one; the caller checks the range.
func ParseLength(s string) (Length, error) {
	const hint = "write a length with its unit, like 6.35 mm, 1/4 in or 1200 ft"
	rest, err := clean(s)
	if err != nil {
		return 0, fail(hint, "%s is not a length", quote(s))
	}
	negative := strings.HasPrefix(rest, "-")
	rest = strings.TrimSpace(strings.TrimPrefix(rest, "-"))
	sum := new(big.Rat)
	for rest != "" {
		v, after, err := scanNumber(rest)
		if err != nil {
			return 0, err
		}
		end := strings.IndexFunc(after, unicode.IsDigit)
		if end < 0 {
			end = len(after)
		}
		per, err := lengthUnit(strings.TrimSpace(after[:end]), s, hint)
		if err != nil {
			return 0, err
		}
		sum.Add(sum, v.Mul(v, new(big.Rat).SetInt64(int64(per))))
		rest = after[end:]
	}
	n, ok := scaled(sum, 1)
	if !ok || Length(n) > maxLength {
		return 0, fail("check the number and the unit", "%s is too long", quote(s))
	}
	if negative {
		n = -n
	}
	return Length(n), nil
}

func lengthUnit(word, s, hint string) (Length, error) {
	w := unitWord(word)
	if per, ok := lengths[w]; ok {
		return per, nil
	}
	if w == "" {
		return 0, fail(hint, "%s has no unit", quote(s))
	}
	if near, ok := nearUnit(w, lengthNames); ok {
		return 0, fail("did you mean "+near+"?", "%s is not a unit of length", quote(word))
	}
	return 0, fail(hint, "%s is not a unit of length", quote(word))
}
