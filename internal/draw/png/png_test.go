package png

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/png"
	"math"
	"reflect"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	qr "github.com/skip2/go-qrcode"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

const mm = unit.Millimetre

var (
	black = page.Colour{}
	red   = page.Colour{R: 200, G: 30, B: 40}
)

func faces(t testing.TB) *face.Set {
	t.Helper()
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return fs
}

func frame(w, h unit.Length, items ...page.Item) *page.Frame {
	return &page.Frame{W: w, H: h, Shape: page.Rectangle, Items: items}
}

// alone is a page as large as the label on it.
func alone(f *page.Frame) *page.Doc {
	p := page.Page{Places: []page.Placement{{Frame: f}}}
	if f != nil {
		p.W, p.H = f.W, f.H
	}
	return &page.Doc{Pages: []page.Page{p}}
}

func render(t testing.TB, f *page.Frame, dpi float64) *image.RGBA {
	t.Helper()
	img, err := Page(alone(f), 0, faces(t), dpi)
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// inkBounds gives the dark part of a picture in mm.
func inkBounds(img *image.RGBA, dpi float64) (x0, y0, x1, y1 float64) {
	r := image.Rectangle{Min: image.Pt(1<<30, 1<<30), Max: image.Pt(-1, -1)}
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			if img.RGBAAt(x, y).R < 128 {
				r.Min = image.Pt(min(r.Min.X, x), min(r.Min.Y, y))
				r.Max = image.Pt(max(r.Max.X, x+1), max(r.Max.Y, y+1))
			}
		}
	}
	k := 25.4 / dpi
	return float64(r.Min.X) * k, float64(r.Min.Y) * k, float64(r.Max.X) * k, float64(r.Max.Y) * k
}

// Capital and x-height of drawn letters against the font file's metrics.
func TestTextInkAgreesWithMetrics(t *testing.T) {
	const dpi = 600
	fs := faces(t)
	size := 10 * mm
	for _, name := range []page.Face{"Figtree_400Regular", "Fraunces_600SemiBold"} {
		f := fs.Face(name)
		for letter, want := range map[string]unit.Length{"H": f.CapHeight(size), "x": f.XHeight(size)} {
			txt := &page.Text{Face: name, Size: size, At: page.Point{X: 2 * mm, Y: 15 * mm}, Segs: []page.Seg{{S: letter}}}
			_, y0, _, y1 := inkBounds(render(t, frame(20*mm, 20*mm, txt), dpi), dpi)
			near(t, string(name)+" height of "+letter, y1-y0, want.MM(), 0.09)
			near(t, string(name)+" foot of "+letter, y1, 15, 0.09)
		}
		word := &page.Text{Face: name, Size: size / 2, At: page.Point{X: 2 * mm, Y: 15 * mm}, Segs: []page.Seg{{S: "HH"}, {X: 20 * mm, S: "H"}}}
		x0, _, x1, _ := inkBounds(render(t, frame(40*mm, 20*mm, word), dpi), dpi)
		ink := f.Ink('H')
		near(t, "left ink", x0, 2+float64(ink.Left)*5/1000, 0.06)
		near(t, "right ink of the second stretch", x1, 22+float64(ink.Right)*5/1000, 0.06)
	}
}

// Turned 90° clockwise about its start, text runs downward with its feet to
// the left.
func TestTurnedText(t *testing.T) {
	const dpi = 300
	txt := &page.Text{Face: "Figtree_700Bold", Size: 5 * mm, At: page.Point{X: 10 * mm, Y: 5 * mm}, Turn: 90, Segs: []page.Seg{{S: "HHH"}}}
	x0, y0, x1, y1 := inkBounds(render(t, frame(30*mm, 30*mm, txt), dpi), dpi)
	f := faces(t).Face("Figtree_700Bold")
	near(t, "feet", x0, 10, 0.1)
	near(t, "heads", x1, 10+f.CapHeight(5*mm).MM(), 0.1)
	if y0 < 5 || y1-y0 < 7 {
		t.Errorf("runs from %.2f to %.2f mm", y0, y1)
	}
}

func code(t testing.TB, payload string, at page.Rect) *page.Code {
	t.Helper()
	q, err := qr.New(payload, qr.Medium)
	if err != nil {
		t.Fatal(err)
	}
	q.DisableBorder = true
	return &page.Code{At: at, Modules: q.Bitmap(), Quiet: 4, Payload: payload}
}

func decode(t *testing.T, img image.Image) string {
	t.Helper()
	bmp, err := gozxing.NewBinaryBitmapFromImage(img)
	if err != nil {
		t.Fatal(err)
	}
	r, err := qrcode.NewQRCodeReader().Decode(bmp, map[gozxing.DecodeHintType]interface{}{gozxing.DecodeHintType_TRY_HARDER: true})
	if err != nil {
		return "not decoded: " + err.Error()
	}
	return r.GetText()
}

// gozxing, an independent decoder, reads the code off the picture at screen
// and print resolution, upright and turned, with modules of 0.35 to 0.5 mm
// that do not fall on pixels.
func TestCodesDecode(t *testing.T) {
	const payload = "https://example.org/r/L26165-SR"
	for _, dpi := range []float64{150, 300, 203} {
		for _, side := range []unit.Length{unit.MM(10.17), unit.MM(12), unit.MM(14.5)} {
			k := code(t, payload, page.Rect{X: unit.MM(4.113), Y: unit.MM(5.271), W: side, H: side})
			f := frame(26*mm, 24*mm, k)
			if got := decode(t, render(t, f, dpi)); got != payload {
				t.Errorf("%g dpi, %.2f mm: %s", dpi, side.MM(), got)
			}
			d := &page.Doc{Pages: []page.Page{{W: 60 * mm, H: 60 * mm, Places: []page.Placement{{Frame: f, At: page.Point{X: unit.MM(7.31), Y: unit.MM(9.77)}, Turn: 90}}}}}
			img, err := Page(d, 0, faces(t), dpi)
			if err != nil {
				t.Fatal(err)
			}
			if got := decode(t, img); got != payload {
				t.Errorf("turned, %g dpi, %.2f mm: %s", dpi, side.MM(), got)
			}
		}
	}
}

func TestPagePlacesTurnsAndCorrects(t *testing.T) {
	const dpi = 254 // ten pixels to the millimetre
	spot := circle(page.Point{X: 3 * mm, Y: 2 * mm}, mm)
	spot.Fill = &black
	f := frame(20*mm, 10*mm, spot)
	over := circle(page.Point{X: 17 * mm, Y: 8 * mm}, mm)
	over.Fill = &black
	d := &page.Doc{Pages: []page.Page{{W: 60 * mm, H: 60 * mm, Places: []page.Placement{
		{Frame: f, At: page.Point{X: 10 * mm, Y: 30 * mm}, Turn: 90, Overlay: []page.Item{over}},
	}}}}
	dark := func(d *page.Doc, x, y float64) bool {
		img, err := Page(d, 0, faces(t), dpi)
		if err != nil {
			t.Fatal(err)
		}
		return img.RGBAAt(int(x*10), int(y*10)).R < 100
	}
	// Turned clockwise, frame (x, y) stands at (H - y, x) in its place.
	for _, c := range []struct{ x, y float64 }{{10 + 10 - 2, 30 + 3}, {10 + 10 - 8, 30 + 17}} {
		if !dark(d, c.x, c.y) {
			t.Errorf("no dot at %v", c)
		}
	}
	d.ScaleX, d.ScaleY, d.OffsetX, d.OffsetY = 1.1, 0.9, 2*mm, -1*mm
	if !dark(d, 18*1.1+2, 33*0.9-1) {
		t.Error("printer correction moved the dot elsewhere")
	}
}

func TestSamePictureEveryTime(t *testing.T) {
	f := frame(30*mm, 20*mm, circle(page.Point{X: 9 * mm, Y: 9 * mm}, 5*mm), code(t, "again", page.Rect{X: mm, Y: mm, W: 9 * mm, H: 9 * mm}))
	a, b := render(t, f, 150), render(t, f, 150)
	var x, y bytes.Buffer
	if err := Encode(&x, a, 300); err != nil {
		t.Fatal(err)
	}
	if err := Encode(&y, b, 300); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a, b) || !bytes.Equal(x.Bytes(), y.Bytes()) {
		t.Error("two pictures of one label differ")
	}
}

// What cannot be drawn is an error, never a panic.
func TestRefusals(t *testing.T) {
	fs := faces(t)
	text := func(name page.Face, s string) *page.Frame {
		return frame(9*mm, 9*mm, &page.Text{Face: name, Size: 3 * mm, Segs: []page.Seg{{S: s}}})
	}
	broken := &page.Path{Ops: []page.Op{page.MoveTo, page.CubicTo}, Pts: []page.Point{{}, {}}, Fill: &black}
	for name, f := range map[string]*page.Frame{
		"no frame":       nil,
		"no size":        frame(0, 5*mm),
		"negative":       frame(-5*mm, 5*mm),
		"huge":           frame(9000*unit.Metre, 9000*unit.Metre),
		"no such face":   text("Nosuch_400", "x"),
		"no such letter": text("Figtree_400Regular", "\U0001F353"),
		"broken path":    frame(9*mm, 9*mm, broken),
		"unknown op":     frame(9*mm, 9*mm, &page.Path{Ops: []page.Op{9}, Fill: &black}),
		"line first":     frame(9*mm, 9*mm, &page.Path{Ops: []page.Op{page.LineTo}, Pts: []page.Point{{}}, Fill: &black}),
		"ragged QR code": frame(9*mm, 9*mm, &page.Code{Modules: [][]bool{{true}, {true, false}}}),
	} {
		if _, err := Page(alone(f), 0, fs, 150); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	for _, dpi := range []float64{0, -1, math.NaN(), math.Inf(1), 1e9} {
		if _, err := Page(alone(frame(9*mm, 9*mm)), 0, fs, dpi); err == nil {
			t.Errorf("%g dpi: no error", dpi)
		}
	}
	if _, err := Page(alone(text("Figtree_400Regular", "x")), 0, nil, 150); err == nil {
		t.Error("no typefaces: no error")
	}
	for _, d := range []*page.Doc{nil, {}, {Pages: []page.Page{{W: 9 * mm, H: 9 * mm, Places: make([]page.Placement, 1)}}}} {
		if _, err := Page(d, 0, fs, 150); err == nil {
			t.Error("a broken document: no error")
		}
	}
	far := frame(9*mm, 9*mm, ruled(mm, page.Point{X: math.MinInt64 / 4, Y: 0}, page.Point{X: math.MaxInt64 / 4, Y: 9 * mm}))
	if _, err := Page(alone(far), 0, fs, 150); err != nil {
		t.Errorf("a line from far away: %v", err)
	}
}

func BenchmarkPage(b *testing.B) {
	txt := &page.Text{Face: "Figtree_400Regular", Size: 3 * mm, At: page.Point{X: 2 * mm, Y: 15 * mm}, Segs: []page.Seg{{S: "Ingredients strawberries, sugar, rhubarb"}}}
	f := frame(90*mm, 50*mm, txt, code(b, "https://example.org/r/1", page.Rect{X: 60 * mm, Y: 20 * mm, W: 20 * mm, H: 20 * mm}))
	fs := faces(b)
	for range b.N {
		if _, err := Page(alone(f), 0, fs, 200); err != nil {
			b.Fatal(err)
		}
	}
}

// A picture says how large it is, or it prints at any size: pHYs holds whole
// dots per metre and the unit 1, before the image data (ISO/IEC 15948,
// 11.3.5.3); 300 dots per inch are 11811 per metre.
func TestResolutionIsStored(t *testing.T) {
	for dpi, want := range map[float64]uint32{72: 2835, 300: 11811, 600: 23622} {
		var b bytes.Buffer
		if err := Encode(&b, render(t, frame(20*mm, 10*mm), 72), dpi); err != nil {
			t.Fatal(err)
		}
		i, data := bytes.Index(b.Bytes(), []byte("pHYs")), bytes.Index(b.Bytes(), []byte("IDAT"))
		if i < 0 || i > data || binary.BigEndian.Uint32(b.Bytes()[i-4:]) != 9 {
			t.Fatalf("pHYs at %d, data at %d", i, data)
		}
		if x, y, u := binary.BigEndian.Uint32(b.Bytes()[i+4:]), binary.BigEndian.Uint32(b.Bytes()[i+8:]), b.Bytes()[i+12]; x != want || y != want || u != 1 {
			t.Errorf("%g dpi: %d x %d in unit %d", dpi, x, y, u)
		}
		if _, err := png.Decode(&b); err != nil { // checks each chunk's sum
			t.Error(err)
		}
	}
}
