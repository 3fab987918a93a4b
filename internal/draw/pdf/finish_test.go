package pdf

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/face"
	"jarmark/internal/kit/unit"
)

// layout is a file as fpdf lays it out, as small as can be.
const layout = "%PDF-1.3\n1 0 obj\n<<\n/Type /Pages\n>>\nendobj\n2 0 obj\n<<\n/Type /Catalog\n/Pages 1 0 R\n>>\nendobj\n" +
	"xref\n0 3\n0000000000 65535 f \n0000000009 00000 n \n0000000043 00000 n \n" +
	"trailer\n<<\n/Size 3\n/Root 2 0 R\n/Info 1 0 R\n>>\nstartxref\n92\n%%EOF\n"

func TestFinishCompletes(t *testing.T) {
	var b bytes.Buffer
	if err := finish(&b, []byte(layout), nil, &trade{}); err != nil {
		t.Fatal(err)
	}
	got := b.String()
	if !strings.Contains(got, "2 0 obj\n<<\n/Type /Catalog\n"+preferences+"/Pages 1 0 R\n>>\nendobj\n") || !strings.Contains(got, "trailer\n<<\n/ID [<") {
		t.Errorf("not completed:\n%s", got)
	}
	at := strings.Index(got, "xref\n0 3\n")
	if !strings.HasSuffix(got, fmt.Sprintf("/Size 3\n/Root 2 0 R\n/Info 1 0 R\n>>\nstartxref\n%d\n%%%%EOF\n", at)) {
		t.Errorf("table at %d:\n%s", at, got)
	}
	for n := range 2 {
		want := fmt.Sprintf("%010d 00000 n \n", strings.Index(got, fmt.Sprintf("%d 0 obj", n+1)))
		if line := got[at+len("xref\n0 3\n")+entrySize*(n+1):][:entrySize]; line != want {
			t.Errorf("object %d: %q, want %q", n+1, line, want)
		}
	}
}

// TestFinishRefusesOtherLayouts: a file that is not as expected is refused
// whole, not patched.
func TestFinishRefusesOtherLayouts(t *testing.T) {
	for _, change := range [][2]string{
		{"%PDF-1.3", "%FDF-1.3"}, {"startxref\n92", "startxref\n99"}, {"startxref\n92", "startxref\nx"},
		{"startxref\n92", "startxref\n-5"}, {"startxref\n92", "startxref\n100000"}, {"%%EOF\n", ""},
		{"/Root 2 0 R", "/Root 9 0 R"}, {"/Root 2 0 R", "/Root 1 0 R"}, {"/Root", "/Toor"}, {"trailer\n<<\n", "trailer <<"},
		{"/Info 1", "/Info 3"}, {"/Size 3", "/Size 4"},
		{"0 3\n", "0 30\n"}, {"0 3\n", "0 -3\n"}, {"0 3\n", "1 3\n"}, {"0000000043", "0000000044"},
		{"0000000043", "x000000043"}, {"0000000009", "0000000099"}, {"/Type /Catalog", "/Type /Katalog"},
	} {
		text := strings.Replace(layout, change[0], change[1], 1)
		if text == layout {
			t.Fatalf("%v changes nothing", change)
		}
		var b bytes.Buffer
		if err := finish(&b, []byte(text), nil, &trade{}); err == nil || b.Len() > 0 {
			t.Errorf("%v: %v, wrote %d bytes", change, err, b.Len())
		}
	}
	for n := range len(layout) {
		if err := finish(&bytes.Buffer{}, []byte(layout[:n]), nil, &trade{}); err == nil {
			t.Errorf("file cut at %d accepted", n)
		}
	}
	if err := finish(&bytes.Buffer{}, []byte(layout), []*typeface{{tag: "face00", Subset: &face.Subset{}}}, &trade{}); err == nil {
		t.Error("a typeface without a place was accepted")
	}
}

func TestLengthsInPoints(t *testing.T) {
	for _, c := range []struct {
		nm   int64
		want string
	}{
		{25_400_000, "72 "}, {0, "0 "}, {1_000_000, "2.8346 "}, {-1_000_000, "-2.8346 "}, {210_000_000, "595.2756 "},
		{17, "0 "}, {18, "0.0001 "}, {-18, "-0.0001 "}, {12_700_000, "36 "}, {88_194, "0.25 "},
	} {
		var w content
		w.length(unit.Length(c.nm))
		if string(w.b) != c.want {
			t.Errorf("%d nm: %q, want %q", c.nm, w.b, c.want)
		}
	}
}
