package pack

import (
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// AllergenDoc is the allergen sheet of a stall, to lie beside the jars.
func AllergenDoc(items []StallItem, maker, units string, fs *face.Set, paper string) (*page.Doc, diag.List) {
	if paper == "" {
		paper = Paper(units)
	}
	c, found := newLayout(fs, paper, "Allergen sheet")
	if c == nil {
		return nil, found
	}
	sub := "What is in every jar. Please ask if you have a food allergy; when in doubt, do not eat it."
	if maker != "" {
		sub = maker + " · " + sub
	}
	for _, b := range c.titleBands("Allergens", sub) {
		c.put(b)
	}
	for _, s := range items {
		g := group{head: headBand(s.Name, "lot "+s.Lot), cont: headBand(s.Name+", continued", "")}
		g.rows = append(g.rows, c.paragraph(boldFace, pt(13), margin, ink, s.Says())...)
		if s.Advisory != "" {
			g.rows = append(g.rows, c.paragraph(plainFace, pt(11.5), margin, ink, s.Advisory)...)
		}
		g.rows = append(g.rows, c.paragraph(plainFace, pt(11), margin, soft, "Ingredients: "+strings.TrimPrefix(s.Ingredients, "Ingredients: "))...)
		g.rows = append(g.rows, gap(3*unit.Millimetre))
		c.group(g)
	}
	return c.finish("Allergen sheet", maker)
}

// Says is the allergen sentence: the label's, else one from the recipe.
func (s StallItem) Says() string {
	switch {
	case s.Statement != "":
		return s.Statement
	case len(s.Contains) > 0:
		return "Contains " + and(s.Contains) + "."
	case s.None && s.Advisory == "":
		return "No listed allergen is in this recipe."
	}
	return "For allergens, see the ingredients, and ask."
}
