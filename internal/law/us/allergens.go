package us

import (
	"strings"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

const citeAllergens = "21 U.S.C. 321(qq), 343(w)"

// allergens adds "Contains: Milk, Pecans", or our own words that the recipe
// holds none where that is proven, and the voluntary line on what else the
// kitchen handles.
func allergens(p *pass) {
	also := p.Handles(majorName, citeAllergens)
	p.Evidence(majorName, citeAllergens)
	names, beyond := p.C.AllergenNames, p.beyond()
	p.C.NoAllergens = p.C.NoAllergens && !p.mayContain()
	var runs []label.Run
	switch {
	case len(names) > 0:
		runs = p.Say.Runs("us.contains", "list", raised(names))
	case p.C.NoAllergens:
		runs = p.Say.Runs("us.no-allergens")
	}
	if len(beyond) > 0 {
		text := p.Say.Say("us.also-contains", "list", draft.Joined(beyond, p.Say.Say("us.and")))
		switch {
		case len(names) > 0:
			text = ". " + text
		case len(runs) > 0:
			text = " " + text
		}
		runs = append(runs, label.Run{Text: text})
	}
	if len(runs) > 0 {
		b := label.Block{Kind: label.Allergens, Runs: runs, Zone: label.Info, With: []label.Kind{label.Ingredients},
			Required: len(names) > 0, Cite: citeAllergens, Verified: p.Set.Allergens.Confidence, Path: "ingredient"}
		if len(names) == 0 {
			b.Cite = "voluntary; " + citeAllergens
		}
		p.add(b)
	}
	p.advise(also)
}

// beyond gives what the maker calls an allergen and the law's list does not;
// declared sulfites stand in the list of ingredients.
func (p *pass) beyond() (words []string) {
	for _, f := range p.Allergy.Found {
		if f.Maker && f.US == "" && f.ID != "sulphites" && !draft.Has(words, f.Word) {
			words = append(words, f.Word)
			if f.Means == "plain" {
				p.L.Notef("no-longer-major", p.BatchFile(), f.From[0].Path, "%s is not on the list of major allergens since %s, so it does not stand after \"Contains\"", f.Word, p.Set.Allergens.AsOf).
					Cited("FDA guidance on food allergen labeling, Edition 5 (6 Jan 2025)")
			}
		}
	}
	return words
}

// mayContain reports whether the state's sentence on the same label says that
// allergens may be in the food after all. What else the kitchen handles is no
// contradiction: the one line speaks of the recipe, the other of the kitchen.
func (p *pass) mayContain() bool {
	pr := p.prog
	return pr != nil && !p.O.Gift && strings.Contains(strings.ToLower(pr.Statement+pr.Meaning+pr.Recommended), "allergen")
}

// advise adds the cross-contact line, without what the food itself contains.
func (p *pass) advise(also []string) {
	also = draft.Without(also, p.C.AllergenNames)
	if len(also) == 0 {
		return
	}
	p.L.Notef("cross-contact", p.KitchenFile(), "also_handles", "the line on what else the kitchen handles is voluntary and replaces no allergen statement").
		Cited("voluntary; FDA guidance on food allergen labeling")
	p.add(label.Block{Kind: label.Advisory, Runs: p.Say.Runs("us.advisory", "list", draft.Joined(also, p.Say.Say("us.and"))), Cite: "voluntary", Path: "also_handles"})
}

// raised lists names as a "Contains" statement writes them: "Milk, Pecans".
func raised(names []string) string {
	var out []string
	for _, n := range names {
		out = append(out, draft.Upper(n))
	}
	return strings.Join(out, ", ")
}

// majorName is the name of a major food allergen (21 U.S.C. 321(qq)).
func majorName(s allergen.Substance) ([]string, bool) {
	switch s.US {
	case "":
		return nil, false
	case allergen.Ask:
		return nil, true
	}
	return []string{s.US}, false
}
