package pantry

import (
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
