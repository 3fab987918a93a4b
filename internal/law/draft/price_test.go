package draft

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// TestPriceOfTheDay: the card has the price of the market that comes next; a
// change of price reaches it. A jar's own price counts where no market to come
// says another, and the last market's where the jar says none.
func TestPriceOfTheDay(t *testing.T) {
	day := func(d int) unit.Date { return unit.Date{Year: 2026, Month: 12, Day: d} }
	usd := func(n int64) unit.Money { return unit.Money{Minor: n, Currency: "USD"} }
	markets := []batch.Market{
		{Path: "market[0]", Date: day(19), Price: usd(1100), CameHome: -1},
		{Path: "market[1]", Date: day(5), Price: usd(900), CameHome: 2},
		{Path: "market[2]", Date: day(12), Price: usd(1000), CameHome: -1},
		{Path: "market[3]", Date: day(12), Price: usd(500), CameHome: -1, Jar: "us4"},
	}
	for _, c := range []struct {
		today int
		own   int64
		want  int64
		path  string
	}{{1, 800, 1000, "market[2]"}, {12, 800, 1000, "market[2]"}, {13, 800, 1100, "market[0]"}, {20, 800, 800, "fill[0]"}, {20, 0, 1100, "market[0]"}} {
		d := &Draft{B: &batch.Batch{Markets: markets}, O: Options{Today: day(c.today)}, Jar: cook.JarPlan{Jar: pantry.Jar{Key: "us8"}, FillPath: "fill[0]", Price: usd(c.own)}}
		if got, path := d.jarPrice(); got.Minor != c.want || path != c.path {
			t.Errorf("%+v: %s of %s", c, got, path)
		}
	}
}
