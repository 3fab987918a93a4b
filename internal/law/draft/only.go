package draft

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/place"
)

// only reports lists that a text says are whole and that leave out an ingredient:
// "only strawberries and sugar" beside lemon juice. Words are what stands before
// such a list, Unless what stands behind one. A list with any word that is no food
// says something else ("only the best strawberries").
func (p *Draft) only(w place.WordingRule, texts []ownText) {
	for _, o := range texts {
		if !Has(w.In, o.as) || p.saidOf(w, o.path, "") {
			continue
		}
		if foods, said := p.wholeList(o.text, w); len(foods) > 0 {
			if left := p.leftOut(foods); left != "" {
				p.tellWording(w, []ownText{o}, []string{said}, nil, w.Level, w.Text, left)
			}
		}
	}
}

// wholeList finds the foods of a list that a text says is whole.
func (p *Draft) wholeList(text string, w place.WordingRule) (foods []saidFood, said string) {
	for _, sentence := range strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(".!?;:–—", r) }) {
		plain := listed(sentence)
		for _, head := range w.Words {
			if before, behind, ok := strings.Cut(plain, Spaced(head)); ok && strings.TrimSpace(before) == "" {
				if foods = p.allFoods(behind); len(foods) > 0 {
					return foods, strings.TrimSpace(Spaced(sentence))
				}
			}
		}
	}
	plain := listed(text)
	for _, tail := range w.Unless {
		if before, behind, ok := strings.Cut(plain, Spaced(tail)); ok && strings.TrimSpace(behind) == "" {
			if foods = p.allFoods(before); len(foods) > 0 {
				return foods, strings.TrimSpace(Spaced(text))
			}
		}
	}
	return nil, ""
}

// listed is a text between single spaces with a word for what parts a list: "fruit,
// sugar" is no fruit sugar.
func listed(text string) string {
	return Spaced(strings.NewReplacer(",", " and ", "&", " and ", "+", " and ", "/", " and ").Replace(text))
}

// allFoods reads words that are foods and what joins them, nothing else.
func (p *Draft) allFoods(plain string) (out []saidFood) {
	ws := strings.Fields(plain)
	for from := 0; from < len(ws); {
		if Has(joinWords, ws[from]) || Has(beforeDenied, ws[from]) || ProductWord(ws[from]) != "" {
			from++
			continue
		}
		x, n := foodAt(ws[from:], p.Say.Lang)
		if n == 0 && Has(ofFruit, ws[from]) {
			x, n = saidFood{at: ws[from], said: ws[from]}, 1
		}
		if n == 0 {
			return nil
		}
		out = append(out, x)
		from += n
	}
	return out
}

// leftOut is the first ingredient that is none of some foods; "" = all are.
func (p *Draft) leftOut(foods []saidFood) string {
	for _, ln := range p.R.Lines {
		if ln.Row.Class != "water" && !slices.ContainsFunc(foods, func(x saidFood) bool { return isFood(ln, x) }) {
			return ln.Name
		}
	}
	return ""
}

// isFood reports an ingredient that a food of a text stands for: "lemon" for lemon
// juice, "fruit" for any.
func isFood(ln cook.Line, x saidFood) bool {
	if x.food.Key == "" {
		return isAnyFruit(ln)
	}
	if ln.Key == x.food.Key {
		return true
	}
	want := append(singulars(x.said), singulars(x.food.Name)...)
	return slices.ContainsFunc(namesOf(ln), func(n string) bool {
		return slices.ContainsFunc(singulars(n), func(h string) bool { return len(h) > 2 && slices.Contains(want, h) })
	})
}
