package pdf_test

import (
	"bytes"
	"math"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

// near is what a printed mark may be off its place by.
const near = 0.1 // mm

func wantAt(t *testing.T, what string, got []presstest.Char, want ...page.Point) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: found %d times, want %d", what, len(got), len(want))
	}
	for i, w := range want {
		if math.Abs((got[i].At.X-w.X).MM()) > near || math.Abs((got[i].At.Y-w.Y).MM()) > near {
			t.Errorf("%s: at %.3f, %.3f mm, want %.3f, %.3f", what, got[i].At.X.MM(), got[i].At.Y.MM(), w.X.MM(), w.Y.MM())
		}
	}
}

func TestFactsOfTheFile(t *testing.T) {
	raw := write(t, repeated(t, 12))
	f := presstest.Open(t, raw)
	if f.Pages() != 2 {
		t.Fatalf("%d pages, want 2", f.Pages())
	}
	w, h := f.Size(1)
	if math.Abs(w.MM()-210) > 0.01 || math.Abs(h.MM()-297) > 0.01 {
		t.Errorf("page is %.3f x %.3f mm, want 210 x 297 (ISO 216 A4)", w.MM(), h.MM())
	}
	if !f.TrueSize() {
		t.Error("the print dialog is not asked for true size")
	}
	if !bytes.Contains(raw, []byte("/ViewerPreferences << /PrintScaling /None >>")) || !bytes.HasPrefix(raw, []byte("%PDF-1.6\n")) {
		t.Error("no print scaling entry, or not marked PDF 1.6")
	}
	for key, want := range map[string]string{
		"Title": "Gooseberry water (labels)", "Author": "Thornfield Lane Preserves",
		"CreationDate": "D:20260921141320", "ModDate": "D:20260921141320",
	} {
		if got := f.Meta(key); got != want {
			t.Errorf("%s is %q, want %q", key, got, want)
		}
	}
	if f.Lang() != "en-US" {
		t.Errorf("language %q", f.Lang())
	}
}

func TestFontsAreEmbedded(t *testing.T) {
	raw := write(t, repeated(t, 3))
	got := presstest.Open(t, raw).Fonts(0)
	if len(got) != 2 {
		t.Fatalf("fonts %v, want 2", got)
	}
	for _, f := range got {
		if !f.Embedded {
			t.Errorf("%s is not embedded", f.Name)
		}
	}
	// The two files together are 113 kB; only the used letters go in.
	if len(raw) > 60_000 {
		t.Errorf("file of %d bytes: fonts not subset?", len(raw))
	}
}

func TestTextIsReadBackInPlace(t *testing.T) {
	d := repeated(t, 3)
	f := presstest.Open(t, write(t, d))
	text := f.Text(0)
	for _, want := range []string{"Gooseberry Water", "crème fraîche (milk)", "NET WT 10 OZ (283 g)"} {
		if strings.Count(text, want) != 3 {
			t.Errorf("%q is not there 3 times in %q", want, text)
		}
	}
	wantAt(t, "NET", f.Find(0, "NET WT"), at(4+8, 10+44), at(105+8, 10+44), at(4+8, 65+44))
	wantAt(t, "kerned piece", f.Find(0, "ter"), at(4+8+51, 10+20), at(105+8+51, 10+20), at(4+8+51, 65+20))
	if size := f.Find(0, "NET WT")[0].Size.Points(); math.Abs(size-9) > 0.005 {
		t.Errorf("text is set in %.3f pt, want 9", size)
	}
}

func TestTurnedLabelAndTurnedText(t *testing.T) {
	fr := &page.Frame{W: mm(60), H: mm(30), Items: []page.Item{line(regular, 10, 10, 20, ink, "Plum")}}
	up := line(regular, 10, 100, 200, ink, "Quince")
	up.Turn = -90
	slant := line(regular, 10, 150, 200, ink, "Damson")
	slant.Turn = 30
	slant.Segs = []page.Seg{{X: mm(5), S: "Dam"}, {X: mm(15), S: "son"}}
	d := &page.Doc{Pages: []page.Page{{W: mm(210), H: mm(297), Marks: []page.Item{up, slant}, Places: []page.Placement{
		{Frame: fr, At: at(20, 40), Turn: 90}, {Frame: fr, At: at(90, 40)},
		{Frame: &page.Frame{W: mm(60), H: mm(30), Bleed: mm(2), Items: fr.Items}, At: at(150, 40), Turn: 90},
	}}}}
	f := presstest.Open(t, write(t, d))
	// Clockwise by 90 degrees, (x, y) of a 60 x 30 label goes to (30 - y, x).
	wantAt(t, "label", f.Find(0, "Plum"), at(20+30-20, 40+10), at(90+10, 40+20), at(150+30-20, 40+10))
	wantAt(t, "upward", f.Find(0, "Quince"), at(100, 200))
	wantAt(t, "upward, third letter", f.Find(0, "ince")[:1], at(100, 200-widthMM(t, "Qu")))
	cos, sin := math.Cos(math.Pi/6), math.Sin(math.Pi/6)
	wantAt(t, "slanted", f.Find(0, "Damson"), at(150+5*cos, 200+5*sin))
	wantAt(t, "slanted, second piece", f.Find(0, "son"), at(150+15*cos, 200+15*sin))
}

func widthMM(t *testing.T, s string) float64 {
	return faces(t).Face(regular).Width(s, unit.Points(10)).MM()
}

func TestPrinterCorrection(t *testing.T) {
	d := repeated(t, 1)
	d.ScaleX, d.ScaleY, d.OffsetX, d.OffsetY = 1.01, 0.99, mm(1.5), mm(-2)
	f := presstest.Open(t, write(t, d))
	wantAt(t, "NET", f.Find(0, "NET WT"), at(12*1.01+1.5, 54*0.99-2))
}

func TestQRCodesDecode(t *testing.T) {
	d := serials(t, 10)
	d.Pages[0].Places[3].Turn = 90
	d.Pages[0].Places[3].At = at(20, 120)
	d.Pages[0].Places = d.Pages[0].Places[:4]
	f := presstest.Open(t, write(t, d))
	for _, dpi := range []int{150, 300} {
		for _, err := range presstest.DecodePage(f.Render(0, dpi), &d.Pages[0], float64(dpi)) {
			t.Errorf("%d dpi: %v", dpi, err)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	d := serials(t, 12)
	first := write(t, d)
	for range 8 {
		if !bytes.Equal(first, write(t, d)) {
			t.Fatal("two runs differ")
		}
	}
	d.Created++
	if bytes.Equal(first, write(t, d)) {
		t.Error("the creation date is not in the file")
	}
}

func TestFontFilesAreLeftAlone(t *testing.T) {
	s := faces(t)
	data, err := s.Bytes(regular)
	if err != nil {
		t.Fatal(err)
	}
	before := bytes.Clone(data)
	if err := pdf.Write(&bytes.Buffer{}, repeated(t, 1), s); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(before, data) {
		t.Error("writing changed the typeface in memory")
	}
}

// TestLetterSpacedTextReadsAsWords: letters set apart are read, copied and
// spoken as words; without help PDFium makes "J E L L Y" of them.
func TestLetterSpacedTextReadsAsWords(t *testing.T) {
	spaced := func(y float64, s string) *page.Text {
		out := line(regular, 9, 10, y, ink, "")
		out.Segs = nil
		x := unit.Length(0)
		for _, r := range s {
			out.Segs = append(out.Segs, page.Seg{X: x, S: string(r)})
			x += faces(t).Face(regular).Width(string(r), out.Size) + out.Size/4
		}
		return out
	}
	f := presstest.Open(t, write(t, one(spaced(20, "GELÉE"), spaced(30, "PLUM JAM"), line(regular, 9, 10, 40, ink, "after"))))
	if got := f.Text(0); got != "GELÉE\nPLUM JAM\nafter" {
		t.Errorf("read back %q", got)
	}
	wantAt(t, "spaced line", f.Find(0, "PLUM JAM"), at(10, 30))
}

// TestWritesAtTheSameTime: the local page may print from two windows.
func TestWritesAtTheSameTime(t *testing.T) {
	d, fs := serials(t, 12), faces(t)
	out := make([]bytes.Buffer, 4)
	var wg sync.WaitGroup
	for i := range out {
		wg.Add(1)
		go func() {
			defer wg.Done()
			if err := pdf.Write(&out[i], d, fs); err != nil {
				t.Error(err)
			}
		}()
	}
	wg.Wait()
	for i := range out {
		if !bytes.Equal(out[0].Bytes(), out[i].Bytes()) {
			t.Error("two writers disturb each other")
		}
	}
}

// TestManyLightPages: a roll of small labels, a page each, every form packed.
func TestManyLightPages(t *testing.T) {
	light := &page.Doc{}
	for i := range 300 {
		light.Pages = append(light.Pages, page.Page{W: mm(62), H: mm(29), Marks: []page.Item{line(regular, 9, 5, 10, ink, strconv.Itoa(1000+i))}})
	}
	raw := write(t, light)
	if f := presstest.Open(t, raw); f.Pages() != 300 || f.Text(299) != "1299" {
		t.Errorf("%d pages, last says %q", f.Pages(), f.Text(299))
	}
	// 300 pages, the file of the one face and its letters.
	if n := bytes.Count(raw, []byte("/Filter /FlateDecode")); n != 302 {
		t.Errorf("%d packed streams, want 302", n)
	}
}

// TestSubsetsAreNamed: the name of a font of which a part is embedded begins
// with six letters and a plus sign (ISO 32000-1, 9.6.4).
func TestSubsetsAreNamed(t *testing.T) {
	raw := write(t, repeated(t, 3))
	names := regexp.MustCompile(`/FontName /([A-Z]{6}\+[A-Za-z]+-[A-Za-z]+)\n`).FindAllSubmatch(raw, -1)
	if len(names) != 2 || bytes.Equal(names[0][1][:6], names[1][1][:6]) {
		t.Errorf("%q", names)
	}
}
