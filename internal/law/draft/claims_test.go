package draft

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/law/place"
)

// claimRow is a row that governs words of a label, as far as it says something
// that was read.
type claimRow struct {
	id, confidence, says string
	finds                func(words string) bool // the row's own words have these
}

// claimRows are the rows of a place that govern words: of claims, of names.
func claimRows(s *place.Set) (out []claimRow) {
	d := &Draft{Set: s}
	if n := s.Nutrition; n != nil {
		out = append(out, claimRow{"nutrition", n.Confidence, "", func(words string) bool {
			for _, tried := range []string{words, words + " fiber", "fiber " + words, words + " with fiber", words + " of fiber", words + " source of fiber"} {
				if d.claimIn(tried) != "" {
					return true
				}
			}
			return false
		}})
	}
	for _, w := range s.Wordings {
		out = append(out, claimRow{w.ID, w.Confidence, w.Text + " " + w.Else + " " + w.Maybe + " " + w.Hint, func(words string) bool {
			denied := slices.ContainsFunc(w.Of, func(x string) bool { return Said(words, filled(w.Forms, x), nil) != "" })
			return denied || Said(words, slices.Concat(w.Words, w.Unless), nil) != ""
		}})
	}
	for _, n := range s.Namings {
		out = append(out, claimRow{n.ID, n.Confidence, n.Text + " " + n.Hint, func(words string) bool {
			return Said(words, slices.Concat(n.Words, n.Unless, n.Settled, n.NameSays), nil) != ""
		}})
	}
	return out
}

var (
	quotedWords = regexp.MustCompile(`[“"‘]([^”"’]+)[”"’]`)
	figures     = regexp.MustCompile(`\d[\d.,]*`)
	clausesSaid = regexp.MustCompile(`\([^)]*\)|\d+ CFR [\d.]+`) // where it stands, not what it says
)

// unclaimed are words the quoted clauses put in quotation marks and no label is
// looked through for: what must stand beside a claim, and whose words it is.
var unclaimed = []string{"CONTAINS NATURALLY OCCURRING SUGARS", "third party", "heart", "spice"}

// Every row that governs words of a label rests on a quotation of its clause, is
// no surer than it, says no figure that does not stand there letter by letter,
// and finds every word that the clause itself puts in quotation marks.
func TestClaimRowsStandInTheirQuotations(t *testing.T) {
	b, err := place.Load(place.Laws{})
	if err != nil {
		t.Fatal(err)
	}
	said, told := 0, 0
	for _, id := range []string{"us", "eu"} {
		s, _ := b.Place(id, unit.Date{Year: 2026, Month: 11, Day: 27})
		quotes, err := b.Quotes(id)
		if err != nil || s == nil {
			t.Fatalf("%s: %v", id, err)
		}
		for _, row := range claimRows(s) {
			of := slices.DeleteFunc(slices.Clone(quotes), func(q place.Quote) bool { return !q.Of(row.id) })
			if len(of) == 0 {
				t.Errorf("%s: %s rests on no quotation", id, row.id)
				continue
			}
			text := ""
			for _, q := range of {
				text += q.Text + "\n"
				for _, m := range quotedWords.FindAllStringSubmatch(q.Text, -1) {
					if words := strings.Trim(m[1], ",. "); !slices.Contains(unclaimed, words) {
						said++
						if !finds(s, row.id, words) {
							t.Errorf("%s: %s does not know %q, which its clause quotes", id, row.id, words)
						}
					}
				}
			}
			if !slices.ContainsFunc(of, func(q place.Quote) bool { return q.Confidence == row.confidence || q.Confidence == "primary" }) {
				t.Errorf("%s: %s is %s, and no quotation of it is", id, row.id, row.confidence)
			}
			for _, f := range figures.FindAllString(clausesSaid.ReplaceAllString(row.says, ""), -1) {
				told++
				if f = strings.TrimRight(f, ".,"); !slices.Contains(figuresIn(text), f) {
					t.Errorf("%s: %s says %s; its clause is %q", id, row.id, f, text)
				}
			}
		}
	}
	if said < 30 || told < 6 {
		t.Errorf("only %d words and %d figures were held against their clauses", said, told)
	}
}

func figuresIn(text string) (out []string) {
	for _, f := range figures.FindAllString(text, -1) {
		out = append(out, strings.TrimRight(f, ".,"))
	}
	return out
}

// finds reports whether any row of an id knows the words: rows may share a clause.
func finds(s *place.Set, id, words string) bool {
	return slices.ContainsFunc(claimRows(s), func(r claimRow) bool { return r.id == id && r.finds(words) })
}

// The certified colors are those 21 CFR 74 Subpart A lists for food in general
// (Orange B is for sausage skins, Citrus Red for orange skins: 74.250, 74.302, from
// memory), in the short form of 101.22(k)(1).
func TestCertifiedColorsAreThoseListed(t *testing.T) {
	b, _ := place.Load(place.Laws{})
	s, _ := b.Place("us", unit.Date{Year: 2026, Month: 11, Day: 27})
	quotes, _ := b.Quotes("us")
	var listed []string
	for _, q := range quotes {
		if q.Value == "color-unnamed.settled" {
			for _, m := range regexp.MustCompile(`FD&C (\w+) No\. (\d+)`).FindAllStringSubmatch(q.Text, -1) {
				listed = append(listed, strings.ToLower(m[1])+" "+m[2])
			}
		}
	}
	var settled []string
	for _, n := range s.Namings {
		if n.ID == "color-unnamed" {
			settled = slices.Sorted(slices.Values(n.Settled))
		}
	}
	slices.Sort(listed)
	if len(listed) != 7 || !slices.Equal(listed, settled) {
		t.Errorf("listed %q, known %q", listed, settled)
	}
}
