package table

import (
	"bytes"
	"encoding/csv"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/templates"
)

// Every word a list says stands in the table in every language, with the same
// values to fill in: a new language is a column, and none is English by accident.
func TestPackingWordsAreComplete(t *testing.T) {
	f, err := templates.FS.Open("languages/packing.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	verbs := regexp.MustCompile(`%[ds]`)
	have := map[string]bool{}
	for _, row := range rows[1:] {
		have[row[0]] = true
		for i, cell := range row {
			if cell == "" || i > 0 && strings.Join(verbs.FindAllString(row[0], -1), "") != strings.Join(verbs.FindAllString(cell, -1), "") {
				t.Errorf("%s: %q for %q", rows[0][i], cell, row[0])
			}
		}
	}
	said := regexp.MustCompile(`(?:[Ss]ay|contBand|ask)\((?:w, |[^,"()]+, )?("[^"]+")|Say\((?:table\.)?Plural\([^,]+, ("[^"]+"), ("[^"]+")`)
	files, _ := filepath.Glob("../*/*.go")
	for _, name := range files {
		text, _ := os.ReadFile(name)
		for _, m := range said.FindAllStringSubmatch(string(text), -1) {
			for _, words := range m[1:] {
				if words = strings.Trim(words, `"`); words != "" && !strings.HasSuffix(name, "_test.go") && !have[words] {
					t.Errorf("%s says %q, which the table has not", name, words)
				}
			}
		}
	}
}

// Dates, sums and figures as the language writes them (common practice, no source).
func TestPlanSpeaks(t *testing.T) {
	d := unit.Date{Year: 2026, Month: 12, Day: 5}
	for lang, want := range map[string]string{
		"en": "2 jars, 5 Dec 2026, 2026-12-05, €19.50, 1.5 kg", "de": "2 Gläser, 5. Dezember 2026, 05.12.2026, 19,50 €, 1,5 kg", "fr": "2 pots, 5 décembre 2026, 05/12/2026, 19,50 €, 1,5 kg",
		"it": "2 jars, 5 Dec 2026, 2026-12-05, €19.50, 1.5 kg",
	} {
		w := WordsIn(lang)
		got := strings.Join([]string{w.Jars(2), w.Day(d), w.Brief(d), w.Money([]unit.Money{{Minor: 1950, Currency: "EUR"}}), w.Number("1.5 kg")}, ", ")
		if strings.ReplaceAll(got, "\u00a0", " ") != want {
			t.Errorf("%s: %q, want %q", lang, got, want)
		}
	}
}

// Every English line stands once in the table of words: a second would silently
// take the place of the first.
func TestWordsStandOnce(t *testing.T) {
	data, err := templates.FS.ReadFile("languages/packing.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil || len(rows) < 100 {
		t.Fatal(len(rows), err)
	}
	at := map[string]int{}
	for i, r := range rows {
		if at[r[0]] > 0 {
			t.Errorf("%q stands on lines %d and %d", r[0], at[r[0]], i+1)
		}
		at[r[0]] = i + 1
	}
}

// TestLongNamesInText: a name that leaves no room for its figures stands whole
// on the line before them; a shorter one beside them.
func TestLongNamesInText(t *testing.T) {
	long := "Nov 14, 2026  Ferry landing market at the old mill"
	l := &List{Head: "h", Parts: []Part{{Title: "By market", Columns: []string{"market", "sold", "takings", "costs", "fee", "profit"},
		Rows: []Row{{What: long, Figures: []string{"17", "$153.00", "not known", "$25.00", "not known"}}, {What: "Fair", Figures: []string{"4", "$36.00", "$24.72", "$25.00", "-$13.72"}}}}}}
	text := l.Text()
	if !strings.Contains(text, long+"\n") || !regexp.MustCompile(`(?m)^ +17 +\$153\.00`).MatchString(text) || !regexp.MustCompile(`(?m)^Fair +4 +\$36\.00`).MatchString(text) {
		t.Error(text)
	}
	for _, line := range strings.Split(text, "\n") {
		if len([]rune(line)) > columnsWide {
			t.Errorf("too wide: %q", line)
		}
	}
}

// TestWideHeadsInText: where the heads of another language fill the line, the
// columns stand closer and no figure is cut off.
func TestWideHeadsInText(t *testing.T) {
	l := &List{Head: "h", Parts: []Part{{Title: "Nach Sorte", Columns: []string{"Sorte", "gemacht", "verschenkt", "verkauft", "verloren", "übrig", "Einnahmen", "Gewinn je Glas"},
		Rows: []Row{{What: "zusammen", Figures: []string{"10", "0", "1", "0", "9", "6,50 €", "4,32 €"}}}}}}
	text := l.Text()
	if !regexp.MustCompile(`(?m)^zusammen +10 +0 +1 +0 +9 +6,50 € +4,32 €$`).MatchString(text) || !strings.Contains(text, " Gewinn je Glas\n") {
		t.Error(text)
	}
}
