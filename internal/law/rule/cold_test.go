package rule

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// What the states say of jam was read for ordinary fruit jam (record of
// statements, column jam_allowed); goods that must stay cold are warned of.
func TestColdGoodsAreAskedAbout(t *testing.T) {
	for class, want := range map[cook.Class]bool{cook.Shelf: false, cook.ShelfShort: false, cook.Cold: true, cook.Freezer: true} {
		r := strawberry(t)
		r.Keeping.Class, r.Keeping.OpenedDays = class, 7
		c, l := declare(t, r, "us-nh", Options{})
		if d, ok := found(l, "cold-goods"); ok != want || ok && d.Severity != diag.Warning {
			t.Errorf("%s: warned %v", class, ok)
		}
		if _, ok := found(l, "cold-goods"); ok {
			_, l := declare(t, r, "us-nh", Options{Gift: true})
			if _, ok := found(l, "cold-goods"); ok {
				t.Errorf("%s: a gift is not sold", class)
			}
		}
		if got := text(c, label.Storage); !strings.Contains(got, "within a week") {
			t.Errorf("%s: %q", class, got)
		}
	}
}

// One note tells what narrows West Virginia's words (W. Va. Code 19-35-5).
func TestConditionsAreToldOnce(t *testing.T) {
	_, l := declare(t, strawberry(t), "us-wv", Options{})
	n := 0
	for _, d := range l {
		if strings.Contains(d.Message, "vendor permit") && d.Severity == diag.Note {
			n++
		}
	}
	if n != 1 {
		t.Errorf("told %d times", n)
	}
}

// Directive 2001/113/EC Annex II permits juice and peel of citrus in jam of
// other fruit (from memory, unverified): two lemons make no lemon jam.
func TestALemonIsNoFruitOfRhubarbJam(t *testing.T) {
	for _, c := range []struct {
		lemons float64
		want   string
	}{{168, "Rhubarb and ginger jam"}, {700, "Rhubarb, lemon and ginger jam"}} {
		r := cooked(batch.Jam, "Rhubarb and ginger jam", 3250, 66, fruitIn("rhubarb", "rhubarb", 2000, "general"), fruitIn("lemon", "lemons", c.lemons, "general"),
			in{key: "sugar_white", name: "sugar", g: 2000, kind: "sweetener"}, in{key: "ginger_fresh", name: "ginger", g: 50, kind: "spice", class: "ginger"})
		e := tester(t, "ie", "en", unit.Date{Year: 2026, Month: 11, Day: 25}, r, cylinder(68, 60, 250))
		e.identity()
		if b := e.C.Blocks[0]; b.Text() != c.want {
			t.Errorf("%v g of lemons: %q, want %q", c.lemons, b.Text(), c.want)
		}
	}
}
