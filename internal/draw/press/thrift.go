package press

import (
	"slices"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// besideFront is an information label no longer than leaves room for the front in
// the same row of plain paper, at least four fifths of the way: then three sets lie
// on a sheet where two did.
func (w *work) besideFront(s *sheet.Sheet, c *label.Content, cell compose.Cell) compose.Cell {
	front, err := cellOf(s, c, label.Front, "")
	if err != nil || cell.Cone != (page.Cone{}) || !slices.Contains(w.o.Pieces, label.Front) {
		return cell
	}
	room := s.PaperW - s.Left - s.Right - front.W - max(s.Gutter, 2*cell.Bleed)
	if room < cell.W && room >= cell.W*8/10 {
		cell.W = room
	}
	return cell
}

// thrifty is the longest wrap of which a sheet takes more than of one that goes
// all around the jar: at least four fifths of the way, as on label sheets.
func thrifty(s *sheet.Sheet, c *label.Content, cell compose.Cell) compose.Cell {
	holds := func(c compose.Cell) int {
		w, h := cut(c)
		return s.Holds(w, h, c.Bleed)
	}
	best, n := cell, holds(cell)
	for try := cell; try.W >= c.Around*8/10 && c.Around > 0; try.W -= unit.Millimetre {
		if k := holds(try); k > n {
			best, n = try, k
		}
	}
	return best
}
