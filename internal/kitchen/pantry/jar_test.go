package pantry

import (
	"encoding/csv"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// Sizes of jars from both sides of what may be called by them: 2 ml, a twentieth
// of a fluid ounce, and the ends of a range (own limits, no source).
func TestJarsCalledBySizes(t *testing.T) {
	p := &Pantry{jars: []Jar{
		{Key: "a", Description: "500 ml", Nominal: unit.ML(500)}, {Key: "r", Description: "190-240 ml tall", Nominal: unit.ML(215)},
		{Key: "m", Description: "mine", Nominal: 9 * unit.FluidOunce, Measured: true}, {Key: "u", Description: "12 fl oz", Nominal: 12 * unit.FluidOunce},
		{Key: "w", Description: "12 fl oz wide", Nominal: 12 * unit.FluidOunce}, {Key: "l", Description: "a litre", Nominal: unit.ML(1000)},
	}}
	for words, key := range map[string]string{
		"498 ml": "a", "497 ml": "", "502 ml": "a", "503 ml": "", "50 cl": "a", "0.5 l": "a", "500 millilitres": "a", "500 milliliters": "a",
		"190 ml": "r", "189 ml": "", "240 ml": "r", "241 ml": "", "1 litre": "l", "1 liter": "l", "100 cl": "l",
		"9.04 oz": "m", "8.96 oz": "m", "9.06 oz": "", "8.94 oz": "", "12.04 oz": "u", "12.06 oz": "", "11.94 fl oz": "", "12 fluid ounces": "u", "12 oz wide mouth": "w", "12 oz regular mouth": "u",
		"500": "", "": "", "U": "u", "mine": "m", "Mine jar": "m", "500 g": "", strings.Repeat("x", 101): "",
	} {
		if j, ok := p.Jar(words); j.Key != key || ok != (key != "") {
			t.Errorf("%q: %q, want %q", words, j.Key, key)
		}
	}
	if _, ok := (&Pantry{jars: []Jar{{Key: "x", Description: "x"}}}).Jar("1 ml"); ok {
		t.Error("a jar of no size is called by one")
	}
}

// The headspace of a jar is a cylinder as wide as its mouth: the volumes that
// jars.csv and finishes.csv print, worked apart from this program.
func TestHeadspaceAgainstTheTables(t *testing.T) {
	tableOf("finishes").each(func(r row) {
		j := Jar{NamedBy: "brimful", Measured: true, Brimful: unit.ML(500), Mouth: unit.MM(r.number("mouth_inside_mm", 0))}
		about(t, r.text("finish")+" at 1/4 in", 500-j.FillVolume(unit.Inch/4).ML(), r.number("headspace_ml_at_6.35mm_(1/4in)", 0), 0.15)
		about(t, r.text("finish")+" at 1/2 in", 500-j.FillVolume(unit.Inch/2).ML(), r.number("headspace_ml_at_12.7mm_(1/2in)", 0), 0.15)
		j.NamedBy, j.Measured, j.Nominal = "fill", false, unit.ML(400)
		about(t, r.text("finish")+" by its name at 1/2 in", 400-j.FillVolume(unit.Inch/2).ML(), r.number("headspace_ml_at_6.35mm_(1/4in)", 0), 0.15)
	})
	if (Jar{Brimful: unit.ML(10), NamedBy: "brimful", Mouth: unit.MM(80)}).FillVolume(unit.Inch) != 0 {
		t.Error("less than nothing fits")
	}
	for measured, ml := range map[bool]float64{true: 210, false: 220.5} {
		about(t, "the most", Jar{Brimful: unit.ML(200), BrimfulMost: unit.ML(210), Measured: measured}.MostVolume().ML(), ml, 0.01)
	}
	for lid, mouth := range map[string]float64{"63mm lug": 63, " 70-450 CT": 60.3, "": 0, "no such": 0} {
		f, ok := Default().finish(lid)
		if ok != (mouth > 0) || ok && !strings.HasPrefix(strings.ReplaceAll(strings.TrimSpace(lid), "mm", ""), strings.Fields(f.Name)[0]) {
			t.Errorf("%q: %+v %v", lid, f, ok)
		}
	}
}

// Words are near by few letters, or by the last word; short words are not.
func TestNearness(t *testing.T) {
	for _, c := range []struct {
		a, b string
		d    int
	}{{"plum", "plums", 1}, {"balm", "lemon balm", 2}, {"lemon balm", "balm", 2}, {"fig", "dry fig", 4}, {"dry fig", "fig", 4}, {"plums", "xplums", 1}} {
		if d := nearness(c.a, c.b); d != c.d {
			t.Errorf("%s, %s: %d, want %d", c.a, c.b, d, c.d)
		}
	}
}

// The formulas hold to the ends of their ranges, and stay there beyond.
func TestFormulasEndWhereTheyEnd(t *testing.T) {
	for _, c := range [][4]float64{{65, 100, 65, 150}, {65, 0, 65, -5}, {95, 20, 99, 20}, {0, 20, -3, 20}} {
		if a, b := Density(c[0], c[1]), Density(c[2], c[3]); a != b {
			t.Errorf("%g at %g and %g at %g: %g, %g", c[0], c[1], c[2], c[3], a, b)
		}
	}
	for _, c := range [][4]float64{{65, 99, 65, 100}, {65, 0, 65, 1}, {94, 20, 95, 20}, {0, 20, 1, 20}} {
		if a, b := Density(c[0], c[1]), Density(c[2], c[3]); a == b {
			t.Errorf("%g at %g is as dense as %g at %g", c[0], c[1], c[2], c[3])
		}
	}
	about(t, "half a gram of water", MixDensity(Solids{Water: 0.5}, 0), 997.18, 0.01)
	a, b := MixDensity(Solids{Fat: 1}, 150), MixDensity(Solids{Fat: 1}, 151)
	if a != b || a == MixDensity(Solids{Fat: 1}, 149) || MixDensity(Solids{Fat: 1}, -40) == MixDensity(Solids{Fat: 1}, -39) {
		t.Error("Choi and Okos hold from -40 to 150 °C")
	}
	for m, same := range map[float64]float64{-431: -430, 5001: 5000} {
		if BoilingPoint(unit.Length(m)*unit.Metre) != BoilingPoint(unit.Length(same)*unit.Metre) {
			t.Errorf("%g m", m)
		}
	}
	if BoilingPoint(-429*unit.Metre) == BoilingPoint(-430*unit.Metre) || BoilingPoint(4999*unit.Metre) == BoilingPoint(5000*unit.Metre) {
		t.Error("the atmosphere ends too soon")
	}
}

// Own rows laid over twice stand once, and words beside a food's own name find it.
func TestOwnRowsTwice(t *testing.T) {
	one := Default().With([]Ingredient{{Name: "moon fruit", WaterG: 80, SolubleG: 10, OtherSolidsG: 10, SugarsG: -1}, {Name: "plums", Key: "damson_mine", WaterG: -1, SolubleG: 14, OtherSolidsG: -1, SugarsG: -1}}, nil)
	two := one.With([]Ingredient{{Name: "sun fruit"}}, nil)
	if len(two.own) != 3 || two.own[0].Name != "sun fruit" || len(one.own) != 2 || one.own[0].Key != "moon_fruit" || one.own[1].Key != "damson_mine" {
		t.Errorf("%d own rows, %d before", len(two.own), len(one.own))
	}
	for words, key := range map[string]string{"dry apricots": "apricot_dried", "powdered ginger": "ginger_ground", "crystallised ginger": "ginger_candied", "tinned tomatoes": "tomato_canned", "dry chopped apricots": "apricot_dried"} {
		if g, ok := two.Ingredient(words); !ok || g.Key != key {
			t.Errorf("%s: %q", words, g.Key)
		}
	}
	for _, x := range Default().UnsafeMethods() {
		if got, ok := Default().UnsafeMethod(x.Method); !ok || got != x {
			t.Errorf("%s: %+v", x.Method, got)
		}
	}
	if got, ok := Default().UnsafeMethod("boiling water"); ok || got != (UnsafeMethod{}) {
		t.Errorf("%+v", got)
	}
	if !(Ingredient{Class: "fruit", RefusePct: 20, Refuse: "Core"}).Whole("whole pineapple") || (Ingredient{Class: "fruit", RefusePct: 19.9, Refuse: "Core"}).Whole("whole apple") {
		t.Error("a fifth thrown away makes a whole fruit one as bought")
	}
	x := &table{name: "x", col: map[string]int{}}
	if x.parse(csv.NewReader(strings.NewReader(""))); x.err == nil {
		t.Error("an empty table is no fault")
	}
	for cells, n := range map[string]int{"60,0.5,,,,,,,s": 2, "60,,,,,,0.5,,s": 1, "49,,,,,,0.5,,s": 2, "50,,,,,,0.5,,s": 1} {
		if p, err := loadRow("boiling-elevation", headerOf(tableOf("boiling-elevation")), strings.Split(cells, ",")); err != nil || len(p.boiling) != n {
			t.Errorf("%s: %v %v", cells, p.boiling, err)
		}
	}
}
