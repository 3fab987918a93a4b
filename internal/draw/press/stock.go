package press

import (
	"cmp"
	"fmt"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// stock picks the sheet of a piece and the cell to compose for: the one the
// maker names, else the roomiest label sheet that fits the jar and the words,
// else plain paper with a label cut to the jar's measure. A label composed to
// know whether the words fit comes with it.
func (w *work) stock(j Jars, x *setting) (*sheet.Sheet, compose.Cell, *composed, diag.List) {
	var l diag.List
	c, p := j.Content, x.piece
	size := cmp.Or(w.o.Choice.Size, w.o.Choice.OwnSize)
	id, at := w.sheetFor(j, p)
	if id == "" && size == "" {
		if s := w.fitting(c, p); s != nil {
			cell := w.bled(cellFrom(s.Cell()))
			if first, ok := w.suffices(x, cell); ok {
				return s, cell, first, l
			}
		}
	}
	if id == "" {
		id = w.o.Paper + "-plain"
	}
	s, ok := w.Sheets.Get(id)
	if !ok {
		w.unknownSheet(&l, id, at)
		return nil, compose.Cell{}, nil, l
	}
	cell, err := cellOf(s, c, p, size)
	if err != nil {
		file, path := w.o.File, "label.size"
		if w.o.Choice.Size != "" {
			file, path = diag.Command, ""
		}
		l.Errorf("bad-size", file, path, "%v", err).Hinted(`write it like "80 x 50 mm"`)
	}
	cell = w.bled(cell)
	if p == label.Wrap && size == "" && s.Auto && !s.Endless && !w.o.Trimmed {
		if short := thrifty(s, c, cell); short != cell {
			if first, ok := w.suffices(x, short); ok && first != nil && !first.Bare {
				return s, short, first, l
			}
		}
	}
	if p == label.InfoLabel && size == "" && s.Auto && !s.Endless && !w.o.Trimmed {
		if short := w.besideFront(s, c, cell); short != cell {
			whole := w.compose(x, cell)
			if first, ok := w.suffices(x, short); ok && first.Headed == whole.Headed {
				return s, short, first, l
			}
			return s, cell, whole, l
		}
	}
	return s, cell, nil, l
}

// bled gives a label for a print shop the bleed they ask for.
func (w *work) bled(c compose.Cell) compose.Cell {
	if w.o.Trimmed {
		c.Bleed = shopBleed
	}
	return c
}

// suffices reports whether a label on a sheet that was not asked for by name
// takes all it has to say, and on the front its ornament; else it is better cut
// from plain paper.
func (w *work) suffices(x *setting, cell compose.Cell) (*composed, bool) {
	if x.design == nil {
		return nil, true // the design is the finding
	}
	out := w.compose(x, cell)
	return out, len(out.Overflow) == 0 && !out.found.HasErrors() && !(out.Bare && (x.piece == label.Front || x.piece == label.BagCard))
}

// sheetFor is the sheet asked for and the path it stands at: for this run, for
// the jar size, or for the batch, when the file's is meant for the piece: for
// the kind of label the file names, or one made for such labels.
func (w *work) sheetFor(j Jars, p label.Piece) (id, at string) {
	c := w.o.Choice
	own, at := c.OwnSheet, "label.sheet"
	if j.Sheet != "" {
		own, at = j.Sheet, j.At+".sheet"
	}
	meant := p == label.Wrap
	if c.OwnPiece != "" {
		meant = label.Piece(c.OwnPiece) == p
	}
	if s, ok := w.Sheets.Get(own); ok && !s.Auto && s.Takes(string(p)) {
		meant = true
	}
	switch {
	case c.Sheet != "":
		return c.Sheet, ""
	case !meant:
		return "", ""
	}
	return own, at
}

func (w *work) unknownSheet(l *diag.List, id, at string) {
	*l = append(*l, w.Sheets.Faults()...) // it may be one of ours that cannot be read
	w.o.unknown(l, "unknown-sheet", id, at, w.Sheets.IDs())
}

// fitting finds the roomiest label sheet of the maker's paper whose cell fits
// the jar. A wrap that has to be cut is better cut to the jar's measure from
// plain paper, where those of all jar sizes lie together.
func (w *work) fitting(c *label.Content, p label.Piece) *sheet.Sheet {
	var best *sheet.Sheet
	for _, s := range w.Sheets.For(string(p), w.o.Paper) {
		if s.Auto || s.Cut && p == label.Wrap || !fitsJar(s, c, p) {
			continue
		}
		if best == nil || float64(s.W)*float64(s.H) > float64(best.W)*float64(best.H) {
			best = s
		}
	}
	return best
}

func fitsJar(s *sheet.Sheet, c *label.Content, p label.Piece) bool {
	switch p {
	case label.Wrap:
		return s.H <= c.Straight && s.W <= c.Around && s.W >= c.Around*8/10
	case label.Front, label.InfoLabel:
		return s.H <= c.Straight && s.W <= flat(c, c.Around/2)
	case label.Lid:
		return c.LidAcross == 0 || s.W <= c.LidAcross
	case label.Tag: // one that hangs: a card for a bag is a tag only where it is asked for
		return s.Shape == page.TagShape
	}
	return true
}

func cellFrom(c sheet.Cell) compose.Cell {
	return compose.Cell{W: c.W, H: c.H, Shape: c.Shape, Corner: c.Corner, Safe: c.Safe, Bleed: c.Bleed}
}

// cellOf gives the cell of a sheet; plain paper takes the size asked for, or
// the one that suits the jar.
func cellOf(s *sheet.Sheet, c *label.Content, p label.Piece, size string) (compose.Cell, error) {
	if !s.Auto {
		return cellFrom(s.Cell()), nil
	}
	cell := cellFrom(s.Cell())
	cell.W, cell.H, cell.Shape = suits(c, p)
	if size == "" {
		cell = unrolled(cell, c, p)
	}
	if cell.Safe == 0 {
		cell.Safe = 2 * unit.Millimetre
	}
	if size == "" {
		return cell, nil
	}
	w, h, err := parseSize(size)
	if err == nil {
		cell.W, cell.H = w, h
	}
	return cell, err
}

// Room left between a label and the ends of the straight side, and the gap of
// a wrap-around where its ends meet: so that it lies flat and smooth.
const (
	edge = 1 * unit.Millimetre
	gap  = 6 * unit.Millimetre
)

// suits is the size of a piece cut for the jar. Sizes of pieces that do not
// touch the jar are our own.
func suits(c *label.Content, p label.Piece) (w, h unit.Length, shape page.Shape) {
	mm := func(v float64) unit.Length { return unit.MM(v) }
	around, straight := c.Around, c.Straight
	if around <= 0 {
		around = mm(210)
	}
	if straight <= 0 {
		straight = mm(50)
	}
	switch p {
	case label.Wrap:
		return clamp(around-gap, mm(60), mm(255)), clamp(straight-2*edge, mm(20), mm(120)), page.Rectangle
	case label.Front: // as wide as one sees at once: 40 % of the way around (21 CFR 101.1(b))
		return clamp(flat(c, around*4/10), mm(30), mm(120)), clamp(straight-2*edge, mm(20), mm(120)), page.Rectangle
	case label.InfoLabel: // beside it, with a gap on both sides
		return clamp(flat(c, around*6/10-2*gap), mm(30), mm(150)), clamp(straight-2*edge, mm(20), mm(120)), page.Rectangle
	case label.Lid:
		d := clamp(c.LidAcross-4*unit.Millimetre, mm(35), mm(80))
		if c.LidAcross <= 0 {
			d = mm(60)
		}
		return d, d, page.Ellipse
	case label.Tag:
		return mm(55), mm(95), page.TagShape
	case label.BagCard:
		return mm(120), mm(85), page.Rectangle
	case label.SealStrip:
		return mm(130), mm(18), page.Rectangle
	case label.CaseLabel:
		return mm(150), mm(100), page.Rectangle
	case label.ShelfCard:
		return mm(100), mm(70), page.Rectangle
	}
	return mm(105), mm(148), page.Rectangle
}

// unrolled is a label for a tapered jar: as long along its narrow edge as it is on
// a straight one, and to be cut as a part of a ring.
func unrolled(cell compose.Cell, c *label.Content, p label.Piece) compose.Cell {
	around, off := map[label.Piece]float64{label.Wrap: 1, label.Front: 0.4, label.InfoLabel: 0.6}, map[label.Piece]unit.Length{label.Wrap: gap, label.InfoLabel: 2 * gap}
	if around[p] == 0 {
		return cell
	}
	if w, cone, ok := compose.Unrolled(c, cell.H, around[p], off[p]); ok {
		cell.W, cell.Cone = clamp(w, 30*unit.Millimetre, 255*unit.Millimetre), cone
	}
	return cell
}

// cut is the box of the piece that is cut.
func cut(c compose.Cell) (w, h unit.Length) {
	if c.Cone == (page.Cone{}) {
		return c.W, c.H
	}
	return c.Cone.Arc(c.W, c.H).Size()
}

// flat is at most a width, and no wider than lies well on the jar: as many whole
// flat sides of a square or six-sided one as there is room for, and what looks
// level on a tapered one.
func flat(c *label.Content, w unit.Length) unit.Length {
	if n := w / max(1, c.Face); c.Face > 0 {
		w = min(w, max(1, n)*c.Face-2*edge)
	}
	if most := compose.LevelWidth(c); most > 0 {
		w = min(w, most)
	}
	return w
}

func clamp(v, lo, hi unit.Length) unit.Length { return min(max(v, lo), hi) }

// parseSize reads "80 x 50 mm" or "3 x 2 in"; a unit after the second number
// serves both.
func parseSize(s string) (w, h unit.Length, err error) {
	a, b, ok := strings.Cut(strings.ReplaceAll(s, "×", "x"), "x")
	if !ok {
		return 0, 0, fmt.Errorf("cannot read the size %q", s)
	}
	a, b = strings.TrimSpace(a), strings.TrimSpace(b)
	if i := strings.IndexFunc(b, func(r rune) bool { return r >= 'a' && r <= 'z' }); i >= 0 && !strings.ContainsAny(a, "abcdefghijklmnopqrstuvwxyz") {
		a += " " + b[i:]
	}
	if w, err = unit.ParseLength(a); err != nil {
		return 0, 0, err
	}
	if h, err = unit.ParseLength(b); err != nil {
		return 0, 0, err
	}
	if w < 5*unit.Millimetre || h < 5*unit.Millimetre || w > unit.Metre || h > unit.Metre {
		return 0, 0, fmt.Errorf("a label of %s is not 5 mm to 1 m", s)
	}
	return w, h, nil
}
