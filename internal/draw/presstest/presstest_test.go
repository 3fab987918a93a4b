package presstest_test

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

var mm = unit.MM

func sample(t *testing.T, payload string) (*page.Doc, []byte) {
	t.Helper()
	m, err := presstest.Matrix(payload)
	if err != nil {
		t.Fatal(err)
	}
	fr := &page.Frame{W: mm(60), H: mm(40), Items: []page.Item{
		&page.Text{Face: "Figtree_400Regular", Size: mm(4), At: page.Point{X: mm(5), Y: mm(10)}, Segs: []page.Seg{{S: "one jar two"}}},
		&page.Code{At: page.Rect{X: mm(35), Y: mm(15), W: mm(20), H: mm(20)}, Modules: m, Payload: payload},
	}}
	d := &page.Doc{Pages: []page.Page{{W: mm(150), H: mm(100), Places: []page.Placement{
		{Frame: fr, At: page.Point{X: mm(5), Y: mm(5)}}, {Frame: fr, At: page.Point{X: mm(80), Y: mm(20)}, Turn: 90},
	}}}}
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := pdf.Write(&b, d, fs); err != nil {
		t.Fatal(err)
	}
	return d, b.Bytes()
}

func TestFind(t *testing.T) {
	_, raw := sample(t, "https://example.org/r/1")
	f := presstest.Open(t, raw)
	if n := len(f.Find(0, "jar two")); n != 2 {
		t.Errorf("found %d times, want 2", n)
	}
	if len(f.Find(0, "three")) != 0 || len(f.Find(0, " ")) != 0 {
		t.Error("found what is not there")
	}
	if got := f.Squeezed(0); !strings.HasPrefix(got, "onejartwo") {
		t.Errorf("squeezed %q", got)
	}
}

// TestDecodePageTellsWrongCodes: the check must fail where it should.
func TestDecodePageTellsWrongCodes(t *testing.T) {
	d, raw := sample(t, "https://example.org/r/1")
	img := presstest.Open(t, raw).Render(0, 200)
	if bad := presstest.DecodePage(img, &d.Pages[0], 200); len(bad) > 0 {
		t.Fatalf("sound codes: %v", bad)
	}
	if n := len(presstest.Codes(&d.Pages[0])); n != 2 {
		t.Fatalf("%d codes, want 2", n)
	}
	code := d.Pages[0].Places[0].Frame.Items[1].(*page.Code)
	code.Payload = "https://example.org/r/2"
	if bad := presstest.DecodePage(img, &d.Pages[0], 200); len(bad) != 2 {
		t.Errorf("other payload: %v", bad)
	}
	draw.Draw(img, img.Bounds(), image.NewUniform(color.White), image.Point{}, draw.Src)
	if bad := presstest.DecodePage(img, &d.Pages[0], 200); len(bad) != 2 {
		t.Errorf("blank page: %v", bad)
	}
}

// TestMatrixIsStandard: size and finder patterns of a version 2 symbol
// (ISO/IEC 18004: 17 + 4 x version modules, finders of 7 in three corners).
func TestMatrixIsStandard(t *testing.T) {
	m, err := presstest.Matrix("https://example.org/r/1")
	if err != nil {
		t.Fatal(err)
	}
	n := len(m)
	if n != 25 {
		t.Fatalf("%d modules, want 25", n)
	}
	for i := range 7 {
		if !m[0][i] || !m[0][n-1-i] || !m[n-1][i] || m[7][i] {
			t.Fatal("no finder pattern in a corner")
		}
	}
}

func TestTwoFilesAtOnce(t *testing.T) {
	_, raw := sample(t, "a")
	a, b := presstest.Open(t, raw), presstest.Open(t, raw)
	if a.Pages() != 1 || b.Pages() != 1 || a.Text(0) != b.Text(0) {
		t.Error("two open files disturb each other")
	}
}
