package us

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
)

// What 21 CFR part 189 prohibits in human food (and 21 U.S.C. 331(ll) of THC and
// CBD) is told as an error, named or as a part of what is bought; what is sold
// without it is not.
func TestWhatNoFoodMayHold(t *testing.T) {
	for name, cite := range map[string]string{
		`name = "tonka beans"`:       "189.130",
		`name = "sassafras bark"`:    "189.180",
		`name = "calamus root"`:      "189.110",
		`name = "Sodium Cyclamate"`:  "189.135",
		`name = "hemp oil with CBD"`: "331(ll)",
		"name = \"spirits\"\ncontains = [\"alcohol\", \"tonka extract\"]": "189.130",
		`name = "kratom powder"`:                  "402(f)",
		`name = "vanilla sugar"`:                  "",
		`name = "vanilla extract, coumarin free"`: "",
		`name = "safrole-free sassafras extract"`: "",
		`name = "hemp seeds"`:                     "",
		`name = "dried sassafras leaves"`:         "",
	} {
		src := "name = \"Plum jam\"\nkind = \"jam\"\nmade = 2026-09-05\n[[ingredient]]\nname = \"plums\"\namount = \"2 kg\"\n[[ingredient]]\nname = \"sugar\"\namount = \"2 kg\"\n[[ingredient]]\n" + name + "\namount = \"5 g\"\n"
		b, _ := batch.Parse("plum.toml", []byte(src), nil)
		r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
		_, l := declare(t, r, "us", draft.Options{})
		d, told := found(l, "banned-in-food")
		if told != (cite != "") || told && (!strings.Contains(d.Cite, cite) || d.Path != "ingredient[2]" || d.Hint == "") {
			t.Errorf("%s: %+v", name, d)
		}
	}
}
