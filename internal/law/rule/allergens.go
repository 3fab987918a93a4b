package rule

import (
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

const citeAllergens = "21 U.S.C. 321(qq), 343(w)"

// allergenTable is the dated list of major food allergens.
type allergenTable struct {
	AsOf     string      `toml:"as_of"`
	Major    []majorFood `toml:"major"`
	Formerly []string    `toml:"formerly"` // on the list before: no "Contains" any more
	Ignored  []string    `toml:"ignored"`  // allergens of other places, not of this list
	Origin
}

// majorFood is one allergen as the statement names it, and the words for it.
type majorFood struct {
	Name  string   `toml:"name"`
	Group string   `toml:"group"` // "tree nuts", "fish", "shellfish": the species is named
	Words []string `toml:"words"`
}

// allergens adds "Contains: Milk, Pecans", or our own words that the recipe
// holds none, and the voluntary line on what else the kitchen handles.
func allergens(p *pass) {
	var names []string
	for _, e := range p.list {
		names = p.allergensOf(names, e.line)
	}
	p.c.AllergenNames = names
	b := label.Block{Kind: label.Allergens, Min: p.letterO(), Zone: label.Info, With: []label.Kind{label.Ingredients},
		Cite: citeAllergens, Verified: p.set.Allergens.Confidence, Path: "ingredient"}
	if len(names) > 0 {
		b.Runs, b.Required = p.say.Runs("us.contains", "list", raised(names)), true
	} else {
		b.Runs, b.Cite = p.say.Runs("us.no-allergens"), "voluntary; "+citeAllergens
	}
	p.add(b)
	p.handled(names)
}

// allergensOf adds the allergens of one ingredient and its parts.
func (p *pass) allergensOf(names []string, ln cook.Line) []string {
	words := allergenWords(ln.Row.USAllergen)
	for _, part := range ln.Contains {
		words = append(words, allergenWords(part.USAllergen)...)
	}
	for _, w := range ln.Allergens {
		words = append(words, allergenWords(w)...)
	}
	return p.named(names, words, p.batchFile(), linePath(ln))
}

// raised lists names as a "Contains" statement writes them: "Milk, Pecans".
func raised(names []string) string {
	var out []string
	for _, n := range names {
		out = append(out, upper(n))
	}
	return strings.Join(out, ", ")
}

// allergenWords takes "soy, wheat" apart and "tree nut (almond)" to "almond".
func allergenWords(s string) (out []string) {
	for _, w := range strings.Split(s, ",") {
		w = strings.TrimSpace(w)
		if i := strings.IndexByte(w, '('); i >= 0 && strings.HasSuffix(w, ")") {
			w = strings.TrimSpace(w[i+1 : len(w)-1])
		}
		if w != "" {
			out = append(out, w)
		}
	}
	return out
}

// named adds the statement's names of allergen words, each once.
func (p *pass) named(names, words []string, file, path string) []string {
	t := p.set.Allergens
	for _, w := range words {
		m, ok := t.find(w)
		switch {
		case ok:
			if m.Name == "" {
				p.l.Warnf("name-the-species", file, path, "%q is a group, and the label must name the kind itself", w).
					Hinted("write almonds, pecans, cod, shrimp …").Cited(citeAllergens + "(2)")
				m.Name = w
			}
			if !has(names, m.Name) {
				names = append(names, m.Name)
			}
		case has(t.Formerly, w):
			p.l.Notef("no-longer-major", file, path, "%s is not on the list of major allergens since %s, so it is named in the ingredients only", w, t.AsOf).
				Cited("FDA guidance on food allergen labeling, Edition 5 (6 Jan 2025)")
		case has(t.Ignored, w), has(p.set.Ingredients.Sulfites, w):
		default:
			p.l.Warnf("unknown-allergen", file, path, "%q is none of the nine major allergens by name", w).
				Hinted("milk, egg, wheat, peanut, soy, sesame, or the nut, fish or shellfish itself; other allergies are named in the ingredients").Cited(citeAllergens)
		}
	}
	return names
}

func (t *allergenTable) find(word string) (majorFood, bool) {
	for _, m := range t.Major {
		if m.Name != "" && strings.EqualFold(m.Name, word) || has(m.Words, word) {
			return m, true
		}
	}
	return majorFood{}, false
}

// handled adds the cross-contact line, without what the food itself contains.
func (p *pass) handled(own []string) {
	var words []string
	for _, w := range p.k.AlsoHandles {
		words = append(words, allergenWords(w)...)
	}
	var also []string
	for _, n := range p.named(nil, words, p.kitchenFile(), "also_handles") {
		if !has(own, n) {
			also = append(also, n)
		}
	}
	if len(also) == 0 {
		return
	}
	p.l.Notef("cross-contact", p.kitchenFile(), "also_handles", "the line on what else the kitchen handles is voluntary and replaces no allergen statement").
		Cited("voluntary; FDA guidance on food allergen labeling")
	p.add(label.Block{Kind: label.Advisory, Runs: p.say.Runs("us.advisory", "list", joined(also, p.say.Say("us.and"))),
		Min: p.letterO(), Cite: "voluntary", Path: "also_handles"})
}
