package table

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// writer lays text out in columns: amount, what, details.
type writer struct{ b strings.Builder }

// firstColumn is where the second column of a row begins.
const firstColumn = 22

// leastWords is how much of a row's words is never cut off.
const leastWords = 24

func (w *writer) line(format string, args ...any) {
	w.b.WriteString(strings.TrimRight(cut(clean(fmt.Sprintf(format, args...)), columnsWide), " ") + "\n")
}

// head is a heading with its totals at the right edge.
func (w *writer) head(title, right string) {
	w.b.WriteString("\n")
	room := columnsWide - width(right) - 2
	t := cut(clean(title), room)
	w.line("%s%s%s", t, strings.Repeat(" ", max(2, columnsWide-width(t)-width(right))), right)
}

// row is three columns; a long first column pushes on, the second gives way to
// the third, and what is cut ends in "…". Where little would be left of the
// second, the third stands under it.
func (w *writer) row(a, b, c string) {
	a, b, c = clean(a), clean(b), clean(c)
	first := "  " + cut(a, 34)
	first += strings.Repeat(" ", max(2, firstColumn+2-width(first)))
	room := columnsWide - width(first) - width(c)
	if c != "" {
		room -= 2
	}
	if c != "" && room < min(width(b), leastWords) {
		w.line("%s%s", first, cut(b, columnsWide-width(first)))
		w.wrap(strings.Repeat(" ", width(first)), c)
		return
	}
	b = cut(b, max(room, 8))
	pad := 2
	if c != "" {
		pad = max(2, columnsWide-width(first)-width(b)-width(c))
	}
	w.line("%s%s%s%s", first, b, strings.Repeat(" ", pad), c)
}

// wrap breaks text at blanks, each line indented.
func (w *writer) wrap(indent, text string) {
	line := indent
	for _, word := range strings.Fields(clean(text)) {
		if line != indent && width(line)+1+width(word) > columnsWide {
			w.line("%s", line)
			line = indent
		}
		if line != indent {
			line += " "
		}
		line += word
	}
	w.line("%s", line)
}

func width(s string) int { return utf8.RuneCountInString(s) }

func cut(s string, n int) string {
	if width(s) <= n || n < 1 {
		return s
	}
	return strings.TrimRight(string([]rune(s)[:n-1]), " ") + "…"
}

// clean keeps control and direction marks of a maker's text out of a terminal
// and off the paper; a line break becomes a blank.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case unicode.IsControl(r) || r >= '\u202A' && r <= '\u202E' || r >= '\u2066' && r <= '\u2069' || r == utf8.RuneError:
			return -1
		}
		return r
	}, s)
}
