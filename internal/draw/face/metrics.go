package face

import (
	"fmt"
	"io/fs"
	"math"
	"sync"
	"sync/atomic"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Face is one parsed typeface.
type Face struct {
	Name page.Face

	data   []byte
	tables tables
	font   *sfnt.Font
	cff    *cff          // of a file of PostScript outlines
	em     fixed.Int26_6 // units per em as a ppem, so that results are font units
	pool   sync.Pool     // *sfnt.Buffer

	box              [4]int // of all glyphs: left, bottom, right, top in 1/1000 em, up positive
	ascent, descent  int    // 1/1000 em; descent is positive
	xHeight, lowerO  int
	capHeight, digit int
	advances         [tableSize]atomic.Int32 // advance + 1; 0 = not known yet, -1 = no glyph
	kerns            [kernSize * kernSize]atomic.Int32
	mu               sync.RWMutex
	farAdvance       map[rune]int32
	farKern          map[[2]rune]int16
	inks             map[rune]Ink
	outlines         map[rune]Outline
	subsets          map[string]*Subset // by letters
	back             []func() *Face     // that stand in for it, see Owner; nil = none
	owners           map[rune]*Face
}

const (
	tableSize = 0x2200 // runes with a slot of their own in the advance table
	kernFirst = 0x20
	kernSize  = 0x60
	kernKnown = 1 << 20 // marks a filled slot of the kern table
)

// Ink is the bounding box of a glyph's outline in 1/1000 em: Left and Right
// from the origin, Top above and Bottom below the baseline (negative Bottom:
// the ink ends above it).
type Ink struct{ Left, Right, Top, Bottom int }

func open(fsys fs.FS, file string, name page.Face) (*Face, error) {
	data, err := fs.ReadFile(fsys, file)
	if err != nil {
		return nil, err
	}
	t, err := readTables(data)
	if err == nil {
		var f *Face
		if f, err = parse(name, data, t); err == nil {
			return f, nil
		}
	}
	return nil, fmt.Errorf("%s: %w", file, err)
}

// parse reads the font file of a face.
func parse(name page.Face, data []byte, t tables) (*Face, error) {
	parsed, err := sfnt.Parse(data)
	if err != nil {
		return nil, err
	}
	f := fresh(name, data, t, parsed)
	if postScript(data) {
		if f.cff, err = readCFF(t["CFF "]); err != nil {
			return nil, err
		}
	}
	return f, f.measure()
}

// fresh is a face of which nothing is measured yet.
func fresh(name page.Face, data []byte, t tables, font *sfnt.Font) *Face {
	f := &Face{
		Name: name, data: data, tables: t, font: font,
		em:         fixed.I(int(font.UnitsPerEm())),
		farAdvance: map[rune]int32{}, farKern: map[[2]rune]int16{},
		inks: map[rune]Ink{}, outlines: map[rune]Outline{}, owners: map[rune]*Face{},
	}
	f.pool.New = func() any { return new(sfnt.Buffer) }
	return f
}

// measure reads the heights that laws and layout ask for.
func (f *Face) measure() error {
	b := f.buffer()
	defer f.pool.Put(b)
	m, err := f.font.Metrics(b, f.em, font.HintingNone)
	if err != nil {
		return fmt.Errorf("%s: %w", f.Name, err)
	}
	f.ascent, f.descent = f.thousandths(m.Ascent), f.thousandths(m.Descent)
	for i := range f.box {
		f.box[i] = f.thousandths(fixed.I(i16(f.tables["head"][36+2*i:])))
	}
	f.xHeight, _ = f.Outline('x').high()
	_, f.lowerO = f.Outline('o').high()
	f.capHeight, _ = f.Outline('H').high()
	f.digit = math.MaxInt
	for r := '0'; r <= '9'; r++ {
		_, high := f.Outline(r).high()
		f.digit = min(f.digit, high)
	}
	if f.xHeight <= 0 || f.lowerO <= 0 || f.capHeight <= 0 || f.digit <= 0 {
		return &Refusal{"it lacks the basic Latin letters or digits, which every label has", "take a typeface for reading, not one of signs"}
	}
	return nil
}

func (f *Face) buffer() *sfnt.Buffer { return f.pool.Get().(*sfnt.Buffer) }

// thousandths turns font units (26.6) into 1/1000 em, rounded half away from
// zero as fpdf does.
func (f *Face) thousandths(v fixed.Int26_6) int {
	return int(math.Round(float64(v) * 1000 / float64(f.em)))
}

// Has reports whether the face draws r. Runes above U+FFFF are never drawn:
// the PDF writer addresses glyphs by 16-bit codes.
func (f *Face) Has(r rune) bool { return f.raw(r) >= 0 }

// Advance gives how far r moves the pen, in 1/1000 em; 0 for a missing glyph.
func (f *Face) Advance(r rune) int { return max(0, f.raw(r)) }

// raw is the advance in 1/1000 em, or -1 when the face has no such glyph.
func (f *Face) raw(r rune) int {
	if r >= 0 && r < tableSize {
		if v := f.advances[r].Load(); v != 0 {
			return shifted(v)
		}
		v := f.readAdvance(r)
		f.advances[r].Store(v)
		return shifted(v)
	}
	f.mu.RLock()
	v, ok := f.farAdvance[r]
	f.mu.RUnlock()
	if !ok {
		v = f.readAdvance(r)
		f.mu.Lock()
		f.farAdvance[r] = v
		f.mu.Unlock()
	}
	return shifted(v)
}

func shifted(v int32) int {
	if v < 0 {
		return -1
	}
	return int(v - 1)
}

func (f *Face) readAdvance(r rune) (advance int32) {
	if r < ' ' || r > 0xFFFF || Shaped(r) {
		return -1
	}
	if o := f.Owner(r); o != f {
		return o.readAdvance(r)
	}
	defer func() { // a typeface of the maker's may be broken anywhere
		if recover() != nil {
			advance = -1
		}
	}()
	b := f.buffer()
	defer f.pool.Put(b)
	g, err := f.font.GlyphIndex(b, r)
	if err != nil || g == 0 || !f.legible(g) {
		return -1
	}
	a, err := f.font.GlyphAdvance(b, g, f.em, font.HintingNone)
	if err != nil {
		return -1
	}
	return int32(f.thousandths(a)) + 1
}

// Kern gives the correction between a and b in 1/1000 em, from the font's
// GPOS table; negative draws them together.
func (f *Face) Kern(a, b rune) int {
	i, j := int(a)-kernFirst, int(b)-kernFirst
	if i >= 0 && i < kernSize && j >= 0 && j < kernSize {
		slot := &f.kerns[i*kernSize+j]
		if v := slot.Load(); v != 0 {
			return int(v) - kernKnown
		}
		v := f.readKern(a, b)
		slot.Store(int32(v) + kernKnown)
		return v
	}
	key := [2]rune{a, b}
	f.mu.RLock()
	v, ok := f.farKern[key]
	f.mu.RUnlock()
	if !ok {
		v = int16(f.readKern(a, b))
		f.mu.Lock()
		f.farKern[key] = v
		f.mu.Unlock()
	}
	return int(v)
}

func (f *Face) readKern(a, b rune) (kern int) {
	defer func() {
		if recover() != nil {
			kern = 0
		}
	}()
	buf := f.buffer()
	defer f.pool.Put(buf)
	ga, err := f.font.GlyphIndex(buf, a)
	if err != nil || ga == 0 {
		return 0
	}
	gb, err := f.font.GlyphIndex(buf, b)
	if err != nil || gb == 0 {
		return 0
	}
	k, err := f.font.Kern(buf, ga, gb, f.em, font.HintingNone)
	if err != nil {
		return 0
	}
	return f.thousandths(k)
}

// Width gives the width of s at a size by plain advances, without kerning:
// what a page.Seg takes.
func (f *Face) Width(s string, size unit.Length) unit.Length {
	w := 0
	for _, r := range s {
		w += f.Advance(r)
	}
	return scale(w, size)
}

// XHeight gives the height of a lower-case x at a size.
func (f *Face) XHeight(size unit.Length) unit.Length { return scale(f.xHeight, size) }

// LowerO gives the height of the ink of a lower-case o at a size, the letter
// 21 CFR 101.7(h) measures.
func (f *Face) LowerO(size unit.Length) unit.Length { return scale(f.lowerO, size) }

// CapHeight gives the height of a capital H at a size.
func (f *Face) CapHeight(size unit.Length) unit.Length { return scale(f.capHeight, size) }

// DigitHeight gives the height of the lowest digit at a size.
func (f *Face) DigitHeight(size unit.Length) unit.Length { return scale(f.digit, size) }

// Ascent gives the font's ascent above the baseline at a size.
func (f *Face) Ascent(size unit.Length) unit.Length { return scale(f.ascent, size) }

// Descent gives the font's descent below the baseline at a size, positive.
func (f *Face) Descent(size unit.Length) unit.Length { return scale(f.descent, size) }
