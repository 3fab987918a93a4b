package eu

import (
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

func ymd(y, m, d int) unit.Date { return unit.Date{Year: y, Month: m, Day: d} }

// Worked D1 to D3 (Regulation (EU) 1169/2011 Art 24, Annex X(1); rounding down
// is our own choice).
func TestDates(t *testing.T) {
	tests := []struct {
		name       string
		best, made unit.Date
		form, want string
	}{
		{"D1", ymd(2027, 11, 25), ymd(2026, 11, 25), "day", "Best before 25 11 2027"},
		{"D2", ymd(2027, 11, 25), ymd(2026, 11, 25), "month", "Best before end 10 2027"},
		{"D3", ymd(2027, 11, 30), ymd(2026, 11, 25), "month", "Best before end 11 2027"},
		{"leap day", ymd(2028, 2, 29), ymd(2027, 2, 1), "month", "Best before end 02 2028"},
		{"January falls back a year", ymd(2028, 1, 30), ymd(2027, 2, 1), "month", "Best before end 12 2027"},
		{"a day more is a month", ymd(2027, 2, 26), ymd(2026, 11, 25), "month", "Best before end 01 2027"},
		{"three months show the day", ymd(2027, 2, 25), ymd(2026, 11, 25), "month", "Best before 25 02 2027"},
	}
	for _, c := range tests {
		e := tester(t, "gb", "en", after, batchA1(62), cook.JarPlan{})
		d := dateFor(c.best, c.made, c.form)
		if got := e.dateText(d, false); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	if got := monthDown(ymd(2027, 11, 25)); got != ymd(2027, 10, 31) {
		t.Errorf("the last whole month before 25 November ends on %v", got)
	}
	use := tester(t, "gb", "en", after, batchA1(62), cook.JarPlan{})
	use.R.Batch.UseBy = true
	use.date()
	if got := textOf(use, label.Date); got != "Use by 25 11 2027" {
		t.Errorf("use by: %q", got)
	}
	// BGBl. LMKV s. 7: "mindestens haltbar bis Ende".
	de := tester(t, "eu", "de", after, batchA1(62), cook.JarPlan{})
	if got := de.dateText(dateFor(ymd(2027, 11, 25), ymd(2026, 11, 25), "month"), false); got != "mindestens haltbar bis Ende 10/2027" {
		t.Errorf("de: %q", got)
	}
}

// Regulation (EU) 1169/2011 Art 13(2), (3): 1.2 mm, or 0.9 mm where the largest
// surface is below 80 cm²; the jars are the boundary jars of the reference.
func TestXHeight(t *testing.T) {
	tests := []struct {
		d, h float64
		want int
	}{{50, 40, 900}, {68, 60, 1200}, {44, 30, 900}, {0, 0, 1200}}
	for _, c := range tests {
		e := tester(t, "eu", "en", after, batchA1(62), cylinder(c.d, c.h, 100))
		if got := e.law.LetterHeight(sideArea(e.Jar)); got != unit.Length(c.want)*unit.Micrometre {
			t.Errorf("%g x %g: %g mm", c.d, c.h, got.MM())
		}
	}
	e := tester(t, "eu", "en", after, batchA1(62), cook.JarPlan{})
	if e.law.LetterHeight(8000) != unit.MM(1.2) || e.law.LetterHeight(7999.9) != unit.MM(0.9) {
		t.Error("80 cm² itself is not small")
	}
}

// Directive 76/211/EEC; German FPackV s. 38(2), Austrian FPVO s. 11.
func TestDigitHeights(t *testing.T) {
	e := tester(t, "eu", "en", after, batchA1(62), cook.JarPlan{})
	for g, mm := range map[int]float64{5: 2, 50: 2, 51: 3, 113: 3, 125: 3, 200: 3, 227: 4, 340: 4, 454: 4, 1000: 4, 1001: 6} {
		if got := e.law.DigitHeight(unit.Mass(g) * unit.Gram); got != unit.MM(mm) {
			t.Errorf("%d g: %g mm, want %g", g, got.MM(), mm)
		}
	}
}

// Metric only, rounded down, number and unit kept together; 10 oz is 283.495 g
// (NIST Handbook 44 App. C). Digits get their height, name and quantity share a
// field of view (Art 13(5)).
func TestNet(t *testing.T) {
	jar := cylinder(68, 60, 0)
	jar.Declared = 10 * unit.Ounce
	e := tester(t, "gb", "en", after, batchA1(62), jar)
	e.net()
	b := e.C.Blocks[0]
	if b.Text() != "283\u00a0g" || b.Min != (label.Height{On: label.Digit, Length: unit.MM(4)}) || len(b.With) != 1 || b.With[0] != label.Identity || !b.Required {
		t.Errorf("%+v", b)
	}
	for g, want := range map[float64]string{1250: "1,25\u00a0kg", 999.9: "999\u00a0g", 1000: "1\u00a0kg"} {
		if got := mass(unit.Grams(g), ","); got != want {
			t.Errorf("%g: %q", g, got)
		}
	}
	none := tester(t, "gb", "en", after, batchA1(62), cook.JarPlan{Fill: 300 * unit.Gram})
	none.net()
	if codes(none.L) != "error:no-net" || len(none.C.Blocks) != 0 {
		t.Errorf("computed content declared: %s", codes(none.L))
	}
	weighed := tester(t, "gb", "en", after, batchA1(62), cook.JarPlan{Count: 2, Weighed: []unit.Mass{unit.Grams(228.9), unit.Grams(227.4)}})
	weighed.net()
	if textOf(weighed, label.Net) != "228 g" {
		t.Errorf("weighed: %q", textOf(weighed, label.Net))
	}
}

// Worked Q1 to Q3 (Regulation (EU) 1169/2011 Art 22, Annex VIII(4)(a)).
func TestQUID(t *testing.T) {
	tom := func(g float64) in {
		return in{key: "tomato", name: "tomatoes", g: g, kind: "vegetable", class: "general"}
	}
	rest := in{key: "sugar_white", name: "sugar", g: 1000, kind: "sweetener"}
	onion := in{key: "onion", name: "onions", g: 800, kind: "vegetable"}
	tests := []struct {
		name, product   string
		list            []in
		statement, item string
	}{
		{"Q1", "Tomato chutney", []in{tom(3000), rest}, "prepared with 120 g tomatoes per 100 g", "Tomatoes, Sugar"},
		{"Q2", "Tomato and onion chutney", []in{tom(2250), rest, onion}, "prepared with 90 g tomatoes and 32 g onions per 100 g", "Tomatoes, Sugar, Onions"},
		{"Q3", "Tomato chutney", []in{tom(1500), rest, onion}, "", "Tomatoes (60 %), Sugar, Onions"},
	}
	for _, c := range tests {
		e := tester(t, "gb", "en", after, cooked(batch.Chutney, c.product, 2500, 0, c.list...), cook.JarPlan{})
		e.list()
		if got := textOf(e, label.Statement); got != c.statement {
			t.Errorf("%s: statement %q, want %q", c.name, got, c.statement)
		}
		if got := textOf(e, label.Ingredients); got != "Ingredients: "+c.item {
			t.Errorf("%s: list %q", c.name, got)
		}
	}
	// Under the jam rules the fruit has its own statement; the whisky is named.
	jam := cooked(batch.Marmalade, "Orange marmalade with whisky", 1000, 62, fruitIn("orange_whole", "oranges", 400, "general"),
		in{key: "sugar_white", name: "sugar", g: 650, kind: "sweetener"}, in{key: "spirit_80proof", name: "whisky", g: 20, kind: "alcohol"})
	jam.Lines[2].Row.Own = true
	e := tester(t, "gb", "en", after, jam, cook.JarPlan{})
	e.list()
	if got := textOf(e, label.Ingredients); got != "Ingredients: Sugar, Oranges, Whisky (2 %)" {
		t.Errorf("whisky: %q", got)
	}
}
