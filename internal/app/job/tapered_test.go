package job_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// TestTaperedJars: labels cut for a tapered jar are parts of a ring, in every design
// and size: nothing is told to stand off level, every word lies inside of the cut, the
// code is read off the printed page, the words come in order, and the cutting
// machine's layer has the outline. One of a size of the maker's own stays straight and
// is told.
func TestTaperedJars(t *testing.T) {
	env, _, err := job.NewEnv(fstest.MapFS{})
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for i, design := range env.Press.Designs.IDs() {
		for _, jar := range []string{"tap4", "tap8", "tap12"} {
			if testing.Short() && i > 1 && jar != "tap8" {
				continue
			}
			in := ownInput(t, "", "")
			in.Batch.Data = bytes.Replace(in.Batch.Data, []byte(`jar = "8 fl oz" `), []byte(`jar = "`+jar+`" `), 1)
			c := job.Choices{Pieces: []label.Piece{label.Wrap, label.Front, label.InfoLabel}, Design: design, Copies: 1, Serials: true, CutLines: true}
			b := env.Load(in, c)
			runs, l := env.Labels(b, c)
			for _, f := range l {
				if f.Code == "off-level" {
					t.Errorf("%s, %s: %s", design, jar, f.Message)
				}
			}
			for _, r := range runs {
				for _, pg := range r.Doc.Pages {
					for _, pl := range pg.Places {
						if !r.Sheet.Auto {
							continue // cut by its maker, and narrow enough to look level
						}
						seen++
						insideRing(t, design+" "+jar, pl)
					}
				}
			}
			if jar != "tap8" || len(runs) == 0 {
				continue
			}
			files, err := env.Files(runs[0].Doc, "labels", "pdf", 0)
			if err != nil {
				t.Fatal(err)
			}
			f := presstest.Open(t, files[0].Data)
			if text := strings.Join(strings.Fields(f.Text(0)), " "); !strings.Contains(text, "lemon juice") || !strings.Contains(text, "Do not use if the seal is broken") {
				t.Errorf("%s: words are lost or out of order: %s", design, text)
			}
			for _, err := range presstest.DecodePage(f.Render(0, 300), &runs[0].Doc.Pages[0], 300) {
				t.Errorf("%s: %v", design, err)
			}
		}
	}
	if seen < 25 {
		t.Errorf("%d labels", seen)
	}
	in := ownInput(t, "", "")
	in.Batch.Data = bytes.Replace(in.Batch.Data, []byte(`jar = "8 fl oz" `), []byte(`jar = "tap8" `), 1)
	c := job.Choices{Pieces: []label.Piece{label.Wrap}, Size: "200 x 54 mm"}
	runs, l := env.Labels(env.Load(in, c), c)
	if len(runs) != 1 || runs[0].Doc.Pages[0].Places[0].Frame.Shape != page.Rectangle || !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "off-level" }) {
		t.Errorf("a size of one's own: %d runs, %v", len(runs), l)
	}
}

// insideRing checks that a label is a part of a ring and no word leaves its safe area.
func insideRing(t *testing.T, what string, pl page.Placement) {
	t.Helper()
	f := pl.Frame
	if f.Shape != page.Sector || f.Arc.Up || f.Arc.Angle <= 0 {
		t.Errorf("%s, %s: %s", what, f.Piece, f.Shape)
		return
	}
	for _, it := range append(f.Items, pl.Overlay...) {
		w, ok := it.(*page.Text)
		if !ok {
			continue
		}
		sin, cos := page.SinCos(w.Turn)
		for _, x := range []unit.Length{0, w.Box.W} {
			for _, y := range []unit.Length{0, -w.Size / 2} { // from the foot to the height of a small letter
				q := page.Point{X: w.At.X + unit.Length(float64(x)*cos-float64(y)*sin), Y: w.At.Y + unit.Length(float64(x)*sin+float64(y)*cos)}
				if !f.Within(page.Rect{X: q.X, Y: q.Y}, unit.Millimetre/5) {
					t.Errorf("%s, %s: %q leaves the safe area", what, f.Piece, w)
				}
			}
		}
	}
}
