// Package sheet knows label sheets and puts finished labels on paper: where
// the cells lie, which of them are free, where to cut, and whether the
// printer keeps its measure. It knows nothing of what a label says.
//
// A sheet is one file, templates/sheets/ID.toml; to add one, add a file. A
// maker's own sheets/ID.toml beside kitchen.toml adds to the built-in ones,
// or replaces the one of the same id.
package sheet

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Sheet is one kind of paper: a grid of equal cells to print into or, when
// Auto, plain paper that takes labels of any size. All lengths are as the
// sheet lies when printed, so a landscape sheet has W > H. Left and Top are
// to the first cell, Right and Bottom what remains beside the last one.
type Sheet struct {
	ID, Title, Note string
	File            string // the file it was read from
	Pieces          []string

	PaperW, PaperH           unit.Length
	Left, Top, Right, Bottom unit.Length

	// Of a grid.
	Shape          page.Shape
	W, H           unit.Length // of a cell
	Corner         unit.Length
	Cols, Rows     int
	PitchX, PitchY unit.Length // from one cell's edge to the same edge of the next

	// Of plain paper.
	Auto   bool
	Gutter unit.Length // least distance between two labels
	// Endless paper comes off a roll, PaperW wide: each label is a page of its
	// own, cut after it, PaperH long at most.
	Endless bool

	Safe      unit.Length // no ink but the background nearer to the cut
	Bleed     unit.Length // how far background may reach past a cell
	Symmetric bool        // stated: left = right and top = bottom
	Cut       bool        // not cut by its maker: labels need marks to cut along
}

// Cell is what a label for the sheet must be like. W and H are zero on plain
// paper, which takes any size.
type Cell struct {
	W, H   unit.Length
	Shape  page.Shape
	Corner unit.Length
	Safe   unit.Length
	Bleed  unit.Length
}

// Cell gives the measures labels for this sheet are made to.
func (s *Sheet) Cell() Cell {
	return Cell{W: s.W, H: s.H, Shape: s.Shape, Corner: s.Corner, Safe: s.Safe, Bleed: s.Bleed}
}

// Cells counts the labels of one sheet; 0 on plain paper.
func (s *Sheet) Cells() int { return s.Cols * s.Rows }

// At is the top left of cell i, counted from 0 along the rows.
func (s *Sheet) At(i int) page.Point {
	return page.Point{
		X: s.Left + unit.Length(i%s.Cols)*s.PitchX,
		Y: s.Top + unit.Length(i/s.Cols)*s.PitchY,
	}
}

// Takes reports whether the sheet is meant for a piece ("front", "lid").
func (s *Sheet) Takes(piece string) bool {
	for _, p := range s.Pieces {
		if p == piece {
			return true
		}
	}
	return false
}

// Paper no smaller or larger than this is taken for a slip of the pen.
const (
	minSide = 20 * unit.Millimetre
	maxSide = 5 * unit.Metre
)
