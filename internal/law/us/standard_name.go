package us

import (
	"strings"
	"unicode"

	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
)

// singularName is the form a fruit takes in a product name: "strawberry",
// "sour cherry".
func singularName(ln cook.Line) string {
	ws := strings.Fields(ln.Name)
	if n := len(ws); n > 0 {
		ws[n-1] = words.Singular(ws[n-1])
	}
	return strings.Join(ws, " ")
}

// fruitName is what a product is named by: the fruit, also where its juice is
// the ingredient ("apple jelly"; 21 CFR 150.140(e)(1)).
func fruitName(ln cook.Line) string {
	if ln.Row.Class == "juice" {
		name, _, _ := strings.Cut(ln.Row.Key, "_")
		return name
	}
	return strings.TrimSuffix(singularName(ln), " juice")
}

// fruitAt finds where a name mentions a fruit, -1 when it does not: by its
// whole name, its last word, or the first word of its table key.
func fruitAt(name string, ln cook.Line) int {
	low := strings.ToLower(name)
	full := strings.ToLower(fruitName(ln))
	ws := strings.Fields(full)
	tries := []string{full, strings.ReplaceAll(full, " ", "")}
	for _, a := range ln.Row.Aliases { // brambles are blackberries
		tries = append(tries, strings.ToLower(words.Singular(a)))
	}
	if n := len(ws); n > 0 {
		tries = append(tries, ws[n-1])
	}
	key, _, _ := strings.Cut(ln.Row.Key, "_")
	for _, t := range append(tries, key) {
		t = strings.TrimSuffix(t, "y") // cherry, cherries
		if len(t) < 3 {
			continue
		}
		for from := 0; ; {
			i := strings.Index(low[from:], t)
			if i < 0 {
				break
			}
			if i += from; i == 0 || !unicode.IsLetter(rune(low[i-1])) {
				return i
			}
			from = i + 1
		}
	}
	return -1
}

func mentions(name string, ln cook.Line) bool { return fruitAt(name, ln) >= 0 }

// namedAt is fruitAt, or where the name has another word the standard calls the fruit
// by: mirabelles are plums, redcurrants currants (150.160(b)(1)).
func (v verdict) namedAt(name string, ln cook.Line) int {
	at := fruitAt(name, ln)
	for _, w := range v.Synonyms[ln.Row.Key] {
		if at < 0 {
			at = strings.Index(draft.Spaced(name)+" ", " "+w)
		}
	}
	return at
}

// nameOrder asks that the name says every fruit, the heaviest first, or "mixed
// fruit".
func (p *pass) nameOrder(v verdict) {
	low := strings.ToLower(p.B.Name)
	if len(v.Fruits) > 1 && strings.Contains(low, "mixed") {
		return
	}
	want := suggested(v.Fruits, p.B.Name, "")
	last := -1
	for _, f := range v.Fruits {
		at := v.namedAt(p.B.Name, f.Line)
		switch {
		case at < 0:
			p.Duty("name-lacks-fruit", p.BatchFile(), "name", "the name does not say %s, and the name of a standardized food says its fruit", f.Named).
				Hinted("the full name is " + quoted(want) + "; a name of your own may stand beside it, as label.title").Cited(v.Cite + "(e); 21 U.S.C. 343(g)(2)")
			return
		case at < last:
			p.L.Warnf("name-order", p.BatchFile(), "name", "the name must put the heaviest fruit first").Hinted("call it " + quoted(want)).Cited(v.Cite)
			return
		}
		last = at
	}
}

func quoted(s string) string { return `"` + s + `"` }

// suggested composes a name: fruits by weight, then the product; an empty
// product takes the one the maker's name has.
func suggested(fruits []fruitShare, name, product string) string {
	if product == "" {
		product = "jam"
		for _, w := range strings.FieldsFunc(name, draft.NotLetter) {
			if draft.ProductWord(w) != "" {
				product = w
			}
		}
	}
	words := []string{"mixed"}
	if len(fruits) <= 5 {
		words = nil
		for _, f := range fruits {
			words = append(words, strings.Fields(f.Named)...)
		}
	}
	words = append(words, strings.Fields(product)...)
	for i, w := range words {
		words[i] = draft.Upper(w)
	}
	return strings.Join(words, " ")
}
