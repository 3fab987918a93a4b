package allergen

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// most is the longest name read, in bytes; findings tell of longer ones.
const most = 4000

var ligatures = strings.NewReplacer("œ", "oe", "æ", "ae", "ß", "ss", "ø", "o", "ł", "l", "ı", "i")

var umlauts = strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue") // as typed without them

// Fold gives lower case without accents.
func Fold(s string) string {
	s = strings.ToLower(s)
	if strings.IndexFunc(s, func(r rune) bool { return r >= 0x80 }) < 0 {
		return s
	}
	return ligatures.Replace(strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) || unicode.Is(unicode.Cf, r) {
			return -1
		}
		return r
	}, norm.NFKD.String(s)))
}

// Tokens gives the folded words of a name; hyphens, apostrophes and signs part
// them, and an E number stays whole ("E 322").
func Tokens(s string) []string {
	if len(s) > most {
		s = s[:most]
	}
	ts := strings.FieldsFunc(Fold(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for i := 0; i+1 < len(ts); i++ {
		if ts[i] == "e" && ts[i+1] != "" && number(ts[i+1][:1]) {
			ts = slices.Replace(ts, i, i+2, "e"+ts[i+1])
		}
	}
	return ts
}

// plain reports a word without umlauts or accents: it is typed one way.
func plain(word string) bool {
	return strings.IndexFunc(word, func(r rune) bool { return r >= utf8.RuneSelf }) < 0
}

// spellings gives a word of the table as it may be typed: without its umlauts,
// and with "ae", "oe", "ue" for them.
func spellings(word string) []string {
	ts := strings.Join(Tokens(word), " ")
	if plain(word) {
		return []string{ts}
	}
	typed := umlauts.Replace(strings.ToLower(norm.NFC.String(word)))
	if other := strings.Join(Tokens(typed), " "); other != ts {
		return []string{ts, other}
	}
	return []string{ts}
}

// singulars gives a word and what it may be the plural of, in English, French
// and German; what is no word of the table does no harm.
func singulars(w string) []string {
	out := []string{w}
	cut := func(end, with string, least int) {
		if base, ok := strings.CutSuffix(w, end); ok && len(base) >= least {
			out = append(out, base+with)
		}
	}
	cut("ies", "y", 3)
	cut("ves", "f", 3)
	for _, end := range []string{"ses", "xes", "zes", "ches", "shes", "oes"} {
		cut(end, strings.TrimSuffix(end, "es"), 2)
	}
	if !strings.HasSuffix(w, "ss") {
		cut("s", "", 3)
	}
	cut("x", "", 4)
	cut("n", "", 5)
	cut("en", "", 5)
	cut("e", "", 5)
	return out
}
