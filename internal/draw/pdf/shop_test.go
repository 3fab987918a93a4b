package pdf_test

import (
	"encoding/binary"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
)

// shopDoc is labels of every shape as a print shop gets them.
func shopDoc(t *testing.T) *page.Doc {
	d := &page.Doc{Title: "Quince (labels)", Author: "Thornfield Lane", Lang: "en", Created: 1_790_000_000}
	bow := &page.Frame{Shape: page.Sector, Arc: page.Cone{Inner: mm(300)}.Arc(mm(150), mm(40))}
	bow.W, bow.H = bow.Arc.Size()
	for _, f := range []*page.Frame{label(t, "https://example.org/r/L1"), {W: mm(60), H: mm(60), Shape: page.Ellipse},
		{W: mm(50), H: mm(90), Shape: page.TagShape}, {W: mm(80), H: mm(50), Shape: page.Rectangle, Corner: mm(4)}, bow} {
		f.Bleed = mm(3)
		d.Pages = append(d.Pages, page.Page{W: f.W + mm(6), H: f.H + mm(6), Trim: page.Rect{X: mm(3), Y: mm(3), W: f.W, H: f.H},
			Places: []page.Placement{{Frame: f, At: at(3, 3)}}})
	}
	return d
}

// inks is a profile of four inks as small as can be: an ink and its colour are looked up
// nowhere here.
func inks() *page.Profile {
	return &page.Profile{Name: "Newsprint (try)", Inks: 4, Data: []byte("profile of a press")}
}

// TestForAPrintShop: what the rules of PDF/X-4 (ISO 15930-7) ask that can be read off the
// objects. The standard is not free; its rules are taken as two public checkers word
// them: "OutputIntent must contain exactly one PDF/X entry", "Destination profile must be
// embedded", "Trapped key must be True or False", "CreationDate, ModDate and Title
// required", "Document ID must be present in PDF trailer", "Either TrimBox or ArtBox must
// be present", "Page boxes must be nested properly" (github.com/Padam87/pdfbox-preflight,
// issue 1, read 27 November 2026), and the XMP of PDF/X-4 (WeasyPrint, pdf/pdfx.py,
// read the same day).
func TestForAPrintShop(t *testing.T) {
	d := shopDoc(t)
	d.Profile = inks()
	data := write(t, d)
	presstest.Open(t, data)
	o := readObjects(t, data)
	if !strings.HasPrefix(string(data), "%PDF-1.6\n%\xE2\xE3\xCF\xD3\n") {
		t.Errorf("begins %q", data[:16])
	}
	if after(o.info(), "/Trapped") != "/False" || !strings.Contains(o.info(), "/Title") || !strings.Contains(o.trailer(), "/ID [<") {
		t.Errorf("%s %s", o.info(), o.trailer())
	}
	cat := o.catalog()
	if n := strings.Count(cat, "/S /GTS_PDFX "); n != 1 {
		t.Errorf("%d output intents of PDF/X: %s", n, cat)
	}
	if got := o.data[o.follow(cat, "/DestOutputProfile")]; got != string(d.Profile.Data) || after(cat, "/OutputConditionIdentifier") != `(Newsprint \(try\))` {
		t.Errorf("printing condition %q %q", after(cat, "/OutputConditionIdentifier"), got)
	}
	for _, banned := range []string{"/Encrypt", "/AA", "/OpenAction", "/JavaScript", "/EmbeddedFiles", "/Annots", "/LZWDecode", "/TR ", "/HTP", "/AS ", "/PostScript"} {
		if strings.Contains(string(data), banned) {
			t.Errorf("the file has %s", banned)
		}
	}
	x := o.says()
	at := "2026-09-21T14:13:20Z" // date -u -d @1790000000
	for key, want := range map[string]string{
		"http://www.npes.org/pdfx/ns/id/GTS_PDFXVersion": "PDF/X-4", "http://ns.adobe.com/pdf/1.3/Trapped": "False",
		"http://purl.org/dc/elements/1.1/title": d.Title, "http://ns.adobe.com/xap/1.0/CreateDate": at, "http://ns.adobe.com/xap/1.0/ModifyDate": at,
		"http://ns.adobe.com/xap/1.0/mm/VersionID": "1", "http://ns.adobe.com/xap/1.0/mm/RenditionClass": "default",
	} {
		if x[key] != want {
			t.Errorf("XMP %s: %q, want %q", key, x[key], want)
		}
	}
	if !regexp.MustCompile(`^uuid:[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$`).MatchString(x["http://ns.adobe.com/xap/1.0/mm/DocumentID"]) {
		t.Error(x["http://ns.adobe.com/xap/1.0/mm/DocumentID"])
	}
	if !strings.Contains(o.info(), "/CreationDate (D:20260921141320Z)") || !strings.Contains(o.info(), "/ModDate (D:20260921141320Z)") {
		t.Errorf("days: %s", o.info())
	}
	for i, p := range o.pages() {
		nested(t, i, d.Pages[i], p)
	}
}

// nested: the trim lies in the bleed, the bleed in the page, each where the label says.
func nested(t *testing.T, i int, want page.Page, dict string) {
	t.Helper()
	box := func(key string) (v [4]float64) {
		for k, f := range strings.Fields(strings.Trim(after(dict, key), "[]")) {
			v[k], _ = strconv.ParseFloat(f, 64)
		}
		return v
	}
	trim, bleed := box("/TrimBox"), box("/BleedBox")
	if trim[0]-bleed[0] < 8.4 || bleed[2]-trim[2] < 8.4 || math.Abs(trim[2]-trim[0]-want.Trim.W.Points()) > 0.1 || math.Abs(trim[3]-trim[1]-want.Trim.H.Points()) > 0.1 {
		t.Errorf("page %d: trim %v in bleed %v", i+1, trim, bleed)
	}
}

// TestColoursOfAPrintShopFile: numbers of red, green and blue are led to sRGB wherever
// something is drawn (ISO 32000-1, 8.6.5.6), black stays black ink alone, and without the
// shop's profile the file claims nothing.
func TestColoursOfAPrintShopFile(t *testing.T) {
	d := shopDoc(t)
	o := readObjects(t, write(t, d))
	if strings.Contains(o.catalog(), "OutputIntents") || o.says()["http://www.npes.org/pdfx/ns/id/GTS_PDFXVersion"] != "" {
		t.Errorf("claims a printing condition nobody named: %s", o.catalog())
	}
	drawn := 0
	for n, dict := range o.by {
		if !strings.Contains(dict, "/ProcSet") {
			continue
		}
		drawn++
		_, space, ok := strings.Cut(dict, "/ColorSpace <</DefaultRGB [/ICCBased ")
		m := regexp.MustCompile(`^(\d+) 0 R\]`).FindStringSubmatch(space)
		if !ok || m == nil {
			t.Fatalf("object %d draws with colours of no profile: %s", n, dict)
		}
		icc, _ := strconv.Atoi(m[1])
		if got := o.data[icc]; len(got) < 400 || got[36:40] != "acsp" || got[12:20] != "mntrRGB " || after(o.by[icc], "/N") != "3 " {
			t.Errorf("object %d: %q %q", icc, o.by[icc], got[:40])
		}
	}
	if drawn < 6 {
		t.Errorf("%d resources", drawn)
	}
	plain := readObjects(t, write(t, repeated(t, 2)))
	if strings.Contains(string(plain.file), "ICCBased") || strings.Contains(plain.catalog(), "Metadata") {
		t.Error("a file for the maker's own printer bears a profile too")
	}
}

// TestProfileOfSRGB holds the profile against its own definition: the primaries of
// IEC 61966-2-1 (x, y: red 0.64 0.33, green 0.30 0.60, blue 0.15 0.06, white D65 0.3127
// 0.3290; ITU-R BT.709-6, table 1, has the same), adapted to D50 by the Bradford matrix
// (ICC.1:2010, annex E.3). From memory, all three.
func TestProfileOfSRGB(t *testing.T) {
	d := shopDoc(t)
	o := readObjects(t, write(t, d))
	icc := ""
	for _, s := range o.data {
		if len(s) > 128 && s[36:40] == "acsp" {
			icc = s
		}
	}
	if len(icc) < 132 || int(binary.BigEndian.Uint32([]byte(icc))) != len(icc) {
		t.Fatal("no profile of its size")
	}
	number := func(tag string, k int) float64 {
		for i := range int(binary.BigEndian.Uint32([]byte(icc[128:]))) {
			e := icc[132+12*i:]
			if e[:4] == tag {
				at := int(binary.BigEndian.Uint32([]byte(e[4:])))
				return float64(int32(binary.BigEndian.Uint32([]byte(icc[at+8+4*k:])))) / 65536
			}
		}
		t.Fatalf("no tag %s", tag)
		return 0
	}
	bradford := [3][3]float64{{0.8951, 0.2664, -0.1614}, {-0.7502, 1.7135, 0.0367}, {0.0389, -0.0685, 1.0296}}
	mul := func(m [3][3]float64, v [3]float64) (out [3]float64) {
		for i := range 3 {
			out[i] = m[i][0]*v[0] + m[i][1]*v[1] + m[i][2]*v[2]
		}
		return out
	}
	xyz := func(x, y float64) [3]float64 { return [3]float64{x / y, 1, (1 - x - y) / y} }
	d65, d50 := xyz(0.3127, 0.3290), [3]float64{0.9642, 1, 0.8249}
	prim := [3][3]float64{xyz(0.64, 0.33), xyz(0.30, 0.60), xyz(0.15, 0.06)}
	var m [3][3]float64 // columns: the primaries
	for i := range 3 {
		m[i] = [3]float64{prim[0][i], prim[1][i], prim[2][i]}
	}
	share := mul(inverse(m), d65)
	src, dst := mul(bradford, d65), mul(bradford, d50)
	for i, tag := range []string{"rXYZ", "gXYZ", "bXYZ"} {
		p := prim[i]
		for k := range p {
			p[k] *= share[i]
		}
		cone := mul(bradford, p)
		for k := range cone {
			cone[k] *= dst[k] / src[k]
		}
		for k, want := range mul(inverse(bradford), cone) {
			if got := number(tag, k); math.Abs(got-want) > 0.0006 {
				t.Errorf("%s %d: %.5f, want %.5f", tag, k, got, want)
			}
		}
	}
	for k, want := range []float64{2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045} {
		if got := number("bTRC", k+1); math.Abs(got-want) > 2e-5 {
			t.Errorf("curve %d: %.5f, want %.5f", k, got, want)
		}
	}
}

func inverse(m [3][3]float64) (out [3][3]float64) {
	det := 0.0
	for i := range 3 {
		for j := range 3 {
			a, b, c, d := m[(j+1)%3][(i+1)%3], m[(j+2)%3][(i+2)%3], m[(j+1)%3][(i+2)%3], m[(j+2)%3][(i+1)%3]
			out[i][j] = a*b - c*d
		}
	}
	for i := range 3 {
		det += m[0][i] * out[i][0]
	}
	for i := range 3 {
		for j := range 3 {
			out[i][j] /= det
		}
	}
	return out
}

// TestCutLayer: the contour of every shape is a layer named "cut" of an ink of that name,
// over what it crosses, on the label's outline to 0.1 mm; a straight label has none unless
// one is asked for.
func TestCutLayer(t *testing.T) {
	d := shopDoc(t)
	o := readObjects(t, write(t, d))
	names := regexp.MustCompile(`<</Type /OCG /Name \((\w+)\)>>`)
	var layers []string
	for _, dict := range o.by {
		if m := names.FindStringSubmatch(dict); m != nil {
			layers = append(layers, m[1])
		}
	}
	for n, s := range o.data {
		if strings.Contains(s, "/OC /registration BDC") {
			t.Errorf("object %d: a corner on a page that is all label", n)
		}
	}
	if len(layers) != 2 || !strings.Contains(o.catalog(), "/OCProperties <</OCGs [") || !strings.Contains(string(o.file), "[/Separation /cut ") || !strings.Contains(string(o.file), "/OP true /op true") {
		t.Errorf("layers %v, %s", layers, o.catalog())
	}
	for i, pg := range d.Pages {
		content := ""
		for n, dict := range o.by {
			if strings.Contains(dict, "/Form") && strings.Contains(o.data[n], "/OC /cut BDC") && strings.Contains(dict, fmt.Sprintf("[0.00 0.00 %.2f %.2f]", pg.W.Points(), pg.H.Points())) {
				content = o.data[n]
			}
		}
		_, cut, _ := strings.Cut(content, "/OC /cut BDC /over gs /cut CS 1 SCN\n")
		cut, _, _ = strings.Cut(cut, "EMC")
		outline(t, i+1, pg, cut)
	}
	flat := shopDoc(t)
	flat.Pages = flat.Pages[:1]
	if o := readObjects(t, write(t, flat)); strings.Contains(o.catalog(), "OCProperties") {
		t.Error("a label cut straight has a contour")
	}
	flat.CutLines = true
	if o := readObjects(t, write(t, flat)); !strings.Contains(o.catalog(), "OCProperties") {
		t.Error("no contour though one was asked for")
	}
}

// outline compares the points of a drawn line with the label's outline.
func outline(t *testing.T, n int, pg page.Page, drawn string) {
	t.Helper()
	want := pg.Places[0].Frame.Outline()
	var got []page.Point
	var v []float64
	for _, f := range strings.Fields(drawn) {
		if x, err := strconv.ParseFloat(f, 64); err == nil {
			v = append(v, x)
			continue
		}
		if f == "m" || f == "l" || f == "c" {
			for k := 0; k+1 < len(v); k += 2 {
				got = append(got, page.Point{X: unit.Points(v[k]), Y: pg.H - unit.Points(v[k+1])})
			}
		}
		v = nil
	}
	if len(got) != len(want.Pts) || len(got) == 0 {
		t.Fatalf("page %d: %d points, want %d: %q", n, len(got), len(want.Pts), drawn)
	}
	for k, p := range got {
		if d := math.Hypot((p.X - want.Pts[k].X - mm(3)).MM(), (p.Y - want.Pts[k].Y - mm(3)).MM()); d > 0.1 {
			t.Errorf("page %d: point %d is %.2f mm off", n, k, d)
		}
	}
}

// TestRegistrationOnSheets: a sheet with lines to cut has black corners in a layer of
// their own; a print shop's page, all label, has none.
func TestRegistrationOnSheets(t *testing.T) {
	d := repeated(t, 3)
	d.CutLines = true
	for n, s := range readObjects(t, write(t, d)).data {
		if _, marks, ok := strings.Cut(s, "/OC /registration BDC"); ok {
			if strings.Count(marks, " S\n") != 2 { // the two at the head would lie on labels
				t.Errorf("object %d: corners %q", n, marks)
			}
			return
		}
	}
	t.Error("no corners for a machine to find")
}
