package draft

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kitchen/cook"
)

func Without(list, without []string) (out []string) {
	for _, a := range list {
		if !slices.Contains(without, a) {
			out = append(out, a)
		}
	}
	return out
}

// PlainStars keeps a maker's own asterisk from turning words bold.
func PlainStars(s string) string { return strings.ReplaceAll(s, "*", "") }

func NotLetter(r rune) bool { return !unicode.IsLetter(r) }

// Upper raises the first letter.
func Upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || r == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// Listed joins words with commas.
func Listed(list []string) string { return strings.Join(list, ", ") }

// Has reports whether a list holds a word, whatever the case.
func Has(list []string, word string) bool {
	return slices.ContainsFunc(list, func(w string) bool { return strings.EqualFold(w, word) })
}

// Joined joins words: "a", "a and b", "a, b and c".
func Joined(list []string, and string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + and + list[len(list)-1]
}

// Dotted ends a sentence with a full stop unless it ends in one.
func Dotted(s string) string {
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}

// LinePath is where an ingredient stands in the batch file.
func LinePath(ln cook.Line) string {
	if len(ln.Paths) == 0 {
		return "ingredient"
	}
	return ln.Paths[0]
}
