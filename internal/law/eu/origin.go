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
// fruit does when that is elsewhere (Art 26(3)). The letters of both are alike, so the
// second has three quarters of the first, and at least the common height (2018/775 Art
// 3(1), (2), read 27 Nov 2026 in legalize-eu eu/5a/32018R0775.md).
func (c *pass) origin() {
	b := c.B
	if b.Origin == "" && b.FruitOrigin == "" {
		c.originInName()
		return
	}
	put := func(id, text, path string) {
		c.add(label.Block{ID: id, Kind: label.Statement, Runs: []label.Run{{Text: text}}, Cite: citeOrigin, Verified: verifiedRead, Path: path,
			Min: label.Height{On: label.XHeight, Length: unit.Length(c.law.XHeight) * unit.Micrometre}})
	}
	if b.Origin != "" {
		put("origin", c.say("origin", "place", b.Origin), "origin")
	}
	main := c.primary()
	switch {
	case b.Origin == "":
		put("fruit-origin", c.say("origin.of", "name", main, "place", b.FruitOrigin), "fruit_origin")
		c.nameTooLarge()
	case b.FruitOrigin == "":
		c.L.Warnf("primary-origin", c.BatchFile(), "origin", "the label says the food comes from %s; where %s comes from elsewhere, it must say that too", b.Origin, main).
			Hinted(`write fruit_origin = "Spain"; the same place as origin when it is from there`).Cited(citeOrigin)
	case !strings.EqualFold(b.Origin, b.FruitOrigin):
		put("fruit-origin", c.say("origin.of", "name", main, "place", b.FruitOrigin), "fruit_origin")
		c.nameTooLarge()
	}
}

// nameTooLarge tells where a place stands in the name itself: the fruit's origin then
// belongs beside it, in letters of three quarters of its height (2018/775 Art 3(2)),
// which no label here sets.
func (c *pass) nameTooLarge() {
	if path, said, ok := c.placeSaid(); ok {
		c.L.Warnf("origin-beside-name", c.BatchFile(), path, "%q stands in large letters, and the origin of the fruit must stand in the same field of vision with an x-height of at least 75 %% of them; this label sets it smaller", said).
			Hinted("leave the place out of the name and say it as origin: both then stand side by side").Cited(citeOrigin + " Art 3(2)")
	}
}

// originInName tells where words of the label alone give an origin: "Scottish
// raspberry jam" ("given by any means such as statements, pictorial presentation,
// symbols or terms, referring to places or geographical areas", 2018/775 Art 1(1)).
func (c *pass) originInName() {
	if path, said, ok := c.placeSaid(); ok {
		c.L.Warnf("primary-origin", c.BatchFile(), path, "%q says where the food comes from; where %s comes from elsewhere, the label must say that too", said, c.primary()).
			Hinted(`write origin = "Scotland" and fruit_origin = "Spain", each as it is; some names of places are protected and need that very origin`).Cited(citeOrigin)
	}
}

// placeSaid finds the place a name gives. Which words do is our own list, and so is
// which names are customary ones whose place nobody takes for an origin (Art 1(1)).
func (c *pass) placeSaid() (path, said string, ok bool) {
	for _, text := range []struct{ path, words string }{{"name", c.B.Name}, {"label.title", c.B.Label.Title}, {"label.subtitle", c.B.Label.Subtitle}} {
		plain := words.Fold(text.words)
		for _, u := range strings.Split(c.say("origin.unless"), "|") {
			plain = strings.ReplaceAll(plain, words.Fold(u), " ")
		}
		for _, w := range strings.Split(c.say("origin.words"), "|") {
			if from, to, ok := draft.FindWord(plain, words.Fold(w), true); ok {
				return text.path, plain[from:to], true
			}
		}
	}
	return "", "", false
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
