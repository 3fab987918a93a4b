package draft

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
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

// SR 2004/368 art 13, read 26 Nov 2026: "Where the unit price of a product falls
// below £1 it shall be expressed to the nearest 0·1p ... 5 or higher, it shall be
// rounded up and where it is 4 or lower it shall be rounded down."
func TestPenceAndTenths(t *testing.T) {
	for _, c := range []struct {
		minor, grams int64
		tenths       bool
		want         string
	}{{200, 240, true, "83.3p per 100 g"}, {230, 240, true, "95.8p per 100 g"}, {250, 250, true, "£1 per 100 g"}, {200, 240, false, "£0.83 per 100 g"}, {999, 1000, true, "99.9p per 100 g"}} {
		b, err := book()
		if err != nil {
			t.Fatal(err)
		}
		ni, _ := b.Place("ni", unit.Date{Year: 2026, Month: 11, Day: 26})
		set, price := *ni, *ni.Price
		if !price.Tenths {
			t.Error("Northern Ireland's unit prices know no tenths")
		}
		price.Tenths, set.Price = c.tenths, &price
		d := &Draft{B: &batch.Batch{}, Set: &set, Say: set.Words["en"], C: &label.Content{}, NetMass: unit.Mass(c.grams) * unit.Gram,
			Jar: cook.JarPlan{FillPath: "fill[0]", Price: unit.Money{Minor: c.minor, Currency: "GBP"}}}
		d.Price()
		if b, _ := d.C.Find(label.UnitPrice); b.Text() != c.want {
			t.Errorf("%+v: %q", c, b.Text())
		}
	}
}
