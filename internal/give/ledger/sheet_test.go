package ledger

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// A ledger that a spreadsheet has saved anew, or that its maker keeps in German
// or French, says the same rows; columns of the maker's own stay in what is
// written on.
func TestSavedBySpreadsheets(t *testing.T) {
	const want = "2026-12-05 A 2 sold fair 950; 2026-12-05 A 1 came home fair 0;"
	for name, c := range map[string]struct {
		text     string
		american bool
	}{
		"as written":     {"date,lot,count,why,who,price\n2026-12-05,A,2,sold,fair,9.50\n2026-12-05,A,1,came home,fair,\n", false},
		"United States":  {"\ufeffDate,Lot,Jars,Why,Who,Price\r\n12/5/2026,A,2.0,Sold,fair,$9.50\r\n12/05/26,A,1,Came_home,fair,\r\n", true},
		"German":         {"\ufeffDatum;Los;Anzahl;Grund;Wer;Preis;Wetter\r\n05.12.2026;A;2;verkauft;fair;9,50;Regen\r\n5.12.2026;A;1,00;zurück;fair;;\r\n", false},
		"French":         {"Jour;Lot;Nombre;Motif;Qui;Prix\n05/12/2026;A;2;vendu;fair;9,50\n05/12/2026;A;1;rapporté;fair;\n", false},
		"with the hours": {"day\tlot\tqty\twhat\tto\tprice\n2026-12-05T00:00:00\tA\t2\tsale\tfair\t9.5\n2026-12-05 00:00\tA\t1\treturned\tfair\t\n", true},
	} {
		l, found := Read("ledger.csv", []byte(c.text), "USD", c.american)
		var got strings.Builder
		for _, e := range l.Entries {
			fmt.Fprintf(&got, "%s %s %d %s %s %d;", e.Date, e.Lot, e.Count, e.Why, e.Who, e.Price.Minor)
			if e.Why == Sold {
				got.WriteByte(' ')
			}
		}
		if got.String() != want || found.HasErrors() {
			t.Errorf("%s: %q, %v", name, got.String(), found)
		}
		if now := string(l.With(l.Entries[:1])); !strings.HasPrefix(now, c.text) {
			t.Errorf("%s: what stood there is rewritten: %q", name, now)
		}
	}
}

// 5/6/2026 is the fifth of June or the sixth of May: as the other days of the
// file are written, else by the custom of the place; it is told once.
func TestDaysThatMayBeSwapped(t *testing.T) {
	for days, want := range map[string]string{
		"5/6/2026 7/8/2026 american": "2026-05-06 2026-07-08 note", "5/6/2026 7/8/2026": "2026-06-05 2026-08-07 note",
		"25/12/2026 5/6/2026 american": "2026-12-25 2026-06-05 note", "12/25/2026 5/6/2026": "2026-12-25 2026-05-06 note",
		"25/12/2026 12/25/2026 5/6/2026 american": "2026-12-25 2026-12-25 2026-05-06 note",
		"5/5/2026 25/12/2026":                     "2026-05-05 2026-12-25", "5.6.2026 american": "2026-06-05", "2026-06-05": "2026-06-05", "5 June 2026": "2026-06-05",
	} {
		text := "date,lot,count,why\n"
		list, american := strings.CutSuffix(days, " american")
		if list == "5 June 2026" {
			list = "5-June-2026"
		}
		for _, d := range strings.Fields(list) {
			text += strings.ReplaceAll(d, "-June-", " June ") + ",A,1,eaten\n"
		}
		l, found := Read("ledger.csv", []byte(text), "USD", american)
		var got []string
		for _, e := range l.Entries {
			got = append(got, e.Date.String())
		}
		for _, d := range found {
			got = append(got, d.Severity.String())
			if d.Code != "day-read" || d.Pos.Line < 2 {
				t.Errorf("%s: %+v", days, d)
			}
		}
		if s := strings.Join(got, " "); s != want {
			t.Errorf("%s: %s, want %s", days, s, want)
		}
	}
}

// A header that lacks what a new row says gets it; every row before stays.
func TestColumnsAreAdded(t *testing.T) {
	for text, want := range map[string]string{
		"lot,count,why\nA,1,eaten\n":                        "lot,count,why,date,who,from\nA,1,eaten\nB,2,promised,2026-12-05,Ida,list x.csv\n",
		"\ufeffLos;Anzahl;Grund;Wer\r\nA;1;verkauft;Bo\r\n": "\ufeffLos;Anzahl;Grund;Wer;date;from\r\nA;1;verkauft;Bo\r\nB;2;promised;Ida;2026-12-05;list x.csv\r\n",
		"\n,,,\nlot,count,why,\nA,1,eaten,rain":             "\n,,,\nlot,count,why,,date,who,from\nA,1,eaten,rain\nB,2,promised,,2026-12-05,Ida,list x.csv\n",
		Header + "\n":                                       Header + "\n2026-12-05,B,,2,promised,Ida,,list x.csv\n",
	} {
		l, _ := Read("ledger.csv", []byte(text), "USD", false)
		now := string(l.With([]Entry{{Date: unit.Date{Year: 2026, Month: 12, Day: 5}, Lot: "B", Count: 2, Why: Promised, Who: "Ida", From: "list x.csv"}}))
		if now != want {
			t.Errorf("%q:\n%q, want\n%q", text, now, want)
		}
		again, found := Read("ledger.csv", []byte(now), "USD", false)
		if e := again.Entries[len(again.Entries)-1]; found.HasErrors() || e.Who != "Ida" || e.From != "list x.csv" || len(again.Entries) != len(l.Entries)+1 {
			t.Errorf("%q: %+v %v", text, e, found)
		}
		if len(again.Without("LIST x.csv").Entries) != len(l.Entries) || len(again.Without("").Entries) != len(again.Entries) {
			t.Errorf("%q: promises of the list", text)
		}
	}
}

// A promise noted by hand may name no source, and counts all the same.
func TestPromiseByHandCounts(t *testing.T) {
	l, _ := Read("ledger.csv", []byte("lot,count,why,who\nA,2,promised,Ida\n"), "USD", false)
	if b, found := Balances([]Made{{Lot: "A", Jar: "us8", Count: 5}}, l.Without("").Entries); len(found) > 0 || b[0].Promised != 2 || b[0].Free() != 3 {
		t.Errorf("%+v %v", b, found)
	}
}

// A file without a word in it is a ledger without rows, whatever blanks and
// empty fields a spreadsheet saved; the first row written begins it with its
// header. A word that is no header, and bytes that are no text, are told.
func TestBlankFileIsAnEmptyLedger(t *testing.T) {
	e := []Entry{{Date: unit.Date{Year: 2026, Month: 9, Day: 20}, Lot: "A", Jar: "us8", Count: 2, Why: Eaten, From: "hand"}}
	want := Header + "\n2026-09-20,A,us8,2,eaten,,,hand\n"
	for _, text := range []string{"", "\n", "\r\n", "\r", " \t\n\n", "\ufeff\n", "\ufeff\ufeff", "\u00a0\n", ",,,,,,,\n", ";;;\r\n", "\"\",\"\"\n", "\n\n,,\n \n"} {
		l, found := Read("l.csv", []byte(text), "USD", true)
		if len(found) > 0 || len(l.Entries) > 0 {
			t.Errorf("%q: %v", text, found)
		}
		if got := string(l.With(e)); got != want {
			t.Errorf("%q goes on as %q", text, got)
		}
	}
	for _, text := range []string{".\n", ",x\n", "\x00", "\xff\n"} {
		if _, found := Read("l.csv", []byte(text), "USD", true); !found.HasErrors() {
			t.Errorf("%q is read as an empty ledger", text)
		}
	}
}
