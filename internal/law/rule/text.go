package rule

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

func notLetter(r rune) bool { return !unicode.IsLetter(r) }

// upper raises the first letter.
func upper(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || r == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// listed joins words with commas.
func listed(list []string) string { return strings.Join(list, ", ") }

// has reports whether a list holds a word, whatever the case.
func has(list []string, word string) bool {
	for _, w := range list {
		if strings.EqualFold(w, word) {
			return true
		}
	}
	return false
}

// joined joins words: "a", "a and b", "a, b and c".
func joined(list []string, and string) string {
	if len(list) < 2 {
		return strings.Join(list, "")
	}
	return strings.Join(list[:len(list)-1], ", ") + and + list[len(list)-1]
}

// dotted ends a sentence with a full stop unless it ends in one.
func dotted(s string) string {
	if strings.HasSuffix(s, ".") || strings.HasSuffix(s, "!") {
		return s
	}
	return s + "."
}

// linePath is where an ingredient stands in the batch file.
func linePath(ln cook.Line) string {
	if len(ln.Paths) == 0 {
		return "ingredient"
	}
	return ln.Paths[0]
}

var months = [...]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// americanDate prints "Jun 14, 2027", month in letters so that it can't be
// misread.
func americanDate(d unit.Date) string {
	if d.Month < 1 || d.Month > 12 {
		return ""
	}
	return fmt.Sprintf("%s %d, %04d", months[d.Month-1], d.Day, d.Year)
}
