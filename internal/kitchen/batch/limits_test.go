package batch

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

const plums = "name = \"Plum\"\nkind = \"jam\"\nmade = 2026-06-14\n"

// Each limit of the reader from both sides: what is written under the head of a
// batch, and the finding that the far side gives. The limits are ours.
func TestBatchAtItsLimits(t *testing.T) {
	weights := func(n int) string { return "[" + strings.TrimSuffix(strings.Repeat("\"9 oz\",", n), ",") + "]" }
	fill := "[[fill]]\njar = \"us8\"\n"
	for _, c := range []struct{ text, code string }{
		{fill + "net = [\"100 kg\"]", ""}, {fill + "net = [\"101 kg\"]", "out-of-range"},
		{fill + "net = " + weights(20_000), ""}, {fill + "net = " + weights(20_001), "list-too-long"},
		{fill + "tare = " + weights(20_001), "list-too-long"},
		{fill + "count = 0\nsealed = 0", ""}, {fill + "count = 3\nsealed = 3", ""}, {fill + "count = 3\nsealed = 4", "sealed-over-count"},
		{fill + "sealed = 0", "sealed-not-counted"}, {fill + "sealed = 3", "sealed-not-counted"},
		{fill + "count = 2\nnet = [\"9 oz\", \"9 oz\"]", ""}, {fill + "count = 2\nnet = [\"9 oz\", \"9 oz\", \"9 oz\"]", "more-weights-than-jars"},
		{fill + "gross = [\"400 g\"]\ntare = [\"399 g\"]", ""}, {fill + "gross = [\"400 g\"]\ntare = [\"400 g\"]", "tare-over-gross"},
		{fill + "gross = [\"400 g\", \"410 g\"]\ntare = [\"100 g\"]", ""}, {fill + "gross = [\"400 g\", \"410 g\"]\ntare = [\"100 g\", \"100 g\", \"100 g\"]", "tare-count"},
		{fill + "gross = [\"400 g\"]", "no-tare"}, {fill + "tare = [\"100 g\"]", "tare-alone"},
		{"lot = \"" + strings.Repeat("x", 40) + "\"", ""}, {"lot = \"" + strings.Repeat("x", 41) + "\"", "bad-lot"}, {fill + "net = " + weights(10_000) + "\ngross = " + weights(10_001) + "\ntare = [\"1 oz\"]", "list-too-long"},
		{"[label]\ntitle = \"a\\u206Fb\"", "unseen-character"}, {"[label]\ntitle = \"a\\u200Ab\"", ""}, {"[label]\ntitle = \"a\\uFEFFb\"", "unseen-character"},
		{"story = \"" + strings.Repeat("x", 20_000) + "\"", ""}, {"story = \"" + strings.Repeat("x", 20_001) + "\"", "text-too-long"},
		{"[label]\ntitle = \"" + strings.Repeat("x", 200) + "\"", ""}, {"[label]\ntitle = \"" + strings.Repeat("x", 201) + "\"", "text-too-long"},
		{"serve = \"" + strings.Repeat("x", 400) + "\"", ""}, {"serve = \"" + strings.Repeat("x", 401) + "\"", "text-too-long"},
		{"[label]\nseason = \"a\\u00ADb\"", "unseen-character"}, {"[label]\ntitle = \"a\\u00ADb\"", ""}, {"[label]\ntitle = \"a\\u200Bb\"", "unseen-character"}, {"[label]\ntitle = \"a\\u200Fb\"", "unseen-character"}, {"[label]\ntitle = \"a\\u2010b\"", ""},
		{"[label]\ntitle = \"a\\u202Ab\"", "unseen-character"}, {"[label]\ntitle = \"a\\u202Eb\"", "unseen-character"}, {"[label]\ntitle = \"a\\u202Fb\"", ""}, {"[label]\ntitle = \"a\\u2060b\"", "unseen-character"}, {"[label]\ntitle = \"a\\u2070b\"", ""},
		{"[label]\ntitle = \"a\\nb\"", "control-character"}, {"[label]\ntitle = \"a\\u0001b\"", "control-character"}, {"story = \"a\\nb\"", ""},
		{"[[gift]]\nto = \"Ida\"", ""}, {"[[gift]]\nto = \"Ida\"\njars = 0", "no-jars"}, {"[[gift]]\njars = 1", "missing-to"},
		{"[[market]]\nevent = \"Fair\"\njars = 6\ncame_home = 6", ""}, {"[[market]]\nevent = \"Fair\"\njars = 6\ncame_home = 7", "came-home-over-jars"},
		{"[[market]]\nevent = \"Fair\"", "missing-jars"}, {"[[market]]\nevent = \"Fair\"\njars = 0", "no-jars"},
	} {
		b, l := Parse("b.toml", []byte(plums+c.text+"\n"), nil)
		if c.code == "" {
			for _, d := range l {
				if d.Code != "missing-ingredients" && d.Code != "no-ingredients" {
					t.Errorf("%.60s: %s: %s", c.text, d.Code, d.Message)
				}
			}
		} else if !hasCode(l, c.code) || b == nil {
			t.Errorf("%.60s: no %s in %v", c.text, c.code, l)
		}
	}
}

// What is not written stays unknown, and what is unknown is not nought.
func TestBatchDefaults(t *testing.T) {
	b, _ := Parse("b.toml", []byte(plums+"[[fill]]\njar = \"us8\"\n[[gift]]\nto = \"Ida\"\n[[market]]\nevent = \"Fair\"\njars = 2\n"), nil)
	f, g, m := b.Fills[0], b.Gifts[0], b.Markets[0]
	if f.Count != -1 || f.Sealed != -1 || g.Jars != 1 || m.CameHome != -1 || m.Jars != 2 {
		t.Errorf("%+v %+v %+v", f, g, m)
	}
	if m, _ := Parse("b.toml", []byte(plums+"[[market]]\nevent = \"Fair\"\n"), nil); m.Markets[0].Jars != 0 {
		t.Errorf("%+v", m.Markets[0])
	}
	b, _ = Parse("b.toml", []byte(plums+"[[fill]]\njar = \"us8\"\nsealed = 3\n[[market]]\nevent = \"Fair\"\njars = 2\ncame_home = 3\n[label]\ncolors = [\"#abc\"]\n"), nil)
	if b.Fills[0].Sealed != -1 || b.Markets[0].CameHome != -1 || fmt.Sprint(b.Label.Colours) != "[#abc]" {
		t.Errorf("%+v %+v %v", b.Fills[0], b.Markets[0], b.Label.Colours)
	}
	b, _ = Parse("b.toml", []byte(plums+"[label]\ncolours = [\"#123\"]\ncolors = [\"#abc\"]\n"), nil)
	if fmt.Sprint(b.Label.Colours) != "[#123]" {
		t.Errorf("%v", b.Label.Colours)
	}
	b, _ = Parse("b.toml", []byte(plums+"[[fill]]\njar = \"us8\"\ngross = [\"400 g\", \"\", \"410 g\"]\ntare = [\"100 g\"]\n"), nil)
	if fmt.Sprint(len(b.Fills[0].Net)) != "2" || b.Fills[0].Net[0] != 300*unit.Gram {
		t.Errorf("%v", b.Fills[0].Net)
	}
	if (Supplies{}).PerBox() != 12 || (Supplies{BoxHolds: 6}).PerBox() != 6 {
		t.Error("a box")
	}
	_, l := Parse("b.toml", []byte("name = \"Plum\"\nmade = 2026-06-14\n"), nil)
	if !hasCode(l, "missing-kind") || hintOf(l, "missing-kind") == "" || strings.Contains(hintOf(l, "missing-kind"), "or jam") || !strings.Contains(hintOf(l, "missing-kind"), string(ProductTypes[1])) {
		t.Errorf("%q", hintOf(l, "missing-kind"))
	}
}

// Parts of a bought ingredient: a share in the name is read, its own allergens
// are kept, and more than 100 % is told.
func TestPartsOfAnIngredient(t *testing.T) {
	read := func(contains string) (*Batch, string) {
		b, l := Parse("b.toml", []byte(plums+"[[ingredient]]\nname = \"pectin\"\namount = \"50 g\"\ncontains = ["+contains+"]\n"), nil)
		var codes []string
		for _, d := range l {
			codes = append(codes, d.Code)
		}
		return b, strings.Join(codes, " ")
	}
	b, codes := read(`{ name = "dextrose 96.5 %" }, { name = "citric acid", percent = 3.5, allergens = ["milk"] }`)
	p := b.Ingredients[0].Contains
	if codes != "" || p[0].Name != "dextrose" || p[0].Percent != 96.5 || p[1].Percent != 3.5 || fmt.Sprint(p[1].Allergens) != "[milk]" {
		t.Errorf("%+v %s", p, codes)
	}
	for contains, want := range map[string]string{
		`{ name = "a", percent = 0 }`: "", `{ name = "a", percent = 100 }`: "", `{ name = "a", percent = 60 }, { name = "b", percent = 40.5 }`: "",
		`{ name = "a", percent = 60 }, { name = "b", percent = 40.6 }`: "over-100-percent", `{ name = "a", percent = 101 }`: "out-of-range",
	} {
		if _, codes := read(contains); codes != want {
			t.Errorf("%s: %q, want %q", contains, codes, want)
		}
	}
}

// The kitchen at its limits, its defaults, and its own jars and ingredients.
func TestKitchenAtItsLimits(t *testing.T) {
	jar := "[[jar]]\nkey = \"my8\"\n"
	ing := "[[ingredient]]\nname = \"green walnuts\"\n"
	for _, c := range []struct{ text, code string }{
		{"[printer]\nscale_x = 1.1\nscale_y = 1.1", ""}, {"[printer]\nscale_x = 1.2", "out-of-range"}, {"[printer]\nscale_y = 1.2", "out-of-range"}, {"[printer]\nscale_y = 0.89", "out-of-range"},
		{"small_amounts = 2", ""}, {"small_amounts = 1.9", "bad-threshold"},
		{"altitude = \"30000 ft\"", ""}, {"altitude = \"30001 ft\"", "out-of-range"}, {"altitude = \"-1500 ft\"", ""}, {"altitude = \"-1501 ft\"", "out-of-range"},
		{jar + "brimful = \"262 ml\"\nnominal = \"262 ml\"", ""}, {jar + "brimful = \"262 ml\"\nnominal = \"263 ml\"", "jar-size"}, {jar + "nominal = \"240 ml\"", ""}, {jar, "missing-brimful"}, {"[[jar]]\nbrimful = \"262 ml\"", "missing-key"},
		{jar + "brimful = \"much\"", "bad-volume"}, {ing + "solids = 40\nwater = 40\ninsoluble_solids = 20.6", "over-100-grams"}, {ing + "solids = 40\nwater = 40\ninsoluble_solids = 20.5", ""},
		{"record_url = \"https://a.example/" + strings.Repeat("x", 102) + "\"", ""}, {"record_url = \"https://a.example/" + strings.Repeat("x", 103) + "\"", "bad-url"},
		{ing + "solids = 100\nwater = 0", ""}, {ing + "solids = 101", "out-of-range"}, {ing + "solids = 60\nwater = 40.5", ""}, {ing + "solids = 60\nwater = 40.6", "over-100-grams"},
	} {
		k, l := ParseKitchen("kitchen.toml", []byte("place = \"us\"\n"+c.text+"\n"), nil)
		if c.code == "" && l.HasErrors() || c.code != "" && !hasCode(l, c.code) || k == nil {
			t.Errorf("%s: %v, want %q", c.text, l, c.code)
		}
	}
	k, _ := ParseKitchen("kitchen.toml", []byte("programme = \"Fair\"\n[supplies]\nlids = { \"70\" = 3 }\n"+jar+"brimful = \"262 ml\"\nnominal = \"240 ml\"\n"), nil)
	if k.File == nil || k.Programme != "Fair" || k.Supplies.Tags != -1 || k.Supplies.Boxes != -1 || k.Supplies.Ribbon != -1 || k.Supplies.Lids["70"] != 3 || k.Printer.ScaleX != 1 || k.Printer.ScaleY != 1 || !k.OwnYields {
		t.Errorf("%+v", k)
	}
	if j := k.Jars[0]; j.Description != "my8" || j.NamedBy != "brimful" {
		t.Errorf("%+v", j)
	}
	none, _ := ParseKitchen("kitchen.toml", nil, nil)
	if none.File != nil || !none.OwnYields || none.Printer.ScaleX != 1 || none.Printer.ScaleY != 1 || none.Supplies.Tags != -1 || none.Supplies.Boxes != -1 || none.Supplies.Ribbon != -1 || none.SaleMode != "prepacked" {
		t.Errorf("%+v", none)
	}
	off, _ := ParseKitchen("kitchen.toml", []byte("own_yields = false\n"), nil)
	if off.OwnYields {
		t.Error("own yields cannot be switched off")
	}
	bad, l := ParseKitchen("kitchen.toml", []byte("name = \"\n"), nil)
	if !l.HasErrors() || bad == nil || bad.File == nil {
		t.Errorf("%+v %v", bad, l)
	}
}

func hasCode(l diag.List, code string) bool {
	return slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == code })
}

func hintOf(l diag.List, code string) string {
	for _, d := range l {
		if d.Code == code {
			return d.Hint
		}
	}
	return ""
}
