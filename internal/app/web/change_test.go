package web

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/kit/source"
	_ "jarmark/internal/kit/steady"
)

func TestChangesKeepCommentsAndOrder(t *testing.T) {
	for _, c := range []struct {
		name     string
		changes  []change
		old, new string // the only difference
	}{
		{"a text", []change{{Do: "set", Path: "name", Value: "Damson jam"}}, `"Plum jam"`, `"Damson jam"`},
		{"beside a comment", []change{{Do: "set", Path: "ingredient[0].name", Value: "damsons"}}, `"plums"   # from`, `"damsons"   # from`},
		{"a count", []change{{Do: "set", Path: "fill[0].sealed", Value: " 7 "}}, "sealed = 8", "sealed = 7"},
		{"no count", []change{{Do: "set", Path: "fill[0].sealed", Value: "seven"}}, "sealed = 8", `sealed = "seven"`},
		{"a day", []change{{Do: "set", Path: "made", Value: "2026-09-06"}}, "2026-09-05", "2026-09-06"},
		{"a new key", []change{{Do: "set", Path: "ingredient[0].form", Value: "halved"}}, "\"2 kg\"\n", "\"2 kg\"\nform = \"halved\"\n"},
		{"a list", []change{{Do: "set", Path: "fill[0].net", Value: "9.4 oz, 9,5 oz; 9.3 oz"}}, "\"9 oz\"\n", "\"9 oz\"\nnet = [\"9.4 oz\", \"9,5 oz\", \"9.3 oz\"]\n"},
		{"emptied", []change{{Do: "set", Path: "fill[0].declared", Value: ""}}, "declared = \"9 oz\"\n", ""},
		{"emptied, but needed", []change{{Do: "set", Path: "ingredient[0].amount", Value: " "}}, `"2 kg"`, `" "`},
		{"emptied twice", []change{{Do: "set", Path: "fill[0].declared", Value: ""}, {Do: "set", Path: "fill[0].declared", Value: ""}}, "declared = \"9 oz\"\n", ""},
		{"a box ticked", []change{{Do: "set", Path: "process.sterilised", Value: "true"}}, "minutes = 10\n", "minutes = 10\nsterilised = true\n"},
		{"ticked and not", []change{{Do: "set", Path: "process.sterilised", Value: "true"}, {Do: "set", Path: "process.sterilised", Value: ""}}, "minutes = 10\n", "minutes = 10\nsterilised = false\n"},
		{"a row", []change{{Do: "add", Path: "gift", Value: ""}, {Do: "set", Path: "gift[0].to", Value: "Hedy"}}, "declared = \"9 oz\"\n", "declared = \"9 oz\"\n\n[[gift]]\nto = \"Hedy\"\n"},
		{"a row away", []change{{Do: "remove", Path: "ingredient[1]", Value: ""}}, "# weighed twice\n[[ingredient]]\nname = \"sugar\"\namount = \"1.6 kg\"\n\n", ""},
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
	for _, c := range []change{{Do: "up", Path: "ingredient[1]", Value: ""}, {Do: "down", Path: "ingredient[0]", Value: ""}} {
		got, l := apply(plum, []change{c}, batchForm)
		if got != want || len(l) > 0 {
			t.Errorf("%s: %v\n%s", c.Do, l, got)
		}
		back, _ := apply(got, []change{c}, batchForm)
		if back != plum {
			t.Errorf("%s twice:\n%s", c.Do, back)
		}
	}
	for _, c := range []change{{Do: "up", Path: "ingredient[0]", Value: ""}, {Do: "down", Path: "ingredient[1]", Value: ""}, {Do: "up", Path: "name", Value: ""}, {Do: "up", Path: "gift[3]", Value: ""},
		{Do: "set", Path: "nothing", Value: "x"}, {Do: "add", Path: "nothing", Value: ""}, {Do: "add", Path: "cook", Value: ""}, {Do: "fly", Path: "name", Value: ""}, {Do: "set", Path: "ingredient[9].name", Value: "x"}} {
		if got, l := apply(plum, []change{c}, batchForm); got != plum || !l.HasErrors() {
			t.Errorf("%+v was done: %v", c, l)
		}
	}
	last := "[[gift]]\nto = \"a\"\n[[gift]]\nto = \"b\"" // no line end
	if got, _ := apply(last, []change{{Do: "up", Path: "gift[1]", Value: ""}}, batchForm); got != "[[gift]]\nto = \"b\"\n[[gift]]\nto = \"a\"\n" {
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

// A row taken out and put back gives the text there was, whatever was typed
// meanwhile elsewhere; a second removal drops nothing of the first.
func TestRowsArePutBack(t *testing.T) {
	text := plum + "\n# the neighbour\n[[gift]]\nto = \"Hedy\"\n\n[[gift]]\nto = \"Ines\"\njars = 2\n\n[[market]]\nevent = \"Saturday\"\n"
	for _, path := range []string{"gift[0]", "gift[1]", "ingredient[0]", "ingredient[1]", "market[0]"} {
		took := change{Do: "remove", Path: path, ID: 7}
		typed := change{Do: "set", Path: "name", Value: "Damson jam"}
		gone, l := apply(text, []change{took, typed}, batchForm)
		row := removedRows(text, []change{took}, batchForm)["7"]
		back, m := apply(gone, []change{{Do: "restore", Path: path, Value: row}}, batchForm)
		if want := strings.Replace(text, "Plum jam", "Damson jam", 1); back != want || len(l)+len(m) > 0 {
			t.Errorf("%s: %v %v, got\n%s", path, l, m, back)
		}
	}
	both := []change{{Do: "remove", Path: "gift[0]", ID: 1}, {Do: "remove", Path: "gift[0]", ID: 2}}
	gone, _ := apply(text, both, batchForm)
	rows := removedRows(text, both, batchForm)
	back, l := apply(gone, []change{{Do: "restore", Path: "gift[0]", Value: rows["2"]}, {Do: "restore", Path: "gift[0]", Value: rows["1"]}}, batchForm)
	if f, m := source.Parse("", []byte(back)); len(l)+len(m) > 0 || f.Rows("gift") != 2 || strings.Index(back, "Hedy") > strings.Index(back, "Ines") || !strings.Contains(back, "# the neighbour\n[[gift]]\nto = \"Hedy\"") {
		t.Errorf("%v\n%s", l, back)
	}
	for _, c := range []change{{Do: "restore", Path: "gift[0]", Value: "kind = 3\n"}, {Do: "restore", Path: "gift[0]", Value: "[[gift]]\nto = \"\"\"\n"},
		{Do: "restore", Path: "cook[0]", Value: "[cook]\n"}, {Do: "restore", Path: "gift[0]", Value: "[[gift]]\n[[gift]]\n"}} {
		if got, l := apply(text, []change{c}, batchForm); got != text || !l.HasErrors() {
			t.Errorf("%q was put back: %v", c.Value, l)
		}
	}
}

// Numbers as people write them; where two readings are possible, the words
// stay and a finding asks.
func TestNumbersAsTyped(t *testing.T) {
	for _, c := range []struct{ path, typed, want string }{
		{"cook.brix", "65,5", "brix = 65.5"}, {"cook.brix", "65.5", "brix = 65.5"}, {"cook.brix", "1,000", `brix = "1,000"`},
		{"fill[0].count", "1,000", "count = 1000"}, {"fill[0].count", "1,00", `count = "1,00"`}, {"fill[0].count", "8,5", `count = "8,5"`},
	} {
		if got, _ := apply(plum, []change{{Do: "set", Path: c.path, Value: c.typed}}, batchForm); !strings.Contains(got, c.want+"\n") {
			t.Errorf("%s %q: no %s in\n%s", c.path, c.typed, c.want, got)
		}
	}
}

// The switch for one's own pots is a truth in the file, not a text; what it
// says is shown again.
func TestOwnYieldsAreSwitchedOff(t *testing.T) {
	const old = "place = \"us\"\n"
	got, l := apply(old, []change{{Do: "set", Path: "own_yields", Value: "false"}}, kitchenForm)
	if !strings.Contains(got, "own_yields = false\n") || len(l) > 0 {
		t.Fatalf("%v\n%s", l, got)
	}
	if s, ok := written(choice, false); s != "false" || !ok {
		t.Errorf("%q %v", s, ok)
	}
	if back, _ := apply(got, []change{{Do: "set", Path: "own_yields", Value: ""}}, kitchenForm); back != old {
		t.Errorf("%q", back)
	}
	if got, _ := apply(old, []change{{Do: "set", Path: "units", Value: "metric"}}, kitchenForm); !strings.Contains(got, "units = \"metric\"") {
		t.Errorf("%q", got)
	}
}
