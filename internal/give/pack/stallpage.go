package pack

import (
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
	var w words
	if len(items) > 0 {
		w = items[0].in
	}
	head := w.say("Allergen sheet")
	c, found := newLayout(fs, paper, head)
	if c == nil {
		return nil, found
	}
	sub := w.say("What is in every jar. Please ask if you have a food allergy; when in doubt, do not eat it.")
	if maker != "" {
		sub = maker + " · " + sub
	}
	for _, b := range c.titleBands(w.say("Allergens"), sub) {
		c.put(b)
	}
	for _, s := range items {
		g := group{head: headBand(s.Name, w.say("lot %s", s.Lot)), cont: headBand(s.Name+", "+w.say("continued"), "")}
		g.rows = append(g.rows, c.paragraph(boldFace, pt(13), margin, ink, s.Says())...)
		if s.Advisory != "" {
			g.rows = append(g.rows, c.paragraph(plainFace, pt(11.5), margin, ink, s.Advisory)...)
		}
		g.rows = append(g.rows, c.paragraph(plainFace, pt(11), margin, soft, s.Ingredients)...)
		g.rows = append(g.rows, gap(3*unit.Millimetre))
		c.group(g)
	}
	return c.finish(head, maker)
}

// Says is the allergen sentence: the label's, else one from the recipe.
func (s StallItem) Says() string {
	switch {
	case s.Statement != "":
		return s.Statement
	case len(s.Contains) > 0:
		return s.in.say("Contains %s.", s.in.and(s.Contains))
	case s.None && s.Advisory == "":
		return s.in.say("No listed allergen is in this recipe.")
	}
	return s.in.say("For allergens, see the ingredients, and ask.")
}
