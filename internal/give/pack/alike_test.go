package pack

import (
	"strings"
	"testing"

	"jarmark/internal/give/ledger"
	"jarmark/internal/kit/diag"
)

// One slip made in many rows is told once, with the rows that share it; who
// must not eat what is in the jar is told of every person.
func TestRowsThatShareAFinding(t *testing.T) {
	var list []Entry
	for i := range 12 {
		list = append(list, Entry{To: "Ann", Jars: 1, Jam: "rhubarb", File: "f.csv", Pos: diag.Pos{Line: i + 2, Column: 1}})
	}
	list = append(list, Entry{To: "Bea", Jars: 1, Jam: "quince", File: "f.csv", Pos: diag.Pos{Line: 14, Column: 1}})
	for i := range 2 {
		list = append(list, Entry{To: "Cy", Jars: 1, Jam: "plum", Allergy: "moonberries", File: "f.csv", Pos: diag.Pos{Line: 15 + i, Column: 1}},
			Entry{To: "Di", Jars: 1, Jam: "apricot", Allergy: "almonds", File: "f.csv", Pos: diag.Pos{Line: 17 + i, Column: 1}})
	}
	var book []ledger.Entry
	for i, day := range []int{4, 5, 6, 9} {
		book = append(book, ledger.Entry{Date: date(2026, 12, day), Lot: "L26265-PL", Jar: "us8", Count: 1, Why: ledger.Eaten, File: "ledger.csv", Pos: diag.Pos{Line: 2 + i, Column: 1}})
	}
	_, found := Build(both(), Options{List: list, Book: book, Today: date(2026, 12, 1)})
	for code, want := range map[string][]string{
		"unknown-jam":     {`Ann is promised 1 jar of "rhubarb", and no batch here is called so; so with 11 rows more, lines 3, 4, 5, 6, 7, 8, 9, 10 and after`, `Bea is promised 1 jar of "quince", and no batch here is called so`},
		"unknown-allergy": {`; so with 1 row more, line 16`},
		"row-day":         {`1 jar of lot L26265-PL eaten on Dec 4, 2026: that day is still to come; so with 3 rows more, lines 3, 4, 5`},
		"allergy-in-jar":  {"Di must not eat", "Di must not eat"},
	} {
		n := 0
		for _, d := range found {
			if d.Code != code {
				continue
			}
			if n >= len(want) || !strings.HasSuffix(d.Message, want[n]) && !strings.HasPrefix(d.Message, want[n]) {
				t.Errorf("%s: %s", code, d.Message)
			}
			n++
		}
		if n != len(want) {
			t.Errorf("%s: %d findings, want %d: %v", code, n, len(want), found)
		}
	}
}
