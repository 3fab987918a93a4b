package season

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/unit"
)

// Gross sales of a calendar year, as WAC 16-149-040(1) counts them ("if gross
// sales during a calendar year exceed"): by hand, plum 6 × $8.00 + 4 × $8.50 =
// $82.00 and fig 3 × $10.00 = $30.00 in 2026; one plum more at $8.00 on 2
// January 2027, and one without a day. Costs and fees take nothing off.
func TestSalesOfAYear(t *testing.T) {
	rs, rows := aSeason()
	sale := ledger.Entry{Lot: "L1", Count: 1, Why: ledger.Sold, Who: "fair", Price: usd(800)}
	undated := sale
	sale.Date = unit.Date{Year: 2027, Month: 1, Day: 2}
	p, found := pack.Build(rs, pack.Options{Book: append(rows, sale, undated)})
	if found.HasErrors() {
		t.Fatal(found)
	}
	s := Sum(p, rs)
	s.Against(Cap{Amount: 14000, Place: "Washington", Cite: "WAC 16-149-040(1)", Currency: "USD"}, p, nil)
	if len(s.Years) != 2 || s.Years[0] != (Year{Year: 2027, Takings: 800, Cap: 14000}) || s.Years[1] != (Year{Year: 2026, Takings: 11200, Cap: 14000}) {
		t.Fatalf("%+v", s.Years)
	}
	if y := s.Years[1]; y.Left() != 2800 || !y.Near() || y.Over() { // 112 of 140 is 80 percent to the cent
		t.Errorf("%d left, near %v, over %v", y.Left(), y.Near(), y.Over())
	}
	for cap, want := range map[int64][2]bool{14001: {false, false}, 11200: {true, false}, 11199: {false, true}} {
		if y := (Year{Takings: 11200, Cap: cap}); y.Near() != want[0] || y.Over() != want[1] {
			t.Errorf("cap %d: near %v, over %v", cap, y.Near(), y.Over())
		}
	}
	text := strings.Join(strings.Fields(s.List().Text()), " ")
	for _, want := range []string{"2026 $112.00 $140.00 $28.00", "Washington allows so much in a calendar year (WAC 16-149-040(1))", "only those in the ledger"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, s.List().Text())
		}
	}
	s = Sum(p, rs)
	s.Against(Cap{Amount: 10000, Each: true, Memory: true, Place: "Colorado", Cite: "C.R.S. 25-4-1614", Currency: "USD"}, p, nil)
	if len(s.Years) != 3 || s.Years[1].Name != "Fig jam" || s.Years[1].Takings != 3000 || s.Years[2].Name != "Plum jam" || s.Years[2].Takings != 8200 || !strings.Contains(s.List().Text(), "memory") {
		t.Errorf("%+v", s.Years)
	}
	s = Sum(p, rs)
	if s.Against(Cap{}, p, nil); s.Years != nil || strings.Contains(s.List().Text(), "calendar year") {
		t.Error("a cap that nobody read")
	}
}

// Two kitchens in folders of their own: each cap counts its own kitchen's jars.
// By hand, L1 (plum) 6 × $8.00 + 4 × $8.50 = $82.00, L2 (fig) 3 × $10.00 = $30.00.
func TestEachKitchenHasItsCap(t *testing.T) {
	rs, rows := aSeason()
	p, _ := pack.Build(rs, pack.Options{Book: rows})
	s := Sum(p, rs)
	for i, place := range []string{"Washington", "Colorado"} {
		s.Against(Cap{Amount: 10000, Place: place, Currency: "USD", Kitchen: "kitchen of " + place}, p, func(st pack.Stock) bool { return st.Result() == i })
	}
	if want := []Year{{Year: 2026, Takings: 8200, Cap: 10000}, {Year: 2026, Takings: 3000, Cap: 10000, Of: 1}}; !slices.Equal(s.Years, want) {
		t.Errorf("%+v", s.Years)
	}
	text := strings.Join(strings.Fields(s.List().Text()), " ")
	for _, want := range []string{"2026 kitchen of Washington $82.00 $100.00 $18.00", "2026 kitchen of Colorado $30.00 $100.00 $70.00", "Washington allows", "Colorado allows"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q:\n%s", want, text)
		}
	}
}
