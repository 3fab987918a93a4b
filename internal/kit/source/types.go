// Package source reads TOML strictly and knows where everything stands: it is
// the only importer of the TOML library. The library reports positions inside
// arrays of tables at the last element, so source keeps its own index.
package source

import (
	"sort"
	"sync"
	"unicode/utf8"

	"jarmark/internal/kit/diag"
)

// File is one read TOML file: its name, text, and an index from path to place.
type File struct {
	Name string // as shown in findings
	Text string // without a byte order mark

	once    sync.Once // the index is made when a place is asked for
	entries []Entry
	// index maps a 0-based path ("ingredient[1].amount") to its entry.
	index map[string]int
	lines []int // byte offset of each line
	tree  map[string]any
}

// EntryType says what an entry is.
type EntryType int

// The kinds of entry. Implied tables are made by dotted names only.
const (
	Value   EntryType = iota // key = value
	Table                    // [cook]
	Element                  // [[ingredient]]
	Item                     // one element of a list
	Implied
)

// Range is a stretch of text in bytes, End exclusive.
type Range struct{ Start, End int }

// Entry is one thing in the file. Key is the (dotted) name as written, Value
// the value; for a header Value is the whole header, brackets included.
type Entry struct {
	Path  string
	Type  EntryType
	Key   Range
	Value Range
}

// indexed gives the file with its index; one that was refused has none.
func (f *File) indexed() *File {
	if f.tree != nil {
		f.once.Do(f.buildIndex)
	}
	return f
}

// Entries gives everything in the file, in order.
func (f *File) Entries() []Entry {
	if f == nil {
		return nil
	}
	return f.indexed().entries
}

// Entry gives what stands at a path.
func (f *File) Entry(path string) (Entry, bool) {
	if f == nil {
		return Entry{}, false
	}
	i, ok := f.indexed().index[path]
	if !ok {
		return Entry{}, false
	}
	return f.entries[i], true
}

// Span gives the place of a path's value; an unknown path falls back to its
// nearest known parent, and at last to line 1 column 1. A nil File gives the
// zero Pos.
func (f *File) Span(path string) diag.Pos {
	if f == nil {
		return diag.Pos{}
	}
	for path != "" {
		if e, ok := f.Entry(path); ok {
			return f.Pos(e.Value)
		}
		path = Parent(path)
	}
	return diag.Pos{Line: 1, Column: 1}
}

// KeySpan gives the place of a path's name; see Span.
func (f *File) KeySpan(path string) diag.Pos {
	if e, ok := f.Entry(path); ok && e.Key.End > e.Key.Start {
		return f.Pos(e.Key)
	}
	return f.Span(path)
}

// Pos turns bytes into line and columns; a range over several lines ends with
// its first.
func (f *File) Pos(r Range) diag.Pos {
	start := min(max(r.Start, 0), len(f.Text))
	end := min(max(r.End, start), len(f.Text))
	line := sort.SearchInts(f.lines, start+1) - 1
	from, stop := f.lines[line], len(f.Text)
	if line+1 < len(f.lines) {
		stop = f.lines[line+1] - 1
	}
	column := utf8.RuneCountInString(f.Text[from:start]) + 1
	width := utf8.RuneCountInString(f.Text[start:max(start, min(end, stop))])
	return diag.Pos{Line: line + 1, Column: column, EndColumn: column + max(width, 1)}
}

// Locate fills the place of findings of this file that have none yet. The list
// itself is left as it is.
func (f *File) Locate(l diag.List) diag.List {
	if f == nil || len(l) == 0 {
		return l
	}
	out := append(diag.List(nil), l...)
	for i := range out {
		if d := &out[i]; d.File == f.Name && d.Pos == (diag.Pos{}) {
			d.Pos = f.Span(d.Path)
		}
	}
	return out
}

func lineStarts(text string) []int {
	starts := []int{0}
	for i := 0; i < len(text); i++ {
		if text[i] == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}
