package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// 21 CFR 101.4(a)(2): "2 percent or less": just two is less enough, by the formula and
// by the finished food; without a threshold none stands apart, and the first never does.
func TestTwoPercentOrLess(t *testing.T) {
	for _, x := range []struct {
		percent, finished, t float64
		small                bool
	}{{2, 2, 2, true}, {2.01, 1, 2, false}, {1, 2.01, 2, false}, {0, 0, 0, false}, {0.4, 0.4, 0.5, true}} {
		main, small := group([]entry{{name: "plums", percent: x.percent, finished: x.finished}, {name: "pectin", percent: x.percent, finished: x.finished}}, x.t)
		if (len(small) == 1) != x.small || main[0].name != "plums" {
			t.Errorf("%+v: %d in the list, %d apart", x, len(main), len(small))
		}
	}
}

// Lines of one name are one ingredient: its solids are those of all, and it is estimated
// where any of them is.
func TestLinesOfOneName(t *testing.T) {
	for _, x := range []struct{ first, second bool }{{false, false}, {true, false}, {false, true}, {true, true}} {
		r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"sugar", 300}, part{"sugar", 200})
		r.Lines[0].Estimated, r.Lines[1].Estimated = x.first, x.second
		e := entries(r)
		if len(e) != 1 || e[0].line.Mass != unit.Grams(500) || e[0].line.Soluble != unit.Grams(500) || e[0].line.Estimated != (x.first || x.second) || len(e[0].line.Paths) != 2 {
			t.Errorf("%+v: %+v", x, e)
		}
		if sum, certain := sweetener(r); sum != 500_000_000 || certain != !(x.first || x.second) {
			t.Errorf("%+v: %d µg, certain %v", x, sum, certain)
		}
	}
}

// A size that binds the whole label is eleven points at least, which carry the o of 1/16
// in that 21 CFR 101.7(h) asks; one that binds a sentence leaves the rest alone.
func TestSizeOfTheWholeLabel(t *testing.T) {
	for _, x := range []struct {
		scope  string
		points int
		want   float64
	}{{"label", 0, 0}, {"label", 1, 11}, {"label", 10, 11}, {"label", 12, 12}, {"statement", 12, 0}} {
		p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		p.prog = &place.Programme{Scope: x.scope, MinPoints: x.points}
		got := p.letterO()
		if (got.On == label.PointSize) != (x.want > 0) || x.want > 0 && got.Length != unit.Points(x.want) {
			t.Errorf("%+v: %+v", x, got)
		}
	}
}

// 21 CFR 101.9(j)(1), (18): why there is no nutrition label is told of every batch.
func TestWhyNoNutritionLabel(t *testing.T) {
	_, l := declare(t, strawberry(t), "us", draft.Options{})
	if d, ok := found(l, "nutrition-exempt"); !ok || d.Cite != citeClaim || d.Message == "" {
		t.Errorf("%v", d)
	}
}

// What a state misses is told in the file where it is written.
func TestWhereAParticularIsMissing(t *testing.T) {
	for file, want := range map[string]string{"kitchen": "kitchen.toml", "batch": ""} { // a batch of no file
		p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		p.L = nil
		p.lacking(&place.Programme{Law: "a rule"}, []particular{{Token: "phone_number", Key: "phone", File: file}})
		if d := p.L[0]; d.File != want || d.Path != "phone" || !strings.Contains(d.Message, "asks for the phone number") || d.Cite != "a rule" {
			t.Errorf("%s: %+v", file, d)
		}
	}
}

// A sign at the stall is told by its words, by what it says, or both.
func TestStallSigns(t *testing.T) {
	for _, x := range []struct{ sign, about, rule, says, hint string }{
		{"Made at home.", "the maker's address", "", "wants a sign where you sell: the maker's address", "in the words of the label's statement"},
		{"Made at home.", "", "legible", `has words for a sign where you sell: "Made at home."`, "--kind sign prints it; it must be legible"},
		{"", "the maker's address", "", "also wants a sign where you sell: the maker's address", ""},
		{"", "", "", "", ""},
	} {
		p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		p.L = nil
		p.typeNotes(&place.Programme{Sign: x.sign, SignAbout: x.about, SignRule: x.rule})
		if x.says == "" {
			if len(p.L) > 0 {
				t.Errorf("no sign: %v", p.L)
			}
			continue
		}
		if len(p.L) != 1 || !strings.HasSuffix(p.L[0].Message, x.says) || !strings.Contains(p.L[0].Hint, x.hint) || (x.hint == "") != (p.L[0].Hint == "") {
			t.Errorf("%+v: %v", x, p.L)
		}
	}
}

// 21 CFR 150.160(b)(2)(i): a fruit of at most half may be just half; none of the list
// stands alone.
func TestJustHalfOfAFruit(t *testing.T) {
	for _, x := range []struct {
		apples, berries float64
		says            string
	}{{2500, 2500, ""}, {2501, 2499, "at most 1/2"}, {5000, 0, "counts only beside another fruit"}} {
		list := []part{{"apples", x.apples}, {"sugar", 5000}}
		if x.berries > 0 {
			list = append(list, part{"blackberries", x.berries})
		}
		_, l := declare(t, pot(t, batch.Jam, "Apple blackberry jam", measured(66), list...), "us", draft.Options{})
		said := ""
		for _, d := range l {
			if strings.HasPrefix(d.Code, "standard-") {
				said += d.Message
			}
		}
		if !strings.Contains(said, x.says) || x.says == "" && strings.Contains(said, "at most") {
			t.Errorf("%g g of apples, %g g of blackberries: %s", x.apples, x.berries, said)
		}
	}
}

// Stones that may be in the weight are told at the fruit they are of.
func TestStonesAreToldAtTheirFruit(t *testing.T) {
	cherries := cook.Line{Name: "cherries", Key: "cherry_sweet", Paths: []string{"ingredient[1]"}, Row: pantry.Ingredient{Key: "cherry_sweet", RefusePct: 10}}
	p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	v := verdict{Fruits: []fruitShare{{Line: cherries, Mass: 1_000_000_000}}}
	v.NotStones = []string{"cherry_sweet"}
	if sum, path := p.stonesUnsaid(v); sum != 100_000_000 || path != "ingredient[1]" {
		t.Errorf("%d µg at %q", sum, path)
	}
}

// 21 U.S.C. 343(w): what the maker calls an allergen beyond the nine stands behind what
// is one, alone where there is none, and only the nine make the statement one the law asks.
func TestAlsoContains(t *testing.T) {
	for _, x := range []struct {
		own      []string
		prog     bool
		want     string
		required bool
	}{
		{[]string{"celery"}, false, "Allergens: none of the nine major allergens in this recipe. Also contains: celery.", false},
		{[]string{"celery"}, true, "Also contains: celery.", false},
		{[]string{"milk", "celery"}, false, "Contains: Milk. Also contains: celery.", true},
		{[]string{"milk"}, false, "Contains: Milk", true},
		{nil, false, "Allergens: none of the nine major allergens in this recipe.", false},
	} {
		r := strawberry(t)
		r.Lines[0].Allergens = x.own
		p := newPass(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		if x.prog {
			p.prog = &place.Programme{Statement: "May hold allergens."}
		}
		allergens(p)
		b, _ := p.C.Find(label.Allergens)
		if b.Text() != x.want || b.Required != x.required || strings.HasPrefix(b.Cite, "voluntary") == x.required {
			t.Errorf("%+v: %q, required %v, %s", x, b.Text(), b.Required, b.Cite)
		}
	}
}

// Told is dried fruit of the list that the row does not count (a jelly of dried figs), and
// no other.
func TestFruitInAWrongForm(t *testing.T) {
	for _, x := range []struct {
		class, group string
		counts       []string
		want         bool
	}{{"dried fruit", "I", []string{"fruit"}, true}, {"dried fruit", "I", []string{"fruit", "dried fruit"}, false}, {"dried fruit", "none", []string{"fruit"}, false}, {"juice", "I", []string{"fruit"}, false}, {"fruit", "I", []string{"fruit"}, false}} {
		p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		p.list = []entry{{name: "figs", line: cook.Line{Name: "figs", Key: "x", Paths: []string{"ingredient[0]"}, Row: pantry.Ingredient{Key: "x", Class: x.class, USGroup: x.group}}}}
		if got := p.wrongForm(place.Product{ID: "jam", Counts: x.counts}); (len(got) == 1) != x.want {
			t.Errorf("%+v: %v", x, got)
		}
	}
}
