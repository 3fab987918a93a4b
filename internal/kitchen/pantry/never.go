package pantry

import (
	"slices"
	"strings"
	"unicode"

	kitwords "jarmark/internal/kit/words"
)

// Never is one row of never-shelf.csv: what keeps a spread off the shelf
// whatever else is recorded.
type Never struct {
	ID            string
	Keys, Classes []string
	Unless        string // "tested", the id of the one tested recipe, or ""
	Knob          bool   // a trace against foam is borne (acid-traces.csv)
	Reason        string
	Source        string
	phrases
}

// phrases are what a row names, and the phrases that look like it and are
// something else: folded tokens; "*" = any beginning or ending.
type phrases struct{ words, not [][]string }

// phrases reads them from the columns of the languages and "but_not".
func (r row) phrases(langs []string) (x phrases) {
	x.not = patterns(r.list("but_not"))
	for _, lang := range langs {
		words := patterns(r.list(lang))
		if len(words) == 0 {
			r.fail(lang, "no words")
		}
		x.words = append(x.words, words...)
	}
	return x
}

func (p *Pantry) loadNever() error {
	t := readTable(p.from, "never-shelf")
	t.each(func(r row) {
		x := Never{ID: r.need("id"), Keys: r.list("keys"), Classes: r.list("kinds"), Unless: r.text("unless"), Knob: r.yes("knob"),
			Reason: r.need("reason"), Source: r.need("source")}
		x.phrases = r.phrases(t.between("kinds", "but_not")) // a language each
		p.never = append(p.never, x)
	})
	return t.err
}

// patterns folds phrases into tokens; "*" before or behind a word stays.
func patterns(phrases []string) (out [][]string) {
	for _, s := range phrases {
		var one []string
		for _, w := range strings.Fields(s) {
			if strings.Contains(w, "*") {
				one = append(one, kitwords.Fold(w))
			} else {
				one = append(one, neverTokens(w)...)
			}
		}
		out = append(out, one)
	}
	return out
}

// apart opens elisions: "jaune d'oeuf" is three words.
var apart = strings.NewReplacer("'", " ", "’", " ")

func neverTokens(words string) []string { return tokens(apart.Replace(words)) }

// spelled gives the words as they are written, plurals and all: "Kürbis" is
// no plural.
func spelled(words string) []string {
	return strings.FieldsFunc(kitwords.Fold(apart.Replace(words)), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// Never finds the row that keeps an ingredient off the shelf: by its key, its
// kind, or any of the texts the maker wrote of it, in English, German or French.
func (p *Pantry) Never(key, kind string, texts ...string) (Never, bool) {
	for _, x := range p.never {
		if slices.Contains(x.Keys, key) || slices.Contains(x.Classes, kind) {
			return x, true
		}
	}
	return named(p.never, texts)
}

// named finds the row that one of some texts names: the first text that does, in
// the order of the rows.
func named[T interface{ names(ts []string) bool }](rows []T, texts []string) (none T, ok bool) {
	for _, s := range texts {
		ts := spelled(s)
		for _, x := range rows {
			if x.names(ts) {
				return x, true
			}
		}
	}
	return none, false
}

// names reports whether a phrase of the row stands in the words, outside the
// phrases it does not mean ("cream of tartar").
func (x phrases) names(ts []string) bool {
	ts = slices.Clone(ts)
	for _, no := range x.not {
		for at := find(ts, no); at >= 0; at = find(ts, no) {
			ts = slices.Replace(ts, at, at+len(no), "")
		}
	}
	return slices.ContainsFunc(x.words, func(w []string) bool { return find(ts, w) >= 0 })
}

// find gives where a pattern stands in the words, -1 when nowhere.
func find(ts, pattern []string) int {
	for i := 0; len(pattern) > 0 && i+len(pattern) <= len(ts); i++ {
		if slices.EqualFunc(ts[i:i+len(pattern)], pattern, like) {
			return i
		}
	}
	return -1
}

func like(word, pattern string) bool {
	stem, open := strings.CutSuffix(pattern, "*")
	tail, closed := strings.CutPrefix(stem, "*")
	switch {
	case word == "" || pattern == "":
		return false
	case open && closed:
		return strings.Contains(word, tail)
	case open:
		return strings.HasPrefix(word, stem)
	case closed:
		return strings.HasSuffix(word, tail)
	}
	return word == pattern || word[0] == pattern[0] && kitwords.Singular(word) == pattern // a plural begins as its singular does
}

// Trace is one row of acid-traces.csv: what neither has nor needs acid of its
// own in small amounts, in percent of the acid fruit, or in any.
type Trace struct {
	Group         string
	Classes, Keys []string
	Percent       float64
	Any           bool
	Source        string
}

func (p *Pantry) loadTraces() error {
	t := readTable(p.from, "acid-traces")
	t.each(func(r row) {
		x := Trace{Group: r.need("group"), Classes: r.list("kinds"), Keys: r.list("keys"), Source: r.need("source")}
		if x.Any = r.text("percent_of_acid_fruit") == "any"; !x.Any {
			x.Percent = r.number("percent_of_acid_fruit", 0)
		}
		p.traces = append(p.traces, x)
	})
	return t.err
}

// Trace finds the row of an ingredient, by key before kind; of none, it has no
// Group.
func (p *Pantry) Trace(key, kind string) Trace {
	for _, x := range p.traces {
		if slices.Contains(x.Keys, key) {
			return x
		}
	}
	for _, x := range p.traces {
		if slices.Contains(x.Classes, kind) {
			return x
		}
	}
	return Trace{}
}

// UnsafeMethod is one row of unsafe-methods.csv: a way of closing jars that
// makes none keep on the shelf.
type UnsafeMethod struct{ Method, Reason, Hint, Source string }

func (p *Pantry) loadUnsafe() error {
	t := readTable(p.from, "unsafe-methods")
	t.each(func(r row) {
		p.unsafe = append(p.unsafe, UnsafeMethod{r.need("method"), r.need("reason"), r.need("hint"), r.need("source")})
	})
	return t.err
}

// UnsafeMethods lists all rows.
func (p *Pantry) UnsafeMethods() []UnsafeMethod { return append([]UnsafeMethod(nil), p.unsafe...) }

// UnsafeMethod finds a row by its method.
func (p *Pantry) UnsafeMethod(method string) (UnsafeMethod, bool) {
	for _, x := range p.unsafe {
		if x.Method == method {
			return x, true
		}
	}
	return UnsafeMethod{}, false
}
