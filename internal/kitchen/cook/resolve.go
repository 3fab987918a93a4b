package cook

import (
	"cmp"
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// ingredients resolves, weighs and merges the lines of the recipe.
func (c *calc) ingredients() {
	if len(c.b.Ingredients) == 0 && c.b.File == nil { // else its reader has told it
		c.errorf("no-ingredients", "ingredient", "the batch has no ingredients").
			Hinted(`add one [[ingredient]] table each, with name and amount`)
	}
	var total unit.Mass
	told := false
	at := map[string]int{}
	for i, g := range c.b.Ingredients {
		g.Path = cmp.Or(g.Path, path("ingredient", i))
		ln := c.line(g)
		if ln.Mass > most-total {
			c.incomplete = true
			if !told {
				c.errorf("amount-too-large", g.Path+".amount", "%q takes the batch over %s", g.Amount.Text, c.say(most)).
					Hinted("check the amount and its unit; one batch fits one pot")
				told = true
			}
			ln.Mass, ln.Soluble, ln.Insoluble = 0, 0, 0
		}
		total += ln.Mass
		c.add(at, ln)
	}
	r := c.r
	for _, ln := range r.Lines {
		r.Input += ln.Mass
		r.Soluble += ln.Soluble
		r.Insoluble += ln.Insoluble
	}
}

// add merges a line into an earlier one of the same label name.
func (c *calc) add(at map[string]int, ln Line) {
	key := strings.ToLower(ln.Name)
	for _, p := range ln.Contains {
		key += "|" + strings.ToLower(p.Name)
	}
	if ln.Removed {
		key += "|removed"
	}
	i, again := at[key]
	if !again {
		at[key] = len(c.r.Lines)
		c.r.Lines = append(c.r.Lines, ln)
		return
	}
	one := &c.r.Lines[i]
	one.Paths = append(one.Paths, ln.Paths...)
	one.Mass += ln.Mass
	one.Soluble += ln.Soluble
	one.Insoluble += ln.Insoluble
	one.Allergens = append(one.Allergens, ln.Allergens...)
	one.Written = append(one.Written, ln.Written...)
	one.Forms = append(one.Forms, ln.Forms...)
	one.Said = one.Said && ln.Said
	if len(one.Prepared) < 200 {
		one.Prepared += " + " + ln.Prepared
	}
	one.Estimated = one.Estimated || ln.Estimated
	one.Row.SulphiteCheck = one.Row.SulphiteCheck || ln.Row.SulphiteCheck
	one.Row.Memory = one.Row.Memory || ln.Row.Memory
	if one.Cost.Currency == "" {
		one.Cost.Currency = ln.Cost.Currency
	}
	if one.Cost.Currency == ln.Cost.Currency {
		one.Cost.Minor += ln.Cost.Minor
	}
}

// line resolves one ingredient.
func (c *calc) line(g batch.Ingredient) Line {
	row, known := c.find(g)
	ln := Line{
		Paths: []string{g.Path}, Name: row.Name, Key: row.Key, Row: row, Contains: g.Contains,
		Allergens: slices.Clone(g.Allergens), Said: g.Allergens != nil, Written: []string{g.Name}, Forms: forms(g), Cost: g.Cost, Removed: g.Skip,
		IsFruit: row.FruitClassEU != "" || row.Class == "fruit",
		IsSweet: sweeteners[row.Class], IsWater: row.Class == "water",
	}
	if len(ln.Contains) == 0 {
		ln.Contains = row.Contains
	}
	if !known {
		ln.Name = plainName(c.called(g))
		ln.Row = pantry.Ingredient{Name: ln.Name, WaterG: -1, SolubleG: -1, OtherSolidsG: -1, SugarsG: -1}
	}
	asked := c.ambiguous(g)
	if !known && !asked {
		c.unknown(g)
	}
	if asked && g.Amount.Dim != unit.ByMass {
		c.incomplete = true // its weight would be another food's
	} else {
		c.weigh(&ln, g, known)
	}
	c.solids(&ln, g, known)
	c.advised(g, ln.Contains)
	if known && row.Compound != "" && len(ln.Contains) == 0 {
		c.notef("compound-ingredient", g.Path, "bought %s is often made of several things (%s)", row.Name, row.Compound).
			Hinted(`copy the packet's own list into contains = ["...", "..."], unless yours is a single ingredient`)
	}
	return ln
}

// sweeteners are the kinds of nutritive carbohydrate sweetener, in the table's
// word and a maker's.
var sweeteners = map[string]bool{"sweetener": true, "gelling sugar": true, "sugar": true, "syrup": true, "honey": true}

// find looks a row up by the maker's words; a form or piece may decide it:
// "cinnamon", 2 sticks.
func (c *calc) find(g batch.Ingredient) (pantry.Ingredient, bool) {
	if strings.Contains(strings.ToLower(g.Form), "juice") {
		if row, ok := c.p.Juice(g.Name); ok {
			return row, true
		}
	}
	if g.Amount.Part != "" { // juice of 3 limes
		for _, of := range []string{g.Amount.Piece + " " + g.Amount.Part, g.Name + " " + g.Amount.Part, g.Name} {
			if row, ok := c.p.Ingredient(of); ok && row.PieceG != 0 {
				return row, true
			}
		}
	}
	if g.Amount.Dim == unit.ByCount && g.Amount.Piece != "" {
		if row, ok := c.p.Ingredient(g.Name + " " + g.Amount.Piece); ok && row.PieceG != 0 {
			return row, true
		}
	}
	name, _ := pantry.AsBought(g.Name)
	row, ok := c.p.Ingredient(name)
	if told, _, named := c.p.Told(name, g.Form); named && !row.Own {
		return told, true
	}
	if head, rest, cut := strings.Cut(name, ","); !ok && cut {
		if _, another := c.p.Another(head, rest); !another {
			row, ok = c.p.Ingredient(head)
		}
	}
	if _, another := c.p.Another(name, g.Form); another {
		return pantry.Ingredient{}, false
	}
	return row, ok
}

// called is a food the table does not have in the maker's words: milk, form "oat",
// is oat milk.
func (c *calc) called(g batch.Ingredient) string {
	if _, another := c.p.Another(g.Name, g.Form); another {
		return g.Form + " " + g.Name
	}
	return g.Name
}

// forms are the words of how it was prepared, by key or beside the amount.
func forms(g batch.Ingredient) (out []string) {
	for _, f := range []string{g.Form, g.Amount.Form} {
		if f = strings.TrimSpace(f); f != "" && !slices.Contains(out, f) {
			out = append(out, f)
		}
	}
	return out
}

// plainName is the maker's own name as a label would list it.
func plainName(name string) string {
	w := strings.Join(strings.Fields(name), " ")
	if w == "" {
		return "unnamed ingredient"
	}
	return w
}

func (c *calc) unknown(g batch.Ingredient) {
	hint, name := "check the spelling, or ", c.called(g)
	if why, another := c.p.Another(g.Name, g.Form); another {
		hint = why + ": "
	} else if near := strings.Join(c.p.Suggest(g.Name), ", "); near != "" {
		hint = "did you mean " + near + "? or "
	}
	if g.Amount.Dim != unit.ByMass {
		c.errorf("unknown-ingredient", g.Path+".name", "%q is not in the ingredient table, and %q is no weight", name, g.Amount.Text).
			Hinted(hint + "give the amount as a weight")
		return
	}
	c.warnf("unknown-ingredient", g.Path+".name", "%q is not in the ingredient table; it is taken in your own words", name).
		Hinted(hint + "give its soluble solids (solids, %), its allergens and what it contains")
}

// solids fills in soluble and insoluble solids; the maker's own reading wins.
func (c *calc) solids(ln *Line, g batch.Ingredient, known bool) {
	soluble, other := ln.Row.SolubleG, max(ln.Row.OtherSolidsG, 0)
	switch {
	case g.Solids > 100 || g.Solids != g.Solids:
		c.errorf("bad-solids", g.Path+".solids", "solids of %g %% can't be", g.Solids).Hinted("give g of soluble solids per 100 g, 0 to 100")
	case g.Solids >= 0:
		soluble = g.Solids
		other = min(other, 100-soluble)
	case soluble < 0 && ln.Mass > 0:
		c.notef("solids-unknown", g.Path, "the soluble solids of %q are not known and taken as 0 %%; the yield will be too low if it holds sugar", ln.Name).
			Hinted("write solids = the % soluble solids of it, from its packet or a refractometer")
	}
	if ln.Removed {
		return
	}
	ln.Soluble = grams(ln.Mass.Grams() * max(soluble, 0) / 100)
	ln.Insoluble = grams(ln.Mass.Grams() * max(other, 0) / 100)
}
