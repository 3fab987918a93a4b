package compose_test

import (
	"fmt"
	"path/filepath"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// An information label belongs to its design (common practice, no source): the
// frame and a strip of the band stand on it, and where there is room the name over
// the facts, larger than they are; no fact is smaller for it than 7 pt on the larger label,
// and the inspection finds nothing.
func TestInfoLabelsWearTheDesign(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		look := d.Look(label.InfoLabel)
		for _, u := range []struct {
			w, h   float64
			headed bool
		}{{101.6, 84.7, true}, {80, 60, false}} {
			c := strawberry()
			fr, l := compose.Label(c, d, label.InfoLabel, cell(u.w, u.h, page.Rectangle), fs, compose.Options{})
			for _, f := range append(l, inspect.Frame(fr, c, fs, inspect.Default())...) {
				t.Errorf("%s %g mm: %s", d.ID, u.w, f.Message)
			}
			framed, painted, ruled := 0, 0, 0
			for _, it := range fr.Items {
				switch p, ok := it.(*page.Path); {
				case !ok:
				case !p.Bleed && p.Block == "" && p.Bounds().H < mm/2 && p.Bounds().W > fr.W/2:
					ruled++
				case p.Block == "frame":
					framed++
				case p.Bleed && (p.Bounds().W < fr.W || p.Bounds().H < fr.H):
					painted++
				}
			}
			name, facts := tallest(fr, ""), tallest(fr, "ingredients", "maker")
			small, _ := largest(fr, "storage")
			if *previewDir != "" {
				sheetOf(t, filepath.Join(*previewDir, fmt.Sprintf("info-%.0f-%s.png", u.w, d.ID)), []*page.Frame{fr})
			}
			if u.headed && (name*10 < facts*11 || small < unit.Points(7)) {
				t.Errorf("%s: name %.1f pt over facts of %.1f and %.1f pt", d.ID, name.Points(), facts.Points(), small.Points())
			}
			if has := look.Rule != "none"; has != (ruled > 0) && u.headed {
				t.Errorf("%s: rule %q, %d lines under the name", d.ID, look.Rule, ruled)
			}
			if has := look.Frame != "none"; has != (framed > 0) && u.headed {
				t.Errorf("%s: frame %q, %d lines of it", d.ID, look.Frame, framed)
			}
			if has := look.Band.Edge != "none"; has != (painted > 0) {
				t.Errorf("%s %g mm: band %q, %d paths of it", d.ID, u.w, look.Band.Edge, painted)
			}
		}
	}
}

// A lid and a tag are never bare type in a ring: every design draws on them, above
// and below the name or round it (our own taste).
func TestLidsAndTagsAreDressed(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range []struct {
			p label.Piece
			c compose.Cell
		}{{label.Lid, cell(63, 63, page.Ellipse)}, {label.Lid, cell(40, 40, page.Ellipse)}, {label.Tag, cell(52, 90, page.TagShape)}} {
			fr, _ := compose.Label(strawberry(), d, u.p, u.c, fs, compose.Options{})
			drawn := 0
			for _, it := range fr.Items {
				if p, ok := it.(*page.Path); ok && p.Block != "frame" && p.Block != "hole" && (!p.Bleed || p.Bounds().W < fr.W) {
					drawn++
				}
			}
			if u.p == label.Tag {
				drawn -= 2 // the lines written on
			}
			if drawn < 1 && d.Look(u.p).Band.Edge != "around" {
				t.Errorf("%s %s %.0f mm: bare type", d.ID, u.p, u.c.W.MM())
			}
		}
	}
}
