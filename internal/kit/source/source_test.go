package source

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"

	"jarmark/internal/kit/diag"
)

const sample = "# é\nname = \"Plum\" # jam\r\n\"odd key\" = 1\n[cook]\n  x.y = [1, {a = 2, b.c = \"z\"}]\n" +
	"[[ingredient]]\nname='a'\n[[ingredient]]\n\tamount = \"\"\"x\ny\"\"\"\n[ingredient.part]\nq = 2026-06-14 10:00:00\n[[ingredient.sub]]\nk=1\n[[ingredient.sub]]\nk=2\n"

func TestIndex(t *testing.T) {
	f, l := Parse("f.toml", []byte("\uFEFF"+sample))
	if len(l) > 0 {
		t.Fatal(l)
	}
	for path, want := range map[string]diag.Pos{
		"name":                    {Line: 2, Column: 8, EndColumn: 14},
		`"odd key"`:               {Line: 3, Column: 13, EndColumn: 14},
		"cook":                    {Line: 4, Column: 1, EndColumn: 7},
		"cook.x":                  {Line: 5, Column: 3, EndColumn: 6},
		"cook.x.y":                {Line: 5, Column: 9, EndColumn: 32},
		"cook.x.y[0]":             {Line: 5, Column: 10, EndColumn: 11},
		"cook.x.y[1].b.c":         {Line: 5, Column: 27, EndColumn: 30},
		"ingredient":              {Line: 6, Column: 1, EndColumn: 15},
		"ingredient[0]":           {Line: 6, Column: 1, EndColumn: 15},
		"ingredient[0].name":      {Line: 7, Column: 6, EndColumn: 9},
		"ingredient[0].amount":    {Line: 6, Column: 1, EndColumn: 15}, // missing: its table
		"ingredient[1].amount":    {Line: 9, Column: 11, EndColumn: 15},
		"ingredient[1].part.q":    {Line: 12, Column: 5, EndColumn: 24},
		"ingredient[1].sub[0].k":  {Line: 14, Column: 3, EndColumn: 4},
		"ingredient[1].sub[1].k":  {Line: 16, Column: 3, EndColumn: 4},
		"ingredient[7].name":      {Line: 6, Column: 1, EndColumn: 15},
		"nowhere.at[3].all":       {Line: 1, Column: 1},
		"":                        {Line: 1, Column: 1},
		`"odd key"."with.dot"[1]`: {Line: 3, Column: 13, EndColumn: 14},
	} {
		if got := f.Span(path); got != want {
			t.Errorf("%s: got %v, want %v", path, got, want)
		}
	}
	if got, want := f.KeySpan("cook.x.y"), (diag.Pos{Line: 5, Column: 3, EndColumn: 6}); got != want {
		t.Errorf("key: got %v, want %v", got, want)
	}
}

func TestNilFile(t *testing.T) {
	var f *File
	if f.Span("x") != (diag.Pos{}) || f.Locate(diag.List{{}})[0].Pos != (diag.Pos{}) || Decode(nil, &struct{}{}) != nil || f.Entries() != nil {
		t.Error("a nil file must answer")
	}
}

func TestLocateLeavesOthersAlone(t *testing.T) {
	f, _ := Parse("f.toml", []byte(sample))
	in := diag.List{{File: "f.toml", Path: "name"}, {File: "g.toml", Path: "name"}, {File: "f.toml", Path: "name", Pos: diag.Pos{Line: 9, Column: 9}}}
	out := f.Locate(in)
	if out[0].Pos.Line != 2 || out[1].Pos.Line != 0 || out[2].Pos.Line != 9 || in[0].Pos.Line != 0 {
		t.Errorf("%v", out)
	}
}

// strip drops the indices of a path and gives it as a key of the library.
func strip(path string) (key toml.Key) {
	steps, _ := SplitPath(path)
	for _, s := range steps {
		if !s.IsIndex {
			key = append(key, s.Key)
		}
	}
	return key
}

// checkKeys compares the index with the library's own list of keys.
func checkKeys(t *testing.T, text string) {
	t.Helper()
	var m map[string]any
	md, err := toml.Decode(text, &m)
	if err != nil {
		return
	}
	f, l := Parse("f", []byte(text))
	if l.HasErrors() {
		return
	}
	var got []string
	for _, e := range f.Entries() {
		if e.Type == Value || e.Type == Table || e.Type == Element {
			got = append(got, strip(e.Path).String())
		}
	}
	var want []string
	for _, k := range md.Keys() {
		want = append(want, k.String())
	}
	if !slices.Equal(got, want) {
		t.Fatalf("%q\n got %q\nwant %q", text, got, want)
	}
	checkValues(t, f, m, "")
}

// checkValues walks the decoded tree: each value must stand where the index
// says, and read the same when decoded alone.
func checkValues(t *testing.T, f *File, x any, path string) {
	t.Helper()
	switch v := x.(type) {
	case map[string]any:
		for k, y := range v {
			checkValues(t, f, y, Join(path, k))
		}
	case []map[string]any:
		for i, y := range v {
			checkValues(t, f, y, At(path, i))
		}
	case []any:
		for i, y := range v {
			checkValues(t, f, y, At(path, i))
		}
	default:
		var m map[string]any
		e, ok := f.Entry(path)
		_, err := toml.Decode("x = "+f.Text[e.Value.Start:e.Value.End], &m)
		if !ok || err != nil || fmt.Sprint(m["x"]) != fmt.Sprint(x) {
			t.Fatalf("%q: %s = %v, the index points at %q (%v)", f.Text, path, x, f.Text[e.Value.Start:e.Value.End], err)
		}
	}
}

func TestKeysAgreeWithTheLibrary(t *testing.T) {
	checkKeys(t, sample)
	for _, text := range seeds {
		checkKeys(t, text)
	}
}

var seeds = []string{
	"a = {b = {c = 1}, d = [ {e=1}, {e=2}, ] }", "[a.b]\nc=1\n[a]\nd=2", "a.b.c=1\na.b.d=2", "[[a]]\n[[a.b]]\nx=1\n[[a]]\n[[a.b]]\nx=1",
	`"a.b"."c\"d" = 1`, "'lit.x' = '''a'''", `"\u00e9" = """\"""" `, "a=[[1,2],[3]]", "x = \"\"\"\"quoted\"\"\"\"\"", "a = [ # c ]\n 1, # ]\n 2 ]",
	"t = {\n a = 1, # x\n b = 2,\n}", "d = 1979-05-27 07:32:00Z # z", "x = 1_000\ny=0xdead\nz=inf\n", "[ a . \"b\" ]\nc=1", "\"\" = 1", "[a.\"\"]\nx=1",
	"e = \"\\e\\x41\"", "a = ''\nb = \"\"\n", "a = '''\n'''\nb = 1", "a={}\nb=[]\n",
}

func FuzzIndex(f *testing.F) {
	f.Add(sample)
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if strings.HasPrefix(text, "\uFEFF") || strings.Contains(text, "\x00") {
			return
		}
		file, l := Parse("f", []byte(text))
		for _, d := range l {
			if d.Pos.Line < 1 || d.Message == "" || d.Hint == "" && d.Code == "syntax" && strings.HasPrefix(d.Message, "not TOML") {
				t.Fatalf("%q: poor finding %+v", text, d)
			}
		}
		var any map[string]any
		Decode(file, &any)
		checkKeys(t, text)
	})
}
