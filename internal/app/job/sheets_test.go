package job_test

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/law/label"
)

// The demo's half-pint, with the home-kitchen sentence its display panel must
// bear, goes on these many of the built-in label sheets in the default design,
// and its label passes the second look. Fewer is a loss for people who own one.
func TestFixedSheetsTakeTheDemo(t *testing.T) {
	env := builtin(t)
	c := load(t, env, demoInput(t, demoBatches[0]), job.Choices{}).Contents[0]
	d, _ := env.Designs.Get("orchard")
	for p, least := range map[label.Piece]int{label.Front: 17, label.InfoLabel: 9, label.Wrap: 6, label.Lid: 6, label.Tag: 2} {
		n, tried := 0, 0
		for _, s := range env.Sheets.For(string(p), "") {
			if s.Auto {
				continue
			}
			tried++
			k := s.Cell()
			f, l := compose.Label(c, d, p, compose.Cell{W: k.W, H: k.H, Shape: k.Shape, Corner: k.Corner, Safe: k.Safe, Bleed: k.Bleed}, env.Faces, compose.Options{})
			if l.HasErrors() {
				t.Logf("%s on %s: %s", p, s.ID, l[len(l)-1].Message)
				continue
			}
			if l := inspect.Frame(f, c, env.Faces, inspect.Default()); l.HasErrors() {
				t.Errorf("%s on %s: %v", p, s.ID, l)
			}
			n++
		}
		if n < least {
			t.Errorf("%d of %d %s sheets take the demo's half-pint, want %d", n, tried, p, least)
		}
		t.Logf("%s: %d of %d", p, n, tried)
	}
}

// Twelve jars' fronts, information labels and lids take four sheets, which is what
// their area asks for; six where each label is as long as the jar likes. The words
// stand whole, and the label is at least four fifths as long. Where the
// name would go from it, as beside a state's sentence, it stays as long as it likes.
func TestSetsOfTwelveJarsSavePaper(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	for _, x := range []struct {
		place, paper string
		sheets       int
	}{{"us", "letter-plain", 4}, {"us-or", "letter-plain", 6}} {
		c := job.Choices{Pieces: []label.Piece{label.Front, label.InfoLabel, label.Lid}, Sheet: x.paper, Place: x.place}
		run, found, err := env.Print([]job.Input{in}, c, "pdf")
		if err != nil || found.HasErrors() || len(run.Printed) != 1 {
			t.Fatal(x, err, found)
		}
		if n := len(run.Printed[0].Doc.Pages); n != x.sheets {
			t.Errorf("%v: %d sheets", x, n)
		}
		c.Pieces = []label.Piece{label.InfoLabel}
		alone, _, err := env.Print([]job.Input{in}, c, "pdf")
		if err != nil {
			t.Fatal(err)
		}
		likes, got := infoOf(alone), infoOf(run)
		if got.W*10 < likes.W*8 || got.H != likes.H || (got.W < likes.W) != (x.sheets == 4) || headed(got) != headed(likes) {
			t.Errorf("%v: an information label of %.1f x %.1f mm, by itself %.1f x %.1f", x, got.W.MM(), got.H.MM(), likes.W.MM(), likes.H.MM())
		}
	}
}

// infoOf is the information label of a run.
func infoOf(r job.PrintRun) *page.Frame {
	for _, pl := range r.Printed[0].Doc.Pages[0].Places {
		if pl.Frame.Piece == string(label.InfoLabel) {
			return pl.Frame
		}
	}
	return nil
}

// headed reports the name of the food on a label.
func headed(f *page.Frame) bool {
	return slices.ContainsFunc(f.Items, func(it page.Item) bool {
		t, ok := it.(*page.Text)
		return ok && strings.Contains(t.String(), "Strawberry")
	})
}
