package draft

import (
	"math"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// A lid is named by 20 to 200 mm, and by a number that begins the finish.
func TestLidEdges(t *testing.T) {
	for finish, want := range map[string]unit.Length{"19": 0, "20": 20, "200": 200, "201": 0, " 82 mm": 82, "lug 63": 0, "70x": 70, "7:0": 0, "58/400": 58, "1000": 0} {
		if got := lidAcross(finish); got != want*unit.Millimetre {
			t.Errorf("%q: %v mm", finish, got.MM())
		}
	}
}

// Price × per / content to the coin, halves up; nothing of nothing, and no number
// where it would not fit or be nought.
func TestUnitPriceEdges(t *testing.T) {
	for _, x := range []struct {
		minor, content, per int64
		want                int64
		ok                  bool
	}{{5, 10, 1, 1, true}, {4, 10, 1, 0, false}, {15, 10, 1, 2, true}, {14, 10, 1, 1, true}, {1, 1, 1, 1, true}, {0, 1, 1, 0, false}, {1, 0, 1, 0, false}, {1, 1, 0, 0, false}, {-1, 1, 1, 0, false},
		{math.MaxInt64, 1, math.MaxInt64, 0, false}, {1 << 62, 1, 1, 0, false}, {1<<62 - 1, 1, 1, 1<<62 - 1, true}, {math.MaxInt64, math.MaxInt64, 7, 7, true}} {
		got, ok := unit.Money{Minor: x.minor, Currency: "EUR"}.Per(x.content, x.per)
		if ok != x.ok || ok && (got.Minor != x.want || got.Currency != "EUR") {
			t.Errorf("%+v: %d, %v", x, got.Minor, ok)
		}
	}
}

// A stall writes cents below a dollar and leaves out ".00" (common practice, no source).
func TestStallPrice(t *testing.T) {
	for m, want := range map[unit.Money]string{{Minor: 1, Currency: "USD"}: "1¢", {Minor: 99, Currency: "USD"}: "99¢", {Minor: 100, Currency: "USD"}: "$1", {Minor: 950, Currency: "USD"}: "$9.50", {Minor: 99, Currency: "GBP"}: "£0.99", {Minor: 1000, Currency: "GBP"}: "£10"} {
		if got := stallPrice(m); got != want {
			t.Errorf("%+v: %q, want %q", m, got, want)
		}
	}
	for n, want := range map[int64]string{833: "83.3p", 5: "0.5p", 10: "1.0p", 999: "99.9p"} {
		if got := unit.Pence(n); got != want {
			t.Errorf("%d: %q", n, got)
		}
	}
}

// The market of today is still to come; one that was counted is not. Of two on
// a day the first stands; a market for another jar and one without a price set none.
func TestMarketOfToday(t *testing.T) {
	day := func(d int) unit.Date { return unit.Date{Year: 2026, Month: 12, Day: d} }
	usd := func(n int64) unit.Money { return unit.Money{Minor: n, Currency: "USD"} }
	for _, x := range []struct {
		markets []batch.Market
		want    int64
	}{
		{[]batch.Market{{Date: day(5), Price: usd(900), CameHome: -1}}, 900},
		{[]batch.Market{{Date: day(5), Price: usd(900), CameHome: 0}}, 700},
		{[]batch.Market{{Date: day(4), Price: usd(900), CameHome: -1}}, 700},
		{[]batch.Market{{Date: day(5), Price: usd(900), CameHome: -1, Jar: "US8"}}, 900},
		{[]batch.Market{{Date: day(5), Price: usd(900), CameHome: -1, Jar: "us4"}}, 700},
		{[]batch.Market{{Date: day(5), CameHome: -1}, {Date: day(6), Price: usd(1), CameHome: -1}}, 1},
		{[]batch.Market{{Date: day(6), Price: usd(900), CameHome: -1}, {Date: day(6), Price: usd(800), CameHome: -1}}, 900},
	} {
		d := &Draft{B: &batch.Batch{Markets: x.markets}, O: Options{Today: day(5)}, Jar: cook.JarPlan{Jar: pantry.Jar{Key: "us8"}, Price: usd(700)}}
		if got, _ := d.jarPrice(); got.Minor != x.want {
			t.Errorf("%+v: %d", x.markets, got.Minor)
		}
	}
}

// The very bytes of a word, past false starts, in scripts with accents too.
func TestWordBytes(t *testing.T) {
	for _, x := range []struct {
		text, stem string
		grow       bool
		from, to   int
		ok         bool
	}{
		{"almonds", "almond", true, 0, 7, true}, {"almonds", "almond", false, 0, 0, false}, {"an almond, two almonds", "almond", false, 3, 9, true}, {"peach each", "each", false, 6, 10, true},
		{"peach", "each", true, 0, 0, false}, {"ä rum", "rum", false, 3, 6, true}, {"rumé rum", "rum", false, 6, 9, true}, {"", "rum", true, 0, 0, false}, {"rum", "", true, 0, 0, false}, {"3rum", "rum", false, 1, 4, true}, {"Rum", "rUM", false, 0, 3, true},
	} {
		if from, to, ok := FindWord(x.text, x.stem, x.grow); ok != x.ok || ok && (from != x.from || to != x.to) {
			t.Errorf("%q in %q: %d-%d %v", x.stem, x.text, from, to, ok)
		}
	}
}

// 21 CFR 101.1(b): 40 per cent of height times circumference; the whole height
// where the straight one is not known.
func TestPanelOfHalfKnownJars(t *testing.T) {
	mm := unit.Millimetre
	for _, x := range []struct {
		panel, height, around unit.Length
		want                  float64
	}{{50 * mm, 90 * mm, 200 * mm, 4000}, {0, 90 * mm, 200 * mm, 7200}, {0, 0, 200 * mm, 0}, {50 * mm, 90 * mm, 0, 0}, {-mm, 0, 200 * mm, 0}, {mm, 0, mm, 0.4}, {mm, 0, -mm, 0}} {
		if got := PanelArea(pantry.Jar{Panel: x.panel, Height: x.height, Circumference: x.around}); math.Abs(got-x.want) > 1e-9 {
			t.Errorf("%+v: %v", x, got)
		}
	}
}
