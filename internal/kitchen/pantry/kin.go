package pantry

import (
	"strings"

	kitwords "jarmark/internal/kit/words"
)

// kinMark stands before a word of the column aliases that is another food.
const kinMark = "~"

// readAliases reads the column aliases: other words for the food, and behind a
// tilde other foods that are figured as this one. A label says the common or
// usual name of what is in the jar (21 CFR 101.4(a)(1); Regulation (EU)
// 1169/2011 Art 18(2)): canola oil weighs and keeps as vegetable oil does, and
// is listed as canola oil.
func readAliases(r row) (aliases, kin []string) {
	for _, w := range r.list("aliases") {
		if food, ok := strings.CutPrefix(w, kinMark); ok {
			kin = append(kin, strings.TrimSpace(food))
		} else {
			aliases = append(aliases, w)
		}
	}
	return aliases, kin
}

// byKin finds the name of a kin by its folded forms, where no row and no other
// word has the form.
func byKin(rows []Ingredient, index map[string]int) map[string]string {
	out := map[string]string{}
	for i, g := range rows {
		for _, food := range g.Kin {
			for _, k := range keysOf(food) {
				if _, taken := index[k]; !taken {
					index[k], out[k] = i, food
				}
			}
		}
	}
	return out
}

// as is the row under the name of one of its kin: the numbers stay, the other
// words go. In a language the row's names are those of another food, so there
// the kin has none.
func (g Ingredient) as(food string) Ingredient {
	one := kitwords.Singular(food)
	g.Name, g.Aliases, g.Kin, g.AsKin = food, nil, nil, true
	g.Words = map[string]Names{"en": {Label: food, Singular: one, Stem: one}}
	return g
}
