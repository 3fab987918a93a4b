package edit

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

const doc = `# our batch
name = "Plum jam"   # as on the label
made = 2026-09-01

# the fruit
[[ingredient]]
name   = "plums"    # from the hedge
amount = "1 kg"
# form = "halved"

[cook]
  minutes = 20 # hard boil
  # brix = 65

# who gets one
[[gift]]
to = "Ida"
# jars = 2

# the next one
[[gift]]
to = "Bram"
jars = 1

[label] # look
colours = [ "plum", # dark
  "#fff" ]
size = { w = 1, h = 2 }
`

func TestSet(t *testing.T) {
	for _, c := range []struct {
		path     string
		value    any
		old, new string // the only change
	}{
		{"name", `Plum "best"`, `"Plum jam"   #`, `"Plum \"best\""   #`},
		{"ingredient[0].name", "damsons", `"plums"    #`, `"damsons"    #`},
		{"made", unit.Date{Year: 2026, Month: 9, Day: 2}, "2026-09-01", "2026-09-02"},
		{"cook.minutes", 25, "minutes = 20 #", "minutes = 25 #"},
		{"cook.ph", 3.25, "hard boil\n", "hard boil\n  ph = 3.25\n"},
		{"ingredient[0].form", "whole", "\"1 kg\"\n", "\"1 kg\"\nform = \"whole\"\n"},
		{"gift[0].jars", 2, "\"Ida\"\n", "\"Ida\"\njars = 2\n"},
		{"gift[1].jars", 3, "jars = 1\n", "jars = 3\n"},
		{"lot", "L1", "2026-09-01\n", "2026-09-01\nlot = \"L1\"\n"},
		{"label.colours[1]", "plum", `"#fff" ]`, `"plum" ]`},
		{"label.colours[2]", "red", `"#fff" ]`, `"#fff", "red" ]`},
		{"label.colours", []string{"red", "blue"}, "\"plum\", # dark\n  \"#fff\"", "\"red\", # dark\n  \"blue\""},
		{"label.colours", []string{"red"}, "[ \"plum\", # dark\n  \"#fff\" ]", "[\"red\"]"},
		{"label.size.w", 9, "w = 1", "w = 9"},
		{"label.size.d", 3, "h = 2 }", "h = 2, d = 3 }"},
		{"process.minutes", 10, "h = 2 }\n", "h = 2 }\n\n[process]\nminutes = 10\n"},
		{"story", "one\ntwo", "2026-09-01\n", "2026-09-01\nstory = \"\"\"\none\ntwo\"\"\"\n"},
		{"cook.x.y", true, "hard boil\n", "hard boil\n  x.y = true\n"},
	} {
		got, l := Set(doc, c.path, c.value)
		if want := strings.Replace(doc, c.old, c.new, 1); got != want || len(l) > 0 || want == doc {
			t.Errorf("%s: %v, got\n%s", c.path, l, got)
		}
	}
}

func TestSetInOtherFiles(t *testing.T) {
	for _, c := range []struct {
		text, path string
		value      any
		want       string
	}{
		{"", "name", "x", "name = \"x\"\n"},
		{"", "cook.minutes", 3, "[cook]\nminutes = 3\n"},
		{"a = 1", "b", 2, "a = 1\nb = 2\n"},
		{"a = 1\r\n[c]\r\nd = 1\r\n", "a2", "x\ny", "a = 1\r\na2 = \"x\\ny\"\r\n[c]\r\nd = 1\r\n"},
		{"\uFEFFa = 1\n", "a", 2, "\uFEFFa = 2\n"},
		{"# c\n\n# about d\n[d]\n", "a", 1, "# c\n\na = 1\n\n# about d\n[d]\n"},
		{"[d]", "d.e", 1, "[d]\ne = 1\n"},
		{"cook.minutes = 1\n[d]\n", "cook.brix", 65, "cook.minutes = 1\ncook.brix = 65\n[d]\n"},
		{"[cook.deep]\nx = 1\n", "cook.minutes", 2, "[cook.deep]\nx = 1\n\n[cook]\nminutes = 2\n"},
		{"a = {}\n", "a.b", 1, "a = { b = 1 }\n"},
		{"a = []\n", "a[0]", 1, "a = [1]\n"},
		{"a = [{b = 1}]\n", "a[0].c", "x", "a = [{b = 1, c = \"x\"}]\n"},
		{"a = '''x\ny''' # c\n", "a", "z", "a = \"z\" # c\n"},
		{"a = 1\n", "a", "tab\tand \x01 and \\", "a = \"tab\\tand \\u0001 and \\\\\"\n"},
		{"a = 1\n", `"a"`, 2, "a = 2\n"},
		{"[s.p]\na-b = 1\n", `s."p"."a-b"`, 2, "[s.p]\na-b = 2\n"},
		{"[s.p]\n\"a.b\" = 1\n", `s.p."a.b"`, 2, "[s.p]\n\"a.b\" = 2\n"},
		{"[[g]]\nto = 1\n", `"g"[0]."to"`, 2, "[[g]]\nto = 2\n"},
		{"a = 1\n", `"odd key"`, []Pair{{"x", 1}, {"y z", []any{true}}}, "a = 1\n\"odd key\" = { x = 1, \"y z\" = [true] }\n"},
	} {
		got, l := Set(c.text, c.path, c.value)
		if got != c.want || len(l) > 0 {
			t.Errorf("%q %s: %v, got %q, want %q", c.text, c.path, l, got, c.want)
		}
	}
}

func TestRefused(t *testing.T) {
	for _, c := range []struct {
		text, path string
		value      any
	}{
		{doc, "", 1}, {doc, "cook", 1}, {doc, "gift[2].to", "x"}, {doc, "label.colours[5]", "x"}, {doc, "name.sub", 1},
		{doc, "a..b", 1}, {doc, "name", func() {}}, {doc, "name", "\xff"}, {"name = plum", "name", "x"}, {doc, "gift", "x"},
		{doc, "gift[7]", 1}, {doc, "label.colours.x", 1},
	} {
		got, l := Set(c.text, c.path, c.value)
		if got != c.text || !l.HasErrors() {
			t.Errorf("%s: got %q, %v", c.path, got, l)
		}
	}
	if got, l := Delete(doc, "nothing.here"); got != doc || !l.HasErrors() {
		t.Error(l)
	}
	if got, l := AppendTable(doc, "cook", nil); got != doc || !l.HasErrors() {
		t.Error(l)
	}
	if got, l := AppendTable(doc, "name", nil); got != doc || !l.HasErrors() {
		t.Error(l)
	}
}

func TestAppendTable(t *testing.T) {
	pairs := []Pair{{"to", "Hedy"}, {"jars", 2}}
	got, l := AppendTable(doc, "gift", pairs)
	if want := strings.Replace(doc, "jars = 1\n", "jars = 1\n\n[[gift]]\nto = \"Hedy\"\njars = 2\n", 1); got != want || len(l) > 0 {
		t.Errorf("%v\n%s", l, got)
	}
	got, _ = AppendTable(doc, "ingredient", pairs)
	if want := strings.Replace(doc, "# form = \"halved\"\n", "# form = \"halved\"\n\n[[ingredient]]\nto = \"Hedy\"\njars = 2\n", 1); got != want {
		t.Errorf("a commented line must stay with its table:\n%s", got)
	}
	got, _ = AppendTable(doc, "market", pairs)
	if want := doc + "\n[[market]]\nto = \"Hedy\"\njars = 2\n"; got != want {
		t.Errorf("%s", got)
	}
	got, l = AppendTable("gift = [{to = \"x\"}]\n", "gift", pairs)
	if want := "gift = [{to = \"x\"}, { to = \"Hedy\", jars = 2 }]\n"; got != want {
		t.Errorf("%v %s", l, got)
	}
	if got, _ = AppendTable("", "gift", nil); got != "[[gift]]\n" {
		t.Errorf("%q", got)
	}
}

func TestDelete(t *testing.T) {
	for _, c := range []struct{ path, old, new string }{
		{"made", "made = 2026-09-01\n", ""},
		{"cook.minutes", "  minutes = 20 # hard boil\n", ""},
		{"gift[0]", "# who gets one\n[[gift]]\nto = \"Ida\"\n# jars = 2\n\n", ""},
		{"gift[1]", "# the next one\n[[gift]]\nto = \"Bram\"\njars = 1\n\n", ""},
		{"label.size.w", "w = 1, ", ""},
		{"label.size.h", ", h = 2", ""},
		{"label.colours[0]", "\"plum\", ", ""},
		{"cook", "[cook]\n  minutes = 20 # hard boil\n  # brix = 65\n\n", ""},
	} {
		got, l := Delete(doc, c.path)
		if want := strings.Replace(doc, c.old, c.new, 1); got != want || len(l) > 0 || want == doc {
			t.Errorf("%s: %v, got\n%s", c.path, l, got)
		}
	}
	got, l := Delete(doc, "gift")
	if strings.Contains(got, "gift") || strings.Contains(got, "Bram") || !strings.Contains(got, "# hard boil") || len(l) > 0 {
		t.Errorf("%v\n%s", l, got)
	}
	if got, l = Delete("[s]\na-b = 1\n", `"s"."a-b"`); got != "[s]\n" || len(l) > 0 {
		t.Errorf("a key in quotes it does not need: %q, %v", got, l)
	}
	if got, _ = Delete("a = [1]\n", "a[0]"); got != "a = []\n" {
		t.Errorf("%q", got)
	}
}
