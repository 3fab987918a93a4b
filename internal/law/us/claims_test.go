package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
)

// 7 CFR 205.100, 205.101; 21 CFR 101.91, 101.14; 80 FR 72581; words that the
// recipe makes untrue (21 U.S.C. 343(a)(1)).
func TestClaimsThatNeedProof(t *testing.T) {
	sorbate := cook.Line{Name: "potassium sorbate", Mass: unit.Gram, Paths: []string{"ingredient[2]"}}
	honey := cook.Line{Name: "honey", Mass: unit.Gram, IsSweet: true, Paths: []string{"ingredient[2]"}}
	for _, x := range []struct {
		words string
		add   []cook.Line
		code  string
		level diag.Severity
	}{
		{"Organic", nil, "organic-claim", diag.Warning}, {"made with organic berries", nil, "organic-claim", diag.Warning},
		{"gluten-free", nil, "gluten-claim", diag.Note}, {"allergen free", nil, "free-from-claim", diag.Warning}, {"nut-free", nil, "free-from-claim", diag.Warning},
		{"vegan", nil, "", 0}, {"vegan", []cook.Line{honey}, "free-from-claim", diag.Error},
		{"no preservatives", nil, "", 0}, {"no preservatives", []cook.Line{sorbate}, "purity-claim", diag.Error},
		{"100% fruit", nil, "purity-claim", diag.Error}, {"all fruit", nil, "purity-claim", diag.Error},
		{"sweetened only with fruit juice", nil, "purity-claim", diag.Error}, {"fruit sugars only", nil, "purity-claim", diag.Error}, {"nur mit Fruchtsaft gesüßt", nil, "purity-claim", diag.Error},
		{"an energy boost", nil, "health-claim", diag.Warning}, {"kind to your gut", nil, "health-claim", diag.Warning}, {"vitamin packed", nil, "nutrition-claim", diag.Error}, {"less sugary", nil, "nutrition-claim", diag.Error},
		{"sweetened in a copper pot", nil, "", 0}, {"kind to bees", nil, "", 0}, {"packed by hand", nil, "", 0},
		{"boosts immunity", nil, "health-claim", diag.Warning}, {"artificially sweetened", nil, "artificially-sweetened", diag.Warning},
		{"organized by Ann", nil, "", 0}, {"from our all-fruitful garden", nil, "", 0}, {"homemade", nil, "", 0},
	} {
		r := strawberry(t)
		r.Batch.Label.Subtitle = x.words
		r.Lines = append(r.Lines, x.add...)
		_, l := declare(t, r, "us", draft.Options{})
		for _, d := range l {
			if d.Path == "label.subtitle" && d.Code != x.code && !strings.HasPrefix(d.Code, "name") {
				t.Errorf("%q: %s", x.words, d.Code)
			}
		}
		if d, ok := found(l, x.code); x.code != "" && (!ok || d.Severity != x.level || d.Cite == "" || strings.Contains(d.Message, "{")) {
			t.Errorf("%q: %s %+v", x.words, x.code, d)
		}
	}
}

// What the recipe holds makes the words untrue, by the allergens it was read for.
func TestWordsBesideAllergens(t *testing.T) {
	for words, code := range map[string]string{"gluten free": "gluten-claim", "wheat free": "free-from-claim", "allergen free": "free-from-claim", "dairy free": ""} {
		r := pot(t, batch.Spread, "Apple spread", measured(66), part{"apples", 5000}, part{"sugar", 4000})
		r.Lines = append(r.Lines, cook.Line{Name: "wheat flour", Mass: 50 * unit.Gram, Paths: []string{"ingredient[2]"}})
		r.Batch.Label.Subtitle = words
		_, l := declare(t, r, "us", draft.Options{})
		if d, ok := found(l, code); ok != (code != "") || ok && d.Severity != diag.Error {
			t.Errorf("%q: %v", words, l)
		}
	}
}

// A jelly that may well meet the standard says its fruit (21 CFR 150.140(e)):
// apple juice makes no strawberry jelly.
func TestUnsureJellySaysItsFruit(t *testing.T) {
	r := pot(t, batch.Jelly, "Strawberry jelly", cook.Reading{Value: 64, How: cook.Estimated}, part{"apple juice", 8000}, part{"sugar", 5000})
	_, l := declare(t, r, "us", draft.Options{})
	if _, ok := found(l, "name-lacks-fruit"); !ok || codeOf(l, "standard-unsure") == "" {
		t.Errorf("%v", l)
	}
}

// 21 U.S.C. 343(a)(1): a name says no fruit that is not in the jar.
func TestNameOfAnAbsentFruit(t *testing.T) {
	for name, want := range map[string]string{"Strawberry apple jelly": `"strawberry" is in the name, and no ingredient is strawberry`, "Apple peach jelly": `"peach" is in the name, and no ingredient is peach`,
		"Apple basil jelly": `"basil" is in the name, and no ingredient is basil`, "Apple & vanilla jelly": `"vanilla" is in the name, and no ingredient is vanilla`, "Rosemary's apple jelly": "", "Apple pie spice jelly": "",
		"Apple jelly": "", "Orchard jelly": "", "Strawberry flavored apple jelly": "", "Apple and lemon jelly": ""} {
		r := pot(t, batch.Jelly, name, measured(66), part{"apple juice", 8000}, part{"sugar", 5000}, part{"lemon juice", 50})
		_, l := declare(t, r, "us", draft.Options{})
		if d, _ := found(l, "says-absent-ingredient"); d.Message != want {
			t.Errorf("%s: %q", name, d.Message)
		}
	}
	for name, fruit := range map[string]string{"Cherry jam": "sour cherries", "Orange jam": "oranges", "Blackberry jam": "blackberries", "Currant jam": "redcurrants", "Wild plum jam": "plums", "Grandma's peach jam": "peaches"} {
		r := pot(t, batch.Jam, name, measured(66), part{fruit, 5000}, part{"sugar", 5000})
		if _, l := declare(t, r, "us", draft.Options{}); codeOf(l, "says-absent-ingredient") != "" {
			t.Errorf("%s of %s: %v", name, fruit, l)
		}
	}
}
