package job_test

import (
	"fmt"
	"image"
	"image/draw"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/law/label"
)

// coded are the kinds of label that bear a code.
var coded = []label.Piece{label.Wrap, label.InfoLabel, label.ShelfCard, label.AllergCard, label.CaseLabel}

const readDPI = 300 // 0.085 mm a pixel

// TestTwoReadersAgree draws every kind of label with a code, in every design, with
// PDFium and with Poppler, two programs of other people's: both put the code where
// the layout says, to 0.1 mm, and off the pictures ZXing and ZBar, two
// implementations of ISO/IEC 18004, read the address of the record. Poppler and
// ZBar are programs apart; without them the other half still runs, unless
// JARMARK_READERS=require.
func TestTwoReadersAgree(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	designs := env.Designs.List()
	if testing.Short() {
		designs = designs[:2]
	}
	for _, d := range designs {
		t.Run(d.ID, func(t *testing.T) {
			c := job.Choices{Design: d.ID, Pieces: coded, Copies: 1, Trimmed: true}
			runs, _ := env.Labels(load(t, env, in, c), c)
			seen := map[string]bool{}
			for _, r := range runs {
				data, err := env.PDF(r.Doc)
				if err != nil {
					t.Fatal(err)
				}
				f := presstest.Open(t, data)
				second := poppler(t, data)
				for i := range r.Doc.Pages {
					p := &r.Doc.Pages[i]
					seen[p.Places[0].Frame.Piece] = true
					at := fmt.Sprintf("%s, PDFium", p.Places[0].Frame.Name)
					whereAndWhat(t, at, f.Render(i, readDPI), p)
					if second != nil {
						whereAndWhat(t, strings.Replace(at, "PDFium", "Poppler", 1), opened(t, second[i]), p)
						zbar(t, second[i], p)
					}
				}
			}
			for _, k := range coded {
				if !seen[string(k)] {
					t.Errorf("no %s was drawn", k)
				}
			}
		})
	}
}

// whereAndWhat checks the codes of one picture of a page.
func whereAndWhat(t *testing.T, at string, img *image.RGBA, p *page.Page) {
	t.Helper()
	codes := presstest.Codes(p)
	if len(codes) == 0 {
		t.Errorf("%s: no code", at)
	}
	for _, k := range codes {
		quiet := 2 * k.At.W.MM() / float64(len(k.Modules)) // half of the zone that must be blank
		x, y, w, h := k.At.X.MM(), k.At.Y.MM(), k.At.W.MM(), k.At.H.MM()
		ink := inkBox(img, readDPI, x-quiet, y-quiet, x+w+quiet, y+h+quiet)
		near(t, at+": left of the code", ink.left, x)
		near(t, at+": top", ink.top, y)
		near(t, at+": right", ink.right, x+w)
		near(t, at+": foot", ink.bottom, y+h)
	}
	for _, err := range presstest.DecodePage(img, p, readDPI) {
		t.Errorf("%s, ZXing: %v", at, err)
	}
}

// poppler draws a PDF with pdftoppm, a file a page; nil where there is none.
func poppler(t *testing.T, data []byte) []string {
	t.Helper()
	tool := reader(t, "pdftoppm")
	if tool == "" {
		return nil
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "labels.pdf"), data, 0o644); err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(tool, "-r", fmt.Sprint(readDPI), "-png", filepath.Join(dir, "labels.pdf"), filepath.Join(dir, "page")).CombinedOutput(); err != nil || len(out) > 0 {
		t.Fatalf("pdftoppm: %v %s", err, out)
	}
	pages, _ := filepath.Glob(filepath.Join(dir, "page-*.png"))
	slices.Sort(pages)
	return pages
}

// zbar reads the codes of a picture with zbarimg.
func zbar(t *testing.T, file string, p *page.Page) {
	t.Helper()
	tool := reader(t, "zbarimg")
	if tool == "" {
		return
	}
	out, err := exec.Command(tool, "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", file).Output()
	got := strings.Fields(string(out))
	for _, k := range presstest.Codes(p) {
		if err != nil || len(got) != 1 || got[0] != k.Payload {
			t.Errorf("%s, ZBar reads %q (%v), not %q", p.Places[0].Frame.Name, out, err, k.Payload)
		}
	}
}

// reader finds a program of another maker's.
func reader(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil && os.Getenv("JARMARK_READERS") == "require" {
		t.Fatalf("JARMARK_READERS=require, and there is no %s", name)
	}
	return path
}

// opened reads a picture.
func opened(t *testing.T, file string) *image.RGBA {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	out := image.NewRGBA(img.Bounds())
	draw.Draw(out, out.Bounds(), img, img.Bounds().Min, draw.Src)
	return out
}
