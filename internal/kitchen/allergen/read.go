package allergen

import (
	"slices"
	"strings"
)

// Hit is one allergen a word names.
type Hit struct {
	ID    string
	Word  string // as the maker wrote it, folded
	Usual bool   // usual in such a food, which may be made otherwise
}

// Reading is what a name says of allergens.
type Reading struct {
	Hits  []Hit
	Known bool     // every word is in the vocabulary and names a food
	Empty bool     // words of state alone ("unsalted"), or none
	Use   bool     // it names a use alone, and no source, or a food made of several: "vegetable oil", "cocoa mix"
	Rest  []string // words that are not in the vocabulary, or that name no source
}

// Read reads one name without its brackets: longest phrases first, plurals and
// German compounds with them. Longer than any name, the rest is unknown.
func (v *Vocabulary) Read(name string) Reading {
	var r Reading
	tokens := Tokens(name)
	foods, made, uses := 0, false, []string(nil)
	for i := 0; i < len(tokens); {
		s, n := v.words.longest(tokens[i:])
		if n == 0 {
			var known bool
			s, known = v.compound(tokens[i])
			if n = 1; !known && !number(tokens[i]) {
				r.Rest = append(r.Rest, tokens[i])
			}
			s.neutral = s.neutral || number(tokens[i])
		}
		word := strings.Join(tokens[i:i+n], " ")
		switch {
		case len(s.ids) > 0 && denied(tokens, i, i+n):
		case s.neutral:
		case s.class:
			uses = append(uses, word)
		default:
			foods++
			for _, id := range s.ids {
				r.Hits = append(r.Hits, Hit{id, word, s.asks})
			}
			made = made || s.asks && len(s.ids) == 0
			if s.asks {
				r.Rest = append(r.Rest, word)
			}
		}
		i += n
	}
	r.Empty = foods == 0 && len(uses) == 0 && len(r.Rest) == 0
	r.Use = made || foods == 0 && len(uses) > 0 && len(r.Rest) == 0
	if foods == 0 {
		r.Rest = append(r.Rest, uses...)
	}
	r.Known = foods > 0 && len(r.Rest) == 0
	return r
}

// longest gives the longest phrase that begins the tokens.
func (n *node) longest(tokens []string) (found sense, length int) {
	if n.end != nil {
		found = *n.end
	}
	if len(tokens) == 0 || n.next == nil {
		return found, 0
	}
	for _, form := range singulars(tokens[0]) {
		next := n.next[form]
		if next == nil {
			continue
		}
		s, more := next.longest(tokens[1:])
		if (next.end != nil || more > 0) && more+1 > length {
			found, length = s, more+1
		}
	}
	return found, length
}

// denied reports words such as "peanut-free", "free from milk", "ohne Milch".
func denied(tokens []string, from, to int) bool {
	if to < len(tokens) && (tokens[to] == "free" || tokens[to] == "frei") {
		return true
	}
	if from > 0 && (tokens[from-1] == "without" || tokens[from-1] == "ohne" || tokens[from-1] == "sans") {
		return true
	}
	return from > 1 && tokens[from-2] == "free" && (tokens[from-1] == "of" || tokens[from-1] == "from")
}

func number(token string) bool { return strings.Trim(token, "0123456789") == "" }

// compound reads a German compound: wholly made of known pieces ("Mandelmehl"),
// it is known; with a known piece at its head or tail, what that names is taken
// and the word stays unknown. The longest pieces win, so that Muskatnuss is no
// nut.
func (v *Vocabulary) compound(token string) (sense, bool) {
	if len(token) < 5 || len(token) > 60 {
		return sense{}, false
	}
	if rest, ok := strings.CutSuffix(token, "frei"); ok && len(rest) > 3 {
		_, known := v.compound(rest)
		_, stem := v.stems[rest]
		return sense{neutral: true}, known || stem
	}
	if pieces, ok := v.pieces(token, map[string]bool{}); ok {
		if s := merged(pieces); s.stem || s.class {
			return s, true
		}
	}
	var found sense
	if s, ok := v.affix(token, func(n int) string { return token[:n] }); ok {
		found = merged([]sense{found, s})
	}
	if s, ok := v.affix(token, func(n int) string { return token[len(token)-n:] }); ok {
		found = merged([]sense{found, s})
	}
	return found, false
}

// affix finds the longest stem of at least four letters at one end.
func (v *Vocabulary) affix(token string, cut func(int) string) (sense, bool) {
	for n := len(token) - 1; n >= 4; n-- {
		if s, ok := v.stems[cut(n)]; ok {
			return s, true
		}
	}
	return sense{}, false
}

// pieces takes a compound apart, longest piece first, with the linking letters
// s, n, en, e between. Dead ends are remembered, so it is quick.
func (v *Vocabulary) pieces(token string, dead map[string]bool) ([]sense, bool) {
	if token == "" {
		return nil, true
	}
	if dead[token] {
		return nil, false
	}
	for n := len(token); n >= 2; n-- {
		s, stem := v.stems[token[:n]]
		if !stem && !v.joints[token[:n]] {
			continue
		}
		for _, link := range []string{"", "s", "n", "en", "e", "er"} {
			if rest, ok := strings.CutPrefix(token[n:], link); ok {
				if more, ok := v.pieces(rest, dead); ok {
					return append([]sense{s}, more...), true
				}
			}
		}
	}
	dead[token] = true
	return nil, false
}

// merged joins the meanings of the pieces of one word.
func merged(pieces []sense) (out sense) {
	classes := 0
	for _, s := range pieces {
		out.asks = out.asks || s.asks
		out.stem = out.stem || s.stem && !s.neutral && !s.class
		if s.class {
			classes++
		}
		for _, id := range s.ids {
			if !slices.Contains(out.ids, id) {
				out.ids = append(out.ids, id)
			}
		}
	}
	out.class = classes > 0 && !out.stem
	return out
}
