package rule

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// lineAllergens names the Annex II substances of one ingredient in the label's
// language, in the order found, without those its parts carry.
func (c *euCase) lineAllergens(ln cook.Line) []string {
	words := append([]string{ln.Row.EUAllergen}, ln.Allergens...)
	names := c.allergenNames(words, c.batchFile(), linePath(ln))
	if ln.Row.SulphiteCheck && !slices.Contains(names, c.say("annex2.sulphites")) {
		c.l.Warnf("sulphites-unknown", c.batchFile(), linePath(ln), "%s may have been treated with sulphites", c.ingredientName(ln)).
			Hinted(`read the packet; above 10 mg/kg in the finished food write allergens = ["sulphites"] on it`).Cited(citeFIC21)
	}
	return names
}

// allergenNames turns table or maker's words into Annex II names.
func (c *euCase) allergenNames(words []string, file, path string) (names []string) {
	for _, w := range euEach(words) {
		name, ok := c.annex2(w)
		if !ok {
			name = w
			c.l.Warnf("unknown-allergen", file, path, "%q is not one of the fourteen allergens by name", w).
				Hinted("name it as Annex II does (milk, eggs, wheat, almonds, celery …); name the nut or the cereal itself").Cited(citeFIC21)
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// annex2 finds the label name of an Annex II substance by any of its words.
func (c *euCase) annex2(word string) (string, bool) {
	for _, a := range c.law.Annex2 {
		for _, w := range append([]string{a.ID}, a.Words...) {
			if strings.EqualFold(w, word) {
				return c.say("annex2." + a.ID), true
			}
		}
	}
	// The maker may write the label's own language.
	for _, a := range c.law.Annex2 {
		if name := c.say("annex2." + a.ID); strings.EqualFold(name, word) {
			return name, true
		}
	}
	return "", false
}

// euEach splits the table's lists ("soybeans, cereals containing gluten (wheat)")
// and leaves the substance itself of each entry.
func euEach(words []string) (out []string) {
	for _, w := range words {
		for _, one := range strings.Split(w, ",") {
			if one = euInner(strings.TrimSpace(one)); one != "" {
				out = append(out, one)
			}
		}
	}
	return out
}

// euInner takes "nuts (almond)" to "almond".
func euInner(w string) string {
	if i := strings.IndexByte(w, '('); i >= 0 && strings.HasSuffix(w, ")") {
		w = w[i+1 : len(w)-1]
	}
	return strings.TrimSpace(w)
}

// allAllergens names every Annex II substance of the batch, and as written what
// the maker calls an allergen beyond them.
func (c *euCase) allAllergens() (names []string) {
	for _, it := range c.euItems() {
		words := append([]string{it.line.Row.EUAllergen}, it.line.Allergens...)
		for _, p := range it.line.Contains {
			words = append(words, p.EUAllergen)
		}
		for _, w := range euEach(words) {
			n, ok := c.annex2(w)
			if !ok {
				n = w
			}
			if !slices.Contains(names, n) {
				names = append(names, n)
			}
		}
	}
	return names
}

// list adds the ingredient list. On a pack whose largest surface is below the
// smallest size the list may be given otherwise, and the allergens then stand
// as "Contains" (Art 16(2), 21(1)); beside a list "Contains" is not accepted.
func (c *euCase) list(quid map[string]string) {
	runs := c.listRuns(quid)
	if area := sideArea(c.jar); area > 0 && area < float64(c.law.NoListBelow)*100 {
		c.l.Notef("tiny-pack", c.batchFile(), c.jar.FillPath, "the jar is below %d cm², so the ingredient list may be given on request", c.law.NoListBelow).
			Cited("Regulation (EU) 1169/2011 Art 16(2)")
		if names := c.allAllergens(); len(names) > 0 {
			c.add(label.Block{Kind: label.Allergens, Runs: []label.Run{
				{Text: c.say("contains")}, {Text: strings.Join(names, ", "), Bold: true}}, Cite: citeFIC21})
		}
		return
	}
	c.add(label.Block{Kind: label.Ingredients, Runs: runs, Cite: citeFIC18 + "; Art 21", Path: "ingredient"})
}
