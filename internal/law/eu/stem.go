package eu

import (
	"slices"
	"strings"
	"unicode/utf8"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
)

// callings are the stems by which a product's name may name an ingredient, the
// most exact first: its label name, singular and stem in the language, a
// compound's head ("Kirsch" of "Sauerkirschen"), what else the language calls
// it, and the fruit of a juice.
func (c *pass) callings(ln cook.Line) (out []string) {
	put := func(s string) {
		if s = strings.TrimSpace(words.Fold(s)); s != "" && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	lang := c.Say.Lang
	if lang == "en" {
		lang = "en_gb"
	}
	names := append([]string{c.ingredientQuiet(ln), ln.Name}, ln.Written...) // champagne, listed as sparkling wine
	if n, ok := ln.Row.Names(lang); ok {
		names = append(names, n.Singular, n.Stem)
		put(n.Stem)
	}
	for _, n := range names {
		c.stems(n, put)
		if strings.Contains(n, " ") && ln.IsFruit { // dragonfruit, dragon fruit
			put(strings.ReplaceAll(words.Singular(n), " ", ""))
		}
	}
	if c.has("also." + ln.Key) {
		for _, w := range strings.Split(c.say("also."+ln.Key), "|") {
			put(w)
		}
	}
	for _, a := range ln.Row.Aliases { // brambles, cassis
		if !strings.ContainsAny(a, " -") && ln.IsFruit {
			c.stems(a, put)
		}
	}
	return out
}

// stems cuts a name to what may stand in a product's name.
func (c *pass) stems(name string, put func(string)) {
	ws := strings.FieldsFunc(words.Fold(name), draft.NotLetter)
	if len(ws) == 0 {
		return
	}
	cuts := strings.Split(c.say("word.forms"), "|")
	switch c.Say.Lang {
	case "de":
		last := ws[len(ws)-1]
		for _, f := range cuts { // Zitronensaft, Selleriesamen
			if cut, ok := strings.CutSuffix(last, words.Fold(f)); ok && len(cut) > 3 {
				last = cut
			}
		}
		stem := words.Stem(last, "de")
		put(stem)
		for _, h := range strings.Split(c.say("word.heads"), "|") {
			if h = words.Fold(h); strings.HasSuffix(stem, h) {
				put(h)
			}
		}
	case "fr":
		at := 0
		if len(ws) > 2 && slices.Contains(cuts, ws[0]) { // jus de citron, écorces d'orange
			at = 2
		}
		put(words.Stem(ws[at], "fr"))
	default:
		n := len(ws)
		for n > 1 && slices.Contains(cuts, ws[n-1]) { // lemon juice, chilli flakes
			n--
		}
		put(words.Singular(ws[n-1]))
	}
}

// mentions reports whether the product's name names an ingredient.
func (c *pass) mentions(ln cook.Line) bool { return c.calledAt(c.plainTitle(), ln) >= 0 }

// calledAt finds where a name names an ingredient, -1 where it does not.
func (c *pass) calledAt(name string, ln cook.Line) int {
	low := words.Fold(name)
	for _, s := range c.callings(ln) {
		n := utf8.RuneCountInString(s)
		switch {
		case n < 3:
			continue
		case n < 4: // rum, gin, figs: as a whole word, in German also before others
			for _, w := range []string{s, s + "s"} {
				if from, _, ok := draft.FindWord(low, w, c.Say.Lang == "de"); ok {
					return from
				}
			}
			continue
		case c.Say.Lang == "de":
			if from := strings.Index(low, s); from >= 0 {
				return from
			}
			continue
		}
		if from, _, ok := draft.FindWord(low, strings.TrimSuffix(s, "y"), true); ok {
			return from
		}
	}
	return -1
}

// plainTitle is the maker's name without the claims that speak of an ingredient
// and mean less of it: "reduced sugar".
func (c *pass) plainTitle() string {
	name := words.Fold(c.B.Name)
	for _, claim := range strings.Split(c.say("claim.reduced-sugar"), "|") {
		name = strings.ReplaceAll(name, words.Fold(claim), " ")
	}
	return name
}
