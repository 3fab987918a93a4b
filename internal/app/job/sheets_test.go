package job_test

import (
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
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
