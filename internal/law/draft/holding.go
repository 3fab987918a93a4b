package draft

import (
	"fmt"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// A food may stand a few words behind what announces it: "with a splash of
// whiskey", "made with our neighbour's honey".
const (
	wordsBefore = 4
	wordsOfFood = 3
)

// holding reports foods that a text says are in the jar and no ingredient is: a
// label with vanilla on it, and none in the pot.
func (p *Draft) holding(w place.WordingRule, texts []ownText) {
	for _, o := range texts {
		if !Has(w.In, o.as) {
			continue
		}
		plain := Spaced(o.text)
		for _, u := range w.Unless {
			plain = strings.ReplaceAll(plain, Spaced(u), " | ")
		}
		for _, before := range w.Words {
			_, behind, found := strings.Cut(plain, Spaced(before))
			if !found {
				continue
			}
			food, said, ok := p.foodIn(behind)
			if !ok || p.inThePot(food) {
				continue
			}
			text := strings.ReplaceAll(w.Text, "{ingredient}", said)
			if !p.tells(w.ID, o) {
				p.Tell(w.Level, w.ID, o.file, o.path, fmt.Sprintf("%q %s", before+" "+said, text)).Hinted(w.Hint).Cited(w.Cite)
			}
			break
		}
	}
}

// tells reports that a text has a finding of a code.
func (p *Draft) tells(code string, o ownText) bool {
	return slices.ContainsFunc(p.L, func(d diag.Diagnostic) bool { return d.Code == code && d.File == o.file && d.Path == o.path })
}

// foodIn finds the first food of the table among the words of a text, up to a
// sign that ends the phrase; said are its words there.
func (p *Draft) foodIn(text string) (food pantry.Ingredient, said string, ok bool) {
	text, _, _ = strings.Cut(text, "|")
	ws, table := strings.Fields(text), pantry.Default().Speaking(p.Say.Lang)
	for from := 0; from < min(wordsBefore, len(ws)); from++ {
		for n := min(wordsOfFood, len(ws)-from); n > 0; n-- {
			said := strings.Join(ws[from:from+n], " ")
			if g, ok := table.Ingredient(said); ok {
				return g, said, true
			}
		}
	}
	return pantry.Ingredient{}, "", false
}

// inThePot reports an ingredient that is the food, or has its name or a part of
// it: bourbon is whiskey, a vanilla bean brings vanilla, and lemon juice lemon.
func (p *Draft) inThePot(food pantry.Ingredient) bool {
	names := " "
	for _, ln := range p.R.Lines {
		if ln.Key != "" && ln.Key == food.Key {
			return true
		}
		for _, n := range namesOf(ln) {
			names += strings.Join(singulars(n), " ") + " "
		}
	}
	return slices.ContainsFunc(singulars(food.Name), func(w string) bool { return len(w) > 3 && strings.Contains(names, " "+w+" ") })
}

func singulars(name string) (out []string) {
	for _, w := range strings.Fields(Spaced(name)) {
		out = append(out, words.Singular(w))
	}
	return out
}
