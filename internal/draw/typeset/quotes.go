package typeset

import (
	"strings"
	"unicode"
)

// QuoteMarks are all the marks Quoted may set.
const QuoteMarks = "“”„«»’‘‚"

// quoteMarks are the double and single marks of a language, opening and closing:
// the usual ones of its printers (common practice, no source).
var quoteMarks = map[string][4]string{
	"de": {"„", "“", "‚", "‘"},
	"fr": {"«\u00a0", "\u00a0»", "‘", "’"},
}

// Quoted puts the quotation marks of a language in the place of the straight
// ones. A mark after a blank or an opening bracket opens; one after a figure
// stands for inches, feet or minutes and stays; a single one inside a word or
// after it is an apostrophe.
func Quoted(s, lang string) string {
	if !strings.ContainsAny(s, `"'`) {
		return s
	}
	base, _, _ := strings.Cut(lang, "-")
	marks, ok := quoteMarks[base]
	if !ok {
		marks = [4]string{"“", "”", "‘", "’"}
	}
	r := []rune(s)
	var b strings.Builder
	open := map[rune]bool{}
	for i, c := range r {
		if c != '"' && c != '\'' {
			b.WriteRune(c)
			continue
		}
		before, after := ' ', ' '
		if i > 0 {
			before = r[i-1]
		}
		if i+1 < len(r) {
			after = r[i+1]
		}
		opens := (unicode.IsSpace(before) || strings.ContainsRune("([{/–—-\"", before)) && !unicode.IsSpace(after)
		single := c == '\''
		k := 0
		if single {
			k = 2
		}
		switch {
		case unicode.IsDigit(before) && !open[c]:
			b.WriteRune(c)
		case opens && (!single || closes(r[i+1:])):
			open[c] = true
			b.WriteString(marks[k])
		case single && !open[c]:
			b.WriteString("’")
		case single && unicode.IsLetter(before) && unicode.IsLetter(after):
			b.WriteString("’")
		default:
			open[c] = false
			b.WriteString(marks[k+1])
		}
	}
	return b.String()
}

// closes reports whether a single mark ends a word in what follows.
func closes(r []rune) bool {
	for i, c := range r {
		if c == '\'' && (i+1 == len(r) || !unicode.IsLetter(r[i+1])) {
			return i > 0
		}
	}
	return false
}
