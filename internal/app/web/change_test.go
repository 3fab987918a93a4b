package web

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/kit/source"
)

func TestChangesKeepCommentsAndOrder(t *testing.T) {
	for _, c := range []struct {
		name     string
		changes  []change
		old, new string // the only difference
	}{
		{"a text", []change{{"set", "name", "Damson jam"}}, `"Plum jam"`, `"Damson jam"`},
		{"beside a comment", []change{{"set", "ingredient[0].name", "damsons"}}, `"plums"   # from`, `"damsons"   # from`},
		{"a count", []change{{"set", "fill[0].sealed", " 7 "}}, "sealed = 8", "sealed = 7"},
		{"no count", []change{{"set", "fill[0].sealed", "seven"}}, "sealed = 8", `sealed = "seven"`},
		{"a day", []change{{"set", "made", "2026-09-06"}}, "2026-09-05", "2026-09-06"},
		{"a new key", []change{{"set", "ingredient[0].form", "halved"}}, "\"2 kg\"\n", "\"2 kg\"\nform = \"halved\"\n"},
		{"a list", []change{{"set", "fill[0].net", "9.4 oz, 9,5 oz; 9.3 oz"}}, "\"9 oz\"\n", "\"9 oz\"\nnet = [\"9.4 oz\", \"9,5 oz\", \"9.3 oz\"]\n"},
		{"emptied", []change{{"set", "fill[0].declared", ""}}, "declared = \"9 oz\"\n", ""},
		{"emptied, but needed", []change{{"set", "ingredient[0].amount", " "}}, `"2 kg"`, `" "`},
		{"emptied twice", []change{{"set", "fill[0].declared", ""}, {"set", "fill[0].declared", ""}}, "declared = \"9 oz\"\n", ""},
		{"a box ticked", []change{{"set", "process.sterilised", "true"}}, "minutes = 10\n", "minutes = 10\nsterilised = true\n"},
		{"ticked and not", []change{{"set", "process.sterilised", "true"}, {"set", "process.sterilised", ""}}, "minutes = 10\n", "minutes = 10\nsterilised = false\n"},
		{"a row", []change{{"add", "gift", ""}, {"set", "gift[0].to", "Hedy"}}, "declared = \"9 oz\"\n", "declared = \"9 oz\"\n\n[[gift]]\nto = \"Hedy\"\n"},
		{"a row away", []change{{"remove", "ingredient[1]", ""}}, "# weighed twice\n[[ingredient]]\nname = \"sugar\"\namount = \"1.6 kg\"\n\n", ""},
	} {
		got, l := apply(plum, c.changes, batchForm)
		if want := strings.Replace(plum, c.old, c.new, 1); got != want || len(l) > 0 || want == plum {
			t.Errorf("%s: %v, got\n%s", c.name, l, got)
		}
	}
}

func TestRowsTradePlaces(t *testing.T) {
	const first = "[[ingredient]]\nname = \"plums\"   # from the hedge\namount = \"2 kg\"\n"
	const second = "# weighed twice\n[[ingredient]]\nname = \"sugar\"\namount = \"1.6 kg\"\n"
	want := strings.Replace(plum, first+"\n"+second, second+"\n"+first, 1)
	for _, c := range []change{{"up", "ingredient[1]", ""}, {"down", "ingredient[0]", ""}} {
		got, l := apply(plum, []change{c}, batchForm)
		if got != want || len(l) > 0 {
			t.Errorf("%s: %v\n%s", c.Do, l, got)
		}
		back, _ := apply(got, []change{c}, batchForm)
		if back != plum {
			t.Errorf("%s twice:\n%s", c.Do, back)
		}
	}
	for _, c := range []change{{"up", "ingredient[0]", ""}, {"down", "ingredient[1]", ""}, {"up", "name", ""}, {"up", "gift[3]", ""},
		{"set", "nothing", "x"}, {"add", "nothing", ""}, {"add", "cook", ""}, {"fly", "name", ""}, {"set", "ingredient[9].name", "x"}} {
		if got, l := apply(plum, []change{c}, batchForm); got != plum || !l.HasErrors() {
			t.Errorf("%+v was done: %v", c, l)
		}
	}
	last := "[[gift]]\nto = \"a\"\n[[gift]]\nto = \"b\"" // no line end
	if got, _ := apply(last, []change{{"up", "gift[1]", ""}}, batchForm); got != "[[gift]]\nto = \"b\"\n[[gift]]\nto = \"a\"\n" {
		t.Errorf("%q", got)
	}
}

// Whatever is done in the form, in whatever order, the text still reads, no
// comment of the maker is lost but with its row, and nothing panics.
func TestAnyChanges(t *testing.T) {
	var paths []string
	for _, s := range batchForm {
		for _, g := range s.Groups {
			for _, f := range g.Fields {
				if g.Rows {
					paths = append(paths, g.Table+"[0]."+f.Key, g.Table+"[1]."+f.Key)
				} else {
					paths = append(paths, strings.TrimPrefix(g.Table+"."+f.Key, "."))
				}
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := plum
		for range rapid.IntRange(1, 8).Draw(t, "n") {
			c := change{Do: rapid.SampledFrom([]string{"set", "set", "set", "add", "up", "down"}).Draw(t, "do"), Value: rapid.String().Draw(t, "value")}
			switch c.Do {
			case "set":
				c.Path = rapid.SampledFrom(paths).Draw(t, "path")
			case "add":
				c.Path = rapid.SampledFrom([]string{"ingredient", "fill", "gift", "market"}).Draw(t, "table")
			default:
				c.Path = source.At(rapid.SampledFrom([]string{"ingredient", "gift"}).Draw(t, "table"), rapid.IntRange(0, 3).Draw(t, "i"))
			}
			text, _ = apply(text, []change{c}, batchForm)
			if _, l := source.Parse("", []byte(text)); l.HasErrors() {
				t.Fatalf("%+v: %v in\n%s", c, l, text)
			}
		}
		if f := fillForm("b.toml", text, batchForm); f.Broken != nil {
			t.Fatal(f.Broken)
		}
		for _, comment := range []string{"# my own words", "# weighed twice"} {
			if !strings.Contains(text, comment) {
				t.Fatalf("%q is gone from\n%s", comment, text)
			}
		}
	})
}

func TestFormShowsWhatIsWritten(t *testing.T) {
	f := fillForm("b.toml", "name = 3\nmade = 2026-06-14\n[[fill]]\nnet = [\"1 oz\", \"2 oz\"]\ncount = \"x\"\n[[ingredient]]\ncontains = [{ name = \"a\" }]\nskip = true\n[label]\nink_saver = false\n", batchForm)
	for path, want := range map[string]string{"name": "3", "made": "2026-06-14", "fill[0].net": "1 oz, 2 oz", "fill[0].count": "x", "ingredient[0].skip": "true", "label.ink_saver": ""} {
		if got := f.value(path); got != want {
			t.Errorf("%s: %q, want %q", path, got, want)
		}
	}
	locked := false
	f.each(func(x *filledField) { locked = locked || x.Path == "ingredient[0].contains" && x.Locked })
	if !locked {
		t.Error("a list of tables must not be offered as a text, since editing it would lose them")
	}
	if f := fillForm("b.toml", "name = plum", batchForm); f.Broken == nil || f.Broken.Pos.Line != 1 {
		t.Errorf("%+v", f)
	}
}
