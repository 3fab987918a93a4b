package face_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
)

func postScript(t testing.TB) []byte {
	t.Helper()
	data, err := presstest.PostScript(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

const cffLetters = " !&0123456789AOQRSgåßЖяΩé–%@fi"

type spot struct{ x, y float64 }

// polyline is an outline by x/image/font/sfnt as lines, in ems, y down; n to a curve.
func polyline(s sfnt.Segments, em float64, n int) (out [][]spot) { return bentLine(s, em, n, 2./3) }

// bentLine is polyline with the control points of a cubic so far to a quadratic's.
func bentLine(s sfnt.Segments, em float64, n int, reach float64) (out [][]spot) {
	at := func(p fixed.Point26_6) spot { return spot{float64(p.X) / 64 / em, float64(p.Y) / 64 / em} }
	var p spot
	for _, s := range s {
		a, b, c := at(s.Args[0]), at(s.Args[1]), at(s.Args[2])
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			out, p = append(out, []spot{a}), a
			continue
		case sfnt.SegmentOpLineTo:
			b, c = spot{p.x + (a.x-p.x)*2/3, p.y + (a.y-p.y)*2/3}, a
			a = spot{p.x + (a.x-p.x)/3, p.y + (a.y-p.y)/3}
		case sfnt.SegmentOpQuadTo:
			end := b
			a, b, c = spot{p.x + (a.x-p.x)*reach, p.y + (a.y-p.y)*reach}, spot{end.x + (a.x-end.x)*reach, end.y + (a.y-end.y)*reach}, end
		}
		for i := 1; i <= n; i++ {
			t := float64(i) / float64(n)
			u := 1 - t
			k, l, m, o := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
			out[len(out)-1] = append(out[len(out)-1], spot{k*p.x + l*a.x + m*b.x + o*c.x, k*p.y + l*a.y + m*b.y + o*c.y})
		}
		p = c
	}
	return out
}

// area is the ink of contours that do not cross; positive where it is on the right.
func area(contours [][]spot) (sum float64) {
	for _, c := range contours {
		for i, p := range c {
			q := c[(i+1)%len(c)]
			sum += (p.x*q.y - q.x*p.y) / 2
		}
	}
	return sum
}

// apart is how far a point of one outline, each fourth, lies off the other, at most.
func apart(a, b [][]spot) (most float64) {
	for _, c := range a {
		for i := 0; i < len(c); i += 4 {
			p, near := c[i], math.Inf(1)
			for _, d := range b {
				for i, q := range d {
					near = min(near, toLine(p, q, d[(i+1)%len(d)]))
				}
			}
			most = max(most, near)
		}
	}
	return most
}

func toLine(p, a, b spot) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = max(0, min(1, ((p.x-a.x)*dx+(p.y-a.y)*dy)/l))
	}
	return math.Hypot(p.x-a.x-t*dx, p.y-a.y-t*dy)
}

// asDrawn are the contours of an outline as PNG and SVG draw it.
func asDrawn(o face.Outline) (out [][]spot) {
	p := o.Pts
	var s sfnt.Segments
	at := func(v face.Vec) fixed.Point26_6 { // a million to the em
		return fixed.Point26_6{X: fixed.Int26_6(math.Round(v.X * 64e4)), Y: fixed.Int26_6(math.Round(v.Y * 64e4))}
	}
	for _, op := range o.Ops {
		switch op {
		case page.MoveTo:
			s, p = append(s, sfnt.Segment{Op: sfnt.SegmentOpMoveTo, Args: [3]fixed.Point26_6{at(p[0])}}), p[1:]
		case page.LineTo:
			s, p = append(s, sfnt.Segment{Op: sfnt.SegmentOpLineTo, Args: [3]fixed.Point26_6{at(p[0])}}), p[1:]
		case page.CubicTo:
			s, p = append(s, sfnt.Segment{Op: sfnt.SegmentOpCubeTo, Args: [3]fixed.Point26_6{at(p[0]), at(p[1]), at(p[2])}}), p[3:]
		}
	}
	return polyline(s, 1e4, 48)
}

// embedded is a letter as the file in a PDF has it, read by x/image/font/sfnt, and
// its advance in ems.
func embedded(t *testing.T, s *face.Subset, r rune) ([][]spot, float64) {
	t.Helper()
	font, err := sfnt.Parse(s.Data)
	if err != nil {
		// a PDF wants no cmap, name and post, the library does: the tables of Go Regular
		font, err = sfnt.Parse(withTables(t, s.Data, "cmap", "name", "post", "OS/2"))
	}
	if err != nil {
		t.Fatal(err)
	}
	em := fixed.I(int(font.UnitsPerEm()))
	g, err := font.LoadGlyph(nil, sfnt.GlyphIndex(s.Glyph(r)), em, nil)
	if err != nil {
		t.Fatal(err)
	}
	advance, err := font.GlyphAdvance(nil, sfnt.GlyphIndex(s.Glyph(r)), em, 0)
	if err != nil {
		t.Fatal(err)
	}
	if units := font.UnitsPerEm(); len(g) > 0 && bearing(s.Data, s.Glyph(r)) != left(s.Data, s.Glyph(r)) {
		t.Errorf("%q is moved: its bearing of %d of %d is not the left of its box, %d", r, bearing(s.Data, s.Glyph(r)), units, left(s.Data, s.Glyph(r)))
	}
	return polyline(g, float64(font.UnitsPerEm()), 48), float64(advance) / float64(em)
}

// bearing and left are the left side bearing of a glyph in hmtx and xMin in glyf: a
// rasteriser moves the glyph by what they differ (OpenType specification, hmtx).
func bearing(data []byte, g uint16) int16 {
	at, _ := table(data, "hmtx")
	return int16(binary.BigEndian.Uint16(data[at+4*int(g)+2:]))
}

func left(data []byte, g uint16) int16 {
	loca, _ := table(data, "loca")
	glyf, _ := table(data, "glyf")
	return int16(binary.BigEndian.Uint16(data[glyf+int(binary.BigEndian.Uint32(data[loca+4*int(g):]))+2:]))
}

// TestPostScriptOutlines: an OpenType file of cubic curves with flex, fractions, hint
// masks and subroutines draws what the TrueType file it was made of draws; in a PDF
// within half of 1/1000 em of it, of the same area and width.
func TestPostScriptOutlines(t *testing.T) {
	own, err := face.Own("Alder.otf", postScript(t))
	if err != nil {
		t.Fatal(err)
	}
	want, err := face.Own("Alder.ttf", goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	s, err := own.Subset([]rune(cffLetters))
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range cffLetters {
		if !own.Has(r) || own.Advance(r) != want.Advance(r) || own.Kern('A', r) != want.Kern('A', r) {
			t.Errorf("%q: another width", r)
		}
		held(t, s, r, own, asDrawn(want.Outline(r)), 0.01)
	}
}

// TestCubicsAreApproximated: curves that no quadratic is keep the same bounds.
func TestCubicsAreApproximated(t *testing.T) {
	const reach = 0.95
	data, err := presstest.PostScriptOf(goregular.TTF, reach, nil)
	if err != nil {
		t.Fatal(err)
	}
	own, err := face.Own("Alder.otf", data)
	if err != nil {
		t.Fatal(err)
	}
	s, err := own.Subset([]rune("Sg&0@"))
	if err != nil {
		t.Fatal(err)
	}
	font, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range s.Runes {
		g, _ := font.GlyphIndex(nil, r)
		em := font.UnitsPerEm()
		segments, err := font.LoadGlyph(nil, g, fixed.I(int(em)), nil)
		if err != nil {
			t.Fatal(err)
		}
		held(t, s, r, own, bentLine(segments, float64(em), 48, reach), 0.02)
	}
}

// held compares a letter as drawn and as embedded with its outline; it may be drawn off
// by some 1/1000 em.
func held(t *testing.T, s *face.Subset, r rune, own *face.Face, want [][]spot, drawn float64) {
	t.Helper()
	got := asDrawn(own.Outline(r))
	if off := 1000 * max(apart(got, want), apart(want, got)); len(got) != len(want) || off > drawn {
		t.Errorf("%q is drawn %.3f/1000 em off", r, off)
	}
	in, advance := embedded(t, s, r)
	if off := 1000 * max(apart(in, want), apart(want, in)); off > 0.5 {
		t.Errorf("%q is embedded %.3f/1000 em off", r, off)
	}
	if a, b := math.Abs(area(in)), math.Abs(area(want)); math.Abs(a-b) > 0.01*b {
		t.Errorf("%q: ink of %.5f em² is embedded as %.5f", r, b, a)
	}
	if len(in) > 0 && area(in) < 0 {
		t.Errorf("%q: the ink is left of its contours, not right as TrueType wants it", r)
	}
	if int(math.Round(1000*advance)) != own.Advance(r) {
		t.Errorf("%q: embedded advance %.4f em, measured %d/1000", r, advance, own.Advance(r))
	}
}

// TestPostScriptOfOthers holds typefaces in use, as Debian packs them (fonts-cantarell,
// fonts-lmodern, fonts-texgyre), against x/image/font/sfnt, which reads their outlines by
// itself; their letters with flex1 it cannot read, and fractions they have none of.
func TestPostScriptOfOthers(t *testing.T) {
	var files []string
	for _, where := range []string{"/usr/share/fonts/opentype/cantarell/*Regular.otf", "/usr/share/texmf/fonts/opentype/public/lm/lmroman10*.otf", "/usr/share/texmf/fonts/opentype/public/tex-gyre/*-regular.otf"} {
		found, _ := filepath.Glob(where)
		files = append(files, found...)
	}
	if testing.Short() {
		files = files[:min(len(files), 2)]
	}
	seen := 0
	for _, file := range files {
		data, err := os.ReadFile(file)
		if err != nil || string(data[:4]) != "OTTO" {
			continue
		}
		own, err := face.Own(file, data)
		if err != nil {
			t.Logf("%s: %v", file, err)
			continue
		}
		seen++
		font, err := sfnt.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		s, err := own.Subset([]rune("&0RSgß@"))
		if err != nil {
			t.Fatal(file, err)
		}
		t.Run(filepath.Base(file), func(t *testing.T) {
			em := fixed.I(int(font.UnitsPerEm()))
			for _, r := range s.Runes {
				g, _ := font.GlyphIndex(nil, r)
				segments, err := font.LoadGlyph(nil, g, em, nil)
				if err != nil {
					continue
				}
				held(t, s, r, own, polyline(segments, float64(font.UnitsPerEm()), 48), 0.01)
			}
		})
	}
	if seen == 0 {
		t.Skip("no OpenType files with PostScript outlines are installed")
	}
}

// withTables is a font file with tables of Go Regular added.
func withTables(t *testing.T, data []byte, tags ...string) []byte {
	t.Helper()
	all := map[string][]byte{}
	for i := range int(binary.BigEndian.Uint16(data[4:])) {
		tag := string(data[12+16*i : 16+16*i])
		at, size := table(data, tag)
		all[tag] = data[at : at+size]
	}
	for _, tag := range tags {
		at, size := table(goregular.TTF, tag)
		all[tag] = goregular.TTF[at : at+size]
	}
	return append([]byte{0, 1, 0, 0}, presstest.Assembled(all)[4:]...)
}

// TestPostScriptRefused: what is broken, loops or varies is told.
func TestPostScriptRefused(t *testing.T) {
	good := postScript(t)
	at, size := table(good, "CFF ")
	with := func(from int, b ...byte) []byte {
		out := bytes.Clone(good)
		copy(out[at+from:], b)
		return out
	}
	loop := with(size-3, 32, 10, 11) // the subroutine calls itself
	for name, c := range map[string]struct {
		data []byte
		what string
	}{
		"version": {with(0, 2), "broken"}, "names": {with(4, 0xff, 0xff), "broken"}, "loop": {loop, "lacks the basic Latin letters"},
		"half": {good[:at+size/2], "broken"}, "cff2": {bytes.Replace(good, []byte("CFF "), []byte("CFF2"), 1), "variable"},
		"neither": {bytes.Replace(good, []byte("CFF "), []byte("CFX "), 1), "broken"},
	} {
		f, err := face.Own("x.otf", c.data)
		var r *face.Refusal
		if f != nil || !errors.As(err, &r) || !strings.Contains(r.What, c.what) || r.Hint == "" {
			t.Errorf("%s: %v, want a refusal that says %q", name, err, c.what)
		}
	}
}
