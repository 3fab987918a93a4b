package compose_test

import (
	"math"
	"strings"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// The side of a cone unrolls to a sector whose radius is the slant height: a cone
// of slant 100 mm whose foot is a half circle's arc, 100π mm, unrolls to a half
// disc (elementary geometry: Euclid's cone, no table needed). Half way down its
// slant, 50 to 100 mm from the tip, level lines are arcs of 75 mm; the chord of 100
// mm stands 75 - √(75² - 50²) = 19.1 mm off (Pythagoras).
func TestLabelsStandOffLevelOnTaperedJars(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	c := strawberry()
	c.Around, c.Foot, c.Straight = unit.MM(100*math.Pi), unit.MM(50*math.Pi), unit.MM(50)
	said := func(w float64) string {
		_, l := compose.Label(c, d, "front", cell(w, 45, page.Rectangle), fs, compose.Options{})
		for _, f := range l {
			if f.Code == "off-level" {
				return f.Message
			}
		}
		return ""
	}
	if got := said(100); !strings.Contains(got, "19.1 mm off level") {
		t.Errorf("said %q", got)
	}
	most := compose.LevelWidth(c).MM()
	if rise := 75 - math.Sqrt(75*75-most*most/4); math.Abs(rise-1.5) > 0.01 {
		t.Errorf("the widest level label of %.2f mm stands %.3f mm off", most, rise)
	}
	if got := said(most - 0.1); got != "" {
		t.Errorf("level, and said %q", got)
	}
	c.Foot = c.Around
	if got := said(100); got != "" || compose.LevelWidth(c) != 0 {
		t.Errorf("a straight jar, and said %q", got)
	}
}

// A label wider than a flat side of a six-sided jar folds; one as wide lies flat.
func TestLabelsFoldOnFlatSidedJars(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	c := strawberry()
	c.Around, c.Straight, c.Face = unit.MM(360), unit.MM(60), unit.MM(60)
	for w, folds := range map[float64]bool{60: false, 61: true, 90: true} {
		_, l := compose.Label(c, d, "front", cell(w, 56, page.Rectangle), fs, compose.Options{})
		got := false
		for _, f := range l {
			got = got || f.Code == "wider-than-face"
		}
		if got != folds {
			t.Errorf("%g mm on a side of 60 mm: folds %v", w, got)
		}
	}
}

// A round much wider than the lid is a cover tied over it: its words
// stand on top of the lid, and nobody is told it does not fit.
func TestCoversAreReadOnTop(t *testing.T) {
	fs := typefaces(t)
	lid := 70 * mm
	for _, d := range designs(t) {
		c := strawberry()
		c.LidAcross, c.Measured = lid, true
		fr, l := compose.Label(c, d, label.Lid, cell(140, 140, page.Ellipse), fs, compose.Options{})
		for _, f := range l {
			if f.Code != "hangs-over-lid" {
				t.Errorf("%s: %s", d.ID, f.Message)
			}
		}
		for _, it := range fr.Items {
			x, ok := it.(*page.Text)
			if !ok {
				continue
			}
			b := x.Box
			if b.X < 35*mm || b.X+b.W > 105*mm || b.Y < 35*mm || b.Y+b.H > 105*mm {
				t.Errorf("%s: %q at %.1f, %.1f mm hangs over the edge", d.ID, x.String(), b.X.MM(), b.Y.MM())
				break
			}
		}
	}
}

// Who a present is for and from goes on an envelope too, which has no hole.
func TestEnvelopesHaveNoHole(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		fr, l := compose.Label(strawberry(), d, label.Tag, cell(130, 90, page.Rectangle), fs, compose.Options{})
		for _, f := range append(l, inspect.Frame(fr, strawberry(), fs, inspect.Default())...) {
			t.Errorf("%s: %s", d.ID, f.Message)
		}
		for _, it := range fr.Items {
			if p, ok := it.(*page.Path); ok && p.Block == "hole" {
				t.Errorf("%s: a hole", d.ID)
			}
		}
	}
}
