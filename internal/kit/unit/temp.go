package unit

import (
	"math/big"
	"strings"
)

// Temperatures a kitchen may write, in °C.
const (
	minTemp = -60
	maxTemp = 400
)

// ParseTemp reads a temperature, "104.5 °C" or "220 F", and gives °C.
func ParseTemp(s string) (float64, error) {
	const hint = "write a temperature with its unit, like 104.5 °C or 220 °F"
	text, err := clean(s)
	if err != nil {
		return 0, fail(hint, "%s is not a temperature", quote(s))
	}
	negative := strings.HasPrefix(text, "-")
	v, rest, err := scanNumber(strings.TrimSpace(strings.TrimPrefix(text, "-")))
	if err != nil {
		return 0, err
	}
	if negative {
		v.Neg(v)
	}
	switch degreeWord(rest) {
	case "c", "celsius", "centigrade":
	case "f", "fahrenheit":
		v.Sub(v, big.NewRat(32, 1)).Mul(v, big.NewRat(5, 9))
	case "":
		return 0, fail(hint, "%s does not say °C or °F", quote(s))
	default:
		return 0, fail(hint, "%s is not a unit of temperature", quote(rest))
	}
	c, _ := v.Float64()
	if c < minTemp || c > maxTemp {
		return 0, fail("check the number and the unit", "%s is no kitchen temperature", quote(s))
	}
	return c, nil
}

var degreeSigns = strings.NewReplacer("℃", "c", "℉", "f", "°", "", "º", "", "˚", "", "degrees", "", "degree", "", "deg", "", ".", "", " ", "")

func degreeWord(s string) string { return degreeSigns.Replace(strings.ToLower(s)) }
