package us

import (
	"strings"
	"unicode/utf8"

	"jarmark/internal/law/draft"
)

const citeClaim = "21 U.S.C. 343(q)(5)(D), (E); 21 CFR 101.9(j)(1), (18)"

// ownText is a text of the maker's that stands on a label, a tag or the public
// page. As says what it is: "name" (of the food), "brand", "story".
type ownText struct{ file, path, text, as string }

// ownTexts lists them.
func (p *pass) ownTexts() []ownText {
	b, k := p.BatchFile(), p.KitchenFile()
	out := []ownText{{b, "name", p.B.Name, "name"}, {b, "label.title", p.B.Label.Title, "name"}, {b, "label.subtitle", p.B.Label.Subtitle, "name"},
		{b, "label.season", p.B.Label.Season, "story"}, {b, "story", p.B.Story, "story"}, {b, "serve", p.B.Serve, "story"}, {k, "name", p.K.Name, "brand"}}
	for _, g := range p.B.Gifts {
		out = append(out, ownText{b, under(g.Path, "message"), g.Message, "story"}, ownText{b, under(g.Path, "occasion"), g.Occasion, "story"})
	}
	return out
}

func under(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// nutrition notes the exemption and reports claims that lose it, on the label
// or on the page its code opens.
func nutrition(p *pass) {
	p.L.Notef("nutrition-exempt", p.KitchenFile(), "place", "%s", p.Set.Nutrition.Note).Cited(citeClaim)
	for _, t := range p.ownTexts() {
		if claim := p.claim(t.text); claim != "" {
			p.Duty("nutrition-claim", t.file, t.path, "%q is a claim about nutrition, and with it the exemption from a nutrition panel is lost", claim).
				Hinted("leave the words out; label and public page count alike").Cited(citeClaim)
		}
	}
	p.wordings()
	p.namings()
}

// spaced writes a text as lower-case words and figures between single spaces,
// so that words are found at their borders: " no sugar added ".
func spaced(text string) string {
	b, in := make([]byte, 0, len(text)+2), false
	b = append(b, ' ')
	for _, r := range strings.ToLower(text) {
		if draft.NotLetter(r) && (r < '0' || r > '9') {
			if in {
				b = append(b, ' ')
			}
			in = false
			continue
		}
		b, in = utf8.AppendRune(b, r), true
	}
	if in || len(b) == 1 {
		b = append(b, ' ')
	}
	return string(b)
}

// claim finds a claim's words in a text, at word borders; the longest is told.
func (p *pass) claim(text string) (found string) {
	plain, t := spaced(text), p.Set.Nutrition
	try := func(words string) {
		if len(words) > len(found) && strings.Contains(plain, spaced(words)) {
			found = words
		}
	}
	each := func(forms, nutrients []string) {
		for _, n := range nutrients {
			named := strings.Contains(plain, strings.Trim(spaced(n), " "))
			for _, form := range forms {
				if named || !strings.Contains(form, "{n}") { // else there is nothing to find
					try(strings.ReplaceAll(form, "{n}", n))
				}
			}
		}
	}
	each(t.Forms, t.Nutrients)
	each(t.GoodForms, t.GoodNutrients)
	for _, w := range t.Words {
		try(w)
	}
	return found
}

// sweetened names the first sweetener of a batch; "" = none.
func (p *pass) sweetened() string {
	for _, ln := range p.R.Lines {
		if ln.IsSweet {
			return ln.Name
		}
	}
	return ""
}
