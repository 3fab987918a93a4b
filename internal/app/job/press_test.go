package job_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

var (
	subset = regexp.MustCompile(`/(?:FontName|BaseFont) /(\S+)`)
	tagged = regexp.MustCompile(`^[A-Z]{6}\+`)     // ISO 32000-1, 9.6.4
	apart  = regexp.MustCompile(`(?:\p{Lu} ){3,}`) // "R H U B A R B"
)

// TestEveryKindIsReadyForPress looks at the PDF of every kind of label in every
// design as a print shop would: the names of parts of fonts are those of ISO 32000-1,
// 9.6.4; dark type is pure black, which is not screened, as are codes; no line is
// thinner than a quarter of a point (both common practice, no source); and two readers,
// PDFium and where it is installed Poppler, find words, not letters set apart.
func TestEveryKindIsReadyForPress(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	designs := env.Designs.List()
	if testing.Short() {
		designs = designs[:3]
	}
	for _, d := range designs {
		for _, p := range label.Pieces {
			c := job.Choices{Design: d.ID, Pieces: []label.Piece{p}, Copies: 1, Sheet: "letter-plain"}
			runs, found := env.Labels(load(t, env, in, c), c)
			if found.HasErrors() || len(runs) != 1 {
				t.Fatalf("%s %s: %v", d.ID, p, found)
			}
			at := d.ID + " " + string(p)
			pressed(t, at, runs[0].Doc)
			data, err := env.PDF(runs[0].Doc)
			if err != nil {
				t.Fatal(err)
			}
			for _, m := range subset.FindAllSubmatch(data, -1) {
				if !tagged.Match(m[1]) {
					t.Errorf("%s: a font is called %s", at, m[1])
				}
			}
			for who, text := range map[string]string{"PDFium": presstest.Open(t, data).Text(0), "Poppler": popplerText(t, data)} {
				if s := apart.FindString(text); s != "" {
					t.Errorf("%s: %s reads %q", at, who, s)
				}
			}
		}
	}
}

// pressed looks at the inks and lines of a document's labels.
func pressed(t *testing.T, at string, doc *page.Doc) {
	t.Helper()
	black := page.Colour{}
	for _, pl := range doc.Pages[0].Places {
		for _, it := range pl.Frame.Items {
			switch x := it.(type) {
			case *page.Text:
				if x.Colour != black && palette.Contrast(x.Colour, black) < 1.5 {
					t.Errorf("%s: %q is nearly black, %v", at, x.String(), x.Colour)
				}
			case *page.Code:
				if x.Dark != black {
					t.Errorf("%s: the code is %v", at, x.Dark)
				}
			case *page.Path:
				if x.Stroke != nil && x.Width < unit.Points(0.25) {
					t.Errorf("%s: a line of %.3f pt", at, x.Width.Points())
				}
			}
		}
	}
	for _, m := range doc.Pages[0].Marks {
		if x, ok := m.(*page.Path); ok && x.Stroke != nil && x.Width < unit.Points(0.25)-unit.Micrometre/100 {
			t.Errorf("%s: a mark of %.3f pt", at, x.Width.Points())
		}
	}
}

// popplerText is what pdftotext reads; nothing where it is not installed.
func popplerText(t *testing.T, data []byte) string {
	t.Helper()
	tool := reader(t, "pdftotext")
	if tool == "" {
		return ""
	}
	file := filepath.Join(t.TempDir(), "a.pdf")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(tool, "-layout", file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	return string(out)
}
