// Package words compares words as people type them: without case and accents,
// in the singular, with a slip of the finger. It knows no names; what a thing
// is called lies in the tables.
package words

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// ligatures are letters that have no accent to take off, and signs in more than one form.
var ligatures = strings.NewReplacer("œ", "oe", "æ", "ae", "ß", "ss", "ø", "o", "ł", "l", "’", "'", "\u00a0", " ", "\u202f", " ")

// Fold gives lower case without accents: "Crème" and "creme" are one.
func Fold(s string) string {
	s = strings.ToLower(s)
	if strings.IndexFunc(s, func(r rune) bool { return r >= utf8.RuneSelf }) < 0 {
		return s
	}
	return ligatures.Replace(strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, norm.NFD.String(s)))
}

// odd are English plurals no ending tells.
var odd = map[string]string{"leaves": "leaf", "loaves": "loaf", "halves": "half", "knives": "knife"}

// plurals are the endings of English plurals: what is cut, what is put, and
// how many letters a word must have for it. The first that fits is taken.
var plurals = []struct {
	end, put string
	least    int
}{
	{"ies", "y", 5}, {"oes", "o", 6}, {"shes", "sh", 5}, {"ches", "ch", 5}, {"xes", "x", 5},
	{"ss", "ss", 0}, {"us", "us", 0}, {"s", "", 4},
}

// Singular cuts an English plural: "cherries", "peaches", "mangoes". What it
// gives of a word that is none is at least the same every time.
func Singular(word string) string {
	if one, ok := odd[strings.ToLower(word)]; ok {
		return one
	}
	n := utf8.RuneCountInString(word)
	for _, p := range plurals {
		if cut, ok := strings.CutSuffix(word, p.end); ok && n >= p.least {
			return cut + p.put
		}
	}
	return word
}

// Stem cuts a plural ending so that "Erdbeeren" meets "Erdbeer-" and "fraises"
// "fraise": English by [Singular], other languages by the endings of German and
// French, four letters at least. The table of ingredients knows better, where
// it has the word.
func Stem(word, lang string) string {
	if lang == "en" {
		return Singular(word)
	}
	for _, end := range []string{"en", "es", "n", "s", "e"} {
		if cut, ok := strings.CutSuffix(word, end); ok && utf8.RuneCountInString(cut) >= 4 {
			return cut
		}
	}
	return word
}

// Distance counts the slips that make a into b: a letter added, dropped,
// changed, or swapped with its neighbour (optimal string alignment, after
// Damerau and Levenshtein). Letters are compared as they are: fold first.
func Distance(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(x); i++ {
		before, last, row = last, row, before
		row[0] = i
		for j := 1; j <= len(y); j++ {
			cost := 1
			if x[i-1] == y[j-1] {
				cost = 0
			}
			row[j] = min(last[j]+1, row[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				row[j] = min(row[j], before[j-2]+1)
			}
		}
	}
	return row[len(y)]
}

// Within reports that at most limit slips make a into b, at once for words of
// too different a length.
func Within(a, b string, limit int) bool {
	if d := utf8.RuneCountInString(a) - utf8.RuneCountInString(b); d > limit || -d > limit {
		return false
	}
	return Distance(a, b) <= limit
}
