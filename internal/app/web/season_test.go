package web

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The page shows the ledger: where the jars of each lot are, every row, and
// what they brought in. By hand: 4 sold at $9.00 are $36.00.
func TestSeasonPageShowsTheLedger(t *testing.T) {
	dir := kitchenDir(t)
	put(t, dir, "plum.toml", plum+"\n[[market]]\nevent = \"Hill fair\"\ndate = 2026-10-03\njars = 5\nprice = \"9.00\"\n")
	put(t, dir, "ledger.csv", "date,lot,jar,count,why,who,price,from\n2026-10-03,L26248-PL,,4,sold,Hill fair,9.00,market\n2026-10-03,L26248-PL,,1,came home,Hill fair,,market\n2026-10-04,L26248-PL,,1,given,Hedy,,hand\n")
	h := handlerOf(t, dir)
	body := do(h, request("GET", "/season", nil)).Body.String()
	for _, want := range []string{"$36.00", "Hill fair", "Hedy", "came home", "L26248-PL", "Where the jars are"} {
		if !strings.Contains(body, want) {
			t.Errorf("the page lacks %q:\n%s", want, body)
		}
	}
	if w := do(h, request("GET", "/season/list.csv", nil)); w.Code != 200 || !strings.Contains(w.Body.String(), "36.00") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	put(t, dir, "ledger.csv", "date,lot,jar,count,why,who,price,from\n2026-10-03,L26248-PL,,four,sold,Hill fair,9.00,market\n")
	if body = do(h, request("GET", "/season", nil)).Body.String(); !strings.Contains(body, "is not a number of jars") || !strings.Contains(body, "ledger.csv, line 2") {
		t.Errorf("a fault in a row is not told:\n%s", body)
	}
}

// Batches in folders below are packed too, as the command line packs them.
func TestPackingLooksBelow(t *testing.T) {
	dir := kitchenDir(t)
	if err := os.Mkdir(filepath.Join(dir, "2025"), 0o755); err != nil {
		t.Fatal(err)
	}
	put(t, dir, "2025/plum.toml", plum+"\n[[gift]]\nto = \"Hedy\"\njars = 2\n")
	h := handlerOf(t, dir)
	for _, path := range []string{"/pack", "/pack/list.csv"} {
		if w := do(h, request("GET", path, nil)); w.Code != 200 || !strings.Contains(w.Body.String(), "Hedy") {
			t.Errorf("%s: %d %s", path, w.Code, w.Body)
		}
	}
	put(t, dir, "friends.csv", "to,jars\nIda,1\n")
	if w := do(h, request("GET", "/gifts?list=friends.csv", nil)); !strings.Contains(w.Body.String(), "L26248-PL") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}
