package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

const mm = unit.Millimetre

func faces(t testing.TB) *face.Set {
	t.Helper()
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return fs
}

// sample is a label with every kind of item, odd characters and a bleed.
func sample() *page.Frame {
	green, red := page.Colour{R: 40, G: 90, B: 60}, page.Colour{R: 0xb3, G: 0x20, B: 0x2a}
	box := []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close}
	modules := make([][]bool, 21)
	for y := range modules {
		modules[y] = make([]bool, 21)
		for x := range modules[y] {
			modules[y][x] = (x*y+x)%3 == 0
		}
	}
	return &page.Frame{
		W: 80 * mm, H: 50 * mm, Shape: page.Rectangle, Corner: 3 * mm, Bleed: 2 * mm, Name: `front of "plum" <jam> & more`,
		Items: []page.Item{
			&page.Path{Ops: box, Pts: []page.Point{{X: -2 * mm, Y: -2 * mm}, {X: 82 * mm, Y: -2 * mm}, {X: 82 * mm, Y: 52 * mm}, {X: -2 * mm, Y: 52 * mm}},
				Fill: &page.Colour{R: 0xff, G: 0xf7, B: 0xee}, Bleed: true},
			&page.Path{Ops: []page.Op{page.MoveTo, page.CubicTo, page.CubicTo, page.Close, page.LineTo},
				Pts: []page.Point{{X: 10 * mm, Y: 10 * mm}, {X: 20 * mm, Y: 2 * mm}, {X: 30 * mm, Y: 2 * mm}, {X: 40 * mm, Y: 10 * mm},
					{X: 30 * mm, Y: 18 * mm}, {X: 20 * mm, Y: 18 * mm}, {X: 10 * mm, Y: 10 * mm}, {X: 5 * mm, Y: 20 * mm}},
				Fill: &green, Stroke: &red, Width: 400 * unit.Micrometre, Round: true},
			&page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{{X: 5 * mm, Y: 30 * mm}, {X: 45 * mm, Y: 30 * mm}},
				Stroke: &red, Width: 300 * unit.Micrometre, Dash: []unit.Length{2 * mm, mm}},
			&page.Text{Block: "identity", Face: "Fraunces_600SemiBold", Size: 7 * mm, At: page.Point{X: 6 * mm, Y: 28 * mm},
				Segs: []page.Seg{{S: "Pl"}, {X: 7 * mm, S: "um & lime"}}, Colour: red},
			&page.Text{Block: "net", Face: "Figtree_700Bold", Size: 4 * mm, At: page.Point{X: 76 * mm, Y: 45 * mm}, Turn: -90,
				Segs: []page.Seg{{S: "NET WT 10 OZ (283 g)"}}},
			&page.Code{Block: "qr", At: page.Rect{X: 48 * mm, Y: 28 * mm, W: 15 * mm, H: 15 * mm}, Modules: modules, Quiet: 4, Payload: "https://example.org/?a=1&b=2"},
		},
	}
}

func draw(t testing.TB, f *page.Frame, fs *face.Set) string {
	t.Helper()
	var b bytes.Buffer
	if err := Frame(&b, f, nil, fs); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// walk reads a picture with encoding/xml, which accepts well-formed XML only.
func walk(t testing.TB, s string, each func(xml.StartElement)) (text string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(s))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return text
		}
		if err != nil {
			t.Fatalf("not XML: %v", err)
		}
		switch tok := tok.(type) {
		case xml.StartElement:
			each(tok)
		case xml.CharData:
			text += string(tok) + "\n"
		}
	}
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return a.Value
		}
	}
	return ""
}

// Structure after SVG 1.1: known elements only, every reference resolves
// inside the picture, ids are unique, nothing scripted or fetched.
func TestPictureIsClosedAndValid(t *testing.T) {
	f := sample()
	doc := &page.Doc{Title: "a & b", Pages: []page.Page{{W: 210 * mm, H: 297 * mm, Places: []page.Placement{
		{Frame: f, At: page.Point{X: mm, Y: mm}}, {Frame: f, At: page.Point{X: 100 * mm, Y: mm}, Turn: 90},
	}, Marks: f.Items[2:3]}}, ScaleX: 1.01, OffsetY: mm / 2}
	var sheet bytes.Buffer
	if err := Page(&sheet, doc, 0, faces(t)); err != nil {
		t.Fatal(err)
	}
	for name, s := range map[string]string{"frame": draw(t, f, faces(t)), "page": sheet.String()} {
		ids, refs := map[string]int{}, map[string]bool{}
		root := true
		text := walk(t, s, func(e xml.StartElement) {
			if root && (e.Name.Local != "svg" || e.Name.Space != "http://www.w3.org/2000/svg" || attr(e, "role") != "img") {
				t.Errorf("%s: root is %v", name, e)
			}
			root = false
			if !strings.Contains(" svg title desc defs clipPath path g use ", " "+e.Name.Local+" ") {
				t.Errorf("%s: element %s", name, e.Name.Local)
			}
			for _, a := range e.Attr {
				switch {
				case a.Name.Local == "id":
					ids[a.Value]++
				case a.Name.Local == "href":
					refs[strings.TrimPrefix(a.Value, "#")] = true
				case strings.HasPrefix(a.Value, "url(#"):
					refs[strings.TrimSuffix(strings.TrimPrefix(a.Value, "url(#"), ")")] = true
				case strings.HasPrefix(a.Name.Local, "on") || strings.Contains(a.Value, "://") && a.Name.Local != "xmlns":
					t.Errorf("%s: attribute %v", name, a)
				}
			}
		})
		for id, n := range ids {
			if n != 1 || !refs[id] {
				t.Errorf("%s: id %s defined %d times, used: %v", name, id, n, refs[id])
			}
		}
		for r := range refs {
			if ids[r] != 1 {
				t.Errorf("%s: reference to %q", name, r)
			}
		}
		if name == "frame" && (!strings.Contains(text, f.Name) || !strings.Contains(text, "NET WT 10 OZ (283 g)") || !strings.Contains(text, "a=1&b=2")) {
			t.Errorf("title or description lack words: %q", text)
		}
	}
}

// The size is in true millimetres and the user unit is one of them.
func TestSizeInMillimetres(t *testing.T) {
	f := sample()
	f.W, f.H = unit.MM(63.5), unit.MM(38.1)
	walk(t, draw(t, f, faces(t)), func(e xml.StartElement) {
		if e.Name.Local == "svg" && (attr(e, "width") != "63.5mm" || attr(e, "height") != "38.1mm" || attr(e, "viewBox") != "0 0 63.5 38.1") {
			t.Errorf("root %v", e.Attr)
		}
	})
}

func TestSameBytesAndShared(t *testing.T) {
	fs := faces(t)
	a, b := draw(t, sample(), fs), draw(t, sample(), fs)
	if a != b {
		t.Error("two pictures of one label differ")
	}
	f := sample()
	d := &page.Doc{Pages: []page.Page{{W: 210 * mm, H: 297 * mm}}}
	var once, many bytes.Buffer
	d.Pages[0].Places = []page.Placement{{Frame: f}}
	if err := Page(&once, d, 0, fs); err != nil {
		t.Fatal(err)
	}
	for i := range 20 {
		d.Pages[0].Places = append(d.Pages[0].Places, page.Placement{Frame: f, At: page.Point{Y: unit.Length(i) * mm}})
	}
	if err := Page(&many, d, 0, fs); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(many.String(), `id="Figtree-700Bold-54"`); n != 1 { // T of NET WT
		t.Errorf("letter T is defined %d times", n)
	}
	if grow := many.Len() - once.Len(); grow > 20*100 {
		t.Errorf("20 more labels cost %d bytes", grow)
	}
}

// BenchmarkFrame draws a full label; a preview should take a screen's frame or
// two, 20 ms (common practice, no source).
func BenchmarkFrame(b *testing.B) {
	fs := faces(b)
	f := sample()
	for i := range 40 {
		f.Items = append(f.Items, &page.Text{Face: "Figtree_400Regular", Size: 2 * mm, At: page.Point{X: mm, Y: unit.Length(i) * mm},
			Segs: []page.Seg{{S: "Ingredients strawberries, sugar, rhubarb, lemon juice, pectin."}}})
	}
	for b.Loop() {
		if err := Frame(io.Discard, f, nil, fs); err != nil {
			b.Fatal(err)
		}
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestRefusals(t *testing.T) {
	fs := faces(t)
	with := func(it page.Item) *page.Frame { return &page.Frame{W: 9 * mm, H: 9 * mm, Items: []page.Item{it}} }
	black := page.Colour{}
	for name, f := range map[string]*page.Frame{
		"nil":      nil,
		"no size":  {},
		"face":     with(&page.Text{Face: "Nosuch", Size: mm, Segs: []page.Seg{{S: "x"}}}),
		"letter":   with(&page.Text{Face: "Figtree_400Regular", Size: mm, Segs: []page.Seg{{S: "\U0001F353"}}}),
		"turn":     with(&page.Text{Face: "Figtree_400Regular", Size: mm, Turn: math.NaN(), Segs: []page.Seg{{S: "x"}}}),
		"path":     with(&page.Path{Ops: []page.Op{page.MoveTo, page.CubicTo}, Pts: make([]page.Point, 2), Fill: &black}),
		"op":       with(&page.Path{Ops: []page.Op{77}, Fill: &black}),
		"qr":       with(&page.Code{Modules: [][]bool{{true}, {}}}),
		"qr ahead": with(&page.Code{Modules: [][]bool{{true, true}, {true}}}),
	} {
		var b bytes.Buffer
		if err := Frame(&b, f, nil, fs); err == nil || b.Len() > 0 {
			t.Errorf("%s: error %v, %d bytes written", name, err, b.Len())
		}
	}
	if err := Frame(failing{}, sample(), nil, fs); err == nil || !strings.Contains(err.Error(), "disk full") {
		t.Errorf("writer's error is %v", err)
	}
	if err := Frame(io.Discard, sample(), nil, nil); err == nil {
		t.Error("no typefaces: no error")
	}
	for _, d := range []*page.Doc{nil, {}, {Pages: []page.Page{{W: mm, H: mm, Places: make([]page.Placement, 1)}}}} {
		if err := Page(io.Discard, d, 0, fs); err == nil {
			t.Error("a broken document: no error")
		}
	}
}

// The lines to cut along lie in one named layer above all, an outline for each
// label where it lies; without being asked for there is none.
func TestCutLines(t *testing.T) {
	f, tag := sample(), &page.Frame{W: 50 * mm, H: 90 * mm, Shape: page.TagShape}
	doc := &page.Doc{Pages: []page.Page{{W: 210 * mm, H: 297 * mm, Places: []page.Placement{
		{Frame: f, At: page.Point{X: mm, Y: mm}}, {Frame: tag, At: page.Point{X: 100 * mm, Y: 20 * mm}, Turn: 90}}}}}
	for _, asked := range []bool{true, false} {
		doc.CutLines = asked
		var b bytes.Buffer
		if err := Page(&b, doc, 0, faces(t)); err != nil {
			t.Fatal(err)
		}
		in, lines, last, marks := 0, []string(nil), "", false
		walk(t, b.String(), func(e xml.StartElement) {
			if attr(e, "id") == "cut-lines" {
				in++
			}
			marks = marks || attr(e, "id") == "registration-marks"
			if in > 0 && !marks && e.Name.Local == "path" {
				lines, last = append(lines, attr(e, "d")), attr(e, "stroke")
			}
		})
		if !asked {
			if in != 0 {
				t.Error("a layer nobody asked for")
			}
			continue
		}
		if in != 1 || len(lines) != 2 || last != "#f0f" && last != "#ff00ff" {
			t.Fatalf("%d layers, lines %q in %q", in, lines, last)
		}
		if n := strings.Count(strings.ToLower(lines[1]), "z"); n != 2 {
			t.Errorf("the tag's line has %d parts, want edge and hole", n)
		}
	}
}
