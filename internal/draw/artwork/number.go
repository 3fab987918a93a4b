package artwork

import (
	"math"
	"strconv"
	"strings"
)

const space = " \t\r\n\f"

// number reads a number at the start of s (SVG 2, 9.3.9) and gives what follows.
func number(s string) (v float64, rest string, ok bool) {
	i, digits := 0, 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	for ; i < len(s) && isDigit(s[i]); i++ {
		digits++
	}
	if i < len(s) && s[i] == '.' {
		for i++; i < len(s) && isDigit(s[i]); i++ {
			digits++
		}
	}
	if digits == 0 {
		return 0, s, false
	}
	if j := i; j < len(s) && (s[j] == 'e' || s[j] == 'E') {
		if j++; j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		if j < len(s) && isDigit(s[j]) {
			for i = j; i < len(s) && isDigit(s[i]); i++ {
			}
		}
	}
	v, err := strconv.ParseFloat(s[:i], 64)
	return v, s[i:], err == nil && math.Abs(v) <= largest
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// separated leaves out the blanks and one comma between two numbers.
func separated(s string) string {
	s = strings.TrimLeft(s, space)
	return strings.TrimLeft(strings.TrimPrefix(s, ","), space)
}

// numbers reads a list; ok where there is nothing else in it.
func numbers(s string) (out []float64, ok bool) {
	for s = strings.Trim(s, space); s != ""; {
		v, rest, ok := number(s)
		if !ok {
			return nil, false
		}
		out = append(out, v)
		if s = separated(rest); s == "" && strings.Contains(rest, ",") {
			return nil, false
		}
	}
	return out, true
}

// perUnit is how many units a length of one holds (CSS Values and Units 3, 6.2).
var perUnit = map[string]float64{"": 1, "px": 1, "in": 96, "cm": 96 / 2.54, "mm": 96 / 25.4, "q": 96 / 101.6, "pt": 96. / 72, "pc": 16}

// length reads a length that needs nothing around it to be known.
func length(s string) (v float64, ok bool) {
	v, rest, ok := number(strings.Trim(s, space))
	per, known := perUnit[strings.ToLower(rest)]
	return v * per, ok && known
}
