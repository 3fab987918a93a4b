package pantry

import (
	"slices"
	"strings"

	kitwords "jarmark/internal/kit/words"
)

// KindWord is one row of kind-words.csv: the words makers write for a kind of
// preserve, in any language.
type KindWord struct {
	Kind   string   // as a batch writes it
	Words  []string // whole words, as written
	Heads  []string // what a German compound ends with
	OnlyOf []string // the ingredients it is said of; of others it is a jam
	Source string
}

func (p *Pantry) loadKinds() error {
	t := readTable(p.from, "kind-words")
	t.each(func(r row) {
		p.kinds = append(p.kinds, KindWord{r.need("kind"), r.list("words"), r.list("heads"), r.list("only_of"), r.need("source")})
	})
	return t.err
}

// KindWords lists all rows.
func (p *Pantry) KindWords() []KindWord { return slices.Clone(p.kinds) }

// KindIn finds the kind of preserve a name speaks of and the words of its fruit:
// "Quittengelee" is a jelly of "quitten". The last such word decides. ok is false
// where there is none, and the fruit is the whole name then.
func (p *Pantry) KindIn(name string) (kind, fruit string, ok bool) {
	ws := strings.Fields(apart.Replace(strings.ToLower(name)))
	for i := len(ws) - 1; i >= 0; i-- {
		for _, k := range p.kinds {
			before, said := k.said(ws[i])
			if !said {
				continue
			}
			fruit = fruitOf(ws[:i], before, ws[i+1:])
			if len(k.OnlyOf) > 0 && !p.anyOf(fruit, k.OnlyOf) {
				return "jam", fruit, true
			}
			return k.Kind, fruit, true
		}
	}
	return "", strings.Join(ws, " "), false
}

// said reports whether a word names the kind, and what of a compound stands
// before it: "quitten" of "quittengelee".
func (k KindWord) said(word string) (before string, ok bool) {
	folded := kitwords.Fold(word)
	for _, w := range k.Words {
		if kitwords.Fold(w) == folded {
			return "", true
		}
	}
	for _, h := range k.Heads {
		if cut, ok := strings.CutSuffix(folded, kitwords.Fold(h)); ok && len(cut) > 2 {
			return strings.TrimRight(word[:max(0, len(word)-len(h))], "-"), true
		}
	}
	return "", false
}

// fruitOf joins what stands before the word of the kind, and where nothing does,
// what follows its "of": "gelée de framboises".
func fruitOf(before []string, compound string, after []string) string {
	if compound != "" {
		before = append(slices.Clone(before), compound)
	}
	if len(before) > 0 {
		return strings.Join(before, " ")
	}
	for len(after) > 0 && slices.Contains([]string{"of", "from", "de", "d", "des", "du", "aux", "aus", "von"}, after[0]) {
		after = after[1:]
	}
	return strings.Join(after, " ")
}

// anyOf reports whether a word of a fruit's name is one of the ingredients.
func (p *Pantry) anyOf(fruit string, keys []string) bool {
	for _, w := range append(strings.Fields(fruit), fruit) {
		for _, as := range []string{w, w + "s", strings.TrimSuffix(w, "n")} { // Orangen-, Zitronen-
			for _, lang := range []string{"", "de", "fr"} {
				if g, ok := p.Speaking(lang).Ingredient(as); ok && slices.Contains(keys, g.Key) {
					return true
				}
			}
		}
	}
	return false
}
