package us

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
)

// 21 U.S.C. 343(b): food "is offered for sale under the name of another food" is
// misbranded (from memory). What stands large beside the name of the food says no
// other kind of preserve; 21 CFR 150.160(a) makes jam and preserves one.
func TestTitlesSayNoOtherFood(t *testing.T) {
	for _, c := range []struct{ lines, want string }{
		{`title = "Strawberry marmalade"`, "label.title"},
		{`title = "Strawberry preserves"`, ""},
		{`title = "Strawberry"`, ""},
		{`subtitle = "strawberry jelly"`, "label.subtitle"},
		{`subtitle = "a jelly for toast"`, "label.subtitle"},
		{`subtitle = "fruit butter"`, "label.subtitle"},
		{`subtitle = "strawberry & rhubarb butter"`, "label.subtitle"},
		{`subtitle = "lovely with peanut butter"`, ""},
		{`subtitle = "cooked with maple syrup"`, ""},
		{`subtitle = "not a jelly"`, ""},
		{`stamp = "Best jelly of the fair"`, "label.stamp"},
		{`stamp = "Best jam of the fair"`, ""},
		{`words = "Good on a jelly roll."`, ""},
	} {
		src := "name = \"Strawberry rhubarb jam\"\nkind = \"jam\"\nmade = 2026-09-05\n[[ingredient]]\nname = \"strawberries\"\namount = \"1 kg\"\n[[ingredient]]\nname = \"rhubarb\"\namount = \"500 g\"\n" +
			"[[ingredient]]\nname = \"sugar\"\namount = \"1 kg\"\n[cook]\nbrix = 66\n[label]\n" + c.lines + "\n"
		b, l := batch.Parse("jam.toml", []byte(src), nil)
		if l.HasErrors() {
			t.Fatal(l)
		}
		r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
		_, l = declare(t, r, "us", draft.Options{})
		var got []string
		for _, d := range l {
			if d.Code == "reserved-name" {
				got = append(got, d.Path)
			}
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s: told at %v, want %q", c.lines, got, c.want)
		}
	}
}
