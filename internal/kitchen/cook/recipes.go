package cook

import (
	"fmt"
	"slices"
	"strings"

	"jarmark/internal/kitchen/pantry"
)

// How far a batch may stand from a tested recipe and still be it: kitchen
// measures and table weights disagree by so much (own tolerances, no source).
// Acid may not be less than measuring explains.
const (
	leastShare, mostShare = 0.7, 1.45
	leastAcidShare        = 0.85
	mostExtraShare        = 1.6
)

// findRecipe looks for the tested recipe that the maker followed. It counts
// only when it stands in the table, nothing was changed, and the batch fits it.
func (c *calc) findRecipe() {
	words := strings.TrimSpace(c.b.Recipe)
	if words == "" {
		return
	}
	t, ok := c.p.TestedRecipe(words)
	if !ok {
		hint := `recipe is a private note then; jarmark recipes lists the tested ones`
		if near := strings.Join(c.p.SuggestRecipes(words), ", "); near != "" {
			hint = "did you mean " + near + "? else it stays a private note"
		}
		c.warnf("recipe-not-tested", "recipe", "%q is not among the tested recipes jarmark knows: it counts as nothing for how long this keeps", words).
			Hinted(hint).Cited(srcGuide1)
		return
	}
	why, hint := c.unlike(t), "follow the recipe as it stands, or leave recipe out"
	if !c.b.Unchanged {
		why, hint = "nobody says that nothing was changed", "write unchanged = true if ingredients, amounts, jars and process are those of the recipe"
	}
	if why != "" {
		c.warnf("recipe-not-tested", "recipe", "%s does not count as the recipe of this batch: %s", t.Cite(), why).Hinted(hint).Cited(t.Source)
		return
	}
	c.recipe = &t
}

// tested reports a published, tested recipe that counts.
func (c *calc) tested() bool { return c.recipe != nil }

// unlike says what keeps the batch from being the recipe; "" when it is.
func (c *calc) unlike(t pantry.TestedRecipe) string {
	if !slices.Contains(t.Products, string(c.b.Product)) {
		return fmt.Sprintf("it is a %s, not a %s", strings.Join(t.Products, " or "), c.b.Product)
	}
	got, main := c.sums(t)
	batch, recipe := 0.0, 0.0
	for i, part := range t.Main {
		if got[i] == 0 {
			return "the pot holds no " + c.partName(part)
		}
		batch, recipe = batch+got[i], recipe+part.Grams
	}
	for i, part := range t.Main {
		share, low := got[i]*recipe/(batch*part.Grams), leastShare
		kind := c.partKind(part)
		if kind == "acid" {
			low = leastAcidShare
		}
		switch {
		case share < low:
			return "there is less " + c.partName(part) + " in it than the recipe has"
		case share > mostShare && kind != "acid" && kind != "sweetener":
			return "there is more " + c.partName(part) + " in it than the recipe has"
		}
	}
	return c.extra(t, main, batch/recipe)
}

// sums weighs each main part, and marks the lines that make them up.
func (c *calc) sums(t pantry.TestedRecipe) (got []float64, main map[int]bool) {
	got, main = make([]float64, len(t.Main)), map[int]bool{}
	for i, part := range t.Main {
		for n, ln := range c.r.Lines {
			if ln.Key != "" && !main[n] && slices.Contains(part.Keys, ln.Key) {
				got[i] += ln.Mass.Grams()
				main[n] = true
			}
		}
	}
	return got, main
}

// extra says what is in the pot that the recipe does not have. scale is the
// batch by the recipe.
func (c *calc) extra(t pantry.TestedRecipe, main map[int]bool, scale float64) string {
	for n, ln := range c.r.Lines {
		if main[n] {
			continue
		}
		most := 0.0
		for _, part := range t.Also {
			if slices.Contains(part.Keys, ln.Key) {
				most = part.Grams * scale * mostExtraShare
			}
		}
		if ln.Key == "" || ln.Mass.Grams() > most && !c.sour.trace[n] {
			return ln.Name + " is not in it, or not so much"
		}
	}
	return ""
}

func (c *calc) partName(part pantry.RecipePart) string {
	g, _ := c.p.Ingredient(part.Keys[0])
	return g.Name
}

func (c *calc) partKind(part pantry.RecipePart) string {
	g, _ := c.p.Ingredient(part.Keys[0])
	return g.Class
}
