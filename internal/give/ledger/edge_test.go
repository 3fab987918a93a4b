package ledger

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// Line ends of every kind (RFC 4180 section 2: CR LF; old Macintosh files: CR
// alone) go on as they began, with no blank line between.
func TestLineEndsGoOn(t *testing.T) {
	e := Entry{Lot: "A", Count: 2, Why: Given}
	for text, want := range map[string]string{
		"lot,count,why\r\n":           "lot,count,why\r\nA,2,given\r\n",
		"lot,count,why\r\nA,1,sold":   "lot,count,why\r\nA,1,sold\r\nA,2,given\r\n",
		"lot,count,why\nA,1,sold\n":   "lot,count,why\nA,1,sold\nA,2,given\n",
		"lot,count,why\nA,1,sold":     "lot,count,why\nA,1,sold\nA,2,given\n",
		"lot,count,why":               "lot,count,why\nA,2,given\n",
		"lot,count,why\n\nA,1,sold\n": "lot,count,why\n\nA,1,sold\nA,2,given\n",
		"lot,count,why\rA,1,sold\r":   "lot,count,why\rA,1,sold\rA,2,given\r",
		"lot,count,why\rA,1,sold":     "lot,count,why\rA,1,sold\rA,2,given\r",
	} {
		l, found := Read("l.csv", []byte(text), "USD", true)
		if got := string(l.With([]Entry{e})); found.HasErrors() || got != want {
			t.Errorf("%q: %q, want %q (%v)", text, got, want, found)
		}
	}
	if got := lineEnd([]byte("a\rb")) + lineEnd([]byte("a\r")); got != "\r\r" {
		t.Errorf("CR alone: %q", got)
	}
}

// A row over several lines, by a line break within quotes (RFC 4180 section 2,
// rule 6), is taken back whole, and nothing else with it.
func TestWithoutTakesWholeRows(t *testing.T) {
	keep := "2026-07-02,A,us8,1,promised,\"Jo\nSmith\",,hand\n"
	for _, gone := range []string{
		"2026-07-01,A,us8,4,promised,\"Ida\nMoor\",,list x.csv\n",
		"2026-07-01,A,us8,4,promised,\"Ida \"\"I\"\"\r\n\r\nMoor\",,list x.csv\n",
		"2026-07-01,A,us8,4,promised,Ida,,list x.csv\n",
	} {
		for _, text := range []string{Header + "\n" + gone + keep, Header + "\n" + keep + gone, Header + "\n\n" + keep + gone + keep, Header + "\n" + keep + gone + gone} {
			l := read(t, text)
			want := strings.ReplaceAll(text, gone, "")
			if got := string(l.Without("list x.csv").With(nil)); got != want {
				t.Errorf("%q:\n%q, want\n%q", text, got, want)
			}
			if string(l.With(nil)) != text {
				t.Errorf("the ledger itself changed: %q", l.With(nil))
			}
		}
	}
	sold := strings.Replace(season, "promised,Ida", "given,Ida", 1)
	if got := string(read(t, sold).Without("list friends.csv").With(nil)); got != sold {
		t.Error("a row that is no promise is taken back")
	}
}

// The words of "why" as people type them.
func TestWhyAsTyped(t *testing.T) {
	for word, want := range map[string]Why{"came home": CameHome, "came-home": CameHome, "Came_Home": CameHome, " CAME  home ": CameHome, "Sold": Sold, "camehome": "", "came.home": ""} {
		l, found := Read("l.csv", []byte("lot,count,why\nA,1,"+word+"\n"), "USD", true)
		if want == "" {
			if len(found) != 1 || found[0].Code != "unknown-why" || len(l.Entries) != 0 {
				t.Errorf("%q: %v", word, found)
			}
		} else if len(found) > 0 || l.Entries[0].Why != want {
			t.Errorf("%q: %v %v", word, l.Entries, found)
		}
	}
}

// Counts and rows at their limits.
func TestCountLimits(t *testing.T) {
	for n, ok := range map[string]bool{"0": true, "100000": true, "100001": false, "-1": false} {
		l, found := Read("l.csv", []byte("lot,count,why\nA,"+n+",sold\n"), "USD", true)
		if (len(found) == 0) != ok || (len(l.Entries) == 1) != ok {
			t.Errorf("%s: %v", n, found)
		}
	}
}

// By hand: 10 made, 3 sold at 9.00, 5 said to have come home and 2 recalled from
// one market: 4 more than went there. At most 1 can have come home beside the 2,
// so the money of 2 stays: 18.00. A recall without a name is thrown away at home.
func TestMoreCameBackThanWent(t *testing.T) {
	made := []Made{{Lot: "A", Jar: "us8", Count: 10}}
	b, found := Balances(made, read(t, "lot,count,why,who,price\nA,3,sold,M,9\nA,5,came home,M,\nA,2,recalled,M,\n").Entries)
	if len(found) != 1 || found[0].Code != "back-over" || !strings.HasPrefix(found[0].Message, "4 more jars") || found[0].Pos.Line != 4 {
		t.Errorf("%v", found)
	}
	if x := b[0]; x.Sold != 0 || x.Recalled != 2 || x.Home() != 8 || x.Takings[0].String() != "$18.00" {
		t.Errorf("%+v home %d", x, x.Home())
	}
	b, found = Balances(made, read(t, "lot,count,why,who\nA,1,recalled,\nA,2,eaten,\nA,3,broken,M\n").Entries)
	if x := b[0]; len(found) > 0 || x.Recalled != 1 || x.Eaten != 2 || x.Broken != 3 || x.Lost() != 6 || x.Home() != 4 || len(x.Holders) != 0 {
		t.Errorf("%+v %v", x, found)
	}
	_, found = Balances(made, read(t, "lot,count,why,who\nA,2,recalled,M\nA,1,came home,\n").Entries)
	if len(found) != 2 || !strings.Contains(found[0].Message+found[1].Message, "from nobody by name") {
		t.Errorf("%v", found)
	}
}

// First and last day of a name, whatever the order of the rows; prices of two
// currencies are kept apart, a row without one is counted as unpriced.
func TestHoldersDaysAndMoney(t *testing.T) {
	day := func(d int) unit.Date { return unit.Date{Year: 2026, Month: 7, Day: d} }
	eur, dollars := unit.Money{Minor: 400, Currency: "EUR"}, unit.Money{Minor: 500, Currency: "USD"}
	rows := []Entry{{Lot: "A", Count: 2, Why: Sold, Who: "M", Date: day(9), Price: eur}, {Lot: "A", Count: 1, Why: Sold, Who: "m", Date: day(4), Price: dollars},
		{Lot: "A", Count: 3, Why: Sold, Who: "M", Date: day(12)}, {Lot: "A", Count: 1, Why: Sold, Who: "M", Date: day(6), Price: eur}}
	b, found := Balances([]Made{{Lot: "A", Jar: "us8", Count: 7}}, rows)
	if x := b[0]; len(found) > 0 || len(x.Holders) != 1 || x.Holders[0].First != day(4) || x.Holders[0].Last != day(12) || x.Unpriced != 3 || x.Home() != 0 {
		t.Fatalf("%+v %v", b[0], found)
	}
	sums := map[string]int64{}
	for _, m := range b[0].Takings {
		sums[m.Currency] = m.Minor
	}
	if len(b[0].Takings) != 2 || sums["EUR"] != 1200 || sums["USD"] != 500 {
		t.Errorf("takings %v", b[0].Takings)
	}
}

// One more than at home, promised or gone, is told with its number; exactly all
// is in order.
func TestAllAndOneMore(t *testing.T) {
	made := []Made{{Lot: "A", Jar: "us8", Count: 3}}
	for text, want := range map[string]string{
		"3,sold,M": "", "4,sold,M": "more-than-made: 1 more jar of lot A left than the 3 that were filled",
		"3,promised,M": "", "5,promised,M": "promised-over: 2 more jars of lot A promised than at home",
	} {
		got := ""
		_, found := Balances(made, read(t, "lot,count,why,who\nA,"+text+"\n").Entries)
		for _, d := range found {
			got += d.Code + ": " + d.Message
		}
		if got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}
