package diag

import (
	"fmt"
	"io"
	"sort"
	"strings"
	"unicode"
)

// Count gives the number of findings of one severity.
func (l List) Count(s Severity) (n int) {
	for _, d := range l {
		if d.Severity == s {
			n++
		}
	}
	return n
}

// Sorted gives the findings by file, line and column; findings of one place
// keep their order, the graver first.
func (l List) Sorted() List {
	out := append(List(nil), l...)
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		switch {
		case a.File != b.File:
			return a.File < b.File
		case a.Pos.Line != b.Pos.Line:
			return a.Pos.Line < b.Pos.Line
		case a.Pos.Column != b.Pos.Column:
			return a.Pos.Column < b.Pos.Column
		}
		return a.Severity > b.Severity
	})
	return out
}

// Print writes the findings, sorted, each as
//
//	FILE:LINE:COL: error: what is wrong
//	    3 | amount = "4 cupz"
//	      |          ^^^^^^^^
//	hint: what to do
//	see: the clause
//
// text gives the text of a file for the excerpt, "" when there is none; it may
// be nil.
func Print(w io.Writer, l List, text func(file string) string) error {
	var b strings.Builder
	lines := map[string][]string{}
	for _, d := range l.Sorted() {
		if _, read := lines[d.File]; !read && text != nil {
			lines[d.File] = split(text(d.File))
		}
		d.print(&b, lines[d.File])
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// split gives the lines of a text; none of no text.
func split(text string) []string {
	if text = strings.TrimPrefix(text, "\uFEFF"); text == "" {
		return nil
	}
	return strings.Split(text, "\n")
}

func (d Diagnostic) print(b *strings.Builder, lines []string) {
	b.WriteString(d.place())
	fmt.Fprintf(b, "%s: %s\n", d.Severity, plain(d.Message))
	if n := d.Pos.Line; n >= 1 && n <= len(lines) {
		excerpt(b, d.Pos, strings.TrimSuffix(lines[n-1], "\r"))
	}
	if d.Hint != "" {
		fmt.Fprintf(b, "hint: %s\n", plain(d.Hint))
	}
	if d.Cite != "" {
		fmt.Fprintf(b, "see: %s\n", plain(d.Cite))
	}
}

// place is "FILE:LINE:COL: ", "FILE: " or nothing.
func (d Diagnostic) place() string {
	switch {
	case d.File == "":
		return ""
	case d.Pos.Line == 0:
		return plain(d.File) + ": "
	}
	return fmt.Sprintf("%s:%d:%d: ", plain(d.File), d.Pos.Line, max(d.Pos.Column, 1))
}

// plain keeps control characters of a maker's file off the terminal.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' || bidi(r) {
			return ' '
		}
		return r
	}, s)
}

// bidi are the marks that reorder text on screen.
func bidi(r rune) bool { return r >= '\u202A' && r <= '\u202E' || r >= '\u2066' && r <= '\u2069' }
