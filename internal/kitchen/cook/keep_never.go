package cook

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/pantry"
)

// neverRow holds a line against never-shelf.csv: its key and kind, every name
// the maker gave it, and all it is made of.
func (c *calc) neverRow(ln Line) (pantry.Never, bool) {
	texts := []string{ln.Name}
	for i, g := range c.b.Ingredients {
		at := g.Path
		if at == "" {
			at = path("ingredient", i, "")
		}
		if !slices.Contains(ln.Paths, at) {
			continue
		}
		texts = append(texts, g.Name, g.Form+" "+g.Name)
		if head, tail, cut := strings.Cut(g.Name, ","); cut { // "peaches, white"
			texts = append(texts, tail+" "+head)
		}
		for _, x := range g.Contains {
			texts = append(texts, x.Name)
		}
	}
	for _, x := range ln.Contains {
		texts = append(texts, x.Name)
	}
	return c.p.Never(ln.Key, ln.Row.Kind, texts...)
}
