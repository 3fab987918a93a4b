package place

import (
	"testing"

	"jarmark/internal/law/label"
)

// A quotation lowers the trust in a block and never raises it; it stands for the
// very words alone, of its own language and kind.
func TestReadOfABlock(t *testing.T) {
	words := func(k label.Kind, text, verified, cite string) label.Block {
		return label.Block{Kind: k, Verified: verified, Cite: cite, Runs: []label.Run{{Text: text}}}
	}
	s := &Set{Words: map[string]*Phrases{"en": {Lang: "en", words: map[string]string{"eu.date.best": "*best before* {date}", "eu.date.use-by": "use by {date}"}}}}
	s.CheckedOn = "2026-01-01"
	s.Programmes = []Programme{{Law: "Act 1", CheckedOn: "2026-02-02"}, {Law: "", CheckedOn: "2026-03-03"}}
	quote := func(value, text, confidence string) []Quote {
		return []Quote{{Value: value, Text: text, Origin: Origin{Confidence: confidence}, Read: "2026-04-04", Where: "page 7"}}
	}
	for _, x := range []struct {
		name   string
		b      label.Block
		quotes []Quote
		want   Read
	}{
		{"no quotation", words(label.Statement, "Home made.", "primary", ""), nil, Read{"primary", "2026-01-01", ""}},
		{"the programme's own day", words(label.Statement, "Home made.", "primary", "Act 1"), nil, Read{"primary", "2026-02-02", ""}},
		{"read on a page", words(label.Statement, "Home made.", "primary", ""), quote("us-or.statement", "Home made", "secondary"), Read{"secondary", "2026-04-04", "page 7"}},
		{"never surer", words(label.Statement, "Home made.", "memory", ""), quote("us-or.statement", "Home made", "primary"), Read{"memory", "2026-04-04", "page 7"}},
		{"other words", words(label.Statement, "Shop made.", "primary", ""), quote("us-or.statement", "Home made", "secondary"), Read{"primary", "2026-01-01", ""}},
		{"another value", words(label.Statement, "Home made.", "primary", ""), quote("us-or.sign", "Home made", "secondary"), Read{"primary", "2026-01-01", ""}},
		{"no words", words(label.Statement, " . ", "primary", ""), quote("us-or.statement", "Home made", "secondary"), Read{"primary", "2026-01-01", ""}},
		{"a phrase", words(label.Date, "Best before 1 May 2027", "primary", ""), quote("phrase:en:eu.date.best", "x", "secondary"), Read{"secondary", "2026-04-04", "page 7"}},
		{"a phrase from memory", words(label.Date, "Use by 1 May 2027", "primary", ""), quote("phrase:en:eu.date.use-by", "x", "memory"), Read{"memory", "2026-04-04", "page 7"}},
		{"another phrase of the kind", words(label.Date, "Best before 1 May 2027", "primary", ""), quote("phrase:en:eu.date.use-by", "x", "memory"), Read{"primary", "2026-01-01", ""}},
		{"a phrase of another language", words(label.Date, "best before", "primary", ""), quote("phrase:de:eu.date.best", "x", "secondary"), Read{"primary", "2026-01-01", ""}},
		{"a phrase of another kind", words(label.Net, "10 oz", "primary", ""), quote("phrase:en:eu.date.best", "x", "secondary"), Read{"primary", "2026-01-01", ""}},
	} {
		if got := s.Read(x.b, "en", x.quotes); got != x.want {
			t.Errorf("%s: %+v, want %+v", x.name, got, x.want)
		}
	}
}

func TestPlaceWord(t *testing.T) {
	for text, want := range map[string]string{"US-Oregon": "us oregon", "U.S.A.": "usa", " new_york, ": "new york", "": "", "--": "", "EU": "eu"} {
		if got := placeWord(text); got != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}
