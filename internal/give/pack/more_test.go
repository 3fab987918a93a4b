package pack

import (
	"jarmark/internal/give/ledger"
	"jarmark/internal/kitchen/batch"
	"reflect"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// TestCameHome: of 8 and 12 jars 0 and 3 came home, so 8 were sold for $10.00
// and 9 for $9.00: by hand 80.00 + 81.00 = $161.00.
func TestCameHome(t *testing.T) {
	day := date(2026, 12, 5)
	sold := func(lot string, n int, price int64) ledger.Entry {
		return ledger.Entry{Date: day, Lot: lot, Jar: "us8", Count: n, Why: ledger.Sold, Who: "Millbrook market", Price: usd(price), From: FromMarket}
	}
	back := ledger.Entry{Date: day, Lot: "L26265-PL", Jar: "us8", Count: 3, Why: ledger.CameHome, Who: "Millbrook market", From: FromMarket}
	for counts, want := range map[string][]ledger.Entry{
		"L26265-PL=3, l26201-ap = 0":           {sold("L26201-AP", 8, 1000), sold("L26265-PL", 9, 900), back},
		"L26265-PL 8 fl oz=3; L26201-AP us8=0": {sold("L26201-AP", 8, 1000), sold("L26265-PL", 9, 900), back},
		"L26201-AP=0":                          {sold("L26201-AP", 8, 1000)},
	} {
		p, _ := Build(both(), Options{Event: "millbrook Market"})
		for i := range p.Stops {
			p.Stops[i].To = "Millbrook market"
		}
		got, found := p.CameHome(counts)
		if len(found) > 0 || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %+v %v", counts, got, found)
			continue
		}
		after, found := Build(both(), Options{Book: got})
		if found.HasErrors() || after.Stock[0].Sold != 4+soldOf(got, "L26265-PL") || after.Balances[2].Sold != 8 {
			t.Errorf("%s: sold %d and %d, %v", counts, after.Stock[0].Sold, after.Balances[2].Sold, found)
		}
	}
	for _, c := range []struct{ counts, code, word string }{
		{"5", "which-lot", "L26201-AP=N"}, {"L26265-PL=13", "came-home", "only 12 went"}, {"-1", "bad-count", `"-1"`}, {"", "bad-count", ""}, {"2, 3", "bad-count", ""},
		{"L1=2", "unknown-lot", "L26265-PL=N"}, {"99999999999999999999", "bad-count", ""},
	} {
		p, _ := Build(both(), Options{Event: "Millbrook market"})
		if got, found := p.CameHome(c.counts); got != nil || !has(found, c.code, c.word) {
			t.Errorf("%+v: %v %v", c, got, found)
		}
	}
}

func soldOf(rows []ledger.Entry, lot string) (n int) {
	for _, e := range rows {
		if e.Lot == lot && e.Why == ledger.Sold {
			n += e.Count
		}
	}
	return n
}

// TestWeeks: the same market on three Saturdays. Asked for without a day, the
// next one is packed; a day that is over and not noted is told; each week is
// noted for itself.
func TestWeeks(t *testing.T) {
	week := func(d int) batch.Market {
		return batch.Market{Path: "market[0]", Event: "fair", Date: date(2026, 12, d), Jars: 4, CameHome: -1}
	}
	rs := both()
	rs[0].Batch.Gifts, rs[0].Batch.Markets, rs[1].Batch.Markets = nil, []batch.Market{week(5), week(12), week(19)}, nil
	o := Options{Event: "fair", Today: date(2026, 12, 8)}
	p, found := Build(rs, o)
	if len(p.Stops) != 1 || p.Stops[0].Date != date(2026, 12, 12) || !has(found, "market-open", "Dec 5, 2026") || !has(found, "market-days", "Dec 19, 2026") {
		t.Errorf("%+v %v", p.Stops, found)
	}
	o.Date = date(2026, 12, 5)
	for range 2 {
		p, _ = Build(rs, o)
		rows, l := p.CameHome("1")
		if len(l) > 0 || len(rows) != 2 || rows[0].Count != 3 || rows[1].Count != 1 || rows[0].Date != o.Date {
			t.Fatalf("%+v %v", rows, l)
		}
		o.Book, o.Date = append(o.Book, rows...), o.Date.AddDays(7)
	}
	if p, found = Build(rs, Options{Book: o.Book}); found.HasErrors() || p.Balances[0].Sold != 6 || p.Balances[0].Promised != 4 || len(p.Stops) != 1 {
		t.Errorf("%+v %v", p.Balances[0], found)
	}
	o.Date = date(2026, 12, 5)
	if _, found = Build(rs, o); !has(found, "unknown-event", "2026-12-19") {
		t.Errorf("a week that is noted: %v", found)
	}
	p, _ = Build(rs, Options{Event: "fair"})
	p.Stops = append(p.Stops, p.Stops...)
	if _, found = p.CameHome("1"); !has(found, "which-day", "2026-12-19") {
		t.Errorf("no day said: %v", found)
	}
}

func TestTrace(t *testing.T) {
	h, found := Trace("L26265-PL", both(), Options{List: []Entry{{To: "Ann", Jars: 1, Lot: "L26265-PL"}}})
	if len(found) > 0 {
		t.Fatal(found)
	}
	out := 0
	for _, k := range h.Holders {
		n := k.Jars
		if k.CameHome > 0 {
			n -= k.CameHome
		}
		out += n
	}
	if h.Count != out+h.Left+h.Fridge || h.Count != 26 || h.Fridge != 1 || h.Unknown != 12+4 {
		t.Errorf("%d filled, %d out, %d left, %d in the refrigerator, %d unknown", h.Count, out, h.Left, h.Fridge, h.Unknown)
	}
	if len(h.Related) != 1 || h.Related[0].Lot != "L26201-AP" || !reflect.DeepEqual(h.Related[0].Shares, []string{"sugar"}) {
		t.Errorf("related %+v", h.Related)
	}
	for _, w := range []string{"Ann", "up to 12 sold", "4 sold, 2 came home", "not in the files"} {
		if !strings.Contains(h.Text(), w) {
			t.Errorf("the answer lacks %q:\n%s", w, h.Text())
		}
	}
	if _, found := Trace("L26265-PI", both(), Options{}); !has(found, "unknown-lot", "did you mean L26265-PL?") {
		t.Error(found)
	}
	rs := both()
	rs[1].Lot = rs[0].Lot
	if h, found := Trace("L26265-PL", rs, Options{}); !has(found, "lot-twice", "2 batch files") || h.Count != 36 {
		t.Error(found)
	}
}

// TestCost: by hand, 1440 cents over 22 x 300 g + 4 x 150 g + 120 g = 7320 g;
// 300 g is 59.02 cents, 150 g is 29.51.
func TestCost(t *testing.T) {
	c, found := Cost(plum(kitchen()))
	if !has(found, "no-cost", "star anise") || len(found) != 1 || c.Total != usd(1440) || len(c.Sizes) != 2 {
		t.Fatalf("%+v %v", c, found)
	}
	if c.Sizes[0].Cost != usd(59) || c.Sizes[1].Cost != usd(30) || c.Sizes[0].Margin != usd(841) {
		t.Errorf("%+v", c.Sizes)
	}
	r := plum(kitchen())
	r.Lines[0].Cost.Currency = "EUR"
	if c, found := Cost(r); c != nil || !has(found, "mixed-currency", "ingredient[1].cost") {
		t.Error(found)
	}
	if c, found := Cost(apricot(kitchen())); c != nil || len(found) > 0 {
		t.Error("no costs, no answer", found)
	}
}

func TestCards(t *testing.T) {
	p, _ := Build(both(), Options{Event: "Millbrook market"})
	got := p.Cards()
	if len(got) != 2 || got[0].Unit != "$1.00 per oz" || got[1].Unit != "90¢ per oz" || got[1].Price != usd(900) || got[1].Count != 12 {
		t.Errorf("%+v", got)
	}
	if len(p.Stops[0].Value) != 1 || p.Stops[0].Value[0] != usd(8*1000+12*900) {
		t.Errorf("worth %v", p.Stops[0].Value)
	}
}

func TestAllergens(t *testing.T) {
	rs := both()
	c := &label.Content{Blocks: []label.Block{{Kind: label.Allergens, Runs: []label.Run{{Text: "None of the nine."}}}}}
	got := Allergens([]Product{{rs[0], c}, {Result: rs[1]}, {}}, "millbrook market")
	if len(got) != 2 || got[0].Name != "Apricot jam with almonds" || got[0].Says() != "Contains almond." || got[1].Says() != "None of the nine." {
		t.Errorf("%+v", got)
	}
	if got[0].Advisory != "This kitchen also handles almonds and milk." || got[0].Ingredients != "Ingredients: apricots, sugar, almonds" {
		t.Errorf("%+v", got[0])
	}
	if got := Allergens([]Product{{Result: rs[1]}}, "harvest fair"); len(got) != 0 {
		t.Errorf("%+v", got)
	}
}

// TestFridge: what did not seal is kept out of every list.
func TestFridge(t *testing.T) {
	p, _ := Build(both(), Options{})
	if len(p.Fridge) != 2 || p.Fridge[0].Count != 1 || p.Fridge[0].By != date(2026, 10, 20) || p.Fridge[1].Part != 120*unit.Gram {
		t.Errorf("%+v", p.Fridge)
	}
}

// TestWeights: 298 and 302 g weighed and a weighed empty jar of 190 g make
// 490 g; a jar of 118 ml that nobody weighed is estimated and said to be.
func TestWeights(t *testing.T) {
	p, _ := Build(both(), Options{})
	if s := p.Stock[0]; s.Gross != 490*unit.Gram || s.GrossHow != cook.Measured {
		t.Errorf("%v %s", s.Gross.Grams(), s.GrossHow)
	}
	if s := p.Stock[1]; s.GrossHow != cook.Estimated || s.Gross < 270*unit.Gram || s.Gross > 300*unit.Gram {
		t.Errorf("%v %s", s.Gross.Grams(), s.GrossHow)
	}
	if !strings.HasPrefix(p.Weight(), "about ") || strings.HasPrefix(p.stopSum(p.Stops[0]), "2 jars, 1 box, about") {
		t.Error(p.Weight(), p.stopSum(p.Stops[0]))
	}
}

// TestCameHomeIsTakenOffTheLastRow: the jars that were packed first were on
// offer first, so those that came back are the last packed.
func TestCameHomeIsTakenOffTheLastRow(t *testing.T) {
	for home, want := range map[int][2]int{0: {3, 2}, 1: {3, 1}, 2: {3, 0}, 3: {2, 0}, 5: {0, 0}} {
		r := plum(kitchen())
		r.Jars[0].Count, r.Jars[0].Sealed = 3, 3
		r.Batch.Gifts = nil
		r.Batch.Markets = r.Batch.Markets[1:]
		r.Batch.Markets[0].Jar, r.Batch.Markets[0].Jars, r.Batch.Markets[0].CameHome = "", 5, home
		p, found := Build([]*cook.Result{r}, Options{})
		if found.HasErrors() || len(p.Stock) != 2 {
			t.Fatal(found)
		}
		if got := [2]int{p.Stock[0].Sold, p.Stock[1].Sold}; got != want {
			t.Errorf("%d of 3 and 2 came home: sold %v, want %v", home, got, want)
		}
	}
}

// TestStallSaysWhatTheLabelSays: the names are those of the place, as the label
// has them, and "none" only where the label proves it.
func TestStallSaysWhatTheLabelSays(t *testing.T) {
	rs := both()
	german := &label.Content{AllergenNames: []string{"Schalenfrüchte (Mandeln)"}}
	got := Allergens([]Product{{rs[1], german}, {rs[0], &label.Content{NoAllergens: true}}}, "")
	if len(got) != 2 || len(got[0].Contains) != 1 || got[0].Contains[0] != "Schalenfrüchte (Mandeln)" || got[0].None {
		t.Fatalf("%+v", got)
	}
	if got[1].None != true || len(got[1].Contains) != 0 {
		t.Errorf("%+v", got[1])
	}
	if got = Allergens([]Product{{rs[0], &label.Content{}}}, ""); got[0].None {
		t.Error("none is proven by an empty label")
	}
}
