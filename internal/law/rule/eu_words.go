package rule

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kit/unit"
)

// euNBSP keeps a number and its unit on one line.
const euNBSP = "\u00a0"

// euWord reports whether a word or phrase stands in a text at word borders,
// whatever the case.
func euWord(text, word string) bool {
	_, _, ok := euFind(text, word, false)
	return ok
}

// euFind gives the bytes of the word that begins with stem, at the start of a
// word; grow extends the match to the word's end ("almond" finds "almonds").
func euFind(text, stem string, grow bool) (from, to int, ok bool) {
	if stem == "" {
		return 0, 0, false
	}
	low, want := strings.ToLower(text), strings.ToLower(stem)
	if len(low) != len(text) { // lower-casing moved bytes: match as written
		low = text
	}
	for at := 0; ; {
		i := strings.Index(low[at:], want)
		if i < 0 {
			return 0, 0, false
		}
		from, to = at+i, at+i+len(want)
		end := euWordEnd(low, to)
		if euWordStart(low, from) && (grow || end == to) {
			return from, end, true
		}
		at = to
	}
}

func euWordStart(s string, i int) bool {
	r, n := utf8.DecodeLastRuneInString(s[:i])
	return n == 0 || !unicode.IsLetter(r)
}

func euWordEnd(s string, i int) int {
	for i < len(s) {
		r, n := utf8.DecodeRuneInString(s[i:])
		if !unicode.IsLetter(r) {
			break
		}
		i += n
	}
	return i
}

// euMass prints a nominal quantity rounded down: whole grams below 1 kg, else
// kilograms with up to three decimals and the language's decimal sign.
func euMass(m unit.Mass, decimal string) string {
	if m < unit.Kilogram {
		return strconv.FormatInt(int64(m/unit.Gram), 10) + euNBSP + "g"
	}
	kg := strconv.FormatFloat(float64(m/unit.Gram)/1000, 'f', -1, 64)
	return strings.Replace(kg, ".", decimal, 1) + euNBSP + "kg"
}

// euPercent prints a share: whole percent from 5, else one decimal, half up
// (Commission guidance on QUID, from memory, unverified).
func euPercent(p float64, decimal string) string {
	digits := 0
	if p < 5 {
		digits = 1
	}
	s := strconv.FormatFloat(p+1e-9, 'f', digits, 64)
	return strings.Replace(strings.TrimSuffix(s, ".0"), ".", decimal, 1) + euNBSP + "%"
}
