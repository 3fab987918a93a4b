package job_test

import (
	"bytes"
	"image"
	"image/color"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/png"
	"jarmark/internal/draw/svg"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// TestDarkLabelsDriftByAMillimetre: where a printer is 1 mm off in any direction, no
// label of a full sheet in a dark design shows white at its edge, on sheets whose labels
// touch as on others: in the PDF as PDFium draws it, and in the PNG. 1 mm is what an
// office printer may be off (common practice, no source).
func TestDarkLabelsDriftByAMillimetre(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	const dpi = 100
	for _, id := range []string{"letter-2x5-4x2in", "a4-2x6-99.1x42.3", "letter-2x3-4x3in", "letter-round-2.5in-3x4"} {
		s, _ := env.Sheets.Get(id)
		c := job.Choices{Design: "winter-branch", Sheet: id, Pieces: []label.Piece{label.Front}, Copies: s.Cells()}
		f, doc := printed(t, env, load(t, env, in, c), c)
		drawn, err := png.Page(doc, 0, env.Faces, dpi)
		if err != nil {
			t.Fatal(err)
		}
		for what, img := range map[string]*image.RGBA{"PDF": f.Render(0, dpi), "PNG": drawn} {
			white := 0
			for _, pl := range doc.Pages[0].Places {
				for _, off := range []page.Point{{}, {X: unit.Millimetre}, {X: -unit.Millimetre}, {Y: unit.Millimetre}, {Y: -unit.Millimetre}} {
					white += whiteAround(img, pl, off, dpi)
				}
			}
			if white > 0 {
				t.Errorf("%s, %s: %d white dots at the edges of labels a millimetre off", id, what, white)
			}
		}
	}
}

// whiteAround counts the white dots along the inner edge of a label cut out of a
// picture that is so much off.
func whiteAround(img *image.RGBA, pl page.Placement, off page.Point, dpi float64) (n int) {
	dot := func(l unit.Length) int { return int(l.MM() / 25.4 * dpi) }
	w, h := pl.Frame.W, pl.Frame.H
	look := func(x, y unit.Length) {
		c := img.RGBAAt(dot(pl.At.X+x+off.X), dot(pl.At.Y+y+off.Y))
		if c.R > 200 && c.G > 200 && c.B > 200 {
			n++
		}
	}
	in := unit.Millimetre / 4
	for k := range unit.Length(21) {
		if pl.Frame.Shape == page.Ellipse {
			for _, q := range []page.Point{{X: w / 2, Y: in}, {X: w / 2, Y: h - in}, {X: in, Y: h / 2}, {X: w - in, Y: h / 2}} {
				look(q.X, q.Y)
			}
			continue
		}
		x, y := in+(w-2*in)*k/20, in+(h-2*in)*k/20
		look(x, in)
		look(x, h-in)
		look(in, y)
		look(w-in, y)
	}
	return n
}

// TestDarkLabelsThatTouchAreTold: only there is a note.
func TestDarkLabelsThatTouchAreTold(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	for _, u := range []struct {
		sheet, design string
		trimmed, want bool
	}{
		{"letter-2x5-4x2in", "winter-branch", false, true}, {"letter-2x5-4x2in", "orchard", false, false}, {"letter-2x3-4x3in", "winter-branch", false, false},
		{"letter-2x5-4x2in", "harvest", false, true}, {"letter-2x5-4x2in", "winter-branch", true, false}, {"a4-2x4-105x74.25", "market-plain", false, false},
	} {
		c := job.Choices{Design: u.design, Sheet: u.sheet, Pieces: []label.Piece{label.Front}, Copies: 1, Trimmed: u.trimmed}
		b := load(t, env, in, c)
		_, found := env.Labels(b, c)
		if got := hasCode(found, "labels-touch"); got != u.want {
			t.Errorf("%+v: told %v", u, got)
		}
	}
}

// TestNoGroundRunsIntoTheNextLabel: where labels touch, the cloth along the top of
// one is not painted over the foot of the one above.
func TestNoGroundRunsIntoTheNextLabel(t *testing.T) {
	env := builtin(t)
	const dpi = 100
	c := job.Choices{Design: "gingham", Sheet: "letter-2x3-4x3.333in", Pieces: []label.Piece{label.Front}, Copies: 6}
	f, doc := printed(t, env, load(t, env, demoInput(t, demoBatches[0]), c), c)
	drawn, err := png.Page(doc, 0, env.Faces, dpi)
	if err != nil {
		t.Fatal(err)
	}
	for what, img := range map[string]*image.RGBA{"PDF": f.Render(0, dpi), "PNG": drawn} {
		foot := func(k, i int) color.RGBA {
			pl := doc.Pages[0].Places[k]
			return img.RGBAAt(int((pl.At.X+pl.Frame.W*unit.Length(i)/20).MM()/25.4*dpi), int((pl.At.Y+pl.Frame.H-unit.Millimetre/2).MM()/25.4*dpi))
		}
		for k := range 4 { // the last two have none below
			for i := 1; i < 20; i++ {
				if foot(k, i) != foot(4, i) {
					t.Fatalf("%s: label %d has %v at its foot, the last %v", what, k, foot(k, i), foot(4, i))
				}
			}
		}
	}
	var b bytes.Buffer
	if err := svg.Page(&b, doc, 0, env.Faces); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), `"><g transform="translate(`); n != 6 {
		t.Errorf("SVG: %d of 6 labels are clipped to what is theirs", n)
	}
}
