package pack

import (
	"cmp"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"slices"
	"sort"
	"strings"

	"jarmark/internal/kitchen/batch"
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
	in table.Words // the language it is read in; the zero value is English

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
	sort.SliceStable(out, func(i, j int) bool { return FoldName(out[i].Name) < FoldName(out[j].Name) })
	return out
}

func at(r *cook.Result, event string) bool {
	if event == "" {
		return true
	}
	return slices.ContainsFunc(r.Batch.Markets, func(m batch.Market) bool { return sameName(m.Event, event) && m.Jars > 0 })
}

func stallItem(p Product) StallItem {
	s := StallItem{Name: name(p.Result), Lot: p.Result.Lot}
	if k := p.Result.Kitchen; k != nil {
		s.in = table.WordsIn(table.LanguageOf(k))
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
		s.Ingredients = s.in.Say("Ingredients") + ": " + table.Join(names)
	}
	s.Statement = blockText(p.Content, label.Allergens)
	s.Advisory = blockText(p.Content, label.Advisory)
	if k := p.Result.Kitchen; s.Advisory == "" && k != nil && len(k.AlsoHandles) > 0 {
		s.Advisory = s.in.Say("This kitchen also handles %s.", s.in.And(k.AlsoHandles))
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

// StallSheet is the allergen sheet of a stall, to lie beside the jars.
func StallSheet(items []StallItem, maker string) *table.List {
	var w table.Words
	if len(items) > 0 {
		w = items[0].in
	}
	l := &table.List{In: w, Head: w.Say("Allergen sheet"), Title: w.Say("Allergens"), Maker: maker,
		Sum: w.Say("What is in every jar. Please ask if you have a food allergy; when in doubt, do not eat it.")}
	for _, s := range items {
		p := table.Part{Title: s.Name, Sum: w.Say("lot %s", s.Lot), Rows: []table.Row{{Type: table.Say, What: s.Says(), Strong: true}}}
		if s.Advisory != "" {
			p.Rows = append(p.Rows, table.Row{Type: table.Say, What: s.Advisory})
		}
		p.Rows = append(p.Rows, table.Row{Type: table.Say, What: s.Ingredients})
		l.Add(p)
	}
	return l
}

// AllergenDoc is the sheet to print.
func AllergenDoc(items []StallItem, maker, units string, fs *face.Set, paper string) (*page.Doc, diag.List) {
	return StallSheet(items, maker).Doc(fs, cmp.Or(paper, table.Paper(units)))
}

// Says is the allergen sentence: the label's, else one from the recipe.
func (s StallItem) Says() string {
	switch {
	case s.Statement != "":
		return s.Statement
	case len(s.Contains) > 0:
		return s.in.Say("Contains %s.", s.in.And(s.Contains))
	case s.None && s.Advisory == "":
		return s.in.Say("No listed allergen is in this recipe.")
	}
	return s.in.Say("For allergens, see the ingredients, and ask.")
}
