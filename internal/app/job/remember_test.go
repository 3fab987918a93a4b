package job_test

import (
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/source"
)

// TestSheetsAreRememberedAgainAndAgain notes the open sheet of every kind of
// paper twice in one kitchen file: the second count replaces the first.
func TestSheetsAreRememberedAgainAndAgain(t *testing.T) {
	const used = 5
	k := job.Doc{Name: "kitchen.toml", Data: demoFile(t, "kitchen.toml")}
	sheets := builtin(t).Sheets.List()
	for count := 1; count < used; count++ {
		var runs []job.Printed
		for _, s := range sheets {
			runs = append(runs, job.Printed{Sheet: s, Used: count, Cells: used})
		}
		now, l := job.RememberSheets(k, runs)
		if len(l) > 0 {
			t.Fatalf("print %d: %v", count, l)
		}
		k.Data = now
		f, l := source.Parse(k.Name, now)
		if l.HasErrors() {
			t.Fatalf("print %d: %v", count, l)
		}
		var kitchen struct {
			Supplies struct {
				PartSheets map[string]int `toml:"part_sheets"`
			} `toml:"supplies"`
		}
		source.Decode(f, &kitchen) // the other keys of a kitchen are not asked for here
		for _, s := range sheets {
			if got, ok := kitchen.Supplies.PartSheets[s.ID]; ok == s.Auto || !s.Auto && got != count {
				t.Errorf("print %d on %s: %d cells are noted as used", count, s.ID, got)
			}
		}
	}
	if n := strings.Count(string(k.Data), "letter-plain"); n > 0 {
		t.Error("plain paper has no cells to remember")
	}
}
