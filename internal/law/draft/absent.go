package draft

import (
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// absent reports words that deny what the batch holds, whatever it is: "no pectin
// added" beside pectin. A text without the name is not looked at for its forms:
// a list of gifts brings thousands.
func (p *Draft) absent(w place.WordingRule, texts []ownText) {
	said := map[string]bool{}
	plain := make([]string, len(texts))
	for i, o := range texts {
		plain[i] = Spaced(o.text)
	}
	for _, ln := range p.R.Lines {
		for _, name := range namesOf(ln) {
			if said[name] {
				continue
			}
			said[name] = true
			if ln.IsSweet && p.Set.Nutrition != nil && Has(p.Set.Nutrition.Nutrients, name) {
				continue // "no sugar" is a claim about nutrition
			}
			var naming []ownText
			for i, o := range texts {
				if strings.Contains(plain[i], name) {
					naming = append(naming, o)
				}
			}
			p.tellWording(w, naming, filled(w.Words, name), filled(w.Unless, name), w.Level, w.Text, ln.Name)
		}
	}
}

func filled(forms []string, name string) (out []string) {
	for _, f := range forms {
		out = append(out, strings.ReplaceAll(f, "{x}", name))
	}
	return out
}

// namesOf are the words a label may call an ingredient and its parts by, in all
// languages, and the last of each: "butter" of "salted butter".
func namesOf(ln cook.Line) (out []string) {
	all := append([]string{ln.Name, ln.Row.Name}, ln.Written...)
	for _, lang := range []string{"en", "en_gb", "de", "fr"} {
		n, _ := ln.Row.Names(lang)
		all = append(all, n.Label, n.Singular)
	}
	if fruit, _, juice := strings.Cut(ln.Key, "_juice"); juice { // Zitronensaft is of Zitronen
		if of, ok := pantry.Default().Ingredient(fruit); ok {
			for _, lang := range spoken {
				n, _ := of.Names(lang)
				all = append(all, n.Label, n.Singular)
			}
		}
	}
	for _, part := range ln.Contains {
		all = append(all, part.Name)
	}
	for _, name := range all {
		words := strings.Fields(Spaced(name))
		if len(words) == 0 {
			continue
		}
		out = append(out, strings.Join(words, " "))
		last := words[len(words)-1]
		if len(last) > 3 {
			out = append(out, last)
		}
		if len(words) > 1 && Has(partsOfFruit, last) { // "no lemon" beside lemon juice
			out = append(out, strings.Join(words[:len(words)-1], " "))
		}
	}
	return out
}

// partsOfFruit are words behind the name of the fruit they are of.
var partsOfFruit = []string{"juice", "zest", "peel", "rind", "pulp", "puree", "purée"}
