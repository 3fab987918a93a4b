package pack

import (
	"strings"
	"testing"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// TestChange: ten buyers of jars at $9.00 and $8.50 in turn, each with a
// twenty, want 5 × $11.00 and 5 × $11.50: by hand ten tens, ten ones and ten
// quarters.
func TestChange(t *testing.T) {
	if got, sum := change([]unit.Money{usd(900), usd(850)}, table.Words{}); got != "10 × $10.00, 10 × $1.00, 10 × $0.25" || sum != usd(11250) {
		t.Error(got, sum)
	}
	for _, prices := range [][]unit.Money{{usd(2000)}, nil, {{Minor: 5, Currency: "XXX"}}} {
		if got, _ := change(prices, table.Words{}); got != "" {
			t.Errorf("%v: %q", prices, got)
		}
	}
}

// TestMarketDay: one Saturday is one page with prices, change and what else to
// carry. Unit prices by hand: $10.00 / 10 oz = $1.00, $9.00 / 10 oz = 90¢ (NIST
// Handbook 130, Uniform Unit Pricing Regulation: section 2(a): "price per pound or ounce, if the net
// quantity of contents of the commodity is in terms of weight", as quoted on the
// U.S. Metric Association's list in 2014; the rounding to the cent is from memory).
func TestMarketDay(t *testing.T) {
	rs := both()
	rs[0].Kitchen.Costs.Float, rs[0].Kitchen.Permit = usd(6000), "HK-2026-0047"
	p, found := Build(rs, Options{Event: "Millbrook market", Date: date(2026, 12, 5)})
	if found.HasErrors() {
		t.Fatal(found)
	}
	text := strings.Join(strings.Fields(p.Text()), " ")
	for _, want := range []string{"$1.00 per oz", "90¢ per oz", "change to begin with: $60.00", "10 × $10.00", "HK-2026-0047", "allergen sheet", "2 price cards"} {
		if !strings.Contains(text, want) {
			t.Errorf("lacks %q: %s", want, text)
		}
	}
	d, found := p.Doc(faces(t), "")
	if len(found) > 0 || len(d.Pages) != 1 {
		t.Errorf("%d pages, %v", len(d.Pages), found)
	}
	inspectPages(t, "saturday", d)
	if strings.Contains(string(p.CSV()), "allergen sheet") {
		t.Error("what else to carry is no row of jars")
	}
}

// TestSellFirst: what expires first stands first; sixty days before its date a
// jar is nearly over, after it over.
func TestSellFirst(t *testing.T) {
	for today, want := range map[string]string{"2027-05-21": "20 Jul 2027\n", "2027-05-22": "20 Jul 2027, nearly over\n", "2027-07-20": "20 Jul 2027, nearly over\n", "2027-07-21": "20 Jul 2027, over: not to sell as fresh\n"} {
		rs := both()
		p, _ := Build(rs, Options{Today: dateOf(t, today)})
		text := p.Book().Text()
		apricot, plum := strings.LastIndex(text, "Apricot"), strings.LastIndex(text, "Plum")
		if !strings.Contains(text, want) || apricot > plum {
			t.Errorf("%s: no %q in\n%s", today, want, text)
		}
	}
}
