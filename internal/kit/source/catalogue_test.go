package source

import (
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/kit/diag"
)

// Files of the program are read when they are asked for, each once; what is
// wrong with one is told with its line.
func TestLazily(t *testing.T) {
	type leaf struct {
		Name string `toml:"name"`
	}
	var read []string
	parse := func(name string, data []byte) (*leaf, diag.List) {
		read = append(read, name)
		f, l := Parse(name, data)
		v := new(leaf)
		if l = append(l, Decode(f, v)...); l.HasErrors() {
			return nil, l
		}
		return v, l
	}
	files := fstest.MapFS{}
	for name, text := range map[string]string{"ash": `name = "Ash"`, "elm": `name = "Elm"`, "elder": "name = \"Elder\"\nheigt = 3", "readme.md": "x"} {
		if !strings.Contains(name, ".") {
			name += ".toml"
		}
		files["trees/"+name] = &fstest.MapFile{Data: []byte(text)}
	}
	c, l := Lazily(files, "trees", parse)
	if len(l) > 0 || len(read) > 0 || !slices.Equal(c.IDs(), []string{"ash", "elder", "elm"}) {
		t.Fatalf("%v, read %v, ids %v", l, read, c.IDs())
	}
	for range 2 {
		if v, ok := c.Get("ash"); !ok || v.Name != "Ash" {
			t.Error("no ash")
		}
	}
	if got := c.Beginning("el"); len(got) != 1 || got[0].Name != "Elm" {
		t.Errorf("beginning with el: %v", got)
	}
	if _, ok := c.Get("elder"); ok {
		t.Error("a file with a mistake counts")
	}
	if want := []string{"trees/ash.toml", "trees/elder.toml", "trees/elm.toml"}; !slices.Equal(read, want) {
		t.Errorf("read %v, want %v", read, want)
	}
	if got := c.Faults(); len(got) != 1 || got[0].File != "trees/elder.toml" || got[0].Pos.Line != 2 || !strings.Contains(got[0].Message, "heigt") {
		t.Errorf("faults: %+v", got)
	}
	own, l := c.With(fstest.MapFS{"trees/elder.toml": {Data: []byte(`name = "Mine"`)}}, "trees", parse)
	if v, ok := own.Get("elder"); len(l) > 0 || !ok || v.Name != "Mine" || len(own.Faults()) > 0 {
		t.Errorf("an own file does not stand for one of the program: %v", l)
	}
}
