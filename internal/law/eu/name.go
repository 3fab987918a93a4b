package eu

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// identity adds the name of the food and tests it against the jam rules.
func (c *pass) identity() {
	name, cite := strings.TrimSpace(c.B.Name), "Regulation (EU) 1169/2011 Art 17"
	switch {
	case c.governed && len(c.product.Counts) > 0:
		name, cite = c.reservedName(name), c.product.Cite
		c.judge()
	case c.governed:
		c.judge()
	default:
		c.outside(name)
	}
	c.titles()
	if name == "" {
		c.missing("no-name", label.Identity, "name", "the food has no name").Hinted(`write name = "Strawberry jam"`).Cited(cite)
		return
	}
	c.add(label.Block{Kind: label.Identity, Bold: true, Runs: []label.Run{{Text: name, Bold: true}},
		With: []label.Kind{label.Net}, Cite: cite, Path: "name"})
}

// printed is a product's name as a label composes it.
func (c *pass) printed(p place.Product) string {
	if names := p.NamesOn(c.Say.Lang, c.on); len(names) > 0 {
		return names[0].Name
	}
	return p.ID
}

// reservedName keeps the maker's name when it says the product and the fruit
// as the directive asks (Art 2(2)), and otherwise composes one.
func (c *pass) reservedName(name string) string {
	if len(c.fruits) == 0 {
		product := c.printed(c.product)
		for _, n := range c.product.NamesOn(c.Say.Lang, c.on) {
			if n.AloneFrom > 0 {
				product = n.Name
			}
		}
		c.L.Warnf("no-fruit", c.BatchFile(), "ingredient", "no ingredient counts as the fruit of %s, so the name can't be checked", c.printed(c.product)).Cited(citeJam)
		return cmp.Or(name, draft.Upper(product))
	}
	if c.lawfulName(name) {
		return name
	}
	if !c.saysProduct(name, c.product) {
		c.borrowed(name, func(p place.Product) bool { return p.ID != c.product.ID })
	}
	made := c.composed()
	c.L.Notef("legal-name", c.BatchFile(), "name", "%q is not the name the jam rules ask, so the label also says %q", name, made).
		Hinted("the name is the product with its fruit, heaviest first").Cited(citeJam)
	return made
}

// lawfulName: a lawful name of the product stands in it, with the fruit.
func (c *pass) lawfulName(name string) bool {
	for _, n := range c.product.NamesOn(c.Say.Lang, c.on) {
		if c.says(name, n.Name) && (n.AloneFrom > 0 && len(c.fruits) >= n.AloneFrom || c.saysFruit(name)) {
			return true
		}
	}
	return false
}

// saysProduct reports whether a lawful name of a product stands in a name.
func (c *pass) saysProduct(name string, p place.Product) bool {
	return slices.ContainsFunc(p.NamesOn(c.Say.Lang, c.on), func(n place.ProductName) bool { return c.says(name, n.Name) })
}

// says reports whether every word of a lawful name stands in a name; German
// makes compounds of them ("Erdbeerkonfitüre extra").
func (c *pass) says(name, lawful string) bool {
	low := words.Fold(name)
	for _, w := range strings.FieldsFunc(words.Fold(lawful), draft.NotLetter) {
		if len(w) < 3 {
			continue // de, d'
		}
		if c.Say.Lang == "de" && strings.Contains(low, w) || draft.HasWord(low, w) {
			continue
		}
		return false
	}
	return true
}

// composed names every fruit, heaviest first: "Strawberry and rhubarb jam",
// "Erdbeer-Rhabarber-Konfitüre".
func (c *pass) composed() string {
	if names := c.product.NamesOn(c.Say.Lang, c.on); len(names) > 0 && names[0].AloneFrom > 0 && len(c.fruits) >= names[0].AloneFrom {
		return draft.Upper(names[0].Name)
	}
	if c.Say.Lang == "de" {
		if name, ok := c.german(); ok {
			return name
		}
	}
	var names []string
	for _, f := range c.fruits {
		n := c.fruitName(f)
		switch c.Say.Lang {
		case "en":
			n = words.Singular(n)
		case "fr":
			n = ofFruit(n)
		}
		if !slices.Contains(names, n) {
			names = append(names, n)
		}
	}
	return draft.Upper(c.say("name.composed", "fruits", draft.Joined(names, c.say("and")), "product", c.printed(c.product)))
}

// german is the name as the language makes it of the stems: "Erdbeerkonfitüre extra",
// "Schwarze-Johannisbeer-Konfitüre", "Brombeer-Apfel-Gelee"; ok is false where
// the stem of a fruit is not known.
func (c *pass) german() (name string, ok bool) {
	var stems []string
	for _, f := range c.fruits {
		n, known := f.Line.Row.Names("de")
		if !known || f.Line.Row.Own {
			return "", false
		}
		stem := c.withoutJuice(n.Stem)
		if adjective, noun, two := strings.Cut(n.Label, " "); two && strings.HasPrefix(noun, stem) {
			stem = draft.Upper(adjective) + "-" + stem
		}
		if !slices.Contains(stems, stem) {
			stems = append(stems, stem)
		}
	}
	product := c.printed(c.product)
	if len(stems) == 1 && !strings.ContainsAny(stems[0], "- ") && !strings.Contains(product, "-") {
		return stems[0] + strings.ToLower(product), true
	}
	return strings.Join(stems, "-") + "-" + product, true
}

// fruitName is the fruit itself, also where its juice was used.
func (c *pass) fruitName(f share) string {
	lang := c.Say.Lang
	if lang == "en" {
		lang = "en_gb"
	}
	if n, ok := f.Line.Row.Names(lang); ok && !f.Line.Row.Own {
		return c.withoutJuice(n.Label)
	}
	return c.ingredientName(f.Line)
}

// withoutJuice is the fruit of a juice: "orange juice", "Orangensaft", "jus
// d’orange"; other names are left as they are.
func (c *pass) withoutJuice(name string) string {
	for _, w := range strings.Split(c.say("word.juice"), "|") {
		if cut, ok := strings.CutSuffix(name, w); ok && cut != "" {
			return strings.TrimSpace(cut)
		}
		for _, of := range []string{" de ", " d’"} {
			if cut, ok := strings.CutPrefix(name, w+of); ok {
				return cut
			}
		}
	}
	return name
}

// ofFruit is the French "de" with its elision.
func ofFruit(n string) string {
	if first := words.Fold(n); first != "" && strings.ContainsAny(first[:1], "aeiouh") {
		return "d’" + n
	}
	return "de " + n
}

// saysFruit: one or two fruits are named "in descending order of weight" (Art 2(2)), of
// the same weight in any; three or more may be "mixed fruit", a similar wording or
// their number instead.
func (c *pass) saysFruit(name string) bool {
	if len(c.fruits) > 2 && (c.saysMixed(name) || c.saysNumber(name)) {
		return true
	}
	heavier, last := 0, 0 // where the last fruit that weighs more stands, and the last of all
	for i, f := range c.fruits {
		if i > 0 && f.Mass != c.fruits[i-1].Mass {
			heavier = last
		}
		at := c.calledAt(name, f.Line)
		if at < heavier {
			return false
		}
		last = max(last, at)
	}
	return true
}

func (c *pass) saysMixed(name string) bool {
	for _, w := range append(strings.Split(c.say("name.mixed-also"), "|"), c.say("name.mixed")) {
		if strings.Contains(words.Fold(name), words.Fold(w)) {
			return true
		}
	}
	return false
}

// saysNumber finds the number of fruits: "Three fruit marmalade",
// "Vierfruchtkonfitüre", "3-fruit jam".
func (c *pass) saysNumber(name string) bool {
	n := len(c.fruits)
	tight := strings.NewReplacer(" ", "", "-", "", "'", "").Replace(words.Fold(name))
	numbers := strings.Split(c.say("name.numbers"), "|") // from two on
	if n-2 < len(numbers) && strings.Contains(tight, words.Fold(numbers[n-2])+"fru") {
		return true
	}
	return strings.Contains(tight, strconv.Itoa(n)+"fru")
}

// outside handles kinds the jam rules do not govern: a reserved name may not
// stand on them alone (Art 2(1)).
func (c *pass) outside(name string) {
	c.borrowed(name, func(place.Product) bool { return true })
}

// borrowed tells of names reserved for other products that a name says. Where
// the batch can be taken for such a product that is an error; names "used in
// addition ... to designate other products which cannot be confused" (Art 2(1):
// onion marmalade) and what a country may allow ("Marmelade") are warnings.
func (c *pass) borrowed(name string, other func(place.Product) bool) {
	told := map[string]bool{}
	for _, p := range c.Set.Products {
		if p.ByName || len(p.Counts) == 0 || !other(p) {
			continue
		}
		for _, n := range p.NamesOn(c.Say.Lang, c.on) {
			if told[n.Name] || !c.says(name, n.Name) {
				continue
			}
			told[n.Name] = true
			c.reserved(n.Name, p, "name")
		}
	}
}

// reserved tells of a name of another product at its line of the batch file.
func (c *pass) reserved(name string, of place.Product, path string) {
	hint := "choose another name"
	switch {
	case of.ByName && of.Like == c.product.ID:
		hint = "write it into the name of the food too, then the batch is held to what it asks; or leave the word out"
	case len(of.Types) > 0:
		hint = `write kind = "` + of.Types[0] + `" if it is one, or choose another name`
	}
	why := fmt.Sprintf("%q is a reserved name, and this batch is of another kind", name)
	c.Tell(map[bool]string{true: "error", false: "warning"}[c.confused()], "reserved-name", c.BatchFile(), path, why).Hinted(hint).Cited(citeJam)
}

// confused reports whether the batch may be taken for jam: fruit that is no
// relish, in a country whose rules are known.
func (c *pass) confused() bool {
	if draft.Has([]string{"chutney", "relish"}, string(c.B.Product)) || c.Set.ID == "eu" {
		return false
	}
	return slices.ContainsFunc(c.R.Lines, func(ln cook.Line) bool { return ln.IsFruit && ln.Row.FruitClassEU != "" })
}
