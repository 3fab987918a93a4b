package cook

import (
	"regexp"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// advisory is how packets warn of what may have got in: no part of the food, and
// not to stand in its list of ingredients.
var advisory = regexp.MustCompile(`(?i)^\s*(may (also )?contain|(may|can) have traces|(possible )?traces? of|kann\s.*enthalten|(kann )?spuren von|peut contenir|traces? (éventuelles?|possibles?)|traces? d[e'’])`)

// advised warns of a packet's "may contain" among the parts of an ingredient: the
// label would print it as a part, and name what is perhaps in there as what is.
func (c *calc) advised(g batch.Ingredient, parts []pantry.Part) {
	for _, part := range parts {
		if advisory.MatchString(part.Name) {
			c.warnf("advisory-in-parts", g.Path+".contains", "%q is what the packet warns of, and no part of %s; the label would print it in the list", part.Name, g.Name).
				Hinted("take it out of contains, and write what may be in there into also_handles of kitchen.toml, as your kitchen has it now")
			return
		}
	}
}
