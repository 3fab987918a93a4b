package pack

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/give/table"
	where "jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/kitchen/weigh"
)

// weighedPlums is a lot of 225 g under German law: FPackV s. 9(3), 9 g from 200
// to 300 g, and s. 9(4), 18 g doubled, so T1 216.0 and T2 207.0.
func weighedPlums(t *testing.T, lang string, net ...float64) *table.List {
	t.Helper()
	var ms []unit.Mass
	for _, g := range net {
		ms = append(ms, unit.Grams(g))
	}
	p := weigh.Packers{System: "de", PerMille: 20, DoubleRounded: true}
	r, l := p.Check(225*unit.Gram, weigh.Sample{Net: ms, Lot: 24})
	if l.HasErrors() {
		t.Fatal(l)
	}
	k := &batch.Kitchen{Name: "Elbe Kitchen", Units: unit.Metric, Language: lang, Place: where.Place{ID: "de", Law: where.EU, Languages: []string{"de", "en", "fr"}}}
	const duty = "FPackV s. 41: the content is measured or checked with an instrument fit for it, by recognised statistical principles; the results are recorded, and kept until the next inspection under s. 40"
	return WeighRecord(k, duty, []Weighed{{Product: "=Pflaume", Lot: "L1", Jar: "212 ml", Made: unit.Date{Year: 2026, Month: 6, Day: 14}, Net: ms, Declared: "225 g", Report: r}})
}

// FPackV s. 41(4): "Die Ergebnisse nach Absatz 3 sind aufzuzeichnen." Every
// reading, the mean and the lightest apart, and each limit from both sides.
func TestWeighRecordHoldsEveryReading(t *testing.T) {
	rows, err := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(weighedPlums(t, "de", 231, 216, 215.9, 207, 206.9).CSV(), []byte("\uFEFF")))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var jars, text []string
	for _, r := range rows[1:] {
		if r[0] == "jar" {
			jars = append(jars, strings.Join(r[5:9], " "))
		}
		text = append(text, r[9])
		if r[0] != "duty" && (r[2] != "'=Pflaume" || r[1] != "L1" || r[3] != "2026-06-14") {
			t.Errorf("%q", r)
		}
	}
	want := "1 231.00 +6.0 |2 216.00 -9.0 |3 215.90 -9.1 < T1|4 207.00 -18.0 < T1|5 206.90 -18.1 < T2"
	if got := strings.Join(jars, "|"); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	for _, w := range []string{"mean: 215.36 g", "lightest: 206.9 g", "rule 1, average: FAIL, mean 215.3 g", "rule 3, none below T2: FAIL, lightest 206.9 g, 1 jar below 207.0 g", "kept until the next inspection"} {
		if !strings.Contains(strings.Join(text, "\n"), w) {
			t.Errorf("no %q in %q", w, text)
		}
	}
}

// The page says the same, in the kitchen's language, with lines for scale and
// signature.
func TestWeighRecordPage(t *testing.T) {
	for lang, want := range map[string][]string{
		"de": {"Wägeprotokoll", "206,9 g", "< T2", "Mittel", "217,80 g", "leichtestes", "Regel 1, Mittelwert: NICHT eingehalten", "Waage: Bauart", "Unterschrift", "FPackV § 41"},
		"en": {"Record of weighing", "Weighed by, and when", "rule 3, none below T2: FAIL. lightest 206.9 g", "declared 225 g"},
	} {
		d, l := weighedPlums(t, lang, 231, 216, 215.9, 207, 206.9, 230).Doc(faces(t), "a4")
		if d == nil || l.HasErrors() {
			t.Fatal(l)
		}
		var all strings.Builder
		for _, p := range d.Pages {
			for _, m := range p.Marks {
				if x, ok := m.(*page.Text); ok {
					for _, g := range x.Segs {
						all.WriteString(g.S)
					}
					all.WriteString("\n")
				}
			}
		}
		for _, w := range want {
			if !strings.Contains(all.String(), w) {
				t.Errorf("%s: no %q in\n%s", lang, w, all.String())
			}
		}
	}
}

// A dozen jars, the sample of a small lot, are one page to sign, in every
// language and on both papers, with every reading on it.
func TestWeighRecordIsOnePage(t *testing.T) {
	for _, lang := range []string{"de", "fr", "en"} {
		for _, paper := range []string{"a4", "letter"} {
			l := weighedPlums(t, lang, 231, 226.1, 225.2, 227.3, 228.4, 229.5, 226.6, 225.7, 227.8, 228.9, 215.1, 206.2)
			d, found := l.Doc(faces(t), paper)
			if d == nil || found.HasErrors() {
				t.Fatal(found)
			}
			if len(d.Pages) != 1 {
				t.Errorf("%s %s: %d pages", lang, paper, len(d.Pages))
			}
			texts := map[string]bool{}
			for _, m := range d.Pages[0].Marks {
				if x, ok := m.(*page.Text); ok && len(x.Segs) > 0 {
					texts[x.Segs[0].S] = true
				}
			}
			for _, g := range []string{"231.0 g", "226.1 g", "228.4 g", "227.8 g", "215.1 g", "206.2 g"} {
				if g = l.In.Number(g); !texts[g] {
					t.Errorf("%s %s: no %q", lang, paper, g)
				}
			}
		}
	}
}

// The record is in the language of the kitchen, the size of the jar with it; a
// jar of the maker's own stays in the maker's words.
func TestJarInTheLanguageOfTheList(t *testing.T) {
	lug, ok := pantry.Default().Jar("212 ml")
	if !ok {
		t.Fatal("no such jar")
	}
	own := pantry.Jar{Description: "Omas Weckglas", Nominal: unit.ML(290), Measured: true}
	for lang, want := range map[string]string{"de": "Glas 212 ml", "fr": "bocal 212 ml", "en": lug.Description} {
		k := &batch.Kitchen{Language: lang, Place: where.Place{ID: "de", Law: where.EU, Languages: []string{"de", "en", "fr"}}}
		if got := JarIn(k, lug); got != want {
			t.Errorf("%s: %q, want %q", lang, got, want)
		}
		if got := JarIn(k, own); got != own.Description {
			t.Errorf("%s: %q", lang, got)
		}
	}
}
