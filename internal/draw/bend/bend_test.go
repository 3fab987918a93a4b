package bend_test

import (
	"bytes"
	"image"
	"math"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/bend"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/png"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

const mm = unit.Millimetre

func typefaces(t *testing.T) *face.Set {
	t.Helper()
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return fs
}

// TestFrustumOfABook: "a frustum of a cone to bridge two circular ducts which are 4
// inches apart and have diameters 5 inches and 8 inches ... 7.12 inches as the inner
// radius, 11.39 inches as the outer radius, and cut at an angle of 126.4°" ("The Net
// of a Frustum", ceemrr.com/Geometry2/DrawingsNets/DrawingsNets6.html, read 27
// November 2026). The whole side, either end up.
func TestFrustumOfABook(t *testing.T) {
	in := float64(unit.Inch)
	slant := unit.Length(in * math.Hypot(4, 1.5))
	for _, up := range []bool{false, true} {
		c := &label.Content{Around: unit.Length(8 * math.Pi * in), Foot: unit.Length(5 * math.Pi * in), Straight: slant}
		if up {
			c.Around, c.Foot = c.Foot, c.Around
		}
		w, cone, ok := compose.Unrolled(c, slant, 1, 0)
		if !ok || cone.Up != up {
			t.Fatal("no piece", ok, cone)
		}
		a := cone.Arc(w, slant)
		if r := float64(a.Inner) / in; math.Abs(r-7.12) > 0.005 {
			t.Errorf("inner radius %.4f in", r)
		}
		if r := float64(a.Outer) / in; math.Abs(r-11.39) > 0.005 {
			t.Errorf("outer radius %.4f in", r)
		}
		if d := a.Angle * 180 / math.Pi; math.Abs(d-126.4) > 0.05 {
			t.Errorf("angle %.3f°", d)
		}
	}
}

// TestOutlineIsTheUnrolledSide: of label heights and jars, every point of the cut lies
// on one of two circles or on the straight ends, within 0.1 mm; the arcs are as long
// as the jar is round there (circumference between foot and rim, in proportion), less
// the gap; the ends are chords of Dr. Math's formula, c = 2R sin(θ/2).
func TestOutlineIsTheUnrolledSide(t *testing.T) {
	for _, j := range []struct{ around, foot, side, high, gap float64 }{
		{214, 196, 38, 36, 6}, {232, 206, 56, 54, 6}, {239, 208, 76, 60, 6}, {196, 214, 38, 36, 6}, {314.16, 157.08, 120, 40, 0}, {214, 205, 60, 58, 100},
	} {
		c := &label.Content{Around: unit.MM(j.around), Foot: unit.MM(j.foot), Straight: unit.MM(j.side)}
		w, cone, ok := compose.Unrolled(c, unit.MM(j.high), 1, unit.MM(j.gap))
		if !ok {
			t.Errorf("%v: no piece", j)
			continue
		}
		f := bend.Frame(&page.Frame{W: w, H: unit.MM(j.high), Shape: page.Rectangle}, cone, typefaces(t))
		off := (j.side - j.high) / 2
		less, more := min(j.around, j.foot), max(j.around, j.foot)
		narrow := less + (more-less)*off/j.side
		wide := more - (more-less)*off/j.side
		arcs := map[bool]float64{} // outer: length
		worst := 0.0
		tip := f.Arc.Tip()
		f.Outline().Trace(func(a, b page.Point) {
			r := math.Hypot((b.X - tip.X).MM(), (b.Y - tip.Y).MM())
			q := math.Hypot((a.X - tip.X).MM(), (a.Y - tip.Y).MM())
			inner, outer := narrow*j.side/(more-less), wide*j.side/(more-less)
			if math.Abs(r-q) > 1 { // an end
				if math.Abs(max(r, q)-outer) > 0.1 || math.Abs(min(r, q)-inner) > 0.1 {
					t.Errorf("%v: an end from %.2f to %.2f mm", j, q, r)
				}
				return
			}
			worst = max(worst, min(math.Abs(r-inner), math.Abs(r-outer)))
			arcs[math.Abs(r-outer) < math.Abs(r-inner)] += math.Hypot((a.X - b.X).MM(), (a.Y - b.Y).MM())
		})
		part := (narrow - j.gap) / narrow
		if worst > 0.1 || math.Abs(arcs[false]-narrow*part) > 0.1 || math.Abs(arcs[true]-wide*part) > 0.1 {
			t.Errorf("%v: %.3f mm off the circles; arcs %.2f and %.2f mm, want %.2f and %.2f", j, worst, arcs[false], arcs[true], narrow*part, wide*part)
		}
		angle := (more - less) / j.side * part
		if chord := 2 * wide * j.side / (more - less) * math.Sin(angle/2); math.Abs(f.W.MM()-chord) > 0.1 {
			t.Errorf("%v: %.2f mm wide, the chord is %.2f", j, f.W.MM(), chord)
		}
	}
}

// TestNearlyStraightStaysRectangular: a piece whose ends stand off level by less than
// half a millimetre, and jars without a cone.
func TestNearlyStraightStaysRectangular(t *testing.T) {
	for _, j := range []struct {
		around, foot, share float64
		face                float64
		want                bool
	}{{214, 213, 1, 0, true}, {214, 213.6, 0.4, 0, false}, {214, 213, 0.3, 0, false}, {214, 214, 1, 0, false}, {214, 0, 1, 0, false}, {0, 214, 1, 0, false}, {214, 196, 1, 35, false}} {
		c := &label.Content{Around: unit.MM(j.around), Foot: unit.MM(j.foot), Straight: 38 * mm, Face: unit.MM(j.face)}
		w, cone, ok := compose.Unrolled(c, 36*mm, j.share, 0)
		if ok != j.want {
			t.Errorf("%v: a part of a ring %v", j, ok)
		}
		if up := compose.Sagitta(cone.Arc(w, 36*mm)); ok && up < mm/2 {
			t.Errorf("%v: %.2f mm", j, up.MM())
		}
	}
}

// straight is a label with type, a line, a code and a picture.
func straight(t *testing.T, fs *face.Set) *page.Frame {
	t.Helper()
	black, red := page.Colour{}, page.Colour{R: 200}
	f := &page.Frame{W: 150 * mm, H: 40 * mm, Safe: 2 * mm, Shape: page.Rectangle}
	fc := fs.Face("Figtree_400Regular")
	say := func(x, y float64, s string) *page.Text {
		w := fc.Width(s, 4*mm)
		return &page.Text{Block: s, Face: fc.Name, Size: 4 * mm, At: page.Point{X: unit.MM(x), Y: unit.MM(y)}, Segs: []page.Seg{{S: s}}, Box: page.Rect{X: unit.MM(x), Y: unit.MM(y) - 4*mm, W: w, H: 5 * mm}}
	}
	long := &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{{X: 0, Y: 35 * mm}, {X: 150 * mm, Y: 35 * mm}}, Stroke: &red, Width: mm / 2}
	dot := &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.Close}, Pts: []page.Point{{}, {X: 50 * mm}, {Y: 50 * mm}}, Fill: &red}
	code := &page.Code{At: page.Rect{X: 120 * mm, Y: 8 * mm, W: 20 * mm, H: 20 * mm}, Quiet: 4, Dark: black, Payload: "https://thornfield.example/x"}
	var err error
	if code.Modules, err = presstest.Matrix(code.Payload); err != nil {
		t.Fatal(err)
	}
	f.Items = []page.Item{long, say(8, 8, "plums and pears"), say(8, 16, "of an old tree"), say(8, 24, "by the lane"), code,
		&page.Picture{At: page.Rect{X: 90 * mm, Y: 10 * mm, W: 10 * mm, H: 10 * mm}, Image: &page.Image{W: 50_000, H: 50_000, Art: []*page.Path{dot}}}}
	return f
}

// TestWhatStandsOnIt: words keep their shape and their distance, follow level lines
// and stand in one column; a level line is an arc; code and picture are turned.
func TestWhatStandsOnIt(t *testing.T) {
	fs := typefaces(t)
	flat := straight(t, fs)
	for _, up := range []bool{false, true} {
		cone := page.Cone{Inner: 300 * mm, Up: up}
		f := bend.Frame(flat, cone, fs)
		tip := f.Arc.Tip()
		polar := func(p page.Point) (r, angle float64) {
			x, y := (p.X - tip.X).MM(), (tip.Y - p.Y).MM()
			if up {
				y = -y
			}
			return math.Hypot(x, y), math.Atan2(x, y)
		}
		level := func(y float64) float64 {
			if up {
				return 300 + y
			}
			return 340 - y
		}
		lines := map[string][]*page.Text{}
		for _, it := range f.Items {
			switch it := it.(type) {
			case *page.Text:
				lines[it.Block] = append(lines[it.Block], it)
			case *page.Path:
				it.Trace(func(_, b page.Point) {
					if r, _ := polar(b); math.Abs(r-level(35)) > 0.01 {
						t.Errorf("up %v: a level line is %.3f mm off", up, r-level(35))
					}
				})
			case *page.Code:
				r, a := polar(page.Point{X: it.At.X + it.At.W/2, Y: it.At.Y + it.At.H/2})
				if math.Abs(r-level(18)) > 0.01 || math.Abs(a-55./300) > 1e-5 || math.Abs(math.Abs(it.Turn)-a*180/math.Pi) > 1e-3 || (it.Turn < 0) != up {
					t.Errorf("up %v: the code at %.2f mm, %.4f, turned %.2f°", up, r, a, it.Turn)
				}
			case *page.Picture:
				if it.At.W != 10*mm || it.Turn == 0 {
					t.Errorf("up %v: the picture is not turned", up)
				}
			}
		}
		for block, y := range map[string]float64{"plums and pears": 8, "of an old tree": 16, "by the lane": 24} {
			words := lines[block]
			if len(words) != len(strings.Fields(block)) {
				t.Fatalf("up %v: %q is %d words", up, block, len(words))
			}
			said := ""
			for i, w := range words {
				said += w.String()
				if w.Segs[0].X != 0 {
					t.Errorf("up %v: %q begins %.2f mm after its place", up, w, w.Segs[0].X.MM())
				}
				half := float64(w.Box.W.MM() / 2)
				sin, cos := page.SinCos(w.Turn)
				r, a := polar(page.Point{X: w.At.X + unit.MM(half*cos), Y: w.At.Y + unit.MM(half*sin)})
				if math.Abs(r-level(y)) > 0.01 {
					t.Errorf("up %v: %q stands %.3f mm off its line", up, w, r-level(y))
				}
				from := fs.Face(w.Face).Width(block[:strings.Index(block, strings.TrimSpace(w.String()))], w.Size).MM()
				if want := -67./300 + (from+half)/r; math.Abs(a-want) > 1e-4 {
					t.Errorf("up %v: %q stands at %.5f, want %.5f", up, w, a, want)
				}
				if i == 0 && w.Box.X != w.At.X {
					t.Error("the box left its word")
				}
			}
			if said != block {
				t.Errorf("%q became %q", block, said)
			}
		}
	}
}

// TestBentLabelsPrintAlike: PDFium and our own drawing agree, and the code is read off
// both.
func TestBentLabelsPrintAlike(t *testing.T) {
	fs := typefaces(t)
	f := bend.Frame(straight(t, fs), page.Cone{Inner: 300 * mm}, fs)
	doc := &page.Doc{Pages: []page.Page{{W: 8 * unit.Inch, H: 4*unit.Inch - 2000, Places: []page.Placement{{Frame: f, At: page.Point{X: 10 * mm, Y: 10 * mm}}}}}}
	var b bytes.Buffer
	if err := pdf.Write(&b, doc, fs); err != nil {
		t.Fatal(err)
	}
	printed := presstest.Open(t, b.Bytes()).Render(0, 200)
	drawn, err := png.Page(doc, 0, fs, 200)
	if err != nil {
		t.Fatal(err)
	}
	sum, n := 0.0, 0
	for y := range drawn.Bounds().Dy() {
		for x := range drawn.Bounds().Dx() {
			a, b := printed.RGBAAt(x, y), drawn.RGBAAt(x, y)
			sum += math.Abs(float64(a.G) - float64(b.G))
			n++
		}
	}
	for name, img := range map[string]*image.RGBA{"PDFium": printed, "png": drawn} {
		for _, it := range f.Items {
			if c, ok := it.(*page.Code); ok {
				at := presstest.Pixels(page.Rect{X: c.At.X + 10*mm, Y: c.At.Y + 10*mm, W: c.At.W, H: c.At.H}, 200, 6)
				if got, err := presstest.DecodeQR(img, at); err != nil || got != c.Payload {
					t.Errorf("%s: the code reads %q: %v", name, got, err)
				}
			}
		}
	}
	if mean := sum / float64(n) / 255; mean > 0.002 {
		t.Errorf("the pictures differ by %.4f on average", mean)
	}
}
