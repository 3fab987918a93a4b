package eu

import (
	"slices"
	"strings"

	"jarmark/internal/kit/words"
	"jarmark/internal/law/place"
)

// titles reports names reserved for other products in the lines that stand beside
// the name of the food (Directive 2001/113/EC Art 2(1)): a title marmalade over a
// jam, and "extra" on one that is not held to its figures.
func (c *pass) titles() {
	for _, line := range c.TitleLines() {
		if n, p, ok := c.titledAs(line.Text); ok {
			c.reserved(n, p, line.Path)
		}
	}
}

// titledAs finds a lawful name of another product in a line; one that the name of
// the food says too is judged there.
func (c *pass) titledAs(line string) (name string, of place.Product, ok bool) {
	own := c.product.NamesOn(c.Say.Lang, c.on)
	for _, p := range c.Set.Products {
		if c.governed && p.ID == c.product.ID || len(p.Counts) == 0 {
			continue
		}
		for _, n := range p.NamesOn(c.Say.Lang, c.on) {
			within := slices.ContainsFunc(own, func(o place.ProductName) bool { return c.says(o.Name, n.Name) })
			if !within && c.says(line, n.Name) && !c.says(c.B.Name, n.Name) {
				return n.Name, p, true
			}
		}
		if alone := strings.TrimSpace(words.Fold(line)); p.ByName && !c.product.ByName && p.Like == c.product.ID && slices.Contains(strings.Split(words.Fold(p.Wish), "|"), alone) {
			return line, p, true
		}
	}
	return "", place.Product{}, false
}
