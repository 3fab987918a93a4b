package diag

import (
	"fmt"
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// The excerpt shows at most before characters ahead of the caret and room in
// all, so that a line of a megabyte stays readable.
const (
	before   = 60
	room     = 100
	tabWidth = 4
)

// excerpt writes the line and a row of carets under the place.
func excerpt(b *strings.Builder, p Pos, line string) {
	runes, from, to, cut := window([]rune(line), p)
	shown, gap, carets := "", 0, 0
	if cut {
		shown, gap = "…", 1
	}
	column := gap
	for i, r := range runes {
		text, cells := cell(r, column)
		shown += text
		column += cells
		switch {
		case i < from:
			gap += cells
		case i < to:
			carets += cells
		}
	}
	number := fmt.Sprintf("%5d", p.Line)
	fmt.Fprintf(b, "%s | %s\n", number, strings.TrimRight(shown, " "))
	fmt.Fprintf(b, "%s | %s%s\n", strings.Repeat(" ", len(number)), strings.Repeat(" ", gap), strings.Repeat("^", max(carets, 1)))
}

// window picks the part of a line around the place, and where in it the place
// begins and ends. cut says the start was left out.
func window(line []rune, p Pos) (part []rune, from, to int, cut bool) {
	from = min(max(p.Column-1, 0), len(line))
	to = max(p.EndColumn-1, from+1)
	start := 0
	if len(line) > room && from > before {
		start = from - before
	}
	end := min(len(line), start+room)
	return line[start:end], from - start, min(to, end) - start, start > 0
}

// cell gives how a character is shown from a screen column on, and how many
// columns it takes: tabs to the next stop, wide characters two, marks none
// (Unicode Standard Annex 11).
func cell(r rune, column int) (text string, cells int) {
	switch {
	case r == '\t':
		n := tabWidth - column%tabWidth
		return strings.Repeat(" ", n), n
	case unicode.IsControl(r) || bidi(r):
		return "\uFFFD", 1
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return string(r), 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return string(r), 2
	}
	return string(r), 1
}
