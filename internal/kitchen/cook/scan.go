package cook

import (
	"cmp"
	"slices"
	"strings"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/pantry"
)

// scan reads the names of one ingredient into an Allergy.
type scan struct {
	v    *allergen.Vocabulary
	p    *pantry.Pantry
	a    *Allergy
	path string
	as   string // the label's name, where the maker's own is another
}

// chain stands between an ingredient and its part.
const chain = " › "

// deepest is how far parts of parts are followed.
const deepest = 12

func (r *Result) scan(a *Allergy, path string) *scan {
	return &scan{v: allergen.Default(), p: cmp.Or(r.pantry, pantry.Default()), a: a, path: path}
}

// line reads an ingredient's own names, row and maker's words.
func (s *scan) line(ln Line) {
	s.row(ln.Row, ln.Name)
	s.words(ln.Allergens, ln.Name)
	if ln.Key == "honey" {
		s.found(allergen.Hit{ID: "honey", Word: ln.Name}, ln.Name, Tabled)
	}
	names := ln.Written
	if len(names) == 0 {
		names = []string{ln.Name}
	}
	if ln.Key != "" {
		s.as = ln.Name
	}
	tabled := ln.Key != "" && s.proven(ln.Row, ln.Name)
	for i, name := range names {
		if !slices.Contains(names[:i], name) {
			s.text(name, "", len(ln.Contains) > 0, tabled, 0)
		}
	}
	for _, form := range ln.Forms { // "rolled in ground almonds": what it names is in it, and nothing else is asked of it
		for _, it := range allergen.Split(form) {
			s.hits(s.v.Read(it.Name), ln.Name+" ("+form+")")
			for _, p := range it.Parts {
				s.hits(s.v.Read(p.Name), ln.Name+" ("+form+")")
			}
		}
	}
	for _, it := range allergen.Split(ln.Name) { // the label's own name, should it say more
		s.hits(s.v.Read(it.Name), ln.Name)
	}
}

// said reports whether the maker stated the allergens of an ingredient.
func (s *scan) said(ln Line) bool { return ln.Said || ln.Row.Allergens != nil }

// PartAllergy reads one part of an ingredient.
func (r *Result) PartAllergy(ln Line, part pantry.Part) Allergy {
	var a Allergy
	s := r.scan(&a, linePath(ln))
	s.part(part, ln.Name, 0)
	a.settleGroups()
	return a
}

func (s *scan) part(part pantry.Part, in string, depth int) {
	before := len(s.a.Unknown)
	s.text(part.Name, in, false, false, depth)
	at := join(in, part.Name)
	s.tabled(part.USAllergen, at, Given)
	s.tabled(part.EUAllergen, at, Given)
	s.words(part.Allergens, at)
	if part.Allergens != nil || part.USAllergen != "" || part.EUAllergen != "" {
		s.a.Unknown = s.a.Unknown[:before]
	}
}

// text reads a name as a packet writes it, brackets and lists with it. Parts
// given elsewhere say what all of the name leaves open (settled), a row of the
// pantry what its head does (tabled).
func (s *scan) text(text, in string, settled, tabled bool, depth int) {
	all := allergen.Split(text)
	for i, it := range all {
		s.item(it, in, settled || tabled && i == 0 || i > 0 && (s.v.Read(it.Name).Empty || s.kind(all[0].Name, it.Name)), depth)
	}
}

// kind reports a word that tells which kind of a food of the table it is, and is
// no food beside it: "plums, Victoria" are Victoria plums.
func (s *scan) kind(food, word string) bool {
	row, known := s.p.Ingredient(food)
	kind, also := s.p.Ingredient(word + " " + food)
	return known && also && row.Key == kind.Key && len(s.v.Read(word).Hits) == 0
}

func (s *scan) item(it allergen.Item, in string, settled bool, depth int) {
	at := join(in, it.Name)
	if depth > deepest {
		s.a.Unknown = append(s.a.Unknown, Unproven{at, s.path})
		return
	}
	if in == "" && s.as != "" {
		at = s.as
	}
	reading := s.v.Read(it.Name)
	s.hits(reading, at)
	row, tabled := s.p.Ingredient(it.Name)
	if tabled {
		s.row(row, at)
	}
	parts := slices.ContainsFunc(it.Parts, func(p allergen.Item) bool { return !s.v.Read(p.Name).Empty })
	for _, p := range it.Parts {
		s.item(p, at, s.v.Read(p.Name).Empty || s.kind(it.Name, p.Name), depth+1)
	}
	switch {
	case settled || parts || it.Heading():
	case tabled && len(row.Contains) > 0:
		for _, p := range row.Contains {
			s.part(p, at, depth+1)
		}
	case tabled && s.proven(row, it.Name), !tabled && reading.Known:
	default:
		s.a.Unknown = append(s.a.Unknown, Unproven{join(in, it.Name), s.path})
	}
}

// proven reports whether a row of the pantry says all that is in the food: a
// single ingredient, a bought one whose make-up is settled, or one of the
// maker's own with its allergens.
func (s *scan) proven(row pantry.Ingredient, name string) bool {
	_, settled := s.v.Settled(row.Key)
	switch {
	case row.Allergens != nil || settled:
		return true
	case row.Compound != "", !row.Own && s.v.Read(name).Use: // "vegetable oil" is a row, and may be of soybeans
		return false
	case !row.Own || row.USAllergen != "" || row.EUAllergen != "":
		return true
	}
	base, ok := pantry.Default().Ingredient(name)
	return ok && base.Compound == "" || s.v.Read(name).Known
}

// row adds the allergens of a row of the pantry.
func (s *scan) row(row pantry.Ingredient, at string) {
	how := Tabled
	if row.Own {
		how = Given
	}
	s.tabled(row.USAllergen, at, how)
	s.tabled(row.EUAllergen, at, how)
	s.words(row.Allergens, at)
	ids, _ := s.v.Settled(row.Key)
	for _, id := range ids {
		s.found(allergen.Hit{ID: id, Word: row.Name}, at, Tabled)
	}
}

// tabled reads the allergen column of a row: "tree nut (almond)", "soy, wheat".
func (s *scan) tabled(words, at string, how How) {
	if strings.TrimSpace(words) == "" {
		return
	}
	if how == Given {
		s.words([]string{words}, at)
		return
	}
	for _, h := range s.v.Read(words).Hits {
		s.found(h, at, how)
	}
}

// words takes the maker's own allergen words: what the vocabulary does not know
// is kept as written.
func (s *scan) words(list []string, at string) {
	for _, text := range list {
		for _, w := range strings.Split(text, ",") {
			if w = strings.TrimSpace(w); w == "" {
				continue
			}
			reading := s.v.Read(w)
			var one Allergy
			in := &scan{v: s.v, p: s.p, a: &one, path: s.path}
			in.hits(reading, at)
			one.settleGroups() // "tree nut (almond)" is the almond
			for _, f := range one.Found {
				s.found(allergen.Hit{ID: f.ID, Word: w}, at, Given)
			}
			if len(reading.Hits) == 0 {
				s.a.word(OwnWord{w, s.path})
			}
		}
	}
}

// hits adds what a name says by its words.
func (s *scan) hits(r allergen.Reading, at string) {
	for _, h := range r.Hits {
		s.found(h, at, Named)
	}
}

func (s *scan) found(h allergen.Hit, at string, how How) {
	sub, ok := s.v.Substance(h.ID)
	if !ok {
		return
	}
	s.a.add(Found{sub, h.Word, how == Given, h.Usual, []Evidence{{Fact: at, How: how, Path: s.path, Source: sub.Source}}})
}

// join puts a part's name behind that of the whole.
func join(in, name string) string {
	name = strings.TrimSuffix(strings.TrimSpace(name), ":")
	if in == "" || in == name {
		return name
	}
	return in + chain + name
}
