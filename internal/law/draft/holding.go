package draft

import (
	"slices"
	"strings"

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
			food, at, ok := foodIn(behind)
			if !ok || p.inThePot(food) {
				continue
			}
			p.tellWording(w, []ownText{o}, []string{before + " " + at.before + at.food}, nil, w.Level, w.Text, at.food)
			break
		}
	}
}

// saidAt are the words of a food in a text, and those before them.
type saidAt struct{ before, food string }

// foodIn finds the first food of the table among the words of a text, up to a
// sign that ends the phrase.
func foodIn(text string) (food pantry.Ingredient, at saidAt, ok bool) {
	text, _, _ = strings.Cut(text, "|")
	ws := strings.Fields(text)
	for from := 0; from < min(wordsBefore, len(ws)); from++ {
		for n := min(wordsOfFood, len(ws)-from); n > 0; n-- {
			if Has(joinWords, ws[from]) || Has(joinWords, ws[from+n-1]) {
				continue
			}
			said := strings.Join(ws[from:from+n], " ")
			for _, lang := range spoken { // whoever buys reads it
				if g, ok := pantry.Default().Speaking(lang).Ingredient(said); ok {
					return g, saidAt{strings.Join(append(ws[:from:from], ""), " "), said}, true
				}
			}
		}
	}
	return pantry.Ingredient{}, saidAt{}, false
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
	return slices.ContainsFunc(singulars(food.Name), func(w string) bool { return len(w) > 2 && strings.Contains(names, " "+w+" ") })
}

// joinWords begin and end no food.
var joinWords = []string{"a", "an", "the", "of", "and", "or", "with", "und", "oder", "von", "et", "ou", "de", "d", "la", "le"}

// spoken are the languages the table of ingredients has names in.
var spoken = []string{"en", "de", "fr"}

func singulars(name string) (out []string) {
	for _, w := range strings.Fields(Spaced(name)) {
		out = append(out, words.Singular(w))
	}
	return out
}
