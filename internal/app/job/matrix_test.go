package job_test

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Places whose rules differ in kind go through every design and sheet, each
// design with every fourth sheet, so that each sheet meets designs of its own;
// the others differ from us in a sentence and take one, or as many with
// JARMARK_MATRIX=full. A new place, design or sheet is covered by being there.
var differing = map[string]bool{"us-or": true, "us-ca": true, "us-wv": true, "gb": true, "eu": true, "de": true, "fr": true}

func thorough(place string) bool {
	return differing[place] || os.Getenv("JARMARK_MATRIX") == "full"
}

// TestMatrix composes every place x design x kind of label x sheet that suits
// it, of both papers, for the demo and the kitchen sink. Each label satisfies
// every constraint when checked anew on the finished frame (letter heights,
// zones, clear space, no overlap, nothing outside the safe area), or there is
// a finding that tells in mm what does not fit.
func TestMatrix(t *testing.T) {
	env := builtin(t)
	var mu sync.Mutex
	fits, tried := map[string]int{}, map[string]int{}
	t.Run("places", func(t *testing.T) {
		for _, p := range env.Book.List() {
			if testing.Short() && p.ID != "us-or" && p.ID != "de" {
				continue
			}
			t.Run(p.ID, func(t *testing.T) {
				t.Parallel()
				f, n := everyLabel(t, env, p.ID)
				mu.Lock()
				defer mu.Unlock()
				for k := range n {
					fits[k] += f[k]
					tried[k] += n[k]
				}
			})
		}
	})
	// A kind that no sheet ever takes would pass the above.
	for _, p := range label.Pieces {
		k := string(p)
		t.Logf("%-9s %d of %d fit", k, fits[k], tried[k])
		if tried[k] == 0 || fits[k]*4 < tried[k] {
			t.Errorf("%s: only %d of %d labels fit their sheet", k, fits[k], tried[k])
		}
	}
}

// everyLabel goes through the designs, kinds and sheets of one place.
func everyLabel(t *testing.T, env *job.Env, place string) (fits, tried map[string]int) {
	fits, tried = map[string]int{}, map[string]int{}
	designs := env.Designs.List()
	if !thorough(place) || testing.Short() {
		designs = designs[:1]
	}
	for _, in := range []job.Input{demoInput(t, demoBatches[0]), sinkInput(place)} {
		b := env.Load(in, job.Choices{Place: place})
		if len(b.Contents) == 0 || b.Contents[0] == nil {
			t.Fatalf("%s declares nothing: %v", in.Batch.Name, b.Findings)
		}
		for i, d := range designs {
			for _, p := range label.Pieces {
				for k, s := range sheetsFor(env, p, !thorough(place)) {
					if (i+k)%4 != 0 && len(designs) > 1 {
						continue
					}
					tried[string(p)]++
					if composed(t, env, b.Contents[0], d, p, s) {
						fits[string(p)]++
					}
				}
			}
		}
	}
	return fits, tried
}

func sinkInput(place string) job.Input {
	return job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte(sinkKitchen(place))}, Batch: job.Doc{Name: "sink.toml", Data: []byte(sinkBatch)}}
}

// sheetsFor gives the sheets of a piece, each size of cell once.
func sheetsFor(env *job.Env, p label.Piece, one bool) (out []*sheet.Sheet) {
	seen := map[sheet.Cell]bool{}
	for _, s := range env.Sheets.For(string(p), "") {
		if c := s.Cell(); !s.Auto && !seen[c] {
			seen[c] = true
			out = append(out, s)
		}
	}
	if one {
		return out[:min(1, len(out))]
	}
	return out
}

var inMM = regexp.MustCompile(`\d mm`)

// What the labels of the matrix share, as those of a run do.
var (
	matrixCodes    compose.Codes
	matrixDrawings compose.Drawings
)

// composed sets one label and checks it; false when it does not fit.
func composed(t *testing.T, env *job.Env, c *label.Content, d *design.Design, p label.Piece, s *sheet.Sheet) bool {
	t.Helper()
	where := fmt.Sprintf("%s %s on %s", d.ID, p, s.ID)
	cell := s.Cell()
	content := asJar(c, cell)
	r, found := compose.Compose(content, d, p, compose.Cell{W: cell.W, H: cell.H, Shape: cell.Shape, Corner: cell.Corner, Safe: cell.Safe, Bleed: cell.Bleed}, env.Faces, compose.Options{Codes: &matrixCodes, Drawings: &matrixDrawings})
	if len(r.Overflow) > 0 || found.HasErrors() {
		for _, f := range found {
			if f.Severity == diag.Error && (!inMM.MatchString(f.Message) || f.Hint == "") {
				t.Errorf("%s: what does not fit is not told in mm with a hint: %q, %q", where, f.Message, f.Hint)
			}
		}
		if !found.HasErrors() {
			t.Errorf("%s: something does not fit and no error says so", where)
		}
		return false
	}
	for _, f := range inspect.Frame(r.Frame, content, env.Faces, inspect.Default()) {
		if f.Severity == diag.Error {
			t.Errorf("%s: %s", where, f.Message)
		}
	}
	if at, ok := outside(r.Frame); ok {
		t.Errorf("%s: %s", where, at)
	}
	return true
}

// asJar is the content for a jar the cell suits: this matrix is about labels,
// a label too tall for its jar is another test's.
func asJar(c *label.Content, cell sheet.Cell) *label.Content {
	out := *c
	out.Straight = max(c.Straight, cell.H)
	out.Around = max(c.Around, cell.W*5/2)
	out.LidAcross = max(c.LidAcross, cell.W)
	return &out
}

// outside looks for items past the safe area by their boxes alone, in code
// that shares nothing with inspect.Frame.
func outside(f *page.Frame) (string, bool) {
	const give = unit.Millimetre / 10
	for _, it := range f.Items {
		var r page.Rect
		switch it := it.(type) {
		case *page.Text:
			if it.Turn != 0 {
				continue
			}
			// Up to the height of capitals: ascent and descent hold no ink here.
			r = page.Rect{X: it.At.X, Y: it.At.Y - it.Size*6/10, W: it.Box.W, H: it.Size * 6 / 10}
		case *page.Code:
			m := it.At.W / unit.Length(max(len(it.Modules), 1)) * unit.Length(it.Quiet)
			r = page.Rect{X: it.At.X - m, Y: it.At.Y - m, W: it.At.W + 2*m, H: it.At.H + 2*m}
			if r.X < 0 || r.Y < 0 || r.X+r.W > f.W || r.Y+r.H > f.H {
				return "the QR code's quiet zone is cut", true
			}
			r = it.At
		default:
			continue
		}
		if r.X < f.Safe-give || r.Y < f.Safe-give || r.X+r.W > f.W-f.Safe+give || r.Y+r.H > f.H-f.Safe+give {
			return fmt.Sprintf("an item at %.2f, %.2f mm of %.2f x %.2f leaves the safe area of %.1f x %.1f", r.X.MM(), r.Y.MM(), r.W.MM(), r.H.MM(), f.W.MM(), f.H.MM()), true
		}
	}
	return "", false
}

// TestCodesOfEveryDesign prints one label of every design and kind that bears
// a code, draws the PDF with PDFium at two resolutions and reads the codes.
func TestCodesOfEveryDesign(t *testing.T) {
	if testing.Short() {
		t.Skip("draws some hundred pictures")
	}
	env := builtin(t)
	b := load(t, env, demoInput(t, demoBatches[0]), job.Choices{})
	read := map[label.Piece]int{}
	for _, d := range env.Designs.List() {
		for _, p := range []label.Piece{label.InfoLabel, label.Wrap, label.Tag, label.CaseLabel} {
			c := job.Choices{Design: d.ID, Pieces: []label.Piece{p}, Copies: 1}
			if p == label.InfoLabel || p == label.Wrap {
				c.Size = "200 x 46 mm"
			}
			runs, found := env.Labels(b, c)
			if found.HasErrors() {
				t.Errorf("%s %s: %v", d.ID, p, errorsIn(found))
				continue
			}
			for _, r := range runs {
				data, err := env.PDF(r.Doc)
				if err != nil {
					t.Fatal(err)
				}
				f := presstest.Open(t, data)
				n := len(presstest.Codes(&r.Doc.Pages[0]))
				read[p] += n
				for _, dpi := range []int{150, 300} {
					if n == 0 {
						break
					}
					for _, err := range presstest.DecodePage(f.Render(0, dpi), &r.Doc.Pages[0], float64(dpi)) {
						t.Errorf("%s %s at %d dpi: %v", d.ID, p, dpi, err)
					}
				}
			}
		}
	}
	for _, p := range []label.Piece{label.InfoLabel, label.Wrap} {
		if read[p] < len(env.Designs.List()) {
			t.Errorf("%s: only %d codes were there to read", p, read[p])
		}
	}
}

func errorsIn(l diag.List) string {
	var out []string
	for _, d := range l {
		if d.Severity == diag.Error {
			out = append(out, d.Message)
		}
	}
	return strings.Join(out, "; ")
}
