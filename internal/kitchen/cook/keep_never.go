package cook

import (
	"strings"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// neverRows holds every line against never-shelf.csv, by its number.
func (c *calc) neverRows() map[int]pantry.Never {
	written := map[string]batch.Ingredient{}
	for i, g := range c.b.Ingredients {
		if g.Path == "" {
			g.Path = path("ingredient", i, "")
		}
		written[g.Path] = g
	}
	out := map[int]pantry.Never{}
	for i, ln := range c.r.Lines {
		if n, ok := c.p.Never(ln.Key, ln.Row.Class, texts(ln, written)...); ok {
			out[i] = n
		}
	}
	return out
}

// texts are the words of a line: its name, every name and form the maker gave
// it, and all it is made of.
func texts(ln Line, written map[string]batch.Ingredient) []string {
	out := []string{ln.Name}
	for _, at := range ln.Paths {
		g := written[at]
		if g.Name != ln.Name {
			out = append(out, g.Name)
		}
		if g.Form != "" {
			out = append(out, g.Form+" "+g.Name)
		}
		if head, tail, cut := strings.Cut(g.Name, ","); cut { // "peaches, white"
			out = append(out, tail+" "+head)
		}
		for _, x := range g.Contains {
			out = append(out, x.Name+" in "+g.Name)
		}
	}
	for _, x := range ln.Contains {
		out = append(out, x.Name+" in "+ln.Name)
	}
	return out
}
