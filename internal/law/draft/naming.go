package draft

import (
	"regexp"
	"slices"
	"strings"
	"sync"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// naming reports foods that the food's own name says and no ingredient is: a jar
// called raspberry with strawberries in it. A name that says it is only like them
// ("raspberry flavored"), or that it is not there, and somebody's ("Ginger's plum
// jam"), says none. forms are the ways of denying.
func (p *Draft) naming(w place.WordingRule, texts []ownText, forms []string) {
	told := map[string]bool{}
	for _, o := range texts {
		if !Has(w.In, o.as) || o.says(w.Words, nil) != "" {
			continue
		}
		denied := " " + strings.Join(deniedIn(o.text, forms), " | ") + " "
		plain := Spaced(owner.ReplaceAllString(o.text, " | "))
		for _, u := range w.Unless {
			plain = strings.ReplaceAll(plain, Spaced(u), " | ")
		}
		for _, stretch := range strings.Split(plain, "|") {
			for _, x := range foodsIn(strings.Fields(stretch), p.Say.Lang) {
				if !strings.Contains(denied, " "+x.said+" ") && !p.called(x) && !told[x.food.Key] && !p.saidOf(w, o.path, x.said) {
					told[x.food.Key] = true
					p.tellWording(w, []ownText{o}, []string{x.at}, nil, w.Level, w.Text, x.said)
				}
			}
		}
	}
}

// saidOf reports that a row has told of a food of a text already.
func (p *Draft) saidOf(w place.WordingRule, path, food string) bool {
	for told := range p.told {
		if told[0] == w.ID && told[2] == path && strings.Contains(told[3], food) {
			return true
		}
	}
	return false
}

// owner is a word in the genitive: a person's, as a rule.
var owner = regexp.MustCompile(`\p{L}+['’]s\b`)

// saidFood is a food of the table as a name says it.
type saidFood struct {
	at   string // the words of the name
	said string // those of them that are the food: "himbeer" of "himbeerkonfitüre"
	food pantry.Ingredient
}

// foodsIn finds the foods of the table among the words of a name, the longest
// first: in the language of the label, and in English.
func foodsIn(ws []string, lang string) (out []saidFood) {
	for from := 0; from < len(ws); {
		x, n := foodAt(ws[from:], lang)
		if n > 0 {
			out = append(out, x)
		}
		from += max(1, n)
	}
	return out
}

// foodAt is the food that some words begin with, by as many of them as name one,
// and how many those are; 0 = they begin with none.
func foodAt(ws []string, lang string) (saidFood, int) {
	for n := min(wordsOfFood, len(ws)); n > 0; n-- {
		if x, ok := foodCalled(strings.Join(ws[:n], " "), lang); ok {
			return x, n
		}
	}
	return saidFood{}, 0
}

// foodCalled is a food by some words of a name: all of them, or in a German
// compound what begins it ("Himbeer" of "Himbeerkonfitüre").
func foodCalled(said, lang string) (saidFood, bool) {
	at := said
	ws := strings.Fields(said)
	between := slices.ContainsFunc(ws, func(w string) bool { return w == "with" || w == "mit" || w == "avec" })
	if between || Has(ofFruit, said) || Has(joinWords, ws[0]) || Has(joinWords, ws[len(ws)-1]) || len([]rune(said)) < 3 {
		return saidFood{}, false
	}
	if _, fruit, ok := pantry.Default().KindIn(said); ok {
		if strings.Contains(said, " ") {
			return saidFood{}, false // what stands before the kind is looked at by itself
		}
		said = fruit
	}
	if said == "" || ProductWord(said) != "" {
		return saidFood{}, false
	}
	for _, l := range []string{lang, "en"} {
		if g, ok := pantry.Default().Speaking(l).Ingredient(said); ok {
			return saidFood{at, said, g}, true
		}
	}
	if lang == "de" {
		if g, ok := stems()[words.Fold(said)]; ok {
			return saidFood{at, said, g}, true
		}
	}
	return saidFood{}, false
}

// stems are the foods of the table by what begins a German compound.
var stems = sync.OnceValue(func() map[string]pantry.Ingredient {
	out := map[string]pantry.Ingredient{}
	for _, g := range pantry.Default().Ingredients() {
		if n, ok := g.Names("de"); ok && len([]rune(n.Stem)) > 2 {
			if key := words.Fold(n.Stem); out[key].Key == "" {
				out[key] = g
			}
		}
	}
	return out
})

// called reports an ingredient that may be called by the words: it is that food,
// or some name of it has them, or ends as they do ("currant" is said of
// redcurrants).
func (p *Draft) called(x saidFood) bool {
	if p.inThePot(x.food) {
		return true
	}
	want := singulars(x.said)
	for _, ln := range p.R.Lines {
		names := append(namesOf(ln), ln.Row.Aliases...)
		for _, n := range names {
			has := singulars(n)
			if slices.ContainsFunc(want, func(w string) bool {
				return len(w) > 2 && slices.ContainsFunc(has, func(h string) bool { return strings.HasSuffix(h, w) || strings.HasPrefix(h, w) && p.Say.Lang == "de" })
			}) {
				return true
			}
		}
	}
	return false
}
