package draft

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kit/words"
)

// begins reports whether a word of a text begins with another, whatever case
// and accents.
func begins(text, word string) bool {
	_, _, ok := FindWord(words.Fold(text), words.Fold(word), true)
	return ok
}

// HasWord reports whether a word or phrase stands in a text at word borders,
// whatever the case.
func HasWord(text, word string) bool {
	_, _, ok := FindWord(text, word, false)
	return ok
}

// FindWord gives the bytes of the word that begins with stem, at the start of a
// word; grow extends the match to the word's end ("almond" finds "almonds").
func FindWord(text, stem string, grow bool) (from, to int, ok bool) {
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
		end := wordEnd(low, to)
		if wordStart(low, from) && (grow || end == to) {
			return from, end, true
		}
		at = to
	}
}

func wordStart(s string, i int) bool {
	r, n := utf8.DecodeLastRuneInString(s[:i])
	return n == 0 || !unicode.IsLetter(r)
}

func wordEnd(s string, i int) int {
	return len(s) - len(strings.TrimLeftFunc(s[i:], unicode.IsLetter))
}
