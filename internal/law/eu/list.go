package eu

import (
	"slices"
	"sort"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// item is one entry of an ingredient list.
type item struct {
	line cook.Line
	mass unit.Mass
	path string
}

// items gives the ingredients in descending weight as used, water by its
// weight in the finished product: finished less all other ingredients, left
// out when none remains or not above the share a set allows (Annex VII A(1)).
func (c *pass) items() []item {
	var items []item
	var others unit.Mass
	var water *cook.Line
	for i, ln := range c.R.Lines {
		if ln.IsWater {
			water = &c.R.Lines[i]
			continue
		}
		others += ln.Mass
		items = append(items, item{ln, ln.Mass, draft.LinePath(ln)})
	}
	if water != nil {
		left := c.R.Yield.Mass - others
		if c.R.Yield.Mass > 0 && float64(left)*100 > float64(c.R.Yield.Mass)*float64(c.law.WaterOmit) {
			items = append(items, item{*water, left, draft.LinePath(*water)})
		}
	}
	sort.SliceStable(items, func(i, j int) bool { return items[i].mass > items[j].mass })
	return items
}

// finished is the weight of the finished food; of all that went in where no
// yield is known.
func (c *pass) finished() unit.Mass {
	if c.R.Yield.Mass > 0 {
		return c.R.Yield.Mass
	}
	return c.R.Input
}

// listRuns words the ingredient list: heading, items, allergens in bold with a
// clear reference to the Annex II name (Art 18, 21).
func (c *pass) listRuns(quid map[string]string) []label.Run {
	w := &runs{}
	w.plain(c.say("ingredients.heading"))
	for i, it := range c.items() {
		if i > 0 {
			w.plain(", ")
		}
		c.item(w, it, quid[it.path])
	}
	return w.runs
}

// item words one ingredient: name or additive category, QUID, sub-ingredients
// of a compound, and allergens no word before has named.
func (c *pass) item(w *runs, it item, quid string) {
	name := c.ingredientName(it.line)
	todo := c.lineAllergens(it.line)
	if len(it.line.Contains) == 0 {
		if add, ok := c.additive(it.path, it.line.Key, it.line.Name, name); ok {
			name = add
		}
	}
	todo = w.emphasised(c.listed(name), todo)
	if quid != "" {
		w.plain(" (" + quid + ")")
	}
	if len(it.line.Contains) > 0 {
		todo = c.parts(w, it, todo)
	} else {
		c.compound(it)
	}
	w.bracketed(todo)
}

// listed is a name as the language writes it in a list: English makers give
// every item a capital, German nouns bring their own, French has none.
func (c *pass) listed(name string) string {
	if c.Say.Lang == "en" {
		return draft.Upper(name)
	}
	return name
}

// compound asks for the parts of what is always made of several things, by its row or
// by the words of a maker's own name ("mango chutney") (Annex
// VII Part E(1)). Below 2 % of the finished food a list may be left out where
// Union law defines the composition, or for a mix of spices (E(2)); the additives
// and allergens in it may not.
func (c *pass) compound(it item) {
	own := it.line.Key == "" && draft.Said(it.line.Name, strings.Split(c.say("compound.words"), "|"), strings.Split(c.say("compound.unless"), "|")) != ""
	if !own && !slices.Contains(c.law.Compound, it.line.Key) {
		return
	}
	msg := c.ingredientQuiet(it.line) + " is made of several things, and its own list of ingredients is not given"
	hint := `copy the packet's list: contains = ["sugar", "pectin", "citric acid"]`
	if percentOf(it.mass, c.finished()) >= 2 {
		c.fail("compound-without-parts", it.path, msg).Hinted(hint).Cited(citeFIC18 + " Part E")
		return
	}
	c.L.Warnf("compound-without-parts", c.BatchFile(), it.path, "%s", msg).Hinted(hint + "; below 2 % only its allergens and additives are asked").Cited(citeFIC18 + " Part E(2)")
}

// parts words the components of a compound ingredient. Additives keep their
// category and allergens are never dropped (Annex VII Part E(2)). It returns
// the compound's allergens no component carries.
func (c *pass) parts(w *runs, it item, todo []string) []string {
	w.plain(" (")
	for i, p := range it.line.Contains {
		if i > 0 {
			w.plain(", ")
		}
		own := c.emphasis(c.R.PartAllergy(it.line, p))
		todo = draft.Without(todo, own)
		left := w.emphasised(c.partName(it, p.Name), append(own, todo...))
		w.bracketed(draft.Without(left, todo))
		todo = draft.Without(left, own)
	}
	w.plain(")")
	return todo
}

// partName is a component's name in the label's language; a maker's own
// components are taken as written.
func (c *pass) partName(it item, name string) string {
	if add, ok := c.additive(it.path, name); ok {
		return add
	}
	if key := "part." + strings.ToLower(name); c.has(key) {
		return c.say(key)
	}
	if row, ok := pantry.Default().Ingredient(name); ok && c.Say.Lang != "en" && (strings.EqualFold(row.Name, name) || draft.Has(row.Aliases, name)) {
		if n, ok := row.Names(c.Say.Lang); ok { // copied off an English packet
			return n.Label
		}
	}
	if c.Say.Lang != "en" && it.line.Key != "" && !it.line.Row.Own && !c.PacketRead(it.line) {
		c.noName(name, it.path)
	}
	return name
}

func (c *pass) noName(name, path string) {
	c.L.Errorf("no-name-in-language", c.BatchFile(), path, "%q has no name in the label's language (%s)", name, c.Say.Lang).
		Hinted("write an [[ingredient]] of your own in kitchen.toml with its name in that language").Cited("Regulation (EU) 1169/2011 Art 15")
}

// ingredientName is the name in the label's language: the pantry's or the
// maker's own words. A tabled ingredient without a name in the language is an
// error, never English by accident.
func (c *pass) ingredientName(ln cook.Line) string {
	name, ok := c.nameIn(ln)
	if !ok {
		c.noName(ln.Name, draft.LinePath(ln))
	}
	return name
}

// ingredientQuiet is ingredientName without the finding.
func (c *pass) ingredientQuiet(ln cook.Line) string {
	name, _ := c.nameIn(ln)
	return name
}

func (c *pass) nameIn(ln cook.Line) (string, bool) {
	if ln.Key == "" || ln.Row.Own {
		return ln.Name, true
	}
	lang := c.Say.Lang
	if lang == "en" { // as Europe writes it: courgettes, not zucchini
		lang = "en_gb"
	}
	n, ok := ln.Row.Names(lang)
	switch {
	case ok && ln.Row.Class == "juice" && !c.isJuiceWord(n.Label):
		return c.juiceName(n), true
	case ok:
		return n.Label, true
	}
	return ln.Name, c.Say.Lang == "en"
}

// juiceName is the juice of a fruit (Art 18(2): an ingredient goes by its own
// name): "quince juice", "Quittensaft", "jus de coings".
func (c *pass) juiceName(n pantry.Names) string {
	switch {
	case c.Say.Lang == "fr":
		return c.say("name.juice", "fruit", ofFruit(n.Label))
	case c.Say.Lang == "de" && strings.Contains(n.Label, " "): // schwarze Johannisbeeren
		adjective, noun, _ := strings.Cut(n.Label, " ")
		return "Saft aus " + adjective + "n " + noun
	case c.Say.Lang == "de":
		return c.say("name.juice", "fruit", n.Stem)
	}
	return c.say("name.juice", "fruit", n.Singular)
}

// runs collects text, joining neighbours of the same emphasis.
type runs struct{ runs []label.Run }

func (w *runs) put(s string, bold bool) {
	if s == "" {
		return
	}
	if n := len(w.runs); n > 0 && w.runs[n-1].Bold == bold {
		w.runs[n-1].Text += s
		return
	}
	w.runs = append(w.runs, label.Run{Text: s, Bold: bold})
}

func (w *runs) plain(s string) { w.put(s, false) }

// emphasised writes a name with the allergen words in it bold, and returns the
// allergens it did not name.
func (w *runs) emphasised(name string, allergens []string) (left []string) {
	bold := make([]bool, len(name))
	for _, a := range allergens {
		from, to, ok := findName(name, a)
		if !ok {
			left = append(left, a)
			continue
		}
		for i := from; i < to; i++ {
			bold[i] = true
		}
	}
	start := 0
	for i := 1; i <= len(name); i++ {
		if i == len(name) || bold[i] != bold[start] {
			w.put(name[start:i], bold[start])
			start = i
		}
	}
	return left
}

// findName finds an allergen's name in an ingredient's, plural or singular.
func findName(name, allergen string) (int, int, bool) {
	if from, to, ok := draft.FindWord(name, allergen, true); ok {
		return from, to, ok
	}
	for _, ending := range []string{"s", "n", "x", "e"} { // "e" of long words alone: Fische
		if cut, ok := strings.CutSuffix(allergen, ending); ok && len(cut) >= 3 && (ending != "e" || len(cut) > 4) {
			return draft.FindWord(name, cut, true)
		}
	}
	return 0, 0, false
}

// bracketed writes allergens not yet named: " (milk)".
func (w *runs) bracketed(names []string) {
	for i, a := range names {
		if i == 0 {
			w.plain(" (")
		} else {
			w.plain(", ")
		}
		w.put(a, true)
	}
	if len(names) > 0 {
		w.plain(")")
	}
}
