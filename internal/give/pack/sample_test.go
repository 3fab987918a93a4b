package pack

import (
	where "jarmark/internal/kit/place"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// The demo kitchen, its people and its markets are our own invention.

var (
	jar8  = pantry.Jar{Key: "us8", Description: "8 fl oz (half-pint), regular mouth", Nominal: 8 * unit.FluidOunce, TareMass: 190 * unit.Gram, Lid: "70-450 CT", Circumference: 226 * unit.Millimetre}
	jar4  = pantry.Jar{Key: "us4", Description: "4 fl oz straight-sided, regular mouth", Nominal: 4 * unit.FluidOunce, Lid: "70-450 CT", Circumference: 220 * unit.Millimetre}
	jar8w = pantry.Jar{Key: "us8w", Description: "8 fl oz squat, wide mouth", Nominal: 8 * unit.FluidOunce, Lid: "86-450 CT"}
)

func usd(minor int64) unit.Money { return unit.Money{Minor: minor, Currency: "USD"} }

func date(y, m, d int) unit.Date { return unit.Date{Year: y, Month: m, Day: d} }

func kitchen() *batch.Kitchen {
	return &batch.Kitchen{Name: "Thornfield Lane Preserves", Place: where.Place{ID: "us-or"}, Units: "us", Currency: "USD", AlsoHandles: []string{"almonds", "milk"},
		Supplies: batch.Supplies{Tags: 4, Boxes: -1, Ribbon: 3 * unit.Metre, BoxHolds: 12, Labels: map[string]int{"letter-2x5-4x2in": 60}}}
}

func plum(k *batch.Kitchen) *cook.Result {
	b := &batch.Batch{File: &source.File{Name: "plum.toml"}, Name: "Plum & star anise jam", Made: date(2026, 9, 22), Label: batch.Label{Sheet: "letter-2x5-4x2in"},
		Gifts: []batch.Gift{
			{Path: "gift[0]", To: "Marguerite", From: "no. 14, Millbrook", Message: "lovely with cold ham", Jars: 2, Occasion: "winter"},
			{Path: "gift[1]", To: "Jo & Sam", From: "Nell", Jars: 1, Jar: "4 fl oz", Occasion: "new home"},
		},
		Markets: []batch.Market{
			{Path: "market[0]", Event: "Millbrook market", Date: date(2026, 12, 5), Jars: 12, Jar: "us8", CameHome: -1},
			{Path: "market[1]", Event: "Harvest fair", Date: date(2026, 10, 10), Jars: 6, Jar: "us8", Price: usd(950), CameHome: 2},
		}}
	return &cook.Result{Batch: b, Kitchen: k, Lot: "L26265-PL", BestBefore: date(2027, 9, 22),
		Keeping: cook.Keeping{Class: cook.Shelf, UnsealedDays: 28},
		Lines: []cook.Line{
			{Name: "plums", Mass: 3 * unit.Kilogram, Cost: usd(1200), Paths: []string{"ingredient[0]"}},
			{Name: "sugar", Mass: 2 * unit.Kilogram, Cost: usd(240), Paths: []string{"ingredient[1]"}},
			{Name: "water", Mass: 200 * unit.Gram, IsWater: true},
			{Name: "star anise", Mass: 5 * unit.Gram, Paths: []string{"ingredient[3]"}}},
		Jars: []cook.JarPlan{
			{FillPath: "fill[0]", Jar: jar8, Count: 22, Sealed: 21, Checked: true, How: cook.Given, Fill: 300 * unit.Gram, Weighed: []unit.Mass{298 * unit.Gram, 302 * unit.Gram},
				Declared: 10 * unit.Ounce, DeclText: "10 oz", Price: usd(900), Part: 120 * unit.Gram},
			{FillPath: "fill[1]", Jar: jar4, Count: 4, Sealed: 4, Checked: true, How: cook.Given, Fill: 150 * unit.Gram, Price: usd(500)},
		}}
}

func apricot(k *batch.Kitchen) *cook.Result {
	b := &batch.Batch{File: &source.File{Name: "apricot.toml"}, Name: "Apricot jam with almonds", Made: date(2026, 7, 20),
		Markets: []batch.Market{{Path: "market[0]", Event: "millbrook  Market", Date: date(2026, 12, 5), Jars: 8, CameHome: -1, Price: usd(1000)}}}
	return &cook.Result{Batch: b, Kitchen: k, Lot: "L26201-AP", BestBefore: date(2027, 7, 20),
		Keeping: cook.Keeping{Class: cook.Shelf, UnsealedDays: 28},
		Lines: []cook.Line{{Name: "apricots", Mass: 2 * unit.Kilogram}, {Name: "sugar", Mass: 1500 * unit.Gram},
			{Name: "almonds", Mass: 100 * unit.Gram, Row: pantry.Ingredient{USAllergen: "tree nut (almond)", EUAllergen: "nuts (almond)"}}},
		Jars: []cook.JarPlan{{FillPath: "fill[0]", Jar: jar8, Count: 10, Sealed: 10, Checked: true, How: cook.Given, Fill: 300 * unit.Gram, Declared: 10 * unit.Ounce, DeclText: "10 oz", Price: usd(900)}}}
}

func both() []*cook.Result {
	k := kitchen()
	return []*cook.Result{plum(k), apricot(k)}
}
