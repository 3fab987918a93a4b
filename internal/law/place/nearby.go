package place

import (
	"slices"
	"strings"
	"unicode"
)

// nearby tells at a glance which words of a row a text can say at all: a batch
// has many texts, and a set thousands of words in a dozen languages.
type nearby struct {
	starts map[string][]int // the first word of each of Words; "" = it may begin with anything
	marks  map[string]bool  // a word of each of Forms and of Words with {x}
	ends   []string         // or what hangs on the thing: "frei"
}

// Candidates are the words of the row that a text may say, by its own words in
// lower case; all of them where the row was not read from a set.
func (w WordingRule) Candidates(text []string) []string {
	if w.near == nil {
		return w.Words
	}
	at := slices.Clone(w.near.starts[""])
	for i, t := range text {
		if !slices.Contains(text[:i], t) {
			at = append(at, w.near.starts[t]...)
		}
	}
	slices.Sort(at)
	out := make([]string, len(at))
	for i, a := range at {
		out[i] = w.Words[a]
	}
	return out
}

// MayDeny reports whether a text has a word of any of the row's ways of denying.
func (w WordingRule) MayDeny(text []string) bool {
	return w.near == nil || slices.ContainsFunc(text, func(t string) bool {
		return w.near.marks[t] || slices.ContainsFunc(w.near.ends, func(end string) bool { return strings.HasSuffix(t, end) })
	})
}

// look makes the index of a row.
func (w *WordingRule) look() {
	n := &nearby{starts: map[string][]int{}, marks: map[string]bool{}}
	for i, word := range w.Words {
		if strings.Contains(word, "{x}") {
			n.mark(word)
			continue
		}
		first := ""
		if ts := tokens(word); len(ts) > 0 && !strings.HasPrefix(word, "*") {
			first = ts[0]
		}
		n.starts[first] = append(n.starts[first], i)
	}
	for _, form := range w.Forms {
		n.mark(form)
	}
	slices.Sort(n.ends)
	n.ends = slices.Compact(n.ends)
	w.near = n
}

// mark takes the word of a form that is there whatever it denies.
func (n *nearby) mark(form string) {
	before, after, _ := strings.Cut(form, "{x}")
	switch {
	case len(tokens(before)) > 0:
		n.marks[tokens(before)[0]] = true
	case len(tokens(after)) > 0 && strings.HasPrefix(after, " "):
		n.marks[tokens(after)[0]] = true
	case len(tokens(after)) > 0:
		n.ends = append(n.ends, tokens(after)[0])
	}
}

func tokens(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}
