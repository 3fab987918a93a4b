package eu

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// The nominal quantity is what is declared, in whole grams; else what weighed jars
// bear out, one jar too, with what the packers' rules say of them (Directive
// 76/211/EEC Annex I no. 1, 4). A volume of what is no liquid is none (Regulation
// (EU) 1169/2011 Art 23(1)), nor is a content worked out, but on a present, where
// it is rounded down to ten grams (our own choice).
func TestWhereTheNetQuantityComesFrom(t *testing.T) {
	grams := func(list ...float64) (out []unit.Mass) {
		for _, g := range list {
			out = append(out, unit.Grams(g))
		}
		return out
	}
	for _, x := range []struct {
		name     string
		declared float64
		weighed  []unit.Mass
		volume   unit.Volume
		fill     float64
		gift     bool
		want     string
		found    string
	}{
		{name: "declared", declared: 340, want: "340 g"},
		{name: "one gram", declared: 1, want: "1 g"},
		{name: "a gram and a half", declared: 1.5, want: "1 g"},
		{name: "less than a gram", declared: 0.9, found: "error:no-net"},
		{name: "one jar weighed", weighed: grams(231.4), want: "231 g", found: "note:net-from-weights"},
		{name: "weighed before the volume", weighed: grams(231.4), volume: unit.Millilitre, want: "231 g", found: "note:net-from-weights"},
		{name: "jars that bear out nothing", weighed: grams(0.4, 0.3), found: "error:weight-too-small"},
		{name: "a volume", volume: 250 * unit.Millilitre, fill: 347, found: "error:net-by-weight"},
		{name: "a volume, a present", volume: 250 * unit.Millilitre, fill: 347, gift: true, found: "note:net-by-weight"},
		{name: "worked out", fill: 347, found: "error:no-net"},
		{name: "worked out, a present", fill: 347, gift: true, want: "340 g", found: "note:no-net"},
		{name: "a present of a spoonful", fill: 9, gift: true, found: "note:no-net"},
	} {
		jar := cylinder(68, 60, x.declared)
		jar.Weighed, jar.DeclVolume, jar.DeclText, jar.Fill = x.weighed, x.volume, "a volume", unit.Grams(x.fill)
		e := tester(t, "eu", "en", after, batchA1(62), jar)
		e.O = draft.Options{Gift: x.gift}
		e.net()
		if got := textOf(e, label.Net); got != x.want || !strings.Contains(codes(e.L), x.found) || x.found == "" && len(e.L) > 0 || (e.NetMass > 0) != (x.want != "") {
			t.Errorf("%s: %q, want %q; %s", x.name, got, x.want, codes(e.L))
		}
	}
}

// Directive 76/211/EEC Annex I no. 2.4: the tolerable error of 200 to 300 g is 9 g,
// so a jar of 200 g among others of 260 g bears out 209 g and no more.
func TestOneLightJarLowersTheNetQuantity(t *testing.T) {
	jar := cylinder(68, 60, 0)
	for range 9 {
		jar.Weighed = append(jar.Weighed, unit.Grams(260))
	}
	for want, light := range map[string]float64{"260 g": 260, "209 g": 200} {
		one := jar
		one.Weighed = append(append([]unit.Mass{}, jar.Weighed...), unit.Grams(light))
		e := tester(t, "eu", "en", after, batchA1(62), one)
		if e.net(); textOf(e, label.Net) != want {
			t.Errorf("beside a jar of %g g: %s", light, textOf(e, label.Net))
		}
	}
}

// Art 16(2): below 10 cm²; Annex V(18): below 25 cm²; Art 13(3): below 80 cm².
// A surface of just so much is not below it.
func TestSurfacesOfJustSoMuch(t *testing.T) {
	just := func(around, high float64) cook.JarPlan {
		return cook.JarPlan{Declared: unit.Grams(20), Count: 1, Jar: pantry.Jar{Circumference: unit.MM(around), Panel: unit.MM(high)}}
	}
	for _, x := range []struct {
		around, high float64
		cm2          int
		want         bool
	}{{40, 25, 10, false}, {40, 24.9, 10, true}, {100, 25, 25, false}, {100, 24.9, 25, true}, {0, 25, 10, false}, {40, 0, 10, false}, {1, 1, 10, true}, {0.5, 1, 10, true}} {
		if got := smaller(just(x.around, x.high), x.cm2); got != x.want {
			t.Errorf("%g x %g mm below %d cm²: %v", x.around, x.high, x.cm2, got)
		}
	}
	e := tester(t, "eu", "en", after, cooked(batch.Spread, "Spread", 1000, 62, tableIn(t, "strawberry", 600), in{key: "butter", name: "butter", g: 5, own: []string{"milk"}}), just(40, 24.9))
	e.list()
	if b, ok := e.C.Find(label.Allergens); !ok || marked(b.Runs) != "Contains: **milk**" {
		t.Errorf("%q", marked(b.Runs))
	}
}
