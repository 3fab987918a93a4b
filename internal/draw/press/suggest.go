package press

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// suggest adds to an overflow which sheet or piece would take the label. It
// composes them to know, not to guess.
func (w *work) suggest(full *composed, d *design.Design, p label.Piece, cell compose.Cell) {
	if len(full.Overflow) == 0 {
		w.suggestLead(full, d, p, cell)
		return
	}
	c := full.content
	hint := ""
	if id := w.nearest(c, p, cell, func(next compose.Cell) bool { return w.takes(c, d, p, next) }); id != "" {
		hint = fmt.Sprintf("--sheet %s would take it", id)
	}
	if hint == "" && p != label.Wrap && w.takes(c, d, label.Wrap, wrapOf(c)) {
		hint = "--kind wrap would take it"
	}
	if hint == "" {
		hint = "use a larger jar or label, or --kind front with --kind info on the back"
	}
	for i, f := range full.found {
		if f.Severity == diag.Error {
			full.found[i].Hint = strings.TrimPrefix(f.Hint+"; "+hint, "; ")
		}
	}
}

// suggestLead adds to what a label had no room for, a name that leads or the
// maker's, which sheet has it.
func (w *work) suggestLead(full *composed, d *design.Design, p label.Piece, cell compose.Cell) {
	if !full.Crowded {
		return
	}
	c := full.content
	leads := func(p label.Piece, next compose.Cell) bool {
		out := w.compose(&setting{c, d, p, compose.Options{}}, next)
		return len(out.Overflow) == 0 && !out.Crowded
	}
	hint := ""
	if id := w.nearest(c, p, cell, func(next compose.Cell) bool { return leads(p, next) }); id != "" {
		hint = fmt.Sprintf("--sheet %s has it", id)
	} else if p != label.Wrap && leads(label.Wrap, w.thriftyWrap(c, d)) {
		hint = "--kind wrap has it"
	}
	for i, f := range full.found {
		if f.Severity == diag.Note && f.Path == "label.sheet" && hint != "" {
			full.found[i].Hint = f.Hint + "; " + hint
		}
	}
}

// nearest names a sheet of labels, of the paper in the printer, that suits the jar
// and does: the smallest at least as large both ways, else the smallest with as much room in
// another form. Empty where there is none.
func (w *work) nearest(c *label.Content, p label.Piece, cell compose.Cell, does func(compose.Cell) bool) string {
	paper, ok := w.Sheets.Get(cmp.Or(w.o.Choice.Sheet, w.o.Choice.OwnSheet))
	if !ok {
		paper, ok = w.Sheets.Get(w.o.Paper + "-plain")
	}
	for _, s := range append(w.Sheets.Room(string(p), min(cell.W, cell.H), max(cell.W, cell.H)), w.others(p, cell)...) {
		if ok && !s.SamePaper(paper) {
			continue
		}
		if !s.Auto && fitsJar(s, c, p) && does(cellFrom(s.Cell())) {
			return s.ID
		}
	}
	return ""
}

// others are the sheets whose labels have at least the area of a cell, smallest first.
func (w *work) others(p label.Piece, cell compose.Cell) []*sheet.Sheet {
	area := func(w, h unit.Length) float64 { return w.MM() * h.MM() }
	out := slices.DeleteFunc(w.Sheets.For(string(p), ""), func(s *sheet.Sheet) bool { return area(s.W, s.H) < area(cell.W, cell.H) })
	slices.SortStableFunc(out, func(a, b *sheet.Sheet) int { return cmp.Compare(area(a.W, a.H), area(b.W, b.H)) })
	return out
}

// wrapOf is a wrap-around cut to the jar.
func wrapOf(c *label.Content) compose.Cell {
	wide, high, shape := suits(c, label.Wrap)
	return compose.Cell{W: wide, H: high, Shape: shape, Safe: 2 * unit.Millimetre}
}

// thriftyWrap is the wrap-around as it is cut from plain paper.
func (w *work) thriftyWrap(c *label.Content, d *design.Design) compose.Cell {
	cell := wrapOf(c)
	if s, ok := w.Sheets.Get(w.o.Paper + "-plain"); ok {
		if short := thrifty(s, c, cell); short != cell && w.takes(c, d, label.Wrap, short) {
			return short
		}
	}
	return cell
}

func (w *work) takes(c *label.Content, d *design.Design, p label.Piece, cell compose.Cell) bool {
	out := w.compose(&setting{c, d, p, compose.Options{}}, cell)
	return len(out.Overflow) == 0 && !out.found.HasErrors()
}
