package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// Directive 76/211/EEC Annex I no. 1.1 to 1.3, 2.4: of 340 g the tolerable negative
// error is 3 % (10.2 g), so T1 is 329.8 g and T2 319.6 g; 25 packs in a thousand
// may lie between (United Kingdom), 20 in Germany (FPackV s. 9(3)).
func TestDeclaredAgainstWeighed(t *testing.T) {
	many := func(n int, g float64, more ...float64) (out []float64) {
		for range n {
			out = append(out, g)
		}
		return append(out, more...)
	}
	for _, x := range []struct {
		name, set string
		weighed   []float64
		gift      bool
		want      string
	}{
		{"nothing weighed", "gb", nil, false, ""},
		{"the average holds", "gb", []float64{339, 341, 342}, false, ""},
		{"the average to the gram", "de", []float64{330, 340, 350}, false, ""},
		{"a tenth short on average", "gb", []float64{339.9, 340, 340}, false, "error:net-over-average"},
		{"nine grams short", "eu", []float64{330, 331, 332}, false, "error:net-over-average"},
		{"short, a present", "eu", []float64{330, 331, 332}, true, "note:net-over-average"},
		{"one jar of three below T1", "de", []float64{329.7, 351, 352}, false, "warning:net-jars-short"},
		{"one jar at T1", "de", []float64{329.8, 351, 352}, false, ""},
		{"one jar of forty below T1", "gb", many(39, 341, 329), false, ""},
		{"one jar of forty below T1, 2 %", "de", many(39, 341, 329), false, "warning:net-jars-short"},
		{"one jar of forty below T2", "gb", many(39, 341, 319), false, "warning:net-jars-short"},
	} {
		jar := cylinder(68, 60, 340)
		for _, g := range x.weighed {
			jar.Weighed = append(jar.Weighed, unit.Grams(g))
		}
		jar.Count = 60
		e := tester(t, x.set, "en", after, batchA1(62), jar)
		e.O = draft.Options{Gift: x.gift}
		e.net()
		if got := strings.TrimSpace(codes(e.L)); got != x.want || textOf(e, label.Net) != "340 g" {
			t.Errorf("%s: %q, want %q; %s", x.name, got, x.want, textOf(e, label.Net))
		}
		for _, d := range e.L {
			if !strings.Contains(d.Message, "jar ") || !strings.Contains(d.Cite, "no. 1.") || d.Hint == "" {
				t.Errorf("%s: %+v", x.name, d)
			}
		}
	}
}

// Regulation (EU) 1169/2011 Art 23(1), as the University of Reading has it: "(a) in
// units of volume in the case of liquid products; (b) in units of mass in the case
// of other products". Heights of figures, Directive 76/211/EEC Annex I no. 3.1: 3 mm
// to 200 ml, 4 mm to 1000 ml, 6 mm above.
func TestSyrupIsSoldByVolume(t *testing.T) {
	for _, x := range []struct {
		kind     batch.ProductType
		set      string
		ml, g    float64
		want     string
		height   float64
		perLitre string
		found    string
	}{
		{batch.Syrup, "eu", 250, 0, "250 ml", 4, "€18 per l", ""},
		{batch.Syrup, "de", 200.9, 0, "200 ml", 3, "22,50 €/l", ""},
		{batch.Syrup, "gb", 1500, 0, "1.5 l", 6, "£3 per l", ""},
		{batch.Syrup, "de", 1500, 0, "1,5 l", 6, "3,00 €/l", ""},
		{batch.Syrup, "gb", 0, 340, "340 g", 4, "", "warning:net-by-measure"},
		{batch.Syrup, "gb", 0, 0, "", 0, "", "error:no-net"},
		{batch.Jam, "gb", 250, 0, "", 0, "", "error:net-by-weight"},
	} {
		lang := map[bool]string{true: "de", false: "en"}[x.set == "de"]
		jar := cylinder(68, 60, x.g)
		jar.DeclVolume, jar.DeclText = unit.Volume(x.ml*float64(unit.Millilitre)), "so much"
		if x.ml+x.g == 0 {
			jar.DeclText = ""
		}
		currency := map[bool]string{true: "GBP", false: "EUR"}[x.set == "gb"]
		jar.Price = unit.Money{Minor: 450, Currency: currency}
		r := cooked(x.kind, "Raspberry syrup", 1000, 62, tabled(t, "en", "raspberries", 500), in{key: "sugar_white", name: "sugar", g: 500, kind: "sweetener"})
		e := tester(t, x.set, lang, after, r, jar)
		e.net()
		e.Price()
		b, _ := e.C.Find(label.Net)
		if got := strings.ReplaceAll(b.Text(), nbsp, " "); got != x.want || b.Min.Length != unit.MM(x.height) {
			t.Errorf("%+v: %q of %g mm", x, got, b.Min.Length.MM())
		}
		if !strings.Contains(codes(e.L), x.found) || x.found == "" && len(e.L) > 0 {
			t.Errorf("%+v: %s", x, codes(e.L))
		}
		if p, ok := e.C.Find(label.UnitPrice); x.perLitre != "" && (!ok || strings.ReplaceAll(p.Text(), nbsp, " ") != x.perLitre) {
			t.Errorf("%+v: %q", x, p.Text())
		}
	}
	jar := cylinder(68, 60, 0)
	jar.Jar.Brimful, jar.DeclVolume, jar.DeclText = 240*unit.Millilitre, 250*unit.Millilitre, "250 ml"
	e := tester(t, "gb", "en", after, cooked(batch.Syrup, "Raspberry syrup", 1000, 62, tabled(t, "en", "raspberries", 500)), jar)
	e.net()
	if !strings.Contains(codes(e.L), "error:net-over-jar") {
		t.Error("more than the jar holds: " + codes(e.L))
	}
}
