package unit

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

// Factors: NIST Handbook 44, Appendix C (1 lb = 453.59237 g and
// 1 gal = 231 cu in exactly, 1 cu in = 16.387064 mL).
func TestParseQuantity(t *testing.T) {
	for _, c := range []struct {
		in    string
		dim   Dimension
		n     int64 // ng or fl
		count float64
		piece string
	}{
		{"1.8 kg", ByMass, 1_800_000_000_000, 0, ""},
		{"1,8 kg", ByMass, 1_800_000_000_000, 0, ""},
		{"1.8kg", ByMass, 1_800_000_000_000, 0, ""},
		{"0,500 kg", ByMass, 500_000_000_000, 0, ""},
		{"1 oz", ByMass, 28_349_523_125, 0, ""},
		{"16 OZ.", ByMass, 453_592_370_000, 0, ""},
		{"2 lb 3 oz", ByMass, 2*453_592_370_000 + 3*28_349_523_125, 0, ""},
		{"2 lbs, 3 oz", ByMass, 2*453_592_370_000 + 3*28_349_523_125, 0, ""},
		{"250 mg", ByMass, 250_000_000, 0, ""},
		{"1 cup", ByVolume, 236_588_236_500_000, 0, ""},
		{"1/2 cup", ByVolume, 118_294_118_250_000, 0, ""},
		{"1 1/2 cups", ByVolume, 354_882_354_750_000, 0, ""},
		{"2-1/2 cups", ByVolume, 591_470_591_250_000, 0, ""},
		{"5½ cups", ByVolume, 1_301_235_300_750_000, 0, ""},
		{"¾ c", ByVolume, 177_441_177_375_000, 0, ""},
		{"1⁄3 cup", ByVolume, 78_862_745_500_000, 0, ""},
		{"1/3 Cup", ByVolume, 78_862_745_500_000, 0, ""},
		{"2 tbsp", ByVolume, 29_573_529_562_500, 0, ""},
		{"1 tsp.", ByVolume, 4_928_921_593_750, 0, ""},
		{"1/8 teaspoon", ByVolume, 616_115_199_219, 0, ""},
		{"8 fl. oz.", ByVolume, 236_588_236_500_000, 0, ""},
		{"1 pint", ByVolume, 473_176_473_000_000, 0, ""},
		{"1 quart", ByVolume, 946_352_946_000_000, 0, ""},
		{"1 gallon", ByVolume, 3_785_411_784_000_000, 0, ""},
		{"1 cup + 2 tbsp", ByVolume, 266_161_766_062_500, 0, ""},
		{"1 cup and 2 tablespoons", ByVolume, 266_161_766_062_500, 0, ""},
		{"2.5 dl", ByVolume, 250_000_000_000_000, 0, ""},
		{"25 cl", ByVolume, 250_000_000_000_000, 0, ""},
		{".5 L", ByVolume, 500_000_000_000_000, 0, ""},
		{"3 lemons", ByCount, 0, 3, "lemons"},
		{"2", ByCount, 0, 2, ""},
		{"1 large egg", ByCount, 0, 1, "large egg"},
		{"1/2 lemon", ByCount, 0, 0.5, "lemon"},
		{"4 eggs", ByCount, 0, 4, "eggs"},
		{"2 vanilla pods", ByCount, 0, 2, "vanilla pods"},
		{"1000 kg", ByMass, int64(MaxMass), 0, ""},
	} {
		q, err := ParseQuantity(c.in)
		if err != nil {
			t.Errorf("%q: %v", c.in, err)
			continue
		}
		got := int64(q.Mass) + int64(q.Volume)
		if q.Dim != c.dim || got != c.n || q.Count != c.count || q.Piece != c.piece || q.Text != c.in {
			t.Errorf("%q: got %+v", c.in, q)
		}
	}
}

func TestRefusedQuantities(t *testing.T) {
	for _, c := range []struct{ in, msg, hint string }{
		{"", "the amount is empty", "number and a unit"},
		{"  ", "the amount is empty", "number and a unit"},
		{"-1 kg", "is negative", "minus"},
		{"−1 kg", "is negative", "minus"},
		{"0 kg", "is nothing", "leave it out"},
		{"0", "is nothing", "leave the ingredient out"},
		{"nan kg", "does not start with a number", ""},
		{"inf", "does not start with a number", ""},
		{"1e12 kg", "is not a unit", ""},
		{"1000000000000 kg", "more than 1000 kg", "check"},
		{"1001 l", "more than 1000 l", "check"},
		{"1000000000000 jars", "more than 100000 pieces", "check"},
		{"1,500 g", "thousands or a decimal comma", "write 1500 g or 1.5 g"},
		{"1.500 g", "thousands or a decimal point", "write 1500 g, or 1.5 g"},
		{"12.250 ml", "thousands or a decimal point", "write 12250 ml, or 12.25 ml"},
		{"1,500,000 g", "thousands or a decimal comma", "write 1500000 g"},
		{"1.8.2 kg", "is not a number", ""},
		{"1/0 cup", "divides by zero", ""},
		{"1 3/2 cups", "is not a mixed number", ""},
		{"2-3 lemons", "is a range", ""},
		{"2 to 3 lemons", "is a range", ""},
		{"4 cupz", `"cupz" is not a unit`, "did you mean cups?"},
		{"2 tbps", `"tbps" is not a unit`, "did you mean tbsp?"},
		{"500 gr", `"gr" is not a unit`, "did you mean g?"},
		{"3 T", "tablespoons or teaspoons", "tbsp"},
		{"2 kq", `"kq" is not a unit`, "weight"},
		{"4 cups strawberries", `has "strawberries" after the unit`, "name"},
		{"4 cups, of strawberries", `has "of strawberries" after the unit`, "form"},
		{"1.8 kg?", "is not a unit", ""},
		{"1 cup 100 g", "mixes weight and volume", ""},
		{"2 lb 3", "without a unit", ""},
		{"1 kg\x00", "control character", ""},
		{"3 lemons #", "after the number", ""},
		{"3 lemons #1", "is not a unit", ""},
		{strings.Repeat("9", 500), "is not an amount", ""},
		{"1\u00a0kg\n2", "control character", ""},
	} {
		_, err := ParseQuantity(c.in)
		var pe *ParseError
		if !errors.As(err, &pe) {
			t.Errorf("%q: got %v, want a ParseError", c.in, err)
			continue
		}
		if !strings.Contains(pe.Msg, c.msg) || !strings.Contains(pe.Hint, c.hint) || pe.Hint == "" {
			t.Errorf("%q: got %q hint %q, want %q hint %q", c.in, pe.Msg, pe.Hint, c.msg, c.hint)
		}
	}
}

func TestMassAndVolumeAreToldApart(t *testing.T) {
	if _, err := ParseMass("8 fl oz"); err == nil || !strings.Contains(err.Error(), "is a volume") {
		t.Error(err)
	}
	if _, err := ParseMass("10"); err == nil || !strings.Contains(err.Error(), "has no unit") {
		t.Error(err)
	}
	if _, err := ParseVolume("8 oz"); err == nil || !strings.Contains(err.Error(), "is a weight") {
		t.Error(err)
	}
	if _, err := ParseVolume("3 jars"); err == nil || !strings.Contains(err.Error(), "is a count") {
		t.Error(err)
	}
}

// What Kitchen prints, ParseVolume reads back within the step it rounds to.
func TestKitchenReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := Volume(rapid.Int64Range(int64(Teaspoon)/8, int64(20*Litre)).Draw(t, "v"))
		back, err := ParseVolume(v.Kitchen())
		if err != nil {
			t.Fatalf("%q: %v", v.Kitchen(), err)
		}
		step := Teaspoon / 8
		switch {
		case v >= 4*Cup:
			step = Cup / 4
		case v >= Tablespoon:
			step = Tablespoon / 2
		}
		if d := back - v; d > step/2+1000 || d < -step/2-1000 {
			t.Fatalf("%d fl prints as %q, %d fl off", v, v.Kitchen(), d)
		}
	})
}

// Exact metric texts read back to the printed precision.
func TestExactReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := Mass(rapid.Int64Range(int64(Gram)/1000, int64(100*Kilogram)).Draw(t, "m"))
		back, err := ParseMass(m.Exact(Metric))
		off := Gram / 2000
		if m >= Gram {
			off = Gram / 200
		}
		if d := back - m; err != nil || d > off || d < -off {
			t.Fatalf("%q: %v, %d ng off", m.Exact(Metric), err, d)
		}
		back, err = ParseMass(m.Format(US))
		if d := back - m; m >= Ounce && (err != nil || d > Ounce/20+100 || d < -Ounce/20-100) {
			t.Fatalf("%q: %v, %d ng off", m.Format(US), err, d)
		}
	})
}

func FuzzParseQuantity(f *testing.F) {
	for _, s := range []string{"1.8 kg", "2 lb 3 oz", "5½ cups", "3 lemons", "1,500 g", "1⁄0", "2-1/2 tsp", "1 cup + 2 tbsp", "½½"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		q, err := ParseQuantity(s)
		if err != nil {
			var pe *ParseError
			if !errors.As(err, &pe) || pe.Msg == "" || pe.Hint == "" {
				t.Fatalf("%q: poor error %#v", s, err)
			}
			return
		}
		ok := q.Dim == ByMass && q.Mass > 0 && q.Mass <= MaxMass ||
			q.Dim == ByVolume && q.Volume > 0 && q.Volume <= MaxVolume ||
			q.Dim == ByCount && q.Count > 0 && q.Count <= MaxCount
		if !ok {
			t.Fatalf("%q: out of range: %+v", s, q)
		}
		again, err := ParseQuantity(q.Text)
		if err != nil || again != q {
			t.Fatalf("%q does not read the same twice: %+v, %+v, %v", s, q, again, err)
		}
	})
}

func FuzzParseOthers(f *testing.F) {
	for _, s := range []string{"1/4 in", "-0.4 mm", "220 °F", "2026-02-29", "$9.50", "8 EUR", "£4", "5' 2\""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var errs []error
		_, err := ParseLength(s)
		errs = append(errs, err)
		_, err = ParseTemp(s)
		errs = append(errs, err)
		d, err := ParseDate(s)
		errs = append(errs, err)
		if err == nil && d.String() != strings.TrimSpace(s) {
			t.Fatalf("%q reads as %v", s, d)
		}
		m, err := ParseMoney(s, "USD")
		errs = append(errs, err)
		if err == nil && (m.Minor < 0 || m.Minor > MaxMinor || m.Currency == "") {
			t.Fatalf("%q reads as %+v", s, m)
		}
		for _, err := range errs {
			var pe *ParseError
			if err != nil && (!errors.As(err, &pe) || pe.Hint == "") {
				t.Fatalf("%q: poor error %v", s, err)
			}
		}
	})
}

// An amount said twice in two systems is not their sum; within one system it is.
func TestTwoSystemsAreNoSum(t *testing.T) {
	for _, s := range []string{"7 lb 3178 g", "1 tsp 5 ml", "1 cup + 240 ml", "2 lb + 500 g", "1/3 cup 78 ml", "1 kg 2 lb"} {
		if q, err := ParseQuantity(s); err == nil {
			t.Errorf("%s is %v", s, q)
		}
	}
	for s, want := range map[string]Mass{"2 lb 3 oz": 2*Pound + 3*Ounce, "1 kg 200 g": 1200 * Gram, "1 Pfund 100 g": 600 * Gram} {
		if q, err := ParseQuantity(s); err != nil || q.Mass != want {
			t.Errorf("%s: %v %v", s, q.Mass, err)
		}
	}
	if q, err := ParseQuantity("1 cup + 2 tbsp"); err != nil || q.Volume != Cup+2*Tablespoon {
		t.Errorf("%v %v", q, err)
	}
}
