package draft

import (
	"slices"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// beforeDenied are words between a denial and what is denied: "no added colours".
var beforeDenied = []string{"added", "any", "artificial", "the", "more", "of", "from", "all", "zugesetzte", "zugesetzten", "künstliche", "künstlichen", "jegliche", "jede", "de", "d", "aucun", "aucune"}

// notOfFood are things a maker says there are none of and that are no food's.
var notOfFood = []string{"jar", "jars", "glas", "gläser", "pot", "pots", "bocal", "bocaux", "rush", "rain", "fuss", "sun", "time", "words", "eile", "regen", "hast", "marmelade", "konfitüre", "confiture"}

// unproven reports what a label says is not there and nothing in the batch file can
// show: "no nasties". What the tables know, foods, allergens and nutrients, is
// looked up in the recipe by other rows, which have spoken where they had to.
func (p *Draft) unproven(w place.WordingRule, texts []ownText) {
	for _, o := range texts {
		if !strings.HasPrefix(o.path, "label.") && o.path != "name" || p.spokenOf(o) {
			continue
		}
		for _, said := range deniedFirst(o.text, w.Words, w.Unless) {
			if !p.knowsAny(said) {
				p.tellWording(w, []ownText{o}, said[:1], nil, w.Level, w.Text, "")
				break
			}
		}
	}
}

// spokenOf reports a text that a row has told of, or whose whole phrase a row
// knows: "no preservatives" is looked up and may be so.
func (p *Draft) spokenOf(o ownText) bool {
	for told := range p.told {
		if told[2] == o.path {
			return true
		}
	}
	if t := p.Set.Nutrition; t != nil && p.claim(o) != "" {
		return true
	}
	return slices.ContainsFunc(p.Set.Wordings, func(w place.WordingRule) bool {
		return len(w.Words) > 0 && !w.Unproven && !strings.Contains(w.Words[0], "{x}") && !w.Holds && !w.Names && Said(o.text, w.Candidates(o.words), nil) != ""
	})
}

// deniedFirst gives for each denial of a text what may be meant: the first word
// of it, the first two, the first three.
func deniedFirst(text string, forms, unless []string) (out [][]string) {
	for _, clause := range strings.FieldsFunc(text, endsClause) {
		plain := Spaced(clause)
		for _, u := range unless {
			plain = strings.ReplaceAll(plain, Spaced(u), " | ")
		}
		for _, form := range forms {
			before, after, _ := strings.Cut(form, "{x}")
			var ws []string
			switch {
			case strings.TrimSpace(before) != "":
				_, behind, ok := strings.Cut(plain, Spaced(before))
				if ws = strings.Fields(behind); !ok {
					continue
				}
			case strings.HasPrefix(after, " "):
				head, _, ok := strings.Cut(plain, Spaced(after))
				if ws = strings.Fields(head); !ok || len(ws) == 0 {
					continue
				}
				ws = ws[len(ws)-1:]
			default:
				continue
			}
			for len(ws) > 0 && Has(beforeDenied, ws[0]) {
				ws = ws[1:]
			}
			if len(ws) == 0 || ws[0] == "|" || ws[0][0] >= '0' && ws[0][0] <= '9' {
				continue
			}
			var first []string
			for n := 1; n <= min(3, len(ws)); n++ {
				first = append(first, strings.Join(ws[:n], " "))
			}
			out = append(out, first)
		}
	}
	return out
}

// knowsAny reports words of which the tables know one: it was looked up.
func (p *Draft) knowsAny(said []string) bool {
	for _, noun := range said {
		if ProductWord(noun) != "" || Has(notOfFood, noun) {
			return true
		}
		if slices.ContainsFunc(p.Set.Wordings, func(w place.WordingRule) bool { return Has(w.Of, noun) }) || len(cook.Stated([]string{noun}, "").Found) > 0 {
			return true
		}
		if t := p.Set.Nutrition; t != nil && (Has(t.Nutrients, noun) || Has(t.GoodNutrients, noun)) {
			return true
		}
		for _, lang := range spoken {
			if food, ok := pantry.Default().Speaking(lang).Ingredient(noun); ok {
				return !p.holdsKey(food.Key) // else by another name: cane sugar, and the recipe says sugar
			}
		}
	}
	return false
}

func (p *Draft) holdsKey(key string) bool {
	return slices.ContainsFunc(p.R.Lines, func(ln cook.Line) bool { return ln.Key == key })
}
