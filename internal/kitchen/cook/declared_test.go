package cook

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// What a jar of 8 fl oz can hold: by its name 236.6 ml (NIST Handbook 44,
// Appendix C), to the brim at most 270 ml (jars.csv, from memory); a solution
// of 65 °Brix weighs 1.317 g/ml at 20 °C (ICUMSA sucrose table). So 10.6 oz fill
// it, 13 oz do not go under the lid, and 14 oz in no way.
func TestDeclaredAgainstTheJar(t *testing.T) {
	own := pantry.Jar{Key: "my8", Description: "own", NamedBy: "brimful", Brimful: 330 * unit.Millilitre, Mouth: 60 * unit.Millimetre, Measured: true}
	for _, c := range []struct {
		jar, declared, code string
		net                 string
	}{
		{"us8", "15 oz", "declared-over-brim", ""}, {"us8", "14 oz", "declared-over-brim", ""}, {"us8", "425 g", "declared-over-brim", ""},
		{"us8", "12 oz", "declared-over-fill", ""}, {"us8", "13 oz", "declared-over-fill", ""}, {"us8", "10 oz", "", ""}, {"us8", "9 oz", "", ""},
		{"us8", "8 oz", "declared-fluid-ounces", ""}, {"us8", "227 g", "", ""}, {"us4", "4 oz", "declared-fluid-ounces", ""}, {"us8", "8 oz", "declared-fluid-ounces", "10.6 oz"},
		{"us8", "5 oz", "declared-under-fill", ""}, {"us8", "15 oz", "", "15.1 oz"}, // weighed: the scale knows better than the table
		{"my8", "14 oz", "", ""}, {"my8", "17 oz", "declared-over-brim", ""},
	} {
		b := demo(t)
		q, err := unit.ParseQuantity(c.declared)
		if err != nil {
			t.Fatal(err)
		}
		f := batch.Fill{Path: "fill[0]", Jar: c.jar, Count: -1, Sealed: -1, Declared: q}
		if c.net != "" {
			m, _ := unit.ParseMass(c.net)
			f.Net = []unit.Mass{m, m, m}
		}
		b.Fills = []batch.Fill{f}
		k := &batch.Kitchen{Units: unit.US, Supplies: batch.Supplies{Tags: -1, Boxes: -1, Ribbon: -1}}
		_, l := Compute(b, k, pantry.Default().With(nil, []pantry.Jar{own}))
		var got []string
		for _, d := range l {
			if strings.HasPrefix(d.Code, "declared-") {
				got = append(got, d.Code)
			}
		}
		if strings.Join(got, " ") != c.code {
			t.Errorf("%s declared on %s, weighed %q: %v, want %q", c.declared, c.jar, c.net, got, c.code)
		}
	}
}

// The volume to the brim is the middle of the table's range for computing, its
// upper end for judging.
func TestBrimfulIsTheMiddleOfItsRange(t *testing.T) {
	for key, want := range map[string][2]float64{"us8": {262.5, 270}, "us4": {133, 138}, "lug106": {109, 112}} {
		j, _ := pantry.Default().Jar(key)
		if j.Brimful.ML() != want[0] || j.BrimfulMost.ML() != want[1] || j.MostVolume() <= j.BrimfulMost {
			t.Errorf("%s: %.1f to %.1f ml", key, j.Brimful.ML(), j.BrimfulMost.ML())
		}
	}
	if own := (pantry.Jar{Brimful: 250 * unit.Millilitre, Measured: true}); own.MostVolume() != own.Brimful {
		t.Error("a measured jar holds what was measured")
	}
}
