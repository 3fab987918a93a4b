package pack

import (
	"jarmark/internal/give/table"
	"maps"
	"math"
	"testing"

	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// Per kilogram where no rule says (Directive 98/6/EC Art 2(b)), per 100 g of
// preserves in Northern Ireland to a tenth of a penny (SR 2004/368 Sch. 1 and art
// 13), per ounce to the cent in the United States.
func TestPriceOfEdges(t *testing.T) {
	us, eu, ni := place.Place{}, place.Place{Law: place.EU}, place.Place{Law: place.EU, Per: "100 g", Tenths: true}
	for _, x := range []struct {
		price  unit.Money
		net    unit.Mass
		volume unit.Volume
		at     place.Place
		want   string
	}{
		{usd(900), 10 * unit.Ounce, 0, us, "90¢ per oz"}, {usd(975), 10 * unit.Ounce, 0, us, "98¢ per oz"}, {usd(974), 10 * unit.Ounce, 0, us, "97¢ per oz"}, {usd(1500), 10 * unit.Ounce, 0, us, "$1.50 per oz"},
		{usd(900), 0, 12 * unit.FluidOunce, us, "75¢ per fl oz"}, {usd(995), 10 * unit.Ounce, 0, us, "$1.00 per oz"},
		{unit.Money{Minor: 700, Currency: "EUR"}, 800 * unit.Gram, 0, eu, "€8.75 per kg"}, {unit.Money{Minor: 70, Currency: "EUR"}, unit.Kilogram, 0, eu, "€0.70 per kg"},
		{unit.Money{Minor: 283, Currency: "GBP"}, 340 * unit.Gram, 0, ni, "83.2p per 100 g"}, {unit.Money{Minor: 340, Currency: "GBP"}, 340 * unit.Gram, 0, ni, "£1.00 per 100 g"},
		{usd(0), unit.Ounce, 0, us, ""}, {usd(1), 0, 0, us, ""}, {usd(-1), unit.Ounce, 0, us, ""}, {usd(1), -1, 0, us, ""}, {usd(math.MaxInt64), 1, 0, us, ""},
	} {
		got, ok := PriceOf(x.price, x.net, x.volume, x.at)
		if ok != (x.want != "") || ok && got.In(table.Words{}) != x.want {
			t.Errorf("%+v: %s, %v", x, got.In(table.Words{}), ok)
		}
	}
}

// What came home is taken off the last rows, never more than a row had.
func TestCameBackEdges(t *testing.T) {
	for home, want := range map[int]map[int]int{-1: {}, 0: {}, 1: {7: 1}, 2: {7: 2}, 3: {7: 2, 4: 1}, 5: {7: 2, 4: 3}, 9: {7: 2, 4: 3}} {
		if got := cameBack([]int{4, 7}, map[int]int{4: 3, 7: 2}, home); !maps.Equal(got, want) {
			t.Errorf("%d home: %v", home, got)
		}
	}
	for _, x := range []struct{ came, got, want int }{{-1, 3, 0}, {0, 3, 0}, {1, 3, 1}, {3, 3, 3}, {4, 3, 3}} {
		if got := (&deal{promise: promise{cameHome: x.came}, got: x.got}).home(); got != x.want {
			t.Errorf("%+v: %d", x, got)
		}
	}
}

// First expired, first out; unknown dates last; then by lot, alike is not sooner.
func TestSooner(t *testing.T) {
	a, b := date(2027, 1, 1), date(2027, 1, 2)
	for _, x := range []struct {
		one, two Stock
		want     bool
	}{
		{Stock{BestBefore: a}, Stock{BestBefore: b}, true}, {Stock{BestBefore: b}, Stock{BestBefore: a}, false}, {Stock{BestBefore: b}, Stock{}, true}, {Stock{}, Stock{BestBefore: a}, false},
		{Stock{Lot: "A"}, Stock{Lot: "B"}, true}, {Stock{Lot: "B"}, Stock{Lot: "A"}, false}, {Stock{Lot: "A", BestBefore: a}, Stock{Lot: "A", BestBefore: a}, false}, {Stock{Lot: "B", BestBefore: a}, Stock{Lot: "A", BestBefore: b}, true},
	} {
		if got := (&builder{}).sooner(x.one, x.two); got != x.want {
			t.Errorf("%+v before %+v: %v", x.one, x.two, got)
		}
	}
}

// The batches' own promises first, then rows that name something, then the rest.
func TestRank(t *testing.T) {
	for _, x := range []struct {
		p    promise
		want int
	}{{promise{batch: 0}, 0}, {promise{batch: 3, lot: "L"}, 0}, {promise{batch: -1, lot: "L"}, 1}, {promise{batch: -1, jam: "fig"}, 1}, {promise{batch: -1, jar: "us8"}, 1}, {promise{batch: -1, allergy: "milk"}, 1}, {promise{batch: -1}, 2}} {
		if got := (&deal{promise: x.p}).rank(); got != x.want {
			t.Errorf("%+v: %d", x.p, got)
		}
	}
}

// Sold is exact only where somebody noted what came home.
func TestSold(t *testing.T) {
	for home, want := range map[int]int{-1: 12, 0: 12, 5: 7, 12: 0} {
		if n, exact := (Holder{Jars: 12, CameHome: home}).Sold(); n != want || exact != (home >= 0) {
			t.Errorf("%d home: %d, %v", home, n, exact)
		}
	}
	for n, want := range map[int][2]string{1: {"1 batch file", "1 file or folder was"}, 2: {"2 batch files", "2 files or folders were"}, 0: {"0 batch files", "0 files or folders were"}} {
		if got := [2]string{files(n), wereNot(n)}; got != want {
			t.Errorf("%d: %q", n, got)
		}
	}
}

// A batch's cost is shared by content, halves of a cent up; the part-filled jar
// bears its share; a jar of no content or number has none.
func TestCostIsShared(t *testing.T) {
	jar := func(n int, net unit.Mass, price int64) cook.JarPlan {
		return cook.JarPlan{Jar: jar8, Count: n, Sealed: n, Checked: true, How: cook.Given, Fill: net, Price: usd(price)}
	}
	for _, x := range []struct {
		jars []cook.JarPlan
		cost int64
		want []int64 // cost, margin of each size
	}{
		{[]cook.JarPlan{jar(2, 100*unit.Gram, 900)}, 1000, []int64{500, 400}},
		{[]cook.JarPlan{jar(2, 100*unit.Gram, 900)}, 1001, []int64{501, 399}},
		{[]cook.JarPlan{jar(2, 100*unit.Gram, 0)}, 1000, []int64{500, 0}},
		{[]cook.JarPlan{jar(1, 100*unit.Gram, 1), jar(1, 300*unit.Gram, 900)}, 1000, []int64{250, -249, 750, 150}},
		{[]cook.JarPlan{jar(0, 100*unit.Gram, 900), jar(1, 100*unit.Gram, 900)}, 1000, []int64{1000, -100}},
	} {
		r := &cook.Result{Batch: &batch.Batch{}, Lines: []cook.Line{{Name: "plums", Cost: usd(x.cost)}, {IsWater: true}}, Jars: x.jars}
		c, found := Cost(r)
		if c == nil || len(found) > 0 {
			t.Fatal(c, found)
		}
		var got []int64
		for _, s := range c.Sizes {
			got = append(got, s.Cost.Minor, s.Margin.Minor)
		}
		if len(got) != len(x.want) {
			t.Fatalf("%+v: %v", x, got)
		}
		for i := range got {
			if got[i] != x.want[i] {
				t.Errorf("%v: %v", x.want, got)
			}
		}
	}
	r := &cook.Result{Batch: &batch.Batch{}, Lines: []cook.Line{{Name: "plums", Cost: usd(900)}}, Jars: []cook.JarPlan{{Jar: jar8, Count: 1, Fill: 200 * unit.Gram, Part: 100 * unit.Gram}}}
	if c, _ := Cost(r); len(c.Sizes) != 1 || c.Sizes[0].Cost.Minor != 600 {
		t.Errorf("the part-filled jar bears no share: %+v", c.Sizes)
	}
}
