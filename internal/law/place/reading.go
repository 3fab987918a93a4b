package place

import (
	"slices"
	"strings"

	"jarmark/internal/law/label"
)

// trusted orders how a value was read, the surest first.
var trusted = []string{"primary", "secondary", "memory"}

// Read says how a statement's rule was read, and when.
type Read struct {
	Confidence string // "primary", "secondary", "memory"
	On         string // YYYY-MM-DD
	Where      string // clause and copy, where the very words were quoted; else ""
}

// Read tells how far a block of a label may be relied on: by its own mark, or
// by the quotation of its words when that was read on a lesser page. Quotations
// are those of the set (Book.Quotes).
func (s *Set) Read(b label.Block, lang string, quotes []Quote) Read {
	out := Read{Confidence: b.Verified, On: s.CheckedOn}
	for _, p := range s.Programmes {
		if b.Cite != "" && b.Cite == p.Law && p.CheckedOn != "" {
			out.On = p.CheckedOn
		}
	}
	for _, q := range quotes {
		if !q.about(b, s.Words[lang]) {
			continue
		}
		out.On, out.Where = q.Read, q.Where
		if slices.Index(trusted, q.Confidence) > slices.Index(trusted, out.Confidence) {
			out.Confidence = q.Confidence
		}
		return out
	}
	return out
}

// about reports whether a quotation holds the very words of a block: a
// programme's statement, or the phrase of a language.
func (q Quote) about(b label.Block, words *Phrases) bool {
	text := strings.Trim(b.Text(), ".“”\" ")
	switch {
	case text == "":
		return false
	case b.Kind == label.Statement:
		return strings.HasSuffix(q.Value, ".statement") && strings.Contains(q.Text, text)
	}
	if words == nil {
		return false
	}
	key, ok := strings.CutPrefix(q.Value, "phrase:"+words.Lang+":")
	return ok && slices.Contains(phrasesOf[b.Kind], key) && stands(words.all()[key], text)
}

// stands reports whether a phrase's own words, its {values} and stars aside,
// stand in a text.
func stands(phrase, text string) bool {
	text = strings.ToLower(text)
	for _, piece := range pieces(phrase) {
		if !strings.Contains(text, strings.ToLower(piece)) {
			return false
		}
	}
	return true
}

// pieces cuts a phrase at its {values}.
func pieces(phrase string) (out []string) {
	rest := strings.ReplaceAll(phrase, "*", "")
	for rest != "" {
		words, tail, cut := strings.Cut(rest, "{")
		if words = strings.TrimSpace(words); words != "" {
			out = append(out, words)
		}
		if !cut {
			break
		}
		_, rest, _ = strings.Cut(tail, "}")
	}
	return out
}

// phrasesOf are the phrases whose words a block consists of.
var phrasesOf = map[label.Kind][]string{
	label.Fruit: {"eu.jam.fruit"},
	label.Sugar: {"eu.jam.sugar", "eu.jam.sugar-uk"},
	label.Date:  {"eu.date.best", "eu.date.use-by"},
	label.Net:   {"us.net"},
}
