package compose_test

import (
	"strings"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

var longNames = []string{
	"Stachelbeerkonfitüre", "Boysenberrymarmalade", "Blackcurrant-elderflower", "Grandmother’s Christmas",
	"Wild strawberry, rhubarb & elderflower", "Old-fashioned gooseberry-and-blackcurrant",
}

// TestLongNamesAreDisplayType sets long names on every kind of label in every design:
// none is in less than 9 pt, the least size of display type (common practice, no source).
func TestLongNamesAreDisplayType(t *testing.T) {
	fs := typefaces(t)
	for _, u := range drawer {
		for _, name := range longNames {
			for _, d := range designs(t) {
				c := u.say()
				c.Title, c.Subtitle = name, "jam"
				for i := range c.Blocks {
					if c.Blocks[i].Kind == label.Identity {
						c.Blocks[i].Runs = run(name + " jam")
					}
				}
				fr, l := compose.Label(c, d, u.piece, u.cell, fs, compose.Options{})
				size := unit.Length(0)
				for _, it := range fr.Items {
					if x, ok := it.(*page.Text); ok && (x.Block == "" || x.Block == "identity") && strings.HasPrefix(strings.ToLower(name), strings.ToLower(strings.Trim(x.String(), "- "))[:3]) {
						size = max(size, x.Size)
					}
				}
				if size < unit.Points(9) && u.piece != label.InfoLabel || l.HasErrors() {
					t.Errorf("%s %s %q: %.1f pt %v", u.name, d.ID, name, size.Points(), l)
				}
				for _, f := range inspect.Frame(fr, c, fs, inspect.Default()) {
					t.Errorf("%s %s: %s", u.name, d.ID, f.Message)
				}
			}
		}
	}
}

// TestNamesLeadOnCards: on an envelope and on a card over a bag, both wider than high,
// the name is about as large as the handwriting under it (our own taste).
func TestNamesLeadOnCards(t *testing.T) {
	fs := typefaces(t)
	for _, at := range []compose.Cell{cell(162, 114, page.Rectangle), cell(101.6, 63.5, page.Rectangle), cell(95, 65, page.Rectangle)} {
		for _, d := range designs(t) {
			c := strawberry()
			c.Blocks = append(c.Blocks, label.Block{ID: "to", Kind: label.To, Runs: []label.Run{{Text: "for"}, {Text: "Ottilie"}}},
				label.Block{ID: "from", Kind: label.From, Runs: []label.Run{{Text: "from"}, {Text: "Wren"}}},
				label.Block{ID: "message", Kind: label.Message, Runs: run("For the long table in the garden.")})
			fr, l := compose.Label(c, d, label.Tag, at, fs, compose.Options{})
			name, hand := tallest(fr, "identity", ""), tallest(fr, "to", "from")
			if l.HasErrors() || hand == 0 || name*100 < hand*90 {
				t.Errorf("%s, %.0f mm: name %.1f pt, handwriting %.1f pt %v", d.ID, at.W.MM(), name.Points(), hand.Points(), l)
			}
		}
	}
}

// TestCoversKeepTheirCloth: the stripes of a cloth that hangs over its lid are those of
// a lid, not as much wider.
func TestCoversKeepTheirCloth(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		if d.ID != "awning" {
			continue
		}
		stripes := func(at compose.Cell) (n int) {
			c := strawberry()
			c.LidAcross = 66 * mm
			fr, _ := compose.Label(c, d, label.Lid, at, fs, compose.Options{})
			for _, it := range fr.Items {
				if p, ok := it.(*page.Path); ok && p.Bleed {
					n = max(n, len(p.Ops)/5)
				}
			}
			return n
		}
		if lid, cover := stripes(cell(63, 63, page.Ellipse)), stripes(cell(140, 140, page.Ellipse)); cover < 2*lid-2 {
			t.Errorf("%d stripes on a lid, %d on a cover more than twice as wide", lid, cover)
		}
	}
}
