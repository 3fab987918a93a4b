package cook

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// neverRows holds every line against never-shelf.csv, by its number.
func (c *calc) neverRows(written map[string]batch.Ingredient) map[int]pantry.Never {
	out := map[int]pantry.Never{}
	for i, ln := range c.r.Lines {
		if n, ok := c.p.Never(ln.Key, ln.Row.Class, texts(ln, written)...); ok {
			out[i] = n
		}
	}
	return out
}

// written are the ingredients as the maker wrote them, by their paths.
func (c *calc) written() map[string]batch.Ingredient {
	written := map[string]batch.Ingredient{}
	for i, g := range c.b.Ingredients {
		written[cmp.Or(g.Path, path("ingredient", i))] = g
	}
	return written
}

// texts are the words of a line: its name, every name and form the maker gave
// it, and all it is made of.
func texts(ln Line, written map[string]batch.Ingredient) []string {
	out := []string{ln.Name}
	for _, at := range ln.Paths {
		g := written[at]
		out = append(out, g.Name)
		for _, form := range forms(g) {
			out = append(out, formed(form, g.Name)...)
		}
		if at := strings.IndexAny(g.Name, ",(–/"); at >= 0 { // "peaches, white", "peaches (white)"
			_, size := utf8.DecodeRuneInString(g.Name[at:])
			out = append(out, formed(g.Name[at+size:], g.Name[:at])...)
		}
	}
	for _, x := range ln.Contains {
		out = append(out, x.Name+" in "+ln.Name)
	}
	return out
}

// formed puts how a food is before its name: the whole of it, and each word and
// each two of it alone, since "white" may stand anywhere in "peeled, white, in
// halves". What it lies in is another food: "in white wine".
func formed(form, name string) []string {
	out := []string{form + " " + name}
	for _, part := range strings.FieldsFunc(form, func(r rune) bool { return strings.ContainsRune(",;()/", r) }) {
		words := strings.FieldsFunc(part, func(r rune) bool { return !unicode.IsLetter(r) })
		for i, w := range words[:min(len(words), 20)] {
			if slices.Contains(liesIn, strings.ToLower(w)) {
				break
			}
			out = append(out, w+" "+name)
			if i > 0 {
				out = append(out, words[i-1]+" "+w+" "+name)
			}
		}
	}
	return out
}

// liesIn are the words before what a food lies in.
var liesIn = []string{"in", "with", "from", "for", "mit", "im", "aus", "für", "avec", "au", "aux", "dans", "à"}
