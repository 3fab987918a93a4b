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
