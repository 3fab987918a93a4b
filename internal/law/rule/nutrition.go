package rule

import "strings"

const citeClaim = "21 U.S.C. 343(q)(5)(D), (E); 21 CFR 101.9(j)(1), (18)"

// nutritionTable holds the small maker's exemption and the words that forfeit
// it.
type nutritionTable struct {
	Claims []string `toml:"claims"`
	Note   string   `toml:"exemption"`
	Origin
}

// nutrition notes the exemption and reports claims that lose it, on the label
// or on the page its code opens.
func nutrition(p *pass) {
	p.l.Notef("nutrition-exempt", p.kitchenFile(), "place", "%s", p.set.Nutrition.Note).Cited(citeClaim)
	for _, t := range []struct{ path, text string }{
		{"name", p.b.Name}, {"story", p.b.Story}, {"serve", p.b.Serve},
		{"label.title", p.b.Label.Title}, {"label.subtitle", p.b.Label.Subtitle}, {"label.season", p.b.Label.Season},
	} {
		if claim := p.claim(t.text); claim != "" {
			p.duty("nutrition-claim", p.batchFile(), t.path, "%q is a claim about nutrition, and with it the exemption from a nutrition panel is lost", claim).
				Hinted("leave the words out; label and public page count alike").Cited(citeClaim)
		}
	}
}

// claim finds a claim's words in a text, at word borders.
func (p *pass) claim(text string) string {
	plain := " " + strings.Join(strings.FieldsFunc(strings.ToLower(text), notLetter), " ") + " "
	for _, c := range p.set.Nutrition.Claims {
		if strings.Contains(plain, " "+c+" ") {
			return c
		}
	}
	return ""
}
