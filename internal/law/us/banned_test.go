package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
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

// 90 FR 4628 (16 Jan 2025): the listing of FD&C Red No. 3 for food ends on 15
// January 2027. Until then it warns of the day, in whatever spelling.
func TestRedThreeUntilItsDay(t *testing.T) {
	books, err := book()
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		on   unit.Date
		name string
		want string
	}{
		{unit.Date{Year: 2026, Month: 11, Day: 28}, "red food coloring (Red 3)", "warning from Jan 15, 2027 on"}, {unit.Date{Year: 2027, Month: 1, Day: 14}, "FD&C Red No. 3", "warning from Jan 15, 2027 on"},
		{unit.Date{Year: 2027, Month: 1, Day: 15}, "Red 3", "error Red 3: Red No. 3 may be"}, {unit.Date{Year: 2028, Month: 3, Day: 1}, "erythrosine", "error"},
		{unit.Date{Year: 2027, Month: 3, Day: 1}, "Red 40", ""}, {unit.Date{Year: 2027, Month: 3, Day: 1}, "red beet color", ""},
	} {
		b, _ := batch.Parse("plum.toml", []byte("name = \"Plum jam\"\nkind = \"jam\"\nmade = 2026-09-05\n[[ingredient]]\nname = \"plums\"\namount = \"2 kg\"\n[[ingredient]]\nname = \"sugar\"\namount = \"2 kg\"\n[[ingredient]]\nname = \""+x.name+"\"\namount = \"5 g\"\n"), nil)
		r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
		s, _ := books.Place("us-oh", x.on)
		_, l := Declare(r, jar8(10*unit.Ounce), s, draft.Options{})
		d, told := found(l, "banned-in-food")
		level, words, _ := strings.Cut(x.want, " ")
		if told != (x.want != "") || told && (d.Severity.String() != level || !strings.Contains(d.Message, words)) {
			t.Errorf("%s of %s: %+v", x.name, x.on, d)
		}
	}
}
