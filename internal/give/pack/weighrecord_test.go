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
		"de": {"Wägeprotokoll", "206.9 g", "< T2", "Mittel", "217.80 g", "leichtestes", "Regel 1, Mittelwert: NICHT eingehalten", "Waage: Bauart", "Unterschrift", "FPackV § 41"},
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
