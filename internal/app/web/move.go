package web

import (
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// rowOf takes "ingredient[2]" apart.
func rowOf(path string) (table string, i int, ok bool) {
	steps, ok := source.SplitPath(path)
	if !ok || len(steps) != 2 || !steps[1].IsIndex {
		return "", 0, false
	}
	return steps[0].Key, steps[1].Index, true
}

// moveUp lets a row of a list of tables trade places with the one before it,
// each with the comments that stand above and in it.
func moveUp(text, path string) (string, diag.List) {
	f, l := source.Parse("", []byte(text))
	if l.HasErrors() {
		return text, l
	}
	table, i, ok := rowOf(path)
	from, to, fits := rowRange(f, table, i)
	above, end, adjoins := rowRange(f, table, i-1)
	if !ok || !fits || !adjoins || end > from {
		l.Errorf("edit-refused", "", path, "%s can't be moved", path).Hinted("move it in the text itself")
		return text, l
	}
	lead := text[:len(text)-len(f.Text)] // a byte order mark
	t := f.Text
	first, between, second := t[above:end], t[end:from], ended(t[from:to])
	return lead + t[:above] + second + between + first + t[to:], nil
}

// ended makes sure the last row of a file has its line end before another
// follows it.
func ended(s string) string {
	if s != "" && !strings.HasSuffix(s, "\n") {
		return s + "\n"
	}
	return s
}

// rowRange is where a row stands in the text: from the comments above its
// header to the last line before the next header and its comments. Blank lines
// between rows belong to neither.
func rowRange(f *source.File, table string, i int) (start, end int, ok bool) {
	e, found := f.Entry(source.At(table, i))
	if !found || e.Type != source.Element {
		return 0, 0, false
	}
	end = len(f.Text)
	for _, x := range f.Entries() {
		if (x.Type == source.Table || x.Type == source.Element) && x.Value.Start > e.Value.Start && !strings.HasPrefix(x.Path, e.Path+".") {
			end = commentsAbove(f.Text, x.Value.Start)
			break
		}
	}
	start = commentsAbove(f.Text, e.Value.Start)
	trimmed := strings.TrimRight(f.Text[start:end], " \t\r\n")
	return start, min(end, start+len(trimmed)+newline(f.Text[start+len(trimmed):end])), true
}

// newline is how many bytes the line end at the start of s takes.
func newline(s string) int {
	if i := strings.IndexByte(s, '\n'); i >= 0 {
		return i + 1
	}
	return len(s)
}

// commentsAbove goes up from a header over the comment lines right above it.
func commentsAbove(text string, at int) int {
	line := strings.LastIndexByte(text[:at], '\n') + 1
	for line > 0 {
		above := strings.LastIndexByte(text[:line-1], '\n') + 1
		if !strings.HasPrefix(strings.TrimSpace(text[above:line]), "#") {
			break
		}
		line = above
	}
	return line
}

// removedRows is the text of each row that changes take out and ask for.
func removedRows(text string, changes []change, sections []section) map[string]string {
	out := map[string]string{}
	for _, c := range changes {
		if c.Do == "remove" && c.ID > 0 {
			f, l := source.Parse("", []byte(text))
			table, i, ok := rowOf(c.Path)
			if from, to, fits := rowRange(f, table, i); ok && fits && !l.HasErrors() {
				out[itoa(c.ID)] = f.Text[from:to]
			}
		}
		text, _ = applyOne(text, c, sections)
	}
	return out
}

// restoreRow puts a row that was taken out back where it stood, or behind the
// last one when there are fewer now.
func restoreRow(text, path, row string) (string, diag.List) {
	f, l := source.Parse("", []byte(text))
	if l.HasErrors() {
		return text, l
	}
	table, i, _ := rowOf(path)
	lead, t := text[:len(text)-len(f.Text)], f.Text
	at := len(t)
	if from, _, ok := rowRange(f, table, i); ok {
		at = from
	} else if _, to, ok := rowRange(f, table, i-1); ok {
		at = to
	}
	before := ended(t[:at])
	if before != "" && !strings.HasSuffix(before, "\n\n") {
		before += "\n"
	}
	row = ended(row)
	if at < len(t) && !strings.HasPrefix(t[at:], "\n") {
		row += "\n"
	}
	now := lead + before + row + t[at:]
	if g, l := source.Parse("", []byte(now)); l.HasErrors() || !rowIs(g, f, table) {
		var no diag.List
		no.Errorf("edit-refused", "", path, "%s can't be put back there", path).Hinted("use Undo, or write it into the text")
		return text, no
	}
	return now, nil
}

// rowIs reports whether a text has just one row more of a table than before.
func rowIs(now, before *source.File, table string) bool {
	n := before.Rows(table)
	return now.Rows(table) == n+1
}
