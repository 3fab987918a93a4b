package ledger

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
)

const season = `date,lot,jar,count,why,who,price,from
2026-07-01,L26165-SR,us8,4,promised,Ida,,list friends.csv
2026-07-04,L26165-SR,us8,6,promised,Saturday market,,market
2026-07-04,L26165-SR,us8,4,sold,Saturday market,9.50,market
2026-07-04,L26165-SR,us8,2,came home,Saturday market,,market
2026-07-09,L26165-SR,us8,1,given,Ida,,hand
2026-07-10,L26165-SR,us8,1,eaten,,,hand
2026-07-11,L26165-SR,us8,1,broken,,,hand
2026-07-12,L26165-SR,us8,1,recalled,Saturday market,,hand
`

func read(t *testing.T, text string) *Ledger {
	t.Helper()
	l, found := Read("ledger.csv", []byte(text), "USD", true)
	if len(found) > 0 {
		t.Fatal(found)
	}
	return l
}

// Sums by hand of the season above, 20 jars made: Ida 4 promised, 1 given, so 3
// are still promised; the market took 6, sold 4, 2 came home, one of the sold was
// recalled: sold 3, recalled 1. Lost 1 eaten + 1 broken + 1 recalled = 3.
// Home 20 - 1 - 3 - 3 = 13, free 13 - 3 = 10. Takings 4 x 9.50 = 38.00: what is
// paid back at a recall is the maker's to note.
func TestBalancesByHand(t *testing.T) {
	made := []Made{{Lot: "L26165-SR", Jar: "us8", Count: 20}}
	b, found := Balances(made, read(t, season).Entries)
	if len(found) > 0 {
		t.Fatal(found)
	}
	x := b[0]
	if x.Promised != 3 || x.Given != 1 || x.Sold != 3 || x.Lost() != 3 || x.Home() != 13 || x.Free() != 10 {
		t.Errorf("%+v home %d free %d", x, x.Home(), x.Free())
	}
	if len(x.Takings) != 1 || x.Takings[0].String() != "$38.00" {
		t.Errorf("takings %v", x.Takings)
	}
	if h := x.Holders; len(h) != 2 || h[0].Who != "Ida" || h[0].Promised != 3 || h[1].Sold != 3 || h[1].CameHome != 2 || h[1].Recalled != 1 {
		t.Errorf("holders %+v", h)
	}
}

// Twelve sold, three of them brought back: nine sold, the last price paid back.
// 7 x 9.00 + 2 x 8.00 = 79.00.
func TestReturnsArePaidBack(t *testing.T) {
	l := read(t, "lot,count,why,who,price\nA,7,sold,M,9\nA,5,sold,M,8\nA,3,came home,M,\n")
	b, _ := Balances([]Made{{Lot: "a", Jar: "us8", Count: 12}}, l.Entries)
	if b[0].Sold != 9 || b[0].Home() != 3 || b[0].Takings[0].String() != "$79.00" {
		t.Errorf("%+v", b[0])
	}
}

// Two weeks of one market: the first took 12, sold 8, 4 came home; the second,
// to come, takes 10, and is not settled by what the first sold. Takings 8 x 9.
func TestWeeksOfOneMarket(t *testing.T) {
	l := read(t, "date,lot,count,why,who,price\n2026-07-04,A,8,sold,M,9\n2026-07-04,A,4,came home,M,\n2026-07-11,A,10,promised,M,\n2026-07-04,A,12,promised,M,\n")
	b, found := Balances([]Made{{Lot: "A", Jar: "us8", Count: 30}}, l.Entries)
	if len(found) > 0 || b[0].Promised != 10 || b[0].Sold != 8 || b[0].Home() != 22 {
		t.Errorf("%+v %v", b[0], found)
	}
	d := b[0].Holders[0].Days
	if len(d) != 1 || d[0].Sold != 8 || d[0].CameHome != 4 || d[0].Takings[0].String() != "$72.00" {
		t.Errorf("%+v", d)
	}
	l = read(t, "date,lot,count,why,who\n2026-07-04,A,8,sold,M\n2026-07-11,A,10,promised,M\n")
	if b, _ = Balances([]Made{{Lot: "A", Jar: "us8", Count: 30}}, l.Entries); b[0].Promised != 10 {
		t.Errorf("a sale settled a later week: %+v", b[0])
	}
}

func TestRowFaults(t *testing.T) {
	for text, want := range map[string]string{
		"A,x,sold":           "bad-count 2:3",
		"A,-1,sold":          "bad-count 2:3",
		"A,1,soled":          "unknown-why 2:5",
		",1,sold":            "missing-lot 2:1",
		"A,1,sold,9.999":     "bad-price 2:10",
		"A,1,sold,,31/14/26": "bad-date 2:11",
	} {
		_, found := Read("l.csv", []byte("lot,count,why,price,date\n"+text+"\n"), "USD", true)
		if len(found) != 1 || found[0].Hint == "" {
			t.Errorf("%s: %v", text, found)
			continue
		}
		if d := found[0]; d.Code+" "+posText(d.Pos.Line, d.Pos.Column) != want {
			t.Errorf("%s: %s at %v, want %s", text, d.Code, d.Pos, want)
		}
	}
}

func posText(line, column int) string {
	return string(rune('0'+line)) + ":" + strings.TrimLeft(string([]rune{rune('0' + column/10), rune('0' + column%10)}), "0")
}

func TestBalanceFaults(t *testing.T) {
	made := []Made{{Lot: "A", Jar: "us8", Count: 3, Words: []string{"8 fl oz"}}, {Lot: "A", Jar: "us4", Count: 3}, {Lot: "B", Jar: "us8", Count: 2}}
	for text, want := range map[string]string{
		"C,,1,sold,M":         "unknown-lot",
		"A,,1,sold,M":         "which-jar",
		"A,us16,1,sold,M":     "unknown-jar",
		"B,,3,sold,M":         "more-than-made",
		"B,,3,promised,Ida":   "promised-over",
		"B,,1,came home,M":    "back-over",
		"B,,1,recalled,M":     "back-over",
		"A,8 FL OZ,1,given,X": "",
	} {
		_, found := Balances(made, read(t, "lot,jar,count,why,who\n"+text+"\n").Entries)
		got := ""
		for _, d := range found {
			got = d.Code
			if d.Pos.Line != 2 || d.Hint == "" {
				t.Errorf("%s: %+v", text, d)
			}
		}
		if got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

// Rows are added as a spreadsheet would: separators, line ends, own columns and
// notes stay to the letter; what the header lacks is put at its end.
func TestWithKeepsTheMakersFile(t *testing.T) {
	e := Entry{Date: unit.Date{Year: 2026, Month: 7, Day: 4}, Lot: "A", Jar: "us8", Count: 2, Why: Sold, Who: "=1+1, \"x\"", Price: unit.Money{Minor: 950, Currency: "USD"}, From: "market"}
	if got := string(read(t, "").With([]Entry{e})); got != Header+"\n"+`2026-07-04,A,us8,2,sold,"'=1+1, ""x""",$9.50,market`+"\n" {
		t.Errorf("new file:\n%s", got)
	}
	own := "\ufeffWhy;weather;Lot;Count\r\nsold;\"sun;\nrain\";A;1"
	l, found := Read("l.csv", []byte(own), "USD", true)
	if len(found) != 1 || found[0].Code != "unknown-column" {
		t.Fatal(found)
	}
	if got := string(l.With([]Entry{e})); got != "\ufeffWhy;weather;Lot;Count;date;jar;who;price;from\r\n"+strings.TrimPrefix(own, "\ufeffWhy;weather;Lot;Count\r\n")+"\r\n"+`sold;;A;2;2026-07-04;us8;"'=1+1, ""x""";$9.50;market`+"\r\n" {
		t.Errorf("own file:\n%q", got)
	}
	if got := string(l.With(nil)); got != own {
		t.Errorf("nothing added: %q", got)
	}
}

func TestWithoutTakesBackOneListsPromises(t *testing.T) {
	l := read(t, season).Without("list Friends.csv")
	if want := strings.Replace(season, "2026-07-01,L26165-SR,us8,4,promised,Ida,,list friends.csv\n", "", 1); string(l.With(nil)) != want {
		t.Errorf("%s", l.With(nil))
	}
	if len(l.Entries) != 7 {
		t.Error(len(l.Entries))
	}
}

// What is written is read back as it was.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := rapid.StringMatching(`[A-Za-z0-9",;' \-éß=]{1,12}`)
		var in []Entry
		for range rapid.IntRange(1, 5).Draw(t, "rows") {
			in = append(in, Entry{Date: unit.Date{Year: 2026, Month: rapid.IntRange(1, 12).Draw(t, "m"), Day: rapid.IntRange(1, 28).Draw(t, "d")},
				Lot: "L" + word.Draw(t, "lot"), Jar: "us8", Count: rapid.IntRange(0, MaxJars).Draw(t, "n"), Why: rapid.SampledFrom(Whys()).Draw(t, "why"),
				Who: "W" + word.Draw(t, "who"), Price: unit.Money{Minor: rapid.Int64Range(0, 9999).Draw(t, "p"), Currency: "USD"}, From: "list x"})
		}
		empty, _ := Read("l.csv", nil, "USD", true)
		l, found := Read("l.csv", empty.With(in), "USD", true)
		if len(found) > 0 || len(l.Entries) != len(in) {
			t.Fatal(found, len(l.Entries))
		}
		for i, e := range l.Entries {
			e.File, e.Pos = "", in[i].Pos
			e.Lot, in[i].Lot, e.Who, in[i].Who = strings.TrimSpace(e.Lot), strings.TrimSpace(in[i].Lot), strings.TrimSpace(e.Who), strings.TrimSpace(in[i].Who)
			if e != in[i] {
				t.Fatalf("%+v, want %+v", e, in[i])
			}
		}
	})
}

// jars moved one by one are an oracle apart from the sums: whatever happens in
// whatever order, every jar made is given, sold, lost or at home.
func TestEveryJarIsSomewhere(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made := Made{Lot: "A", Jar: "us8", Count: rapid.IntRange(0, 30).Draw(t, "made")}
		home, gone, lost := made.Count, map[string]map[Why]int{"Ida": {}, "Market": {}}, 0
		var rows []Entry
		for range rapid.IntRange(0, 25).Draw(t, "rows") {
			who := rapid.SampledFrom([]string{"Ida", "Market"}).Draw(t, "who")
			why := rapid.SampledFrom([]Why{Given, Sold, CameHome, Eaten, Broken, Recalled}).Draw(t, "why")
			limit, held := home, gone[who][Sold]+gone[who][Given]
			if why == CameHome || why == Recalled {
				limit = held
			}
			n := rapid.IntRange(0, max(0, limit)).Draw(t, "n")
			rows = append(rows, Entry{Lot: "A", Count: n, Why: why, Who: who})
			switch why {
			case Given, Sold:
				home, gone[who][why] = home-n, gone[who][why]+n
			case Eaten, Broken:
				home, lost = home-n, lost+n
			default:
				sold := min(n, gone[who][Sold])
				gone[who][Sold] -= sold
				gone[who][Given] -= n - sold
				if why == CameHome {
					home += n
				} else {
					lost += n
				}
			}
		}
		b, found := Balances([]Made{made}, rapid.Permutation(rows).Draw(t, "order"))
		if len(found) > 0 {
			t.Fatal(found)
		}
		x := b[0]
		if x.Home() != home || x.Lost() != lost || x.Sold+x.Given+x.Lost()+x.Home() != made.Count {
			t.Fatalf("home %d lost %d: %+v", home, lost, x)
		}
	})
}

func FuzzLedger(f *testing.F) {
	f.Add(season)
	f.Add("lot;count;why\r\nA;1;sold")
	f.Fuzz(func(t *testing.T, text string) {
		l, found := Read("l.csv", []byte(text), "USD", true)
		if found.HasErrors() {
			return
		}
		more := Entry{Lot: "Z", Count: 1, Why: Given}
		again, found := Read("l.csv", l.With([]Entry{more}), "USD", true)
		if len(again.Entries) != len(l.Entries)+1 && !found.HasErrors() {
			t.Fatalf("%d rows, then %d", len(l.Entries), len(again.Entries))
		}
		if !strings.HasPrefix(string(l.With([]Entry{more})), text) && strings.TrimSpace(strings.TrimPrefix(text, "\ufeff")) != "" {
			t.Fatal("the maker's text changed")
		}
	})
}
