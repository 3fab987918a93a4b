package eu

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// annexNames gives the names of Annex II in the label's language.
func annexNames(say func(key string, kv ...string) string) draft.Names {
	return func(s allergen.Substance) (names []string, ask bool) {
		for _, id := range s.Annex2 {
			if id == allergen.Ask {
				return nil, true
			}
			names = append(names, say("annex2."+id))
		}
		return names, false
	}
}

// lineAllergens names the Annex II substances of one ingredient in the label's
// language, without those of its parts.
func (c *pass) lineAllergens(ln cook.Line) []string {
	names := c.emphasis(c.R.OwnAllergy(ln))
	if c.Sulphited(ln) && !slices.Contains(names, c.say("annex2.sulphites")) {
		c.sulphiteDoubt = true
		c.L.Warnf("sulphites-unknown", c.BatchFile(), draft.LinePath(ln), "%s may have been treated with sulphites", c.ingredientName(ln)).
			Hinted(`read the packet; above 10 mg/kg in the finished food write allergens = ["sulphites"] on it`).Cited(citeFIC21)
	}
	return names
}

// emphasis gives the words the list emphasises: the names of Annex II, and as
// written what the maker calls an allergen beyond them.
func (c *pass) emphasis(a cook.Allergy) (names []string) {
	for _, n := range draft.NamesIn(a, c.names, true) {
		if !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return names
}

// allAllergens names every substance of the batch the list emphasises.
func (c *pass) allAllergens() []string { return c.emphasis(c.R.Allergy()) }

// list adds the ingredient list. On a pack whose largest surface is below the
// smallest size the list may be given otherwise, and the allergens then stand
// as "Contains" (Art 16(2), 21(1)); beside a list "Contains" is not accepted.
func (c *pass) list() {
	runs := c.listRuns(c.quid())
	c.C.AllergenNames = c.allAllergens()
	c.C.NoAllergens = c.C.NoAllergens && len(c.C.AllergenNames) == 0 && len(c.handled) == 0 && !c.sulphiteDoubt
	if smaller(c.Jar, c.law.NoListBelow) {
		c.L.Notef("tiny-pack", c.BatchFile(), c.Jar.FillPath, "the jar is below %d cm², so the ingredient list may be given on request", c.law.NoListBelow).
			Cited("Regulation (EU) 1169/2011 Art 16(2)")
		if names := c.allAllergens(); len(names) > 0 {
			c.add(label.Block{Kind: label.Allergens, Runs: []label.Run{
				{Text: c.say("contains")}, {Text: strings.Join(names, ", "), Bold: true}}, Cite: citeFIC21})
		}
		return
	}
	c.add(label.Block{Kind: label.Ingredients, Runs: runs, Cite: citeFIC18 + "; Art 21", Path: "ingredient"})
}
