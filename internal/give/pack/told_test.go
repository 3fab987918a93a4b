package pack

import (
	"bytes"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/give/ledger"
	"jarmark/internal/kit/diag"
)

// printed is all text of a printed list, as PDFium reads it.
func printed(f *presstest.File) string {
	text := ""
	for i := range f.Pages() {
		text += f.Text(i)
	}
	return strings.Join(strings.Fields(text), " ")
}

// A name in letters that no typeface draws is printed as where it stands, so
// that whoever packs finds it; never as a row of question marks.
func TestNamesNoFaceDraws(t *testing.T) {
	fs := faces(t)
	rs := both()
	rs[0].Batch.Gifts[1].To, rs[0].Batch.Gifts[1].Message = "Γιώργος", "χρόνια πολλά"
	rs[0].Batch.Markets[0].Event, rs[1].Batch.Markets[0].Event = "Рынок", "Рынок"
	o := Options{From: "list friends.csv",
		List: []Entry{{To: "李小龍", From: "Ειρήνη", Jars: 1, Lot: "L26265-PL", File: "home/friends.csv", Pos: diag.Pos{Line: 4, Column: 1}},
			{To: "🎉", Message: "party 🎉 time", Jars: 1, File: "home/friends.csv", Pos: diag.Pos{Line: 5, Column: 1}}},
		Book: []ledger.Entry{{Lot: "L26265-PL", Jar: "us8", Count: 1, Why: ledger.Given, Who: "Мария 🍓", File: "ledger.csv", Pos: diag.Pos{Line: 9, Column: 1}}}}
	p, _ := Build(rs, o)
	list, found := p.Doc(fs, "")
	h, _ := Trace("L26265-PL", rs, o)
	recall, more := h.RecallDoc(fs, "")
	for _, c := range []struct {
		name string
		d    *page.Doc
		want []string
	}{
		{"packing list", list, []string{"(name: gift 2 of plum.toml)", "“(message: gift 2 of plum.toml)”", "(market: market 1 of plum.toml), 5 Dec 2026", "(name: row 4 of friends.csv)", "from (giver: row 4 of friends.csv)", "(name: row 5 of friends.csv)", "“party time”"}},
		{"recall sheet", recall, []string{"(name: gift 2 of plum.toml)", "(name: row 4 of friends.csv)", "(name: row 9 of ledger.csv)"}},
	} {
		var buf bytes.Buffer
		if err := pdf.Write(&buf, c.d, fs); err != nil {
			t.Fatal(err)
		}
		flat := printed(presstest.Open(t, buf.Bytes()))
		for _, w := range c.want {
			if !strings.Contains(flat, w) {
				t.Errorf("the %s lacks %q:\n%s", c.name, w, flat)
			}
		}
		if strings.Contains(flat, "?") {
			t.Errorf("the %s has a question mark:\n%s", c.name, flat)
		}
	}
	for _, d := range append(found, more...) {
		if d.Code == "unprintable-letter" && strings.Contains(d.Message, "李小龍") && (d.File != "home/friends.csv" || d.Pos.Line != 4) {
			t.Error("not told at its row:", d)
		}
	}
	if !has(found, "unprintable-letter", "李小龍") || !has(more, "unprintable-letter", "Мария 🍓") || len(found) != 7 {
		t.Error(len(found), found, more)
	}
}
