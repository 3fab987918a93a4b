package pack

import (
	"jarmark/internal/give/table"
	"maps"
	"math"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// Directive 98/6/EC Art 2(b): per kilogram; half a tenth of a cent rounds up.
func TestPriceOfEdges(t *testing.T) {
	for _, x := range []struct {
		minor int64
		net   unit.Mass
		units string
		want  int64
		per   string
		ok    bool
	}{
		{900, 10 * unit.Ounce, unit.US, 900, "oz", true}, {900, unit.Kilogram, unit.Metric, 9000, "kg", true}, {1, 20 * unit.Kilogram, unit.Metric, 1, "kg", true}, {1, 20*unit.Kilogram + 1, unit.Metric, 0, "kg", true},
		{1, 1, unit.US, 10 * int64(unit.Ounce), "oz", true}, {0, unit.Ounce, unit.US, 0, "", false}, {1, 0, unit.US, 0, "", false}, {-1, unit.Ounce, unit.US, 0, "", false}, {1, -1, unit.US, 0, "", false}, {math.MaxInt64, 1, unit.US, 0, "", false},
	} {
		got, ok := PriceOf(usd(x.minor), x.net, x.units)
		if ok != x.ok || got.Tenths != x.want || got.Per != x.per {
			t.Errorf("%+v: %+v, %v", x, got, ok)
		}
	}
	for u, want := range map[UnitPrice]string{{999, "USD", "oz"}: "99.9¢ per oz", {1000, "USD", "oz"}: "$1.00 per oz", {1004, "USD", "oz"}: "$1.00 per oz", {1005, "USD", "oz"}: "$1.01 per oz", {990, "GBP", "kg"}: "99p per kg", {5, "USD", "oz"}: "0.5¢ per oz", {875, "EUR", "kg"}: "€0.88 per kg"} {
		if got := u.In(table.Words{}); got != want {
			t.Errorf("%+v: %q, want %q", u, got, want)
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
		c, found := Cost(r, unit.US)
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
	if c, _ := Cost(r, unit.US); len(c.Sizes) != 1 || c.Sizes[0].Cost.Minor != 600 {
		t.Errorf("the part-filled jar bears no share: %+v", c.Sizes)
	}
}
