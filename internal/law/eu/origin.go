package eu

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kit/words"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

const citeOrigin = "Regulation (EU) 1169/2011 Art 26(3); Implementing Regulation (EU) 2018/775"

// origin adds where the food comes from, when the maker says so, and where the
// fruit does when that is elsewhere (Art 26(3)). The letters of both are alike
// and at least of the common height (2018/775 Art 3, from memory, unverified).
func (c *pass) origin() {
	b := c.B
	if b.Origin == "" && b.FruitOrigin == "" {
		c.originInName()
		return
	}
	put := func(id, text, path string) {
		c.add(label.Block{ID: id, Kind: label.Statement, Runs: []label.Run{{Text: text}}, Cite: citeOrigin, Verified: verifiedOther, Path: path,
			Min: label.Height{On: label.XHeight, Length: unit.Length(c.law.XHeight) * unit.Micrometre}})
	}
	if b.Origin != "" {
		put("origin", c.say("origin", "place", b.Origin), "origin")
	}
	main := c.primary()
	switch {
	case b.Origin == "":
		put("fruit-origin", c.say("origin.of", "name", main, "place", b.FruitOrigin), "fruit_origin")
	case b.FruitOrigin == "":
		c.L.Warnf("primary-origin", c.BatchFile(), "origin", "the label says the food comes from %s; where %s comes from elsewhere, it must say that too", b.Origin, main).
			Hinted(`write fruit_origin = "Spain"; the same place as origin when it is from there`).Cited(citeOrigin)
	case !strings.EqualFold(b.Origin, b.FruitOrigin):
		put("fruit-origin", c.say("origin.of", "name", main, "place", b.FruitOrigin), "fruit_origin")
	}
}

// originInName tells where words of the label alone give an origin: "Scottish
// raspberry jam" ("given by any means such as statements ... or terms, referring to
// places", 2018/775 Art 1(1) as the trade's guidance of May 2020 quotes it). Which words do is our own list.
func (c *pass) originInName() {
	for _, text := range []struct{ path, words string }{{"name", c.B.Name}, {"label.title", c.B.Label.Title}, {"label.subtitle", c.B.Label.Subtitle}} {
		plain := words.Fold(text.words)
		for _, u := range strings.Split(c.say("origin.unless"), "|") {
			plain = strings.ReplaceAll(plain, words.Fold(u), " ")
		}
		for _, w := range strings.Split(c.say("origin.words"), "|") {
			if from, to, ok := draft.FindWord(plain, words.Fold(w), true); ok {
				c.L.Warnf("primary-origin", c.BatchFile(), text.path, "%q says where the food comes from; where %s comes from elsewhere, the label must say that too", plain[from:to], c.primary()).
					Hinted(`write origin = "Scotland" and fruit_origin = "Spain", each as it is; some names of places are protected and need that very origin`).Cited(citeOrigin)
				return
			}
		}
	}
}

// primary names the ingredient that is usually associated with the food or makes
// up most of it: its heaviest fruit, else its heaviest ingredient.
func (c *pass) primary() string {
	if len(c.fruits) > 0 {
		return draft.Upper(c.ingredientQuiet(c.fruits[0].Line))
	}
	if items := c.items(); len(items) > 0 {
		return draft.Upper(c.ingredientQuiet(items[0].line))
	}
	return ""
}
