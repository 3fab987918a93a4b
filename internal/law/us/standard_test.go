package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// 21 CFR 150.160, 150.140, 150.110 as read; see the comments in templates/places/us.toml.
func TestStandards(t *testing.T) {
	est := func(v float64) cook.Reading { return cook.Reading{Value: v, How: cook.Estimated} }
	for _, x := range []struct {
		what  string
		kind  batch.ProductType
		name  string
		brix  cook.Reading
		list  []part
		code  string
		hints string
	}{
		{"47:55 exactly", batch.Jam, "Strawberry jam", measured(65), []part{{"strawberries", 4700}, {"sugar", 5500}}, "standard-met", ""},
		{"45:55 of Group I", batch.Jam, "Strawberry jam", measured(66), []part{{"strawberries", 4500}, {"sugar", 5500}}, "standard-not-met", "Strawberry Fruit Spread"},
		{"45:55 of Group II", batch.Jam, "Peach jam", measured(66), []part{{"pitted peaches", 4500}, {"sugar", 5500}}, "standard-met", ""},
		{"low solids", batch.Jam, "Strawberry jam", measured(48), []part{{"strawberries", 3000}, {"sugar", 2000}}, "standard-not-met", "Strawberry Fruit Spread"},
		{"80/20", batch.Jam, "Strawberry Rhubarb Jam", measured(66), []part{{"strawberries", 4000}, {"rhubarb", 1000}, {"sugar", 5000}}, "standard-met", ""},
		{"85/15", batch.Jam, "Strawberry Rhubarb Jam", measured(66), []part{{"strawberries", 4250}, {"rhubarb", 750}, {"sugar", 5000}}, "standard-not-met", "Strawberry Rhubarb Fruit Spread"},
		{"pineapple 1/10", batch.Jam, "Raspberry pineapple jam", measured(66), []part{{"red raspberries", 4500}, {"pineapple", 500}, {"sugar", 5000}}, "standard-met", ""},
		{"mixed groups take 45:55", batch.Jam, "Peach strawberry jam", measured(66), []part{{"pitted peaches", 2500}, {"strawberries", 2000}, {"sugar", 5500}}, "standard-met", ""},
		{"apple alone", batch.Preserve, "Apple preserves", measured(66), []part{{"apples", 5000}, {"sugar", 5000}}, "standard-not-met", "Apple Fruit Spread"},
		{"apple over half", batch.Jam, "Apple blackberry jam", measured(66), []part{{"apples", 3000}, {"blackberries", 2000}, {"sugar", 5000}}, "standard-not-met", ""},
		{"not listed", batch.Jam, "Mango jam", measured(66), []part{{"mangoes", 5000}, {"sugar", 5000}}, "standard-not-covered", ""},
		{"black currant", batch.Jelly, "Blackcurrant jelly", measured(66), []part{{"black currants", 5000}, {"sugar", 5000}}, "standard-not-covered", ""},
		{"a spread", batch.Spread, "Strawberry spread", measured(48), []part{{"strawberries", 3000}, {"sugar", 2000}}, "standard-not-covered", ""},
		{"a spread named jam is judged as jam", batch.Spread, "Strawberry jam", measured(48), []part{{"strawberries", 3000}, {"sugar", 2000}}, "standard-not-met", ""},
		{"computed, inside its error", batch.Jam, "Strawberry jam", est(64), []part{{"strawberries", 5000}, {"sugar", 5000}}, "standard-unsure", ""},
		{"computed, far below", batch.Jam, "Strawberry jam", est(55), []part{{"strawberries", 5000}, {"sugar", 5000}}, "standard-unsure", ""},
		{"computed, just there", batch.Jam, "Strawberry jam", est(65), []part{{"strawberries", 5000}, {"sugar", 5000}}, "solids-not-measured", ""},
		{"lemon acidifies", batch.Jam, "Strawberry jam", measured(66), []part{{"strawberries", 4700}, {"sugar", 5000}, {"lemons", 100}}, "standard-met", ""},
		{"butter 5:2", batch.Butter, "Pear butter", measured(43), []part{{"pears", 5000}, {"sugar", 1000}}, "standard-met", ""},
		{"butter, thin", batch.Butter, "Pear butter", measured(40), []part{{"pears", 5000}, {"sugar", 1000}}, "standard-not-met", ""},
	} {
		_, l := declare(t, pot(t, x.kind, x.name, x.brix, x.list...), "us", draft.Options{})
		d, ok := found(l, x.code)
		if !ok || !strings.Contains(d.Hint, x.hints) {
			t.Errorf("%s: want %s (%s), got %v", x.what, x.code, x.hints, l)
		}
		if sev := d.Severity; (x.code == "standard-not-met") != (sev == diag.Error) {
			t.Errorf("%s: %s is a %s", x.what, x.code, sev)
		}
	}
}

// 1000 g of strawberry juice at 6.0 °Brix count as 750 g (factor 12.5).
func TestJellyJuice(t *testing.T) {
	r := pot(t, batch.Jelly, "Strawberry jelly", measured(66))
	row, _ := pantry.Default().Ingredient("strawberries")
	juice := cook.Line{Paths: []string{"ingredient[0]"}, Name: "strawberry juice", Key: row.Key, Row: row, IsFruit: true,
		Mass: 1000 * unit.Gram, Soluble: 60 * unit.Gram}
	r.Lines = append(r.Lines, juice)
	p := newPass(r, jar8(unit.Ounce), rulesOf(t, "us"), draft.Options{})
	jelly, _ := place.ProductNamed(p.Set.Products, "jelly")
	if got, ok := p.counted(jelly, juice); !ok || got != 750_000_000 {
		t.Errorf("counts %d µg", got)
	}
}

// A jelly's notes weigh fruit, the standard its strained juice: a shortage is
// doubtful, never an error.
func TestJellyRatioIsUnsure(t *testing.T) {
	_, l := declare(t, pot(t, batch.Jelly, "Quince jelly", measured(66), part{"quinces", 1000}, part{"sugar", 5000}), "us", draft.Options{})
	if d, ok := found(l, "standard-unsure"); !ok || d.Severity != diag.Warning {
		t.Errorf("%v", l)
	}
}

// Kitchen measures are estimates: a shortage found with them only warns.
func TestEstimatedWeightsWarn(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 4000}, part{"sugar", 5500})
	r.Lines[0].Estimated = true
	_, l := declare(t, r, "us", draft.Options{})
	if d, ok := found(l, "standard-unsure"); !ok || d.Severity != diag.Warning || l.HasErrors() {
		t.Errorf("%v", l)
	}
	_, l = declare(t, pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 4000}, part{"sugar", 5500}), "us", draft.Options{Gift: true})
	if d, ok := found(l, "standard-not-met"); !ok || d.Severity != diag.Note {
		t.Errorf("gift: %v", l)
	}
}

// Fruit added twice counts once, and one guessed part makes the sum a guess.
func TestMergedFruit(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 2000}, part{"sugar", 5500}, part{"strawberries", 2700})
	if _, l := declare(t, r, "us", draft.Options{}); codeOf(l, "standard-met") == "" {
		t.Errorf("%v", l)
	}
	r.Lines[2].Mass, r.Lines[2].Estimated = 1000*unit.Gram, true
	if _, l := declare(t, r, "us", draft.Options{}); codeOf(l, "standard-unsure") == "" || l.HasErrors() {
		t.Errorf("%v", l)
	}
}

// The name puts the heaviest fruit first (150.140(e), 150.160(e)).
func TestNameOrder(t *testing.T) {
	for name, code := range map[string]string{"Rhubarb & strawberry jam": "name-order", "Strawberry & rhubarb jam": "", "Strawberry jam": "name-lacks-fruit", "Mixed fruit jam": ""} {
		_, l := declare(t, pot(t, batch.Jam, name, measured(66), part{"strawberries", 4000}, part{"rhubarb", 1000}, part{"sugar", 5000}), "us", draft.Options{})
		for _, c := range []string{"name-order", "name-lacks-fruit"} {
			d, ok := found(l, c)
			if ok != (c == code) || ok && !strings.Contains(d.Hint, "Strawberry Rhubarb Jam") {
				t.Errorf("%s: %v %q", name, c, d.Hint)
			}
		}
	}
}

// Antifoams "except those derived from animal fat" (150.160(c), from memory,
// unverified): butter in the pot is a warning. Spice and herbs are provided for.
func TestOutsiders(t *testing.T) {
	_, l := declare(t, pot(t, batch.Jam, "Apricot jam", measured(66), part{"apricots", 5000}, part{"sugar", 5000}, part{"butter", 10}, part{"lavender", 5}, part{"cinnamon", 5}, part{"apple juice", 100}), "us", draft.Options{})
	n := 0
	for _, d := range l {
		if d.Code == "standard-outsider" {
			n++
			if d.Path != "ingredient[2]" && d.Path != "ingredient[5]" || d.Severity != diag.Warning {
				t.Errorf("%+v", d)
			}
		}
	}
	if n != 2 {
		t.Errorf("%d outsiders, want butter and juice", n)
	}
}

// FDA answers to industry (archived 29 Oct 2004): 30:70, sour citrus 25:75.
func TestMarmalade(t *testing.T) {
	for _, x := range []struct {
		fruit string
		g     float64
		warns bool
	}{{"oranges", 3000, false}, {"oranges", 2900, true}, {"Seville oranges", 2400, false}, {"Seville oranges", 2300, true}} {
		_, l := declare(t, pot(t, batch.Marmalade, "Orange marmalade", measured(66), part{x.fruit, x.g}, part{"sugar", 7000}), "us", draft.Options{})
		if _, ok := found(l, "marmalade-fruit"); ok != x.warns {
			t.Errorf("%s %v g: warned %v", x.fruit, x.g, ok)
		}
	}
}
