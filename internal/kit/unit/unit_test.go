package unit

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

// 1 in = 25.4 mm exactly: NIST Handbook 44, Appendix C.
func TestParseLength(t *testing.T) {
	for in, want := range map[string]Length{
		"1/4 in": 6_350_000, "6.35 mm": 6_350_000, `1/16"`: 1_587_500, "0 mm": 0, "-0.4 mm": -400_000,
		"2 3/8 inches": 60_325_000, "5 ft 2 in": 1_574_800_000, "5' 2\"": 1_574_800_000, "1200 ft": 365_760_000_000, "305 m": 305_000_000_000,
		"2,5 cm": 25_000_000, "10 yd": 9_144_000_000,
	} {
		if got, err := ParseLength(in); err != nil || got != want {
			t.Errorf("%q: got %d, %v, want %d", in, got, err, want)
		}
	}
	for in, want := range map[string]string{
		"": "not a length", "6": "has no unit", "6 mn": "not a unit of length", "6 kg": "not a unit of length",
		"1,200 ft": "may mean", "9999999999 m": "too long", "x": "start with a number", "--3 mm": "is negative",
	} {
		if _, err := ParseLength(in); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: got %v, want %q", in, err, want)
		}
	}
}

// 220 °F = 104.4 °C, the sea-level jelly point of the USDA Complete Guide to
// Home Canning, Guide 7; °C = (°F - 32) × 5/9 (NIST SP 811, B.9).
func TestParseTemp(t *testing.T) {
	for in, want := range map[string]float64{
		"104 C": 104, "104.5 °C": 104.5, "104,5°C": 104.5, "220 F": 940.0 / 9, "220°F": 940.0 / 9, "212 degrees F": 100,
		"-18 °C": -18, "0 °F": -160.0 / 9, "104℃": 104,
	} {
		if got, err := ParseTemp(in); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("%q: got %v, %v, want %v", in, got, err, want)
		}
	}
	for _, in := range []string{"", "104", "104 K", "nan C", "5000 C", "C", "1e3 C"} {
		if got, err := ParseTemp(in); err == nil {
			t.Errorf("%q: got %v, want an error", in, got)
		}
	}
}

func TestDates(t *testing.T) {
	d, err := ParseDate("2026-06-14")
	if err != nil || d != (Date{2026, 6, 14}) || d.String() != "2026-06-14" {
		t.Fatal(d, err)
	}
	// ISO 8601 ordinal date of 14 June in a common year: 165.
	if d.YearDay() != 165 {
		t.Error(d.YearDay())
	}
	for _, c := range []struct {
		from string
		n    int
		want string
	}{{"2026-01-31", 1, "2026-02-28"}, {"2028-01-31", 1, "2028-02-29"}, {"2026-06-14", 12, "2027-06-14"}, {"2026-11-30", 3, "2027-02-28"}, {"2026-03-31", -1, "2026-02-28"}} {
		from, _ := ParseDate(c.from)
		if got := from.AddMonths(c.n).String(); got != c.want {
			t.Errorf("%s + %d months = %s, want %s", c.from, c.n, got, c.want)
		}
	}
	if got := d.AddDays(20).String(); got != "2026-07-04" {
		t.Error(got)
	}
	if !d.Before(d.AddDays(1)) || d.Before(d) || d.DaysUntil(d.AddDays(400)) != 400 {
		t.Error("order of days")
	}
	if (Date{}).String() != "" || !(Date{}).AddMonths(3).IsZero() {
		t.Error("the zero date must stay not given")
	}
	for _, in := range []string{"", "2026-02-29", "2026-13-01", "14.6.2026", "06/14/2026", "2026-6-14", "0000-01-01", "2026-06-14T10:00"} {
		if d, err := ParseDate(in); err == nil {
			t.Errorf("%q: got %v, want an error", in, d)
		}
	}
}

func TestMoney(t *testing.T) {
	for _, c := range []struct {
		in, kitchen string
		minor       int64
		cur, out    string
	}{
		{"9", "USD", 900, "USD", "$9.00"}, {"9.50", "USD", 950, "USD", "$9.50"}, {"$9.50", "USD", 950, "USD", "$9.50"},
		{"$9.50", "CAD", 950, "CAD", "CAD 9.50"}, {"£4", "GBP", 400, "GBP", "£4.00"}, {"8 EUR", "USD", 800, "EUR", "€8.00"},
		{"EUR 8,50", "USD", 850, "EUR", "€8.50"}, {"0", "USD", 0, "USD", "$0.00"}, {"500 JPY", "USD", 500, "JPY", "JPY 500"},
		{"$49,000.00", "USD", 4900000, "USD", "$49,000.00"}, {"1.234,50 €", "USD", 123450, "EUR", "€1,234.50"}, {"49\u00a0000,00\u00a0€", "USD", 4900000, "EUR", "€49,000.00"},
		{"999999.99", "USD", 99999999, "USD", "$999,999.99"}, {"1000 JPY", "USD", 1000, "JPY", "JPY 1,000"},
	} {
		m, err := ParseMoney(c.in, c.kitchen)
		if err != nil || m.Minor != c.minor || m.Currency != c.cur || m.String() != c.out || strings.ReplaceAll(c.out, ",", "") != m.Plain() {
			t.Errorf("%q: got %+v %q, %v", c.in, m, m.String(), err)
		}
	}
	for _, in := range []string{"", "-9", "nine", "9.555", "1e9", "9 apples", "1,500", "99999999999", "nan", "$", "1/2", "5.5 JPY", "1,23.50", "12,345.5", "0,123.50", "1,234,50", "1,234.500"} {
		if m, err := ParseMoney(in, "USD"); err == nil {
			t.Errorf("%q: got %+v, want an error", in, m)
		}
	}
}

// What is below nothing keeps its sign in front of all.
func TestMoneyBelowNought(t *testing.T) {
	for m, want := range map[Money]string{{-123450, "USD"}: "-$1,234.50", {-5, "EUR"}: "-€0.05", {-700, "CHF"}: "-CHF 7.00", {math.MinInt64, "USD"}: "-$92,233,720,368,547,758.08", {100, ""}: "1.00"} {
		if got := m.String(); got != want {
			t.Errorf("%+v: %q, want %q", m, got, want)
		}
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Grams(289).Format(Metric), "289 g"}, {Grams(1850).Format(Metric), "1.85 kg"}, {Grams(999.9).Format(Metric), "1 kg"},
		{Grams(2.5).Format(Metric), "2.5 g"}, {Grams(0.25).Format(Metric), "0.25 g"},
		{(10 * Ounce).Format(US), "10 oz"}, {Grams(289.2).Format(US), "10.2 oz"}, {(2*Pound + 3*Ounce).Format(US), "2 lb 3 oz"},
		{(16 * Ounce).Format(US), "1 lb"}, {Grams(1).Format(US), "0.04 oz"},
		{(Cup / 2).Format(US), "1/2 cup"}, {(5*Cup + Cup/2).Format(US), "5 1/2 cups"}, {(Cup + 2*Tablespoon).Format(US), "1 cup + 2 tbsp"},
		{(2 * Teaspoon).Format(US), "2 tsp"}, {(3 * Teaspoon).Format(US), "1 tbsp"}, {(Teaspoon / 4).Format(US), "1/4 tsp"},
		{ML(250).Format(Metric), "250 ml"}, {ML(1500).Format(Metric), "1.5 l"}, {ML(4.9).Format(Metric), "4.9 ml"},
		{(8 * FluidOunce).FluidOunces(), "8 fl oz"},
		{(Inch / 4).Format(US), "1/4 in"}, {(2*Inch + 3*Inch/8).Format(US), "2 3/8 in"}, {(1200 * Foot).Format(US), "1200 ft"},
		{(Inch / 4).Format(Metric), "6.4 mm"}, {(305 * Metre).Format(Metric), "305 m"}, {(1500 * Millimetre).Format(Metric), "1.5 m"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}

func TestAddMonthsKeepsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := Date{2026, 1, 1}.AddDays(rapid.IntRange(0, 4000).Draw(t, "days"))
		n := rapid.IntRange(1, 60).Draw(t, "months")
		later := d.AddMonths(n)
		if !d.Before(later) || later.Day > d.Day {
			t.Fatalf("%v + %d months = %v", d, n, later)
		}
	})
}

// Rounded down, never up: 8 oz is 226.796 g (NIST Handbook 44, Appendix C).
func TestInGrams(t *testing.T) {
	for d, want := range map[int]string{0: "226 g", 1: "226.7 g", 2: "226.79 g", 3: "226.796 g"} {
		if got := (8 * Ounce).InGrams(d); got != want {
			t.Errorf("%d decimals: %s, want %s", d, got, want)
		}
	}
	if got := (10 * Gram).InGrams(1); got != "10.0 g" {
		t.Error(got)
	}
}
