package sheet

import (
	"io/fs"
	"sort"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// Catalogue is all sheets at hand.
type Catalogue struct{ source.Catalogue[Sheet] }

// Builtin is the sheets that come with the program, each read when it is asked for.
func Builtin(files fs.FS) (*Catalogue, diag.List) {
	all, l := source.Lazily(files, "sheets", Parse)
	return &Catalogue{*all}, l
}

// With lays the sheets/*.toml of a folder, which may be nil, over these.
func (c *Catalogue) With(files fs.FS) (*Catalogue, diag.List) {
	all, l := c.Catalogue.With(files, "sheets", Parse)
	return &Catalogue{*all}, l
}

// For gives the sheets meant for a piece ("front", "lid") whose id begins with a
// paper ("letter", "a4", "" for all), label sheets before plain paper.
func (c *Catalogue) For(piece, paper string) []*Sheet {
	var grids, plain []*Sheet
	for _, s := range c.Beginning(paper) {
		switch {
		case !s.Takes(piece):
		case s.Auto:
			plain = append(plain, s)
		default:
			grids = append(grids, s)
		}
	}
	return append(grids, plain...)
}

// Room gives the sheets meant for a piece whose cells hold a label of a size,
// either way round, the closest cell first and plain paper last: what to offer
// when a label is too full for its cell.
func (c *Catalogue) Room(piece string, w, h unit.Length) []*Sheet {
	var out []*Sheet
	for _, s := range c.For(piece, "") {
		if s.holds(w, h) {
			out = append(out, s)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.Auto != b.Auto {
			return b.Auto
		}
		return a.W.MM()*a.H.MM() < b.W.MM()*b.H.MM()
	})
	return out
}

// SamePaper reports whether two sheets go through a printer alike: leaves of one
// size, or labels off a roll, whatever their size.
func (s *Sheet) SamePaper(o *Sheet) bool {
	if s.roll() || o.roll() {
		return s.roll() == o.roll()
	}
	return s.PaperW == o.PaperW && s.PaperH == o.PaperH
}

// roll reports whether the paper is no larger than its one label.
func (s *Sheet) roll() bool {
	return s.Endless || s.Cols*s.Rows == 1 && s.PaperW == s.W && s.PaperH == s.H
}

func (s *Sheet) holds(w, h unit.Length) bool {
	if w < leastLabel || h < leastLabel {
		return false
	}
	if s.Auto {
		g := plan(s, &page.Frame{W: w, H: h, Bleed: s.Bleed})
		return g.cols > 0 && g.rows > 0
	}
	return w <= s.W && h <= s.H || h <= s.W && w <= s.H
}
