package pantry

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// Names is what an ingredient is called in one language. A stem is the form
// that begins a compound: "Erdbeer" of "Erdbeerkonfitüre"; in English and
// French it is the singular.
type Names struct {
	Label    string // as an ingredient list says it: "strawberries", "Erdbeeren"
	Singular string // "strawberry", "Erdbeere"
	Stem     string // "strawberry", "Erdbeer"
}

// Names gives the words of a language ("en", "en_gb", "de", "fr"); ok is false
// for a language that has no column in the table, or a row of the maker's own.
// British words that the table does not have are the English ones.
func (g Ingredient) Names(lang string) (Names, bool) {
	n, ok := g.Words[lang]
	if !ok && lang == "en_gb" {
		n, ok = g.Words["en"]
	}
	return n, ok
}

// readNames reads the columns name_<language>: label|singular|stem, where an
// empty part is the part before it, and an empty cell of an English column the
// name of the row. Every other language must be filled in every row.
func readNames(r row, name string) map[string]Names {
	out := map[string]Names{}
	for _, lang := range r.t.languages() {
		parts := strings.Split(r.text("name_"+lang), "|")
		if len(parts) > 3 {
			r.fail("name_"+lang, "more than label|singular|stem")
		}
		for len(parts) < 3 {
			parts = append(parts, "")
		}
		n := Names{Label: parts[0], Singular: parts[1], Stem: parts[2]}
		english := strings.HasPrefix(lang, "en")
		switch {
		case n.Label != "":
		case !english:
			r.fail("name_"+lang, "empty")
			continue
		case lang != "en" && n.Singular == "":
			continue
		default:
			n.Label = name
		}
		n.Singular = either(n.Singular, n.Label)
		n.Stem = either(n.Stem, n.Singular)
		out[lang] = n
	}
	return out
}

func either(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// Find gives the bytes of a text where the ingredient is named: in any of its
// forms as whole words, else a word that begins with the stem ("Erdbeer" in
// "Erdbeerkonfitüre"), whatever the case.
func (n Names) Find(text string) (from, to int, ok bool) {
	low := strings.ToLower(text)
	if len(low) != len(text) { // lower-casing moved bytes: match as written
		low = text
	}
	for _, form := range []string{n.Label, n.Singular} {
		if from, to, ok = wordAt(low, strings.ToLower(form), true); ok {
			return from, to, true
		}
	}
	if utf8.RuneCountInString(n.Stem) < 3 {
		return 0, 0, false
	}
	return wordAt(low, strings.ToLower(n.Stem), false)
}

// wordAt finds word at the start of a word of text, and to its end when whole.
func wordAt(text, word string, whole bool) (from, to int, ok bool) {
	if word == "" {
		return 0, 0, false
	}
	for at := 0; ; {
		i := strings.Index(text[at:], word)
		if i < 0 {
			return 0, 0, false
		}
		from, to = at+i, at+i+len(word)
		if whole && strings.HasPrefix(text[to:], "n") { // German dative: aus Äpfeln
			to++
		}
		before, _ := utf8.DecodeLastRuneInString(text[:from])
		after, _ := utf8.DecodeRuneInString(text[to:])
		if !unicode.IsLetter(before) && !(whole && unicode.IsLetter(after)) {
			return from, to, true
		}
		at = to
	}
}
