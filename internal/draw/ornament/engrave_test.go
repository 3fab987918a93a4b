package ornament

import (
	"testing"

	"jarmark/internal/draw/page"
)

// An engraving is one ink on its ground, whatever colours the fruit has.
func TestEngravingIsOneInk(t *testing.T) {
	for motif := range motifs() {
		s := spec("plum", rect(0, 0, 30, 30))
		s.Engrave, s.Ground, s.Motif = true, s.Palette.Paper, motif
		ink := tintOf(s).ink
		for _, it := range Draw("bough", s) {
			p := it.(*page.Path)
			if p.Stroke != nil && *p.Stroke != ink || p.Fill != nil && *p.Fill != s.Ground && *p.Fill != ink {
				t.Errorf("%s: drawn in %v, %v", motif, p.Stroke, p.Fill)
			}
		}
	}
}

// A round form is shaded by its lines: bare where the light falls on it, at the
// upper left as in all our drawings, and the closer the further from there; and
// no line leaves the form.
func TestEngravingShades(t *testing.T) {
	s := spec("plum", rect(0, 0, 30, 30))
	s.Engrave, s.Ground = true, s.Palette.Paper
	k := newSketch("apple", s, 1)
	c := vec{15, 15}
	k.engrave(ellipse(c, 10, 10, 0), k.tint.fruit)
	var long [3]float64 // in the light, between, in the shadow
	for _, e := range k.elements {
		for _, q := range e {
			if q.fill != nil {
				continue
			}
			for i := 1; i < len(q.pts); i++ {
				a, b := q.pts[i-1], q.pts[i]
				if q.ops[0] != page.MoveTo || b.sub(c).len() > 10.3 {
					t.Fatalf("a line leaves the form at %v", b)
				}
				if d := b.sub(a).len(); d < 6 { // not from one line to the next
					zone := 1
					if m := a.lerp(b, 0.5).sub(c); m.x+m.y < -6 {
						zone = 0
					} else if m.x+m.y > 6 {
						zone = 2
					}
					long[zone] += d
				}
			}
		}
	}
	if long[0] > long[2]/6 || long[2] < 40 || long[1] < long[0] {
		t.Errorf("lines of %.0f mm in the light, %.0f between, %.0f in the shadow", long[0], long[1], long[2])
	}
}

// To save ink the same lines are black on white.
func TestEngravingSavesInk(t *testing.T) {
	s := spec("plum", rect(0, 0, 30, 30))
	s.Engrave, s.Line, s.Ground = true, true, s.Palette.Paper
	for _, it := range Draw("bough", s) {
		p := it.(*page.Path)
		if p.Stroke != nil && *p.Stroke != black || p.Fill != nil && *p.Fill != white && *p.Fill != black {
			t.Fatalf("drawn in %v, %v", p.Stroke, p.Fill)
		}
	}
}
