package place

import (
	"reflect"
	"slices"
	"testing"

	"jarmark/internal/kit/unit"
)

// Each number and word a European set cannot do without, taken away alone, is a
// fault of the build; at its limit it is none.
func TestEuropeanTableAtItsLimits(t *testing.T) {
	for name, x := range map[string]struct {
		change func(*European)
		ok     bool
	}{
		"whole": {func(*European) {}, true}, "no x-height": {func(e *European) { e.XHeight = 0 }, false}, "one micrometre": {func(e *European) { e.XHeight = 1 }, true},
		"no small x-height": {func(e *European) { e.XHeightSmall = 0 }, false}, "a small one": {func(e *European) { e.XHeightSmall = 1 }, true},
		"no small area": {func(e *European) { e.SmallBelow = 0 }, false}, "a small area": {func(e *European) { e.SmallBelow = 1 }, true},
		"no digits": {func(e *European) { e.Digits = nil }, false}, "digits end": {func(e *European) { e.Digits = []digits{{200, 2000}} }, false},
		"digits for all": {func(e *European) { e.Digits = []digits{{0, 2000}} }, true},
		"by the week":    {func(e *European) { e.DateForm = "week" }, false}, "by the day": {func(e *European) { e.DateForm = "day" }, true}, "by the month": {func(e *European) { e.DateForm = "month" }, true},
		"hardly clear": {func(e *European) { e.Clear = 99 }, false}, "as common": {func(e *European) { e.Clear = 100 }, true},
		"no particulars": {func(e *European) { e.Prepacked = nil }, false}, "one particular": {func(e *European) { e.Prepacked = e.Prepacked[:1] }, true},
		"no citrus": {func(e *European) { e.Citrus = nil }, false}, "one citrus": {func(e *European) { e.Citrus = e.Citrus[:1] }, true},
	} {
		e := *rulesOf(t, "eu").EU
		if x.change(&e); (e.check() == nil) != x.ok {
			t.Errorf("%s: %v", name, e.check())
		}
	}
}

// A programme's words are those the code knows, and a cap is given whole.
func TestProgrammeAtItsLimits(t *testing.T) {
	whole := SalesCap{Amount: 1, Cite: "x", Read: "2026-11-25", Confidence: "primary"}
	capped := func(change func(*SalesCap)) func(*Programme) {
		return func(p *Programme) { c := whole; change(&c); p.SalesCap = c }
	}
	for name, x := range map[string]struct {
		change func(*Programme)
		ok     bool
	}{
		"plain": {func(*Programme) {}, true}, "no confidence": {func(p *Programme) { p.Confidence = "" }, false},
		"by letter": {func(p *Programme) { p.Letter = "o" }, true}, "by another": {func(p *Programme) { p.Letter = "x" }, false},
		"on the panel": {func(p *Programme) { p.Placement = "panel" }, true}, "on the lid": {func(p *Programme) { p.Placement = "lid" }, false},
		"of the label": {func(p *Programme) { p.Scope = "label" }, true}, "of the jar": {func(p *Programme) { p.Scope = "jar" }, false},
		"a whole cap": {capped(func(*SalesCap) {}), true}, "no amount": {capped(func(c *SalesCap) { c.Amount = 0 }), false}, "uncited": {capped(func(c *SalesCap) { c.Cite = "" }), false},
		"unread": {capped(func(c *SalesCap) { c.Read = "" }), false}, "unsure": {capped(func(c *SalesCap) { c.Confidence = "" }), false},
		"a particular": {func(p *Programme) { p.Required = [][]string{{"name"}} }, true}, "an unknown one": {func(p *Programme) { p.Required = [][]string{{"name", "shoe size"}} }, false},
	} {
		p := Programme{Origin: Origin{Confidence: "primary"}}
		if x.change(&p); (p.check([]string{"name"}) == nil) != x.ok {
			t.Errorf("%s: %v", name, p.check([]string{"name"}))
		}
	}
}

// What an American set cannot do without: numbers, and rows that speak.
func TestAmericanTablesAtTheirLimits(t *testing.T) {
	for name, x := range map[string]struct {
		change func(*rules)
		ok     bool
	}{
		"whole": {func(*rules) {}, true}, "no panel letter": {func(r *rules) { r.Panel.Letter = 0 }, false},
		"a short row":     {func(r *rules) { r.Net.Heights = append(slices.Clone(r.Net.Heights[:1]), []int64{0}) }, false},
		"no last row":     {func(r *rules) { r.Net.Heights = r.Net.Heights[:2] }, false},
		"no height":       {func(r *rules) { r.Net.Heights = [][]int64{{5, 0}, {0, 1}} }, false},
		"no rows":         {func(r *rules) { r.Net.Heights = nil }, false},
		"one row for all": {func(r *rules) { r.Net.Heights = [][]int64{{0, 1}} }, true},
		"a ratio of none": {func(r *rules) { r.Products = []Product{{Ratios: []RatioRule{{Fruit: 0, Sweet: 55}}}} }, false},
		"sweet of none":   {func(r *rules) { r.Products = []Product{{Ratios: []RatioRule{{Fruit: 45, Sweet: 0}}}} }, false},
		"a ratio":         {func(r *rules) { r.Products = []Product{{Ratios: []RatioRule{{Fruit: 45, Sweet: 55}}}} }, true},
	} {
		r := rulesOf(t, "us").rules
		net, panel := *r.Net, *r.Panel
		r.Net, r.Panel = &net, &panel
		if x.change(&r); (r.checkNumbers() == nil) != x.ok {
			t.Errorf("%s: %v", name, r.checkNumbers())
		}
	}
	if h := (&netTable{}).Height(5); h != 0 {
		t.Errorf("a table without rows asks for %d nm", h)
	}
	if h := rulesOf(t, "us").Net.Height(1e6); h != unit.Inch/2 { // 21 CFR 101.7(i): more than 400 square inches
		t.Errorf("%d nm", h)
	}
}

// Rows about words are told with their level and words, or not at all.
func TestWordsAtTheirLimits(t *testing.T) {
	word := WordingRule{Words: []string{"pure"}, In: []string{"name"}, Level: "note", Text: "x", Origin: Origin{Confidence: "memory"}}
	naming := namingRule{Words: []string{"pure"}, Level: "error", Origin: Origin{Confidence: "primary"}}
	with := func(change func(*WordingRule)) rules { w := word; change(&w); return rules{Wordings: []WordingRule{w}} }
	named := func(change func(*namingRule)) rules { n := naming; change(&n); return rules{Namings: []namingRule{n}} }
	ban := Banned{Words: []string{"x"}, Why: "x", Origin: naming.Origin}
	claims := func(level, text, cite string) rules {
		return rules{Nutrition: &nutritionTable{Level: level, Text: text, Cite: cite}}
	}
	for name, x := range map[string]struct {
		r  rules
		ok bool
	}{
		"none": {rules{}, true}, "a word": {with(func(*WordingRule) {}), true}, "no words": {with(func(w *WordingRule) { w.Words = nil }), false}, "nowhere": {with(func(w *WordingRule) { w.In = nil }), false},
		"shouted": {with(func(w *WordingRule) { w.Level = "shout" }), false}, "says nothing": {with(func(w *WordingRule) { w.Text = "" }), false}, "heard": {with(func(w *WordingRule) { w.Confidence = "hearsay" }), false},
		"a naming": {named(func(*namingRule) {}), true}, "of no words": {named(func(n *namingRule) { n.Words = nil }), false}, "of no level": {named(func(n *namingRule) { n.Level = "" }), false},
		"unsure": {named(func(n *namingRule) { n.Confidence = "" }), false}, "claims": {claims("warning", "x", "y"), true}, "claims shouted": {claims("shout", "x", "y"), false},
		"banned": {rules{Banned: []Banned{ban}}, true}, "banned for nothing": {rules{Banned: []Banned{{Words: ban.Words, Origin: ban.Origin}}}, false}, "no word banned": {rules{Banned: []Banned{{Why: "x", Origin: ban.Origin}}}, false},
		"banned on hearsay": {rules{Banned: []Banned{{Words: ban.Words, Why: "x"}}}, false}, "banned aloud": {rules{Banned: []Banned{{Words: ban.Words, Why: "x", Level: "shout", Origin: ban.Origin}}}, false},
		"claims mute": {claims("warning", "", "y"), false}, "claims uncited": {claims("warning", "x", ""), false},
	} {
		if got := x.r.checkWords(); (got == nil) != x.ok {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// Regulation (EU) 1169/2011 Art 13(2) and (3): 1.2 mm, and 0.9 mm where the
// largest surface is below 80 cm²; one that is not known is taken for large.
func TestLetterHeightFromBothSides(t *testing.T) {
	eu := rulesOf(t, "eu").EU
	for mm2, want := range map[float64]unit.Length{0: 1200, -1: 1200, 0.5: 900, 7999.9: 900, 8000: 1200, 8050: 1200, 1e6: 1200} {
		if got := eu.LetterHeight(mm2); got != want*unit.Micrometre {
			t.Errorf("%g mm²: %d nm", mm2, got)
		}
	}
}

// A row of a table is shown by its first word, the rest behind it by their keys.
func TestRowsAreShown(t *testing.T) {
	for _, x := range []struct {
		row  any
		want string
	}{
		{RatioRule{Class: "I", Fruit: 47, Sweet: 55}, "I (fruit 47, sweet 55)"},
		{digits{UpTo: 200, Height: 3000}, "200 (height_um 3000)"}, {digits{Height: 6000}, "6000"}, {digits{}, ""},
	} {
		if got := shownRow(reflect.ValueOf(x.row)); got != x.want {
			t.Errorf("%+v: %q", x.row, got)
		}
	}
}
