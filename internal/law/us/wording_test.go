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
)

// Every term 21 CFR 101.54(b), (c), (e), 101.60(b), (c) and 101.62(d) puts in
// quotation marks, and "light" and "lite" of 101.56.
func TestEveryDefinedClaimIsFound(t *testing.T) {
	terms := `sugar free|free of sugar|no sugar|zero sugar|without sugar|sugarless|trivial source of sugar|negligible source of sugar|dietarily insignificant source of sugar|
no added sugar|without added sugar|no sugar added|reduced sugar|reduced in sugar|sugar reduced|less sugar|lower sugar|lower in sugar|
calorie free|free of calories|no calories|zero calories|without calories|trivial source of calories|negligible source of calories|dietarily insignificant source of calories|
low calorie|few calories|contains a small amount of calories|low source of calories|low in calories|reduced calorie|reduced in calories|calorie reduced|fewer calories|lower calorie|lower in calories|
low in cholesterol|low cholesterol|contains a small amount of cholesterol|low source of cholesterol|little cholesterol|no cholesterol|cholesterol free|low in saturated fat|a little saturated fat|reduced saturated fat|
high in fiber|rich in vitamin C|excellent source of potassium|good source of calcium|contains fiber|provides protein|more fiber|fortified with vitamins|added calcium|high in antioxidants|
low sugar|low-sugar|Sugar-Free|NO SUGAR|diabetic|keto`
	for _, term := range strings.Split(terms, "|") {
		for _, path := range []string{"label.subtitle", "story"} {
			r := strawberry(t)
			if path == "story" {
				r.Batch.Story = "Our best: " + strings.TrimSpace(term) + "!"
			} else {
				r.Batch.Label.Subtitle = strings.TrimSpace(term)
			}
			_, l := declare(t, r, "us", draft.Options{})
			if d, ok := found(l, "nutrition-claim"); !ok || d.Severity != diag.Error || d.Path != path {
				t.Errorf("%q passes in %s", strings.TrimSpace(term), path)
			}
		}
	}
}

// Words that are no claim stay without a finding.
func TestPlainWordsPass(t *testing.T) {
	for _, words := range []string{"strawberries and sugar", "not too sweet", "less sweet than most", "a sunny garden", "sugared figs", "nosugar street", "high summer", "sea salt", "rich and dark", "more strawberries",
		"light amber, a light set", "good with cheese", "made with fresh strawberries", "Dylight Farm", "from the fat of the land", "seedless"} {
		r := strawberry(t)
		r.Batch.Label.Subtitle = words
		_, l := declare(t, r, "us", draft.Options{})
		for _, code := range []string{"nutrition-claim", "healthy-claim", "light-claim", "fresh-claim", "unsweetened"} {
			if codeOf(l, code) != "" {
				t.Errorf("%q: %s", words, code)
			}
		}
	}
}

// Words with a rule of their own: 21 CFR 101.56, 101.65(d)(2), 101.95(a), the
// policy on "natural"; a message on a tag and the kitchen's name count too.
func TestWordings(t *testing.T) {
	for _, x := range []struct {
		set      func(*cook.Result)
		code     string
		severity diag.Severity
		path     string
	}{
		{func(r *cook.Result) { r.Batch.Label.Subtitle = "lite" }, "light-claim", diag.Error, "label.subtitle"},
		{func(r *cook.Result) { r.Batch.Name = "Light strawberry jam" }, "light-claim", diag.Error, "name"},
		{func(r *cook.Result) { r.Batch.Story = "in the evening light" }, "", 0, ""},
		{func(r *cook.Result) { r.Kitchen.Name = "Northern Light Preserves" }, "", 0, ""},
		{func(r *cook.Result) { r.Batch.Name = "Fresh strawberry jam" }, "fresh-claim", diag.Warning, "name"},
		{func(r *cook.Result) { r.Kitchen.Name = "Farm Fresh Jams" }, "fresh-claim", diag.Warning, "name"},
		{func(r *cook.Result) { r.Batch.Story = "the healthiest jam" }, "healthy-claim", diag.Error, "story"},
		{func(r *cook.Result) { r.Batch.Label.Title = "All-natural strawberry" }, "natural-claim", diag.Note, "label.title"},
		{func(r *cook.Result) { r.Kitchen.Name = "Sugar-Free Pantry" }, "nutrition-claim", diag.Error, "name"},
		{func(r *cook.Result) { r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: "no sugar added, love"}} }, "nutrition-claim", diag.Error, "gift[0].message"},
		{func(r *cook.Result) { r.Batch.Label.Subtitle = "unsweetened" }, "unsweetened", diag.Error, "label.subtitle"},
	} {
		r := strawberry(t)
		x.set(r)
		_, l := declare(t, r, "us", draft.Options{})
		for _, code := range []string{"light-claim", "fresh-claim", "healthy-claim", "natural-claim", "nutrition-claim", "unsweetened"} {
			d, ok := found(l, code)
			if ok != (code == x.code) || ok && (d.Severity != x.severity || d.Path != x.path || d.Cite == "") {
				t.Errorf("%s: %s %+v", x.code, code, d)
			}
		}
	}
}

// 101.60(c)(3): "unsweetened" is a factual statement, no claim, where no
// sweetener is in the pot.
func TestUnsweetenedIsAFact(t *testing.T) {
	r := pot(t, batch.Butter, "Apple butter", measured(45), part{"apples", 9000})
	r.Batch.Label.Subtitle = "unsweetened"
	if _, l := declare(t, r, "us", draft.Options{}); codeOf(l, "unsweetened") != "" || codeOf(l, "nutrition-claim") != "" {
		t.Errorf("%v", l)
	}
}

// 21 CFR 101.22(h)(1), (i)(2), (k): colors by their names, flavors by their
// kind, an artificial one in the name of the food; parts of a packet too.
func TestColorsAndFlavors(t *testing.T) {
	for _, x := range []struct {
		ingredient, name string
		parts            []string
		code             string
	}{
		{"food coloring", "Apple jelly", nil, "color-unnamed"},
		{"Red 40", "Apple jelly", nil, ""},
		{"color added", "Apple jelly", nil, ""},
		{"beet color", "Apple jelly", nil, ""},
		{"jelly mix", "Apple jelly", []string{"sugar", "food coloring"}, "color-unnamed"},
		{"raspberry flavoring", "Apple jelly", nil, "flavor-kind"},
		{"natural raspberry flavor", "Apple jelly", nil, ""},
		{"artificial flavor", "Apple jelly", nil, "artificial-flavor"},
		{"artificial strawberry flavor", "Apple jelly", nil, "artificial-flavor"},
		{"imitation rum extract", "Apple jelly", nil, "artificial-flavor"},
		{"artificial flavor", "Artificially flavored strawberry apple jelly", nil, ""},
	} {
		r := pot(t, batch.Jelly, x.name, measured(66), part{"apple juice", 8000}, part{"sugar", 5000})
		ln := cook.Line{Paths: []string{"ingredient[2]"}, Name: x.ingredient, Mass: unit.Gram}
		for _, n := range x.parts {
			ln.Contains = append(ln.Contains, pantry.Part{Name: n})
		}
		r.Lines = append(r.Lines, ln)
		_, l := declare(t, r, "us", draft.Options{})
		for _, code := range []string{"color-unnamed", "flavor-kind", "artificial-flavor"} {
			if d, ok := found(l, code); ok != (code == x.code) || ok && d.Path != "ingredient[2]" {
				t.Errorf("%s in %s: %s %+v", x.ingredient, x.name, code, d)
			}
		}
	}
}
