package eu

import (
	"slices"
	"strings"
	"unicode"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// additiveIn finds the additive a name stands for: its E number or one of its
// words, alone or after a category ("Farbstoff: E 162"), never inside a word.
func (c *pass) additiveIn(names ...string) (place.Additive, bool) {
	for _, n := range names {
		if _, after, ok := strings.Cut(n, ":"); ok {
			n = after
		}
		if n == "" {
			continue // no key
		}
		number := eNumber(n)
		for _, a := range c.Set.Additives.All() {
			if number != "" && (strings.EqualFold(number, a.E) || strings.TrimRight(number, "i") == a.E) || called(a.Words, n) || called(c.alsoCalled("additive.", a.ID), n) {
				return a, true
			}
		}
	}
	return place.Additive{}, false
}

// called reports whether a list has a name, in one or in many: lecithin, lecithins;
// carraghénane, carraghénanes.
func called(list []string, name string) bool {
	plain := func(s string) string {
		ws := strings.FieldsFunc(words.Fold(s), draft.NotLetter)
		for i, w := range ws {
			ws[i] = strings.TrimRight(w, "es")
		}
		return strings.Join(ws, " ")
	}
	want := plain(name)
	return slices.ContainsFunc(list, func(s string) bool { return plain(s) == want && want != "" })
}

// alsoCalled gives the names of a thing in the label's language: the specific
// name and what else a maker may write, parted by bars.
func (c *pass) alsoCalled(group, id string) (out []string) {
	if c.has(group + "name." + id) {
		out = append(out, c.say(group+"name."+id))
	}
	if c.has(group + "also." + id) {
		out = append(out, strings.Split(c.say(group+"also."+id), "|")...)
	}
	return out
}

// eNumber reads an E number that is the whole name, or stands in it as a word:
// "E 162", "e162", "Farbstoff E-150d", "lecithin (E322)".
func eNumber(name string) string {
	ws := strings.FieldsFunc(name, func(r rune) bool { return r != '-' && !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for i, w := range ws {
		w = strings.ToLower(strings.ReplaceAll(w, "-", ""))
		if w == "e" && i+1 < len(ws) {
			w += strings.ToLower(ws[i+1])
		}
		number, ok := strings.CutPrefix(w, "e")
		digits := strings.TrimRight(number, "abcdefghi")
		if ok && (len(digits) == 3 || len(digits) == 4) && strings.Trim(digits, "0123456789") == "" && len(number)-len(digits) <= 1 {
			return number
		}
	}
	return ""
}

// additive gives "Gelling agent: pectin" for an ingredient or part that is an
// additive with a function (Annex VII Part C). An E number no row knows is told.
func (c *pass) additive(path string, names ...string) (string, bool) {
	if a, ok := c.additiveIn(names...); ok {
		return c.say("additive."+a.Category) + c.say("additive.colon") + c.say("additive.name."+a.ID), true
	}
	for _, n := range names {
		if e := eNumber(n); e != "" && !strings.Contains(n, ":") {
			c.fail("additive-category", path, "E "+e+" stands on the label without its category").
				Hinted(`write it as "colour: E ` + e + `", with what it does`).Cited(citeFIC18 + " Part C")
			break
		}
	}
	return "", false
}

const citeAdditives = "Regulation (EC) 1333/2008 Art 4, Annex II Part E 04.2.5"

// judgeAdditive tests an additive against the list of the product. Sweeteners
// have rules of their own.
func (c *pass) judgeAdditive(ln cook.Line) {
	a, _ := c.additiveIn(ln.Key, ln.Name)
	p := c.product
	switch {
	case len(p.Numbers) == 0 || a.Category == "sweetener" || slices.Contains(p.Numbers, a.E):
	case slices.Contains(p.Lean, a.E):
		if b := c.R.Brix; !(b.Value > 0) || p.Solids == nil || b.Value >= p.Solids.Least {
			c.L.Warnf("ingredient-doubtful", c.BatchFile(), draft.LinePath(ln), "%s (E %s) is for products low in sugar, for spreads, or where the fruit brought it along", ln.Name, a.E).
				Hinted("leave it out, or ask your food authority").Cited(citeAdditives)
		}
	default:
		c.fail("ingredient-not-allowed", draft.LinePath(ln), c.printed(p)+" may not hold "+ln.Name+": E "+a.E+" is not on the list of additives for it").
			Hinted("leave it out, or call it " + c.say("product.spread") + ` and write kind = "spread"`).Cited(citeAdditives)
	}
}

// sweetening is what the sweeteners of a batch make the label say.
type sweetening struct {
	sweeteners []cook.Line
	sugars     bool // sugars are added too
	polyols    float64
	warnings   []string
}

// sweetened finds the sweeteners (additives of that category) of a batch and the
// added polyols in percent of the finished food.
func (c *pass) sweetened() (s sweetening) {
	for _, ln := range c.R.Lines {
		a, ok := c.additiveIn(ln.Key, ln.Name, c.ingredientQuiet(ln))
		switch {
		case ok && a.Category == "sweetener":
			s.sweeteners = append(s.sweeteners, ln)
			if a.Warning != "" {
				s.warnings = append(s.warnings, a.Warning)
			}
			if a.Polyol {
				s.polyols += percentOf(ln.Mass, c.finished())
			}
		case ln.IsSweet:
			s.sugars = true
		}
	}
	return s
}

// sweeteners adds the words beside the name and the warning on polyols (Annex
// III, 2.1, 2.2 and 2.4).
func (c *pass) sweeteners() {
	s := c.sweetened()
	if len(s.sweeteners) == 0 {
		return
	}
	key := "with-sweeteners"
	if s.sugars {
		key = "with-sugars-and-sweeteners"
	}
	path := draft.LinePath(s.sweeteners[0])
	c.add(prescribed("sweeteners", c.say(key), path, "Regulation (EU) 1169/2011 Annex III 2.1, 2.2", true))
	for _, w := range slices.Compact(s.warnings) { // 2.3, where the specific name is in the list
		c.add(prescribed(w, draft.Upper(c.say(w)), path, "Regulation (EU) 1169/2011 Annex III 2.3", false))
	}
	if s.polyols > 10 {
		c.add(prescribed("laxative", draft.Upper(c.say("laxative")), path, "Regulation (EU) 1169/2011 Annex III 2.4", false))
	}
}
