package season

import (
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	where "jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// The kitchen, its people and its markets are our own invention.

func usd(minor int64) unit.Money { return unit.Money{Minor: minor, Currency: "USD"} }

func date(m, d int) unit.Date { return unit.Date{Year: 2026, Month: m, Day: d} }

func jam(k *batch.Kitchen, name, lot string, made unit.Date, jars int, price int64, costs ...int64) *cook.Result {
	r := &cook.Result{Kitchen: k, Lot: lot, Batch: &batch.Batch{Name: name, Made: made, Hours: 2}}
	for i, c := range costs {
		r.Lines = append(r.Lines, cook.Line{Name: []string{"plums", "sugar"}[i], Mass: unit.Kilogram, Cost: usd(c)})
	}
	r.Jars = []cook.JarPlan{{Jar: pantry.Jar{Key: "us8", Description: "8 fl oz", Lid: "70-450 CT"}, Count: jars, Sealed: jars, Checked: true, How: cook.Given, Fill: 300 * unit.Gram, Price: usd(price)}}
	return r
}

// season is two jams and two Saturdays. By hand: plum 20 jars, ingredients
// $20.00 = $1.00 a jar, jar 90¢, lid 25¢, label 10¢, 2 h at $10.00 over 20 jars
// = $1.00: $3.25 a jar. Fig 10 jars, sugar without a cost.
func aSeason() ([]*cook.Result, []ledger.Entry) {
	k := &batch.Kitchen{Name: "Fernhollow Kitchen", Place: where.Place{ID: "us-or"}, Units: "us", Currency: "USD",
		Supplies: batch.Supplies{Tags: -1, Boxes: -1, Jars: map[string]int{"us8": 12}},
		Costs:    batch.Costs{Jars: map[string]unit.Money{"us8": usd(90)}, Lid: usd(25), Label: usd(10), Hour: usd(1000), Fee: usd(2000)}}
	plum, fig := jam(k, "Plum jam", "L1", date(6, 3), 20, 800, 1500, 500), jam(k, "Fig jam", "L2", date(7, 1), 10, 1000, 900, 0)
	plum.Batch.Markets = []batch.Market{{Event: "fair", Date: date(7, 4), Jars: 8, CameHome: -1, Fee: usd(500)}}
	row := func(m, d int, lot string, n int, why ledger.Why, who string, price int64) ledger.Entry {
		e := ledger.Entry{Date: date(m, d), Lot: lot, Count: n, Why: why, Who: who, From: pack.FromMarket}
		if price > 0 {
			e.Price = usd(price)
		}
		return e
	}
	return []*cook.Result{plum, fig}, []ledger.Entry{
		row(7, 4, "L1", 6, ledger.Sold, "fair", 800), row(7, 4, "L1", 2, ledger.CameHome, "fair", 0),
		row(7, 11, "L1", 4, ledger.Sold, "fair", 850), row(7, 11, "L2", 3, ledger.Sold, "fair", 1000),
		row(8, 1, "L1", 2, ledger.Given, "Ada", 0), row(8, 2, "L2", 1, ledger.Broken, "", 0),
	}
}

func sums(t *testing.T, change func([]*cook.Result, []ledger.Entry) []ledger.Entry) *Summary {
	t.Helper()
	rs, rows := aSeason()
	if change != nil {
		rows = change(rs, rows)
	}
	p, found := pack.Build(rs, pack.Options{Book: rows})
	if found.HasErrors() {
		t.Fatal(found)
	}
	return Sum(p, rs)
}

// TestSums: plum takes 6 × $8.00 + 4 × $8.50 = $82.00, costs 10 × $3.25 =
// $32.50, so $49.50 or $4.95 a jar. 4 July: $48.00 - 6 × $3.25 - $5.00 of the
// market's own fee = $23.50. 11 July: $34.00 + $30.00, costs not known.
func TestSums(t *testing.T) {
	s := sums(t, nil)
	fig, plum := s.Jams[0], s.Jams[1]
	if n, known := plum.Profit(); !known || n != 4950 || plum.Made != 20 || plum.Given != 2 || plum.Sold != 10 || plum.Left != 8 || s.aJar(plum) != "$4.95" {
		t.Errorf("%+v %d", plum, n)
	}
	if _, known := fig.Profit(); known || fig.NoCost != 3 || fig.Takings != 3000 || fig.Lost != 1 || fig.Left != 6 {
		t.Errorf("a cost that nobody wrote down is known: %+v", fig)
	}
	if len(s.Visits) != 2 || s.Visits[0].CameHome != 2 || s.Visits[1].Takings != 6400 || s.Visits[1].Fee != 2000 {
		t.Fatalf("%+v", s.Visits)
	}
	if n, known := s.Visits[0].Profit(); !known || n != 2350 {
		t.Errorf("profit of 4 July %d", n)
	}
	if _, known := s.Visits[1].Profit(); known {
		t.Error("profit of 11 July is known")
	}
	if a := s.All; a.Made != 30 || a.Made != a.Given+a.Sold+a.Lost+a.Left || a.Takings != 11200 || a.Fee != 2500 {
		t.Errorf("%+v", a)
	}
	var names []string
	for _, m := range s.Months {
		names = append(names, m.Name)
	}
	if strings.Join(names, " ") != "2026-06 2026-07 2026-08" || s.Months[1].Made != 10 || s.Months[1].Sold != 13 || s.Months[2].Given != 2 || s.Months[2].Lost != 1 {
		t.Errorf("%+v", s.Months)
	}
	if len(s.Buy) != 3 || s.Buy[0].Buy() != 18 || s.Buy[1].Buy() != 30 || s.Buy[0].What != "jars, 8 fl oz" {
		t.Errorf("%+v", s.Buy)
	}
}

// TestWhatIsNotKnownIsSaid: an ingredient, a jar, an hour or a price that
// nobody wrote down is named, and the sums it would change are not given.
func TestWhatIsNotKnownIsSaid(t *testing.T) {
	text := sums(t, nil).List().Text()
	for _, want := range []string{"Fig jam: sugar", "not known", "takings $112.00", "18 ", "used 30, have 12"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	s := sums(t, func(rs []*cook.Result, rows []ledger.Entry) []ledger.Entry {
		rs[0].Kitchen.Costs = batch.Costs{}
		rows[0].Price = unit.Money{}
		rs[0].Jars[0].Price = unit.Money{}
		return rows
	})
	text = strings.Join(strings.Fields(s.List().Text()), " ")
	for _, want := range []string{"6 jars sold without a price", "leave out jars, labels, lids, work and stalls"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
	if _, known := s.Jams[1].Profit(); known {
		t.Error("a profit without all takings")
	}
	csv := string(s.List().CSV())
	if !strings.Contains(csv, "jam,Plum jam,,20,2,10,0,8,,,10.00,") {
		t.Errorf("the CSV gives takings that are not known:\n%s", csv)
	}
}

// TestOnePage: twelve jams and eight markets stand on one page of each paper.
func TestOnePage(t *testing.T) {
	rs, _ := aSeason()
	k := rs[0].Kitchen
	var rows []ledger.Entry
	rs = nil
	for i := range 12 {
		lot := string(rune('A' + i))
		rs = append(rs, jam(k, "Jam "+lot, lot, date(5+i/2, 1+i), 24, 900, 1500, 500))
		for w := range 8 {
			rows = append(rows, ledger.Entry{Date: date(6+w/2, 1+w), Lot: lot, Count: 2, Why: ledger.Sold, Who: "Elmsgate Saturday market", Price: usd(900)})
		}
	}
	p, found := pack.Build(rs, pack.Options{Book: rows})
	if found.HasErrors() {
		t.Fatal(found)
	}
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	for _, paper := range []string{"letter", "a4"} {
		if d, l := Sum(p, rs).List().Doc(fs, paper); len(l) > 0 || len(d.Pages) != 1 {
			t.Errorf("%s: %d pages, %v", paper, len(d.Pages), l)
		}
	}
}

// A sale in another currency is not added up as if it were ours: it is said,
// and the profit is not known.
func TestAnotherCurrency(t *testing.T) {
	s := sums(t, func(_ []*cook.Result, rows []ledger.Entry) []ledger.Entry {
		rows[0].Price.Currency = "CAD" // 6 plum at 8.00: $34.00 of 11 July is left
		return rows
	})
	plum := s.Jams[1]
	if _, known := plum.Profit(); known || plum.Takings != 3400 || s.takings(plum) != "$34.00 *" || !strings.Contains(s.List().Text(), "another currency than USD") {
		t.Errorf("%+v\n%s", plum, s.List().Text())
	}
	if n, known := s.Visits[0].Profit(); known {
		t.Errorf("profit of a day paid in another currency: %d", n)
	}
}
