package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// What the states say of jam was read for ordinary fruit jam (record of
// statements, column jam_allowed); goods that must stay cold are warned of.
func TestColdGoodsAreAskedAbout(t *testing.T) {
	for class, want := range map[cook.Class]bool{cook.Shelf: false, cook.ShelfShort: false, cook.Cold: true, cook.Freezer: true} {
		r := strawberry(t)
		r.Keeping.Class, r.Keeping.OpenedDays = class, 7
		c, l := declare(t, r, "us-nh", draft.Options{})
		if d, ok := found(l, "cold-goods"); ok != want || ok && d.Severity != diag.Warning {
			t.Errorf("%s: warned %v", class, ok)
		}
		if _, ok := found(l, "cold-goods"); ok {
			_, l := declare(t, r, "us-nh", draft.Options{Gift: true})
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
	_, l := declare(t, strawberry(t), "us-wv", draft.Options{})
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
