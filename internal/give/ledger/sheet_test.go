package ledger

import (
	"fmt"
	"strings"
	"testing"
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
