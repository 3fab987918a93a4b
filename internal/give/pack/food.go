package pack

import (
	"slices"
	"sync"

	fold "jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// food is what words for something not to be eaten name in the pantry, where no
// law lists it as an allergen: "strawberries", "Erdbeeren", "citrus".
type food struct {
	rows  []pantry.Ingredient // in English, German and French: in doubt all of them
	class string              // all rows of this class: "alcohol"
}

// citrus are the fruits of the genus Citrus that a kitchen meets. From common
// food knowledge, no source.
var citrus = []string{"oranges", "lemons", "limes", "grapefruit", "mandarin oranges", "kumquats", "bergamots", "yuzu", "pomelo", "clementines", "tangerines", "calamansi"}

// familyWords are the names of families as people write them, folded.
var familyWords = map[string]string{
	"citrus": "citrus", "citrus fruit": "citrus", "citrus fruits": "citrus", "zitrus": "citrus", "zitrusfrucht": "citrus", "zitrusfruchte": "citrus",
	"zitrusfruechte": "citrus", "agrume": "citrus", "agrumes": "citrus",
	"alcohol": "alcohol", "liquor": "alcohol", "alkohol": "alcohol", "alcool": "alcohol",
}

var foods sync.Map // folded words -> food: a long list asks for few

// foodOf looks words up in the pantry; ok is false where it knows none of them.
func foodOf(words string) (f food, ok bool) {
	key := fold.Fold(words)
	if kept, seen := foods.Load(key); seen {
		f = kept.(food)
		return f, f.known()
	}
	asked := []string{words}
	switch familyWords[key] {
	case "citrus":
		asked = citrus
	case "alcohol":
		f.class = "alcohol"
	}
	for _, lang := range []string{"en", "de", "fr"} {
		for _, w := range asked {
			if g, found := pantry.Default().Speaking(lang).Ingredient(w); found {
				f.rows = append(f.rows, g)
			}
		}
	}
	foods.Store(key, f)
	return f, f.known()
}

func (f food) known() bool { return f.class != "" || len(f.rows) > 0 }

// made reports whether an ingredient is the food or made of it: "lemon juice"
// of lemons, "black raspberries" where raspberries are meant.
func (f food) made(g pantry.Ingredient, names ...string) bool {
	if f.class != "" && f.class == g.Class {
		return true
	}
	return slices.ContainsFunc(f.rows, func(own pantry.Ingredient) bool {
		return slices.ContainsFunc(append(names, g.Name), func(n string) bool { return within(own.Name, n) })
	})
}

// inLine reports whether a line of a recipe holds the food, itself or as a part.
func (f food) inLine(ln cook.Line) bool {
	if f.made(ln.Row, ln.Name) {
		return true
	}
	return slices.ContainsFunc(ln.Contains, func(p pantry.Part) bool {
		g, ok := foodOf(p.Name)
		return ok && slices.ContainsFunc(g.rows, func(row pantry.Ingredient) bool { return f.made(row, p.Name) })
	})
}
