package pantry

import (
	"testing"

	"jarmark/internal/kit/unit"
)

// A maker who measured the side of a built-in jar writes its key and what the tape
// says: what it holds stays the table's and from memory, and only the tape counts
// as measured. One who weighed it writes what it holds.
func TestOwnJarKeepsTheRestOfItsKey(t *testing.T) {
	base, ok := Default().Jar("us8")
	if !ok || base.Panel <= 0 || base.Circumference <= 0 {
		t.Fatal("no us8")
	}
	mm := func(v float64) unit.Length { return unit.MM(v) }
	for _, c := range []struct {
		name            string
		own             Jar
		measured, taped bool
		panel, around   unit.Length
		brim            unit.Volume
	}{
		{"taped", Jar{Key: "US8", Panel: mm(50), Circumference: mm(231)}, false, true, mm(50), mm(231), base.Brimful},
		{"by its diameter", Jar{Key: "us8", Panel: mm(50), Diameter: mm(73)}, false, true, mm(50), unit.MM(73 * 3.14159265), base.Brimful},
		{"panel alone", Jar{Key: "us8", Panel: mm(50)}, false, false, mm(50), base.Circumference, base.Brimful},
		{"weighed", Jar{Key: "us8", Brimful: unit.ML(251), NamedBy: "brimful"}, true, false, base.Panel, base.Circumference, unit.ML(251)},
		{"another", Jar{Key: "mine", Brimful: unit.ML(251), Panel: mm(40), NamedBy: "brimful"}, true, true, mm(40), 0, unit.ML(251)},
	} {
		j, ok := Default().With(nil, []Jar{c.own}).Jar(c.own.Key)
		if !ok || j.Measured != c.measured || j.Taped != c.taped || j.Panel != c.panel || j.Brimful != c.brim {
			t.Errorf("%s: %+v", c.name, j)
		}
		if d := j.Circumference - c.around; max(d, -d) > unit.Millimetre/100 {
			t.Errorf("%s: %.2f mm around, want %.2f", c.name, j.Circumference.MM(), c.around.MM())
		}
		if c.own.Key == "mine" {
			continue
		}
		if j.Key != "us8" || j.Lid != base.Lid || j.Mouth != base.Mouth || j.Nominal != base.Nominal {
			t.Errorf("%s: %+v, want the rest as %+v", c.name, j, base)
		}
		if again, _ := Default().With(nil, []Jar{c.own}).Jar("8 fl oz"); again.Panel != j.Panel {
			t.Errorf("%s: 8 fl oz is another jar, %+v", c.name, again)
		}
		if !c.measured && (j.FillVolume(unit.Inch/4) != base.FillVolume(unit.Inch/4) || j.MostVolume() != base.MostVolume()) {
			t.Errorf("%s: it holds %v and %v, the table's %v and %v", c.name, j.FillVolume(unit.Inch/4), j.MostVolume(), base.FillVolume(unit.Inch/4), base.MostVolume())
		}
	}
}
