package pack

import (
	"sort"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Product is a batch with the statements of its labels; Content may be nil.
type Product struct {
	Result  *cook.Result
	Content *label.Content
}

// StallItem is one product of the stall's allergen sheet.
type StallItem struct {
	in words // the language it is read in; the zero value is English

	Name, Lot   string
	Contains    []string // allergens of the recipe, as the place names them
	Ingredients string
	Advisory    string // what else the kitchen handles
	None        bool   // it is proven that there are none
	Statement   string // the label's own allergen statement; may be empty
}

// Allergens makes the allergen sheet of a stall: the products that go to the
// event (all products when event is empty), by name. Where the label has a
// statement the sheet says the same.
func Allergens(products []Product, event string) []StallItem {
	var out []StallItem
	for _, p := range products {
		if p.Result == nil || p.Result.Batch == nil || !at(p.Result, event) {
			continue
		}
		out = append(out, stallItem(p))
	}
	sort.SliceStable(out, func(i, j int) bool { return foldName(out[i].Name) < foldName(out[j].Name) })
	return out
}

func at(r *cook.Result, event string) bool {
	if event == "" {
		return true
	}
	for _, m := range r.Batch.Markets {
		if sameName(m.Event, event) && m.Jars > 0 {
			return true
		}
	}
	return false
}

func stallItem(p Product) StallItem {
	s := StallItem{Name: name(p.Result), Lot: p.Result.Lot}
	if k := p.Result.Kitchen; k != nil {
		s.in = wordsIn(languageOf(k))
	}
	if p.Content != nil {
		s.Contains, s.None = p.Content.AllergenNames, p.Content.NoAllergens
	} else {
		known := p.Result.Allergy()
		s.Contains, s.None = known.Names(), known.None()
	}
	s.Ingredients = blockText(p.Content, label.Ingredients)
	if s.Ingredients == "" {
		var names []string
		for _, l := range p.Result.ByWeight() {
			names = append(names, l.Name)
		}
		s.Ingredients = s.in.say("Ingredients") + ": " + join(names)
	}
	s.Statement = blockText(p.Content, label.Allergens)
	s.Advisory = blockText(p.Content, label.Advisory)
	if k := p.Result.Kitchen; s.Advisory == "" && k != nil && len(k.AlsoHandles) > 0 {
		s.Advisory = s.in.say("This kitchen also handles %s.", s.in.and(k.AlsoHandles))
	}
	return s
}

func blockText(c *label.Content, k label.Kind) string {
	if c == nil {
		return ""
	}
	b, _ := c.Find(k)
	return strings.TrimSpace(b.Text())
}

// and joins names as a sentence does.
func (w words) and(s []string) string {
	switch len(s) {
	case 0:
		return ""
	case 1:
		return s[0]
	}
	return w.say("%s and %s", join(s[:len(s)-1]), s[len(s)-1])
}
