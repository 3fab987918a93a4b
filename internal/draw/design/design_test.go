package design_test

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/fonts"
	"jarmark/internal/draw/design"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
	"jarmark/templates"
)

func builtin() (*design.Catalogue, diag.List) { return new(design.Catalogue).With(templates.FS) }

func TestBuiltInDesigns(t *testing.T) {
	c, l := builtin()
	for _, f := range l {
		t.Errorf("%s:%d:%d: %s", f.File, f.Pos.Line, f.Pos.Column, f.Message)
	}
	if len(c.List()) < 7 {
		t.Fatalf("%d designs", len(c.List()))
	}
	seasons := map[string]bool{}
	for _, d := range c.List() {
		seasons[d.Season] = true
		if d.About == "" || len(d.Use) == 0 {
			t.Errorf("%s says nothing about itself", d.ID)
		}
		for _, v := range []design.Voice{d.Voices.Title, d.Voices.Subtitle, d.Voices.Brand, d.Voices.Net, d.Voices.Text, d.Voices.Small, d.Voices.Hand, d.Voices.Price} {
			if _, err := fs.Stat(fonts.FS, string(v.Face)+".ttf"); err != nil {
				t.Errorf("%s: %v", d.ID, err)
			}
		}
		for _, p := range label.Pieces {
			if d.Look(p).Align == "" {
				t.Errorf("%s has no look for %s", d.ID, p)
			}
		}
	}
	for _, s := range []string{"winter", "autumn"} {
		if !seasons[s] {
			t.Errorf("no design for %s", s)
		}
	}
}

// Each faulty line is met by a finding at its place, with a hint.
func TestFaultyDesigns(t *testing.T) {
	for _, c := range []struct {
		name, text string
		line       int
		code       string
	}{
		{"no name", "about = \"x\"\n", 1, "missing-name"},
		{"unknown key", "name = \"x\"\nlokk = 1\n", 2, ""},
		{"wrong type", "name = \"x\"\n[look]\nmargin = \"wide\"\n", 3, ""},
		{"margin", "name = \"x\"\n[look]\nmargin = 0.6\n", 3, "out-of-range"},
		{"margin nan", "name = \"x\"\n[look]\nmargin = nan\n", 3, ""},
		{"frame", "name = \"x\"\n[look]\nframe = \"golden\"\n", 3, "unknown-word"},
		{"ornament", "name = \"x\"\n[[look.ornament]]\nname = \"wreath\"\nspot = \"top\"\n[[look.ornament]]\nname = \"tractor\"\n", 6, "unknown-word"},
		{"instead", "name = \"x\"\n[[look.ornament]]\nname = \"fruit\"\ninstead = { name = \"tractor\" }\n", 4, "unknown-word"},
		{"piece", "name = \"x\"\n[piece.poster]\nalign = \"left\"\n", 2, "unknown-piece"},
		{"voice", "name = \"x\"\n[voice.shout]\ncase = \"upper\"\n", 2, "unknown-voice"},
		{"size", "name = \"x\"\n[voice.title]\nsize = [9, 1]\n", 3, "out-of-range"},
		{"season", "name = \"x\"\nseason = \"monsoon\"\n", 2, "unknown-word"},
		{"syntax", "name = \"x\nlook\n", 1, ""},
	} {
		d, l := design.Parse("mine.toml", []byte(c.text))
		if d != nil || !l.HasErrors() {
			t.Errorf("%s: passes", c.name)
			continue
		}
		f := l[0]
		if f.Pos.Line != c.line || c.code != "" && f.Code != c.code {
			t.Errorf("%s: %s at line %d (%s), want %s at line %d", c.name, f.Code, f.Pos.Line, f.Message, c.code, c.line)
		}
		if f.File != "mine.toml" {
			t.Errorf("%s: finding is about %q", c.name, f.File)
		}
	}
}

func TestOwnDesignsLieOverBuiltIn(t *testing.T) {
	own := fstest.MapFS{
		"designs/orchard.toml": {Data: []byte("name = \"My orchard\"\n[look]\nalign = \"left\"\n[piece.lid]\nmargin = 0.1\n")},
		"designs/mine.toml":    {Data: []byte("name = \"Mine\"\n")},
		"designs/broken.toml":  {Data: []byte("name = 3\n")},
	}
	c, _ := builtin()
	c, l := c.With(own)
	if d, ok := c.Get("orchard"); !ok || d.Name != "My orchard" || d.Look(label.Lid).Align != "left" || d.Look(label.Lid).Margin != 0.1 {
		t.Error("the maker's orchard does not replace the built-in one")
	}
	if d, ok := c.Get("mine"); !ok || d.Season != "all year" {
		t.Error("a design of two words does not load")
	}
	if _, ok := c.Get("broken"); ok || !l.HasErrors() {
		t.Error("a broken design loads")
	}
	if _, ok := c.Get("snow"); !ok {
		t.Error("built-in designs are gone")
	}
	if c, l := new(design.Catalogue).With(nil); len(c.List()) != 0 || l.HasErrors() {
		t.Error("no folders at all is a fault")
	}
}

// FuzzParse: no text makes the reader panic, and what it accepts is in range.
func FuzzParse(f *testing.F) {
	files, _ := fs.Glob(templates.FS, "designs/*.toml")
	for _, name := range files {
		data, _ := fs.ReadFile(templates.FS, name)
		f.Add(string(data))
	}
	f.Add("name = \"x\"\n[look.band]\nsize = -1e999\n")
	f.Fuzz(func(t *testing.T, text string) {
		d, l := design.Parse("own.toml", []byte(text))
		if d == nil && !l.HasErrors() {
			t.Fatal("neither design nor finding")
		}
		if d == nil {
			return
		}
		for _, p := range label.Pieces {
			k := d.Look(p)
			if !(k.Margin >= 0 && k.Margin <= 0.25) || !(k.Band.Size >= 0 && k.Band.Size <= 0.4) {
				t.Fatalf("look out of range: %+v", k)
			}
		}
		for _, f := range l {
			if f.Severity == diag.Error || strings.HasPrefix(f.Message, " ") {
				t.Fatalf("a design beside an error: %+v", f)
			}
		}
	})
}

// 21 CFR 101.3(d): the name of the food "shall be presented in bold type". Every
// design has a bold face for both its lines.
func TestNamesHaveABoldFace(t *testing.T) {
	s, _ := builtin()
	for _, d := range s.List() {
		for what, v := range map[string]design.Voice{"title": d.Voices.Title, "subtitle": d.Voices.Subtitle} {
			if !strings.Contains(string(v.Bold), "_700Bold") {
				t.Errorf("%s: the %s has the bold face %q", d.ID, what, v.Bold)
			}
		}
	}
}
