package job

import (
	"cmp"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/notes"
	"jarmark/internal/kitchen/pantry"
)

// A heading is one of the first lines of the notes, and short.
const (
	headings     = 3
	headingWords = 8
)

// kindOfNotes settles the kind of a batch read from notes: the one given, that
// of the name, or that of a heading of the notes. Where they differ, or none
// says one, it is asked: a jelly is judged by other rules than a jam. By is the
// comment beside the key.
func kindOfNotes(name, given string, r notes.Reading, l *diag.List) (kind, by string) {
	if given != "" {
		return given, ""
	}
	named := kindSaid(name)
	headed, line := headingKind(r)
	switch {
	case named != "" && headed != "" && named != headed:
		by = "asked: the name says " + named + ", the notes say " + headed
		l.Notef("notes-asked", "", "", "line %d, %q: that is %s, and the name says %s: which of the two is it? Write it as kind", line.No, short(line.Text), headed, named)
	case named == "" && headed != "":
		by = "by line " + strconv.Itoa(line.No) + " of the notes"
	case named == "" && headed == "":
		by = "asked: neither the name nor the notes say it"
		l.Notef("notes-asked", "", "", "neither the name nor the notes say what kind of preserve it is: jam is written; say so if it is another").
			Hinted("the kinds are " + strings.Join(ProductWords(), ", "))
	}
	return cmp.Or(named, headed, string(batch.Jam)), by
}

// headingKind finds the kind a heading of the notes names: a line of the first
// few that nothing else was read of.
func headingKind(r notes.Reading) (string, notes.Line) {
	for i, line := range r.Lines {
		if i == headings || len(line.Ingredients)+len(line.Fills) > 0 {
			break
		}
		if kind := kindSaid(line.Text); kind != "" && len(strings.Fields(line.Text)) <= headingWords {
			return kind, line
		}
	}
	return "", notes.Line{}
}

// kindSaid is the kind of preserve that words speak of, "" when they speak of none.
func kindSaid(words string) string {
	kind, _, _ := pantry.Default().KindIn(bareName(words))
	return kind
}

// bareName is a name without what follows a comma or a bracket: "(thick-cut)".
func bareName(words string) string {
	bare, _, _ := strings.Cut(words, "(")
	bare, _, _ = strings.Cut(bare, ",")
	return bare
}
