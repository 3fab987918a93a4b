package pack

import (
	"reflect"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

func TestCameHome(t *testing.T) {
	rs := both()
	for counts, want := range map[string][]Edit{
		"L26265-PL=3, l26201-ap = 0": {{"plum.toml", "market[0].came_home", 3}, {"apricot.toml", "market[0].came_home", 0}},
		"L26201-AP=8":                {{"apricot.toml", "market[0].came_home", 8}},
	} {
		if got, found := CameHome(rs, "Millbrook market", counts); len(found) > 0 || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %v %v", counts, got, found)
		}
	}
	if got, found := CameHome(rs, "harvest fair", "5"); len(found) > 0 || !reflect.DeepEqual(got, []Edit{{"plum.toml", "market[1].came_home", 5}}) {
		t.Errorf("%v %v", got, found)
	}
	for _, c := range []struct{ event, counts, code, word string }{
		{"Millbrook market", "5", "which-lot", "L26201-AP=N"},
		{"Harvest fair", "7", "came-home", "only 6 went"},
		{"Harvest fair", "-1", "bad-count", `"-1"`},
		{"Harvest fair", "", "bad-count", ""},
		{"Harvest fair", "2, 3", "bad-count", ""},
		{"Harvest fair", "L1=2", "unknown-lot", "L26265-PL=N"},
		{"Harvest fare", "2", "unknown-event", "Harvest fair"},
		{"Harvest fair", "99999999999999999999", "bad-count", ""},
	} {
		if got, found := CameHome(rs, c.event, c.counts); got != nil || !has(found, c.code, c.word) {
			t.Errorf("%+v: %v %v", c, got, found)
		}
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

// TestUnitPrice: by hand, 900 / 10 oz = 90; 950 / (283 g = 9.98248 oz) =
// 95.17; 450 / 0.340 kg = 1323.5.
func TestUnitPrice(t *testing.T) {
	for _, c := range []struct {
		minor int64
		cur   string
		net   unit.Mass
		units string
		want  string
	}{
		{900, "USD", 10 * unit.Ounce, "us", "90¢ per oz"},
		{950, "USD", 283 * unit.Gram, "us", "95.2¢ per oz"},
		{1500, "USD", 10 * unit.Ounce, "us", "$1.50 per oz"},
		{450, "GBP", 340 * unit.Gram, "metric", "£13.24 per kg"},
		{80, "EUR", unit.Kilogram, "metric", "€0.80 per kg"},
		{0, "USD", unit.Ounce, "us", ""}, {900, "USD", 0, "us", ""},
		{100_000_000, "USD", 1, "metric", ""},
	} {
		u, ok := PriceOf(unit.Money{Minor: c.minor, Currency: c.cur}, c.net, c.units)
		if ok != (c.want != "") || ok && u.String() != c.want {
			t.Errorf("%+v gives %s", c, u)
		}
	}
}

// TestCost: by hand, 1440 cents over 22 x 300 g + 4 x 150 g + 120 g = 7320 g;
// 300 g is 59.02 cents, 150 g is 29.51.
func TestCost(t *testing.T) {
	c, found := Cost(plum(kitchen()), "us")
	if !has(found, "no-cost", "star anise") || len(found) != 1 || c.Total != usd(1440) || len(c.Sizes) != 2 {
		t.Fatalf("%+v %v", c, found)
	}
	if c.Sizes[0].Cost != usd(59) || c.Sizes[1].Cost != usd(30) || c.Sizes[0].Margin != usd(841) {
		t.Errorf("%+v", c.Sizes)
	}
	r := plum(kitchen())
	r.Lines[0].Cost.Currency = "EUR"
	if c, found := Cost(r, "us"); c != nil || !has(found, "mixed-currency", "ingredient[1].cost") {
		t.Error(found)
	}
	if c, found := Cost(apricot(kitchen()), "us"); c != nil || len(found) > 0 {
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
