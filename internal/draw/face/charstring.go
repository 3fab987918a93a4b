package face

import (
	"math"

	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Bounds of one glyph: numbers and operators read, subroutines in one another and
// numbers that wait (5177, appendix B: 10 and 48), and how far a point lies out in
// units of the em.
const (
	mostTokens = 50_000
	mostDeep   = 10
	mostArgs   = 48
	mostFar    = 1 << 20
)

// drawing runs the program that draws one glyph (Adobe Technical Note 5177, The
// Type 2 Charstring Format). What few fonts have, sums and the accents put together
// by endchar (its appendix C), is an error: the face then lacks that letter.
type drawing struct {
	global, local index
	args          []float64
	stems, tokens int
	begun, ended  bool // the width is passed over; endchar was read
	x, y          float64
	out           sfnt.Segments
}

// segments draws a glyph in 1/64 of the font's units, y down. It fails on a broken
// program.
func (c *cff) segments(g sfnt.GlyphIndex) (sfnt.Segments, error) {
	program, err := c.glyphs.item(int(g))
	if err != nil {
		return nil, err
	}
	d := drawing{global: c.global}
	if d.local, err = c.subrs(g); err != nil {
		return nil, err
	}
	if err = d.run(program, 0); err != nil {
		return nil, err
	}
	if !d.ended {
		return nil, errCFF
	}
	return d.out, nil
}

// number reads an operand and how many bytes it takes; 0 for none (5177, 3.2).
func number(b []byte) (v float64, n int) {
	switch first := int(b[0]); {
	case first == 28 && len(b) > 2:
		return float64(i16(b[1:])), 3
	case first >= 32 && first < 247:
		return float64(first - 139), 1
	case first >= 247 && first < 251 && len(b) > 1:
		return float64((first-247)*256 + int(b[1]) + 108), 2
	case first >= 251 && first < 255 && len(b) > 1:
		return float64(-(first-251)*256 - int(b[1]) - 108), 2
	case first == 255 && len(b) > 4:
		return float64(int32(u32(b[1:]))) / 65536, 5
	}
	return 0, 0
}

func (d *drawing) run(program []byte, deep int) error {
	for len(program) > 0 && !d.ended {
		if d.tokens++; d.tokens > mostTokens {
			return errCFF
		}
		if program[0] >= 32 || program[0] == 28 {
			v, n := number(program)
			if n == 0 || len(d.args) == mostArgs {
				return errCFF
			}
			d.args, program = append(d.args, v), program[n:]
			continue
		}
		op := int(program[0])
		program = program[1:]
		if op == 12 && len(program) > 0 {
			op, program = 1200+int(program[0]), program[1:]
		}
		if op == 11 { // return
			return nil
		}
		skip, err := d.do(op, deep)
		if err != nil || skip > len(program) {
			return errCFF
		}
		program = program[skip:]
	}
	return nil
}

// do carries out an operator; skip are the bytes after it that are its hint mask.
func (d *drawing) do(op, deep int) (skip int, err error) {
	switch op {
	case 10:
		return 0, d.call(d.local, deep)
	case 29:
		return 0, d.call(d.global, deep)
	case 1, 3, 18, 23: // stems, which hint at small sizes and draw nothing
		d.stem()
	case 19, 20:
		d.stem()
		skip = (d.stems + 7) / 8
	case 14:
		d.width(0)
		if len(d.args) != 0 {
			return 0, errCFF
		}
		d.ended = true
	default:
		err = d.path(op)
	}
	d.args = d.args[:0]
	return skip, err
}

// call runs a subroutine; its number is biased by how many there are (5177, 4.7).
func (d *drawing) call(subrs index, deep int) error {
	n := len(d.args) - 1
	if n < 0 || deep >= mostDeep {
		return errCFF
	}
	bias := 32768
	switch {
	case subrs.count < 1240:
		bias = 107
	case subrs.count < 33900:
		bias = 1131
	}
	program, err := subrs.item(int(d.args[n]) + bias)
	if err != nil {
		return err
	}
	d.args = d.args[:n]
	return d.run(program, deep+1)
}

// width passes over the number before the n that the first operator takes: the
// width, which the table hmtx has too.
func (d *drawing) width(n int) {
	if !d.begun && len(d.args) == n+1 {
		d.args = d.args[1:]
	}
	d.begun = true
}

func (d *drawing) stem() {
	d.width(len(d.args) &^ 1)
	d.stems += len(d.args) / 2
}

// to moves by a step and gives the place.
func (d *drawing) to(dx, dy float64) fixed.Point26_6 {
	d.x, d.y = d.x+dx, d.y+dy
	return fixed.Point26_6{X: sixtyFourths(d.x), Y: sixtyFourths(-d.y)}
}

func sixtyFourths(v float64) fixed.Int26_6 {
	return fixed.Int26_6(math.Round(max(-mostFar, min(v, mostFar)) * 64))
}

func (d *drawing) move(dx, dy float64) {
	d.out = append(d.out, sfnt.Segment{Op: sfnt.SegmentOpMoveTo, Args: [3]fixed.Point26_6{d.to(dx, dy)}})
}

func (d *drawing) line(dx, dy float64) {
	d.out = append(d.out, sfnt.Segment{Op: sfnt.SegmentOpLineTo, Args: [3]fixed.Point26_6{d.to(dx, dy)}})
}

func (d *drawing) curve(ax, ay, bx, by, cx, cy float64) {
	a, b := d.to(ax, ay), d.to(bx, by)
	d.out = append(d.out, sfnt.Segment{Op: sfnt.SegmentOpCubeTo, Args: [3]fixed.Point26_6{a, b, d.to(cx, cy)}})
}
