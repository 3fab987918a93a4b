package place

import (
	"strings"

	"jarmark/internal/kit/diag"
	where "jarmark/internal/kit/place"
	"jarmark/internal/kitchen/weigh"
)

// Find gives the plain facts of a place, as a place.Finder.
func (b *Book) Find(id string) (p where.Place, hint string, ok bool) {
	r, ok, err := b.set(id)
	if !ok || err != nil {
		return where.Place{}, b.near(id), false
	}
	p = where.Place{ID: r.ID, Name: r.Name, Law: where.US, Currency: r.Currency, Units: r.Units, Imperial: r.Imperial, Languages: r.Languages}
	if r.EU != nil {
		p.Law = where.EU
	}
	if r.Price != nil {
		p.Per, p.Tenths = r.Price.Per, r.Price.Tenths
	}
	return p, "", true
}

// Packers gives the packers' rules of a place; ok is false where net weights
// are judged by NIST Handbook 133, or the place is unknown.
func (b *Book) Packers(id string) (weigh.Packers, bool) {
	r, ok, err := b.set(id)
	if !ok || err != nil || r.EU == nil {
		return weigh.Packers{}, false
	}
	p := r.EU.In(r.ID).Packers()
	p.System = r.ID
	return p, true
}

const placesHint = "jarmark places lists them"

// near is the hint for an id no place has: the place whose id, name or other
// name it may be.
func (b *Book) near(id string) string {
	word := placeWord(id)
	if word == "" {
		return `write a place like "us-or", "eu" or "gb"; ` + placesHint
	}
	names := map[string]string{} // name or other name -> id
	var known []string
	for _, n := range b.names {
		r, _, err := b.set(n)
		if err != nil {
			continue
		}
		for _, w := range append([]string{n, r.Name, strings.TrimPrefix(n, "us-")}, r.Also...) {
			if w = placeWord(w); names[w] == "" {
				names[w] = n
				known = append(known, w)
			}
		}
	}
	for _, w := range []string{word, strings.TrimPrefix(word, "us "), strings.TrimPrefix(word, "usa "), strings.TrimPrefix(word, "state of ")} {
		if n := names[w]; n != "" {
			return b.meant(n)
		}
	}
	if len(word) > 2 {
		if w, ok := diag.DidYouMean(word, known); ok {
			return b.meant(names[w])
		}
		if w, ok := diag.DidYouMean(strings.TrimPrefix(word, "us "), known); ok {
			return b.meant(names[w])
		}
	}
	return placesHint
}

func (b *Book) meant(id string) string {
	r, _, _ := b.set(id)
	return "did you mean " + id + " (" + r.Name + ")? " + placesHint
}

// placeWord brings a name to plain small letters: "US-Oregon" -> "us oregon",
// "U.S.A." -> "usa".
func placeWord(s string) string {
	s = strings.ReplaceAll(strings.ToLower(s), ".", "")
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return r == '-' || r == '_' || r == ' ' || r == ',' }), " ")
}
