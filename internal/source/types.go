// Package source reads TOML strictly and knows where everything stands: it is
// the only importer of the TOML library. The library reports positions inside
// arrays of tables at the last element, so source keeps its own index.
package source

import "jarmark/internal/diag"

// File is one read TOML file: its name, text, and an index from path to place.
type File struct {
	Name string // as shown in findings
	Text string
	// index maps a 0-based path ("ingredient[1].amount") to its place.
	index map[string]diag.Pos
}

// Span gives the place of a path; an unknown path falls back to its nearest
// known parent, and at last to line 1 column 1. A nil File gives the zero Pos.
func (f *File) Span(path string) diag.Pos {
	if f == nil {
		return diag.Pos{}
	}
	for {
		if p, ok := f.index[path]; ok {
			return p
		}
		next := parent(path)
		if next == path {
			return diag.Pos{Line: 1, Column: 1}
		}
		path = next
	}
}

func parent(path string) string {
	for i := len(path) - 1; i >= 0; i-- {
		if path[i] == '.' || path[i] == '[' {
			return path[:i]
		}
	}
	return ""
}
