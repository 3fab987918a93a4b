package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"strings"
	"testing"

	"jarmark/internal/draw/artwork"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/unit"
	"jarmark/templates"
)

// layers gives the path data of the layers of a page for a cutting machine.
func layers(t *testing.T, doc *page.Doc) (cut, corners []string) {
	t.Helper()
	doc.CutLines = true
	var b bytes.Buffer
	if err := Page(&b, doc, 0, faces(t)); err != nil {
		t.Fatal(err)
	}
	layer := ""
	walk(t, b.String(), func(e xml.StartElement) {
		if id := attr(e, "id"); id == "cut-lines" || id == "registration-marks" {
			layer = id
		}
		switch {
		case e.Name.Local != "path" || layer == "":
		case layer == "cut-lines":
			cut = append(cut, attr(e, "d"))
		default:
			corners = append(corners, attr(e, "d"))
		}
	})
	return cut, corners
}

// traced reads path data back, in mm of a page.
func traced(t *testing.T, data string, w, h unit.Length) (pts []page.Point, parts int) {
	t.Helper()
	d, found := artwork.Read(fmt.Appendf(nil, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g"><path d="%s"/></svg>`, w.MM(), h.MM(), data))
	if len(found) > 0 {
		t.Fatal(found)
	}
	back := max(w.MM(), h.MM()) / 100 // the reader's box
	for _, p := range d.Paths {
		for _, q := range p.Pts {
			pts = append(pts, page.Point{X: unit.MM(q.X.MM() * back), Y: unit.MM(q.Y.MM() * back)})
		}
		for _, op := range p.Ops {
			if op == page.Close {
				parts++
			}
		}
	}
	return pts, parts
}

// shapes are labels of every shape there is.
func shapes() map[string]*page.Frame {
	out := map[string]*page.Frame{
		"rectangle": {W: 80 * mm, H: 50 * mm, Shape: page.Rectangle}, "rounded": {W: 80 * mm, H: 50 * mm, Shape: page.Rectangle, Corner: 4 * mm},
		"round": {W: 60 * mm, H: 60 * mm, Shape: page.Ellipse}, "cloth circle": {W: 140 * mm, H: 140 * mm, Shape: page.Ellipse},
		"envelope": {W: 130 * mm, H: 90 * mm, Shape: page.Rectangle}, "tag": {W: 55 * mm, H: 95 * mm, Shape: page.TagShape},
	}
	for name, up := range map[string]bool{"tapered": false, "tapered to the lid": true} {
		f := &page.Frame{Shape: page.Sector, Arc: page.Cone{Inner: 300 * mm, Up: up}.Arc(150*mm, 40*mm)}
		f.W, f.H = f.Arc.Size()
		out[name] = f
	}
	return out
}

// TestEveryShapeIsCut: the outline of every shape, upright and on its side, is in the
// layer of cut lines where the label lies, to 0.1 mm and closed; a tag with its hole.
func TestEveryShapeIsCut(t *testing.T) {
	for name, f := range shapes() {
		for _, turn := range []int{0, 90} {
			pl := page.Placement{Frame: f, At: page.Point{X: 20 * mm, Y: 30 * mm}, Turn: turn}
			doc := &page.Doc{Pages: []page.Page{{W: 210 * mm, H: 297 * mm, Places: []page.Placement{pl}}}}
			cut, corners := layers(t, doc)
			if len(cut) != 1 || len(corners) != 4 {
				t.Errorf("%s: %d lines, %d corners", name, len(cut), len(corners))
				continue
			}
			pts, parts := traced(t, cut[0], 210*mm, 297*mm)
			if want := map[bool]int{true: 2, false: 1}[f.Shape == page.TagShape]; parts != want {
				t.Errorf("%s: %d closed parts, want %d", name, parts, want)
			}
			box := pl.Reach()
			lo, hi := pts[0], pts[0]
			for i, q := range pts {
				if f.Shape != page.Sector || cubicEnd(f, i) {
					lo.X, lo.Y, hi.X, hi.Y = min(lo.X, q.X), min(lo.Y, q.Y), max(hi.X, q.X), max(hi.Y, q.Y)
				}
				x, y := q.X-pl.At.X, q.Y-pl.At.Y
				if turn == 90 {
					x, y = y, f.H-x
				}
				want := f.Outline().Pts[i]
				if d := math.Hypot((x - want.X).MM(), (y - want.Y).MM()); d > 0.1 {
					t.Errorf("%s turned %d: point %d is %.2f mm off", name, turn, i, d)
					break
				}
			}
			for _, d := range []unit.Length{lo.X - box.X, lo.Y - box.Y, box.X + box.W - hi.X, box.Y + box.H - hi.Y} {
				if d.MM() > 0.1 || d.MM() < -0.1 {
					t.Errorf("%s turned %d: the line misses the label's box by %.2f mm", name, turn, d.MM())
				}
			}
		}
	}
}

// cubicEnd reports whether point i of a sector's outline lies on it.
func cubicEnd(f *page.Frame, i int) bool {
	tip, q := f.Arc.Tip(), f.Outline().Pts[i]
	r := math.Hypot((q.X - tip.X).MM(), (q.Y - tip.Y).MM())
	return math.Abs(r-f.Arc.Inner.MM()) < 0.01 || math.Abs(r-f.Arc.Outer.MM()) < 0.01
}

// TestEverySheetIsCut: of every built-in sheet every cell has its line, and no corner
// lies on a label.
func TestEverySheetIsCut(t *testing.T) {
	sheets, l := sheet.Builtin(templates.FS)
	if l.HasErrors() {
		t.Fatal(l)
	}
	marked := 0
	for _, id := range sheets.IDs() {
		s, _ := sheets.Get(id)
		c := s.Cell()
		f := &page.Frame{W: c.W, H: c.H, Shape: c.Shape, Corner: c.Corner, Bleed: c.Bleed}
		n := s.Cells()
		if s.Auto {
			f.W, f.H, n = 55*mm, 30*mm, 3
		}
		run, l := sheet.Fill(many(f, n), s, sheet.Options{})
		if l.HasErrors() {
			t.Errorf("%s: %v", id, l)
			continue
		}
		cut, corners := layers(t, run.Doc)
		if want := len(run.Doc.Pages[0].Places); len(cut) != want {
			t.Errorf("%s: %d lines for %d labels", id, len(cut), want)
		}
		p := run.Doc.Pages[0]
		if len(corners) >= 3 {
			marked++
		}
		for _, c := range corners {
			pts, _ := traced(t, strings.TrimSpace(c), p.W, p.H)
			if x, y := min(pts[1].X, p.W-pts[1].X).MM(), min(pts[1].Y, p.H-pts[1].Y).MM(); math.Abs(x-4.5) > 0.1 || math.Abs(y-4.5) > 0.1 {
				t.Errorf("%s: a corner lies %.1f and %.1f mm from the edges", id, x, y)
			}
			for i := 1; i < len(pts); i++ {
				arm := page.Rect{X: min(pts[i-1].X, pts[i].X), Y: min(pts[i-1].Y, pts[i].Y), W: max(pts[i].X-pts[i-1].X, pts[i-1].X-pts[i].X), H: max(pts[i].Y-pts[i-1].Y, pts[i-1].Y-pts[i].Y)}.Grow(page.CornerWidth/2, page.CornerWidth/2)
				for _, pl := range p.Places {
					if pl.Reach().Overlaps(arm) {
						t.Errorf("%s: a corner lies on a label", id)
					}
				}
			}
		}
	}
	if marked < 20 {
		t.Errorf("%d sheets have three corners for a machine to find", marked)
	}
}

func many(f *page.Frame, n int) (out []sheet.Label) {
	for range n {
		out = append(out, sheet.Label{Frame: f})
	}
	return out
}
