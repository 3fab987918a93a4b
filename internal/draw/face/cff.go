package face

import (
	"fmt"
	"slices"
	"sync/atomic"

	"golang.org/x/image/font/sfnt"
)

// cff are the PostScript outlines of a typeface (Adobe Technical Note 5176, The
// Compact Font Format Specification). x/image/font/sfnt reads the rest of such a
// file; its outlines are read here because it (v0.48.0) knows neither flex nor
// flex1, which many typefaces have in every serif, rounds fractions, whose errors
// add up, and has no bound on subroutines that call one another without end.
type cff struct {
	glyphs  index
	global  index   // subroutines of all glyphs
	local   []index // those of each font dictionary
	choice  []byte  // FDSelect: the dictionary of a glyph; nil = there is one
	legible []atomic.Int32
}

// Operators of a dictionary (5176, tables 9, 10 and 23); those of two bytes, 12 and
// another, are 1200 and the other.
const (
	opCharStrings    = 17
	opPrivate        = 18
	opSubrs          = 19
	opCharstringType = 1206
	opFDArray        = 1236
	opFDSelect       = 1237
)

var errCFF = fmt.Errorf("the table of PostScript outlines is broken")

// index is a list of byte strings (5176, section 5).
type index struct {
	count, size int
	offsets     []byte
	data        []byte // the first item is at offset 1, so this begins one byte before it
}

// readIndex reads the list at a place; end is the place after it.
func readIndex(b []byte, at int) (ix index, end int, err error) {
	if at < 0 || at > len(b)-2 {
		return ix, 0, errCFF
	}
	if ix.count = int(u16(b[at:])); ix.count == 0 {
		return ix, at + 2, nil
	}
	if at+3 > len(b) {
		return ix, 0, errCFF
	}
	ix.size = int(b[at+2])
	from := at + 3 + (ix.count+1)*ix.size
	if ix.size < 1 || ix.size > 4 || from > len(b) {
		return ix, 0, errCFF
	}
	ix.offsets, ix.data = b[at+3:from], b[from-1:]
	last := ix.offset(ix.count)
	if last < 1 || last > len(ix.data) {
		return ix, 0, errCFF
	}
	return ix, from - 1 + last, nil
}

func (ix index) offset(i int) (v int) {
	for _, b := range ix.offsets[i*ix.size : (i+1)*ix.size] {
		v = v<<8 | int(b)
	}
	return v
}

func (ix index) item(i int) ([]byte, error) {
	if i < 0 || i >= ix.count {
		return nil, errCFF
	}
	from, to := ix.offset(i), ix.offset(i+1)
	if from < 1 || from > to || to > len(ix.data) {
		return nil, errCFF
	}
	return ix.data[from:to], nil
}

// dict reads a dictionary's whole numbers by operator (5176, section 4); a real
// number, which nothing read here is, counts as 0.
func dict(b []byte) (map[int][]int, error) {
	out := map[int][]int{}
	var args []int
	for len(b) > 0 {
		switch first := b[0]; {
		case first == 12 && len(b) > 1:
			out[1200+int(b[1])], args, b = args, nil, b[2:]
		case first < 22 && first != 12:
			out[int(first)], args, b = args, nil, b[1:]
		case first == 29 && len(b) > 4:
			args, b = append(args, int(int32(u32(b[1:])))), b[5:]
		case first == 30:
			end := slices.IndexFunc(b[1:], func(c byte) bool { return c&0x0f == 0x0f || c>>4 == 0x0f })
			if end < 0 {
				return nil, errCFF
			}
			args, b = append(args, 0), b[end+2:]
		default:
			v, n := number(b)
			if n == 0 || first == 255 {
				return nil, errCFF
			}
			args, b = append(args, int(v)), b[n:]
		}
	}
	return out, nil
}

// readCFF reads the table "CFF " of a file, version 1.
func readCFF(b []byte) (*cff, error) {
	if len(b) < 4 || b[0] != 1 {
		return nil, errCFF
	}
	_, at, err := readIndex(b, int(b[2])) // names
	if err != nil {
		return nil, err
	}
	tops, at, err := readIndex(b, at)
	if err != nil {
		return nil, err
	}
	_, at, err = readIndex(b, at) // strings
	if err != nil {
		return nil, err
	}
	c := &cff{}
	if c.global, _, err = readIndex(b, at); err != nil {
		return nil, err
	}
	first, err := tops.item(0)
	if err != nil {
		return nil, err
	}
	top, err := dict(first)
	if kind := top[opCharstringType]; err != nil || len(kind) > 0 && kind[0] != 2 {
		return nil, errCFF
	}
	if c.glyphs, _, err = readIndex(b, last(top[opCharStrings])); err != nil {
		return nil, err
	}
	c.legible = make([]atomic.Int32, c.glyphs.count)
	return c, c.subroutines(b, top)
}

// subroutines reads those of the one private dictionary, or of each of a font of
// character collections (5176, sections 16 and 18).
func (c *cff) subroutines(b []byte, top map[int][]int) error {
	if _, many := top[opFDArray]; !many {
		return c.private(b, top)
	}
	dicts, _, err := readIndex(b, last(top[opFDArray]))
	if err != nil {
		return err
	}
	for i := range dicts.count {
		data, err := dicts.item(i)
		if err != nil {
			return err
		}
		d, err := dict(data)
		if err != nil {
			return err
		}
		if err = c.private(b, d); err != nil {
			return err
		}
	}
	at := last(top[opFDSelect])
	if at < 4 || at >= len(b) {
		return errCFF
	}
	c.choice = b[at:]
	return nil
}

// private reads the subroutines of a font dictionary; there may be none.
func (c *cff) private(b []byte, d map[int][]int) error {
	p := d[opPrivate]
	if len(p) != 2 || p[0] < 0 || p[1] < 0 || p[1] > len(b) || p[0] > len(b)-p[1] {
		return errCFF
	}
	inner, err := dict(b[p[1] : p[1]+p[0]])
	if err != nil {
		return err
	}
	var subrs index
	if at, ok := inner[opSubrs]; ok {
		if subrs, _, err = readIndex(b, p[1]+last(at)); err != nil {
			return err
		}
	}
	c.local = append(c.local, subrs)
	return nil
}

// last is the operand next to its operator; -1, no place, where there is none.
func last(args []int) int {
	if len(args) == 0 {
		return -1
	}
	return args[len(args)-1]
}

// subrs are the local subroutines of a glyph (5176, section 19).
func (c *cff) subrs(g sfnt.GlyphIndex) (index, error) {
	i, err := 0, error(nil)
	if c.choice != nil {
		i, err = c.chosen(int(g))
	}
	if err != nil || i >= len(c.local) {
		return index{}, errCFF
	}
	return c.local[i], nil
}

func (c *cff) chosen(g int) (int, error) {
	b := c.choice
	switch {
	case b[0] == 0 && 1+g < len(b):
		return int(b[1+g]), nil
	case b[0] == 3 && len(b) >= 5:
		n := min(int(u16(b[1:])), (len(b)-5)/3)
		for lo, hi := 0, n; lo < hi; {
			i := (lo + hi) / 2
			switch r := b[3+3*i:]; {
			case g < int(u16(r)):
				hi = i
			case g >= int(u16(r[3:])):
				lo = i + 1
			default:
				return int(r[2]), nil
			}
		}
	}
	return 0, errCFF
}
