package place

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/kit/unit"

	"jarmark/templates"
)

func TestPlace(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	if s, l := b.Place("us-orr", labelDay); s != nil || !l.HasErrors() || !strings.Contains(l[0].Hint, "us-or") {
		t.Errorf("unknown place: %v", l)
	}
	if s, l := b.Place("", labelDay); s == nil || s.ID != "us" || !told(l, "place-not-given") {
		t.Errorf("no place: %v", l)
	}
	s, l := b.Place(" US-OR ", labelDay)
	if s == nil || len(l) != 0 || s.Net == nil || s.Standard == nil || s.Currency != "USD" {
		t.Errorf("Oregon inherits the federal tables: %v", l)
	}
	if _, l = b.Place("us-or", unit.Date{Year: 2028, Month: 1, Day: 1}); !told(l, "rules-not-checked") {
		t.Errorf("two years old, and no warning: %v", l)
	}
}

func TestEffective(t *testing.T) {
	seen := map[string]Value{}
	for _, v := range rulesOf(t, "us-or").Effective() {
		seen[v.Table+"."+v.Key] = v
	}
	if v := seen["net.heights"]; v.Value != "5 1587500; 25 3175000; 100 4762500; 400 6350000; 0 12700000" || v.Source == "" || v.Confidence != "primary" {
		t.Errorf("net.heights: %+v", v)
	}
	if v := seen["programme[0].statement"]; !strings.HasPrefix(v.Value, "This product is homemade") || v.Confidence != "primary" {
		t.Errorf("statement: %+v", v)
	}
	b, _ := book()
	for _, id := range b.names {
		for _, v := range rulesOf(t, id).Effective() {
			if v.Table != "" && (v.Source == "" || v.Confidence == "") {
				t.Errorf("%s: %s.%s has no source", id, v.Table, v.Key)
			}
		}
	}
}

// TestEverySetReads: sets are read when asked for, so a fault in one would
// wait for its maker.
func TestEverySetReads(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	if len(b.names) < 50 {
		t.Errorf("%d places", len(b.names))
	}
	for _, id := range b.names {
		if _, ok, err := b.set(id); !ok || err != nil {
			t.Errorf("%s: %v", id, err)
		}
	}
}

// One level of extending, whole tables replaced.
func TestExtending(t *testing.T) {
	us, err := templates.FS.ReadFile("places/us.toml")
	if err != nil {
		t.Fatal(err)
	}
	laws := Laws{US: Law{Particulars: []string{"address"}}}
	for _, k := range rulesOf(t, "us").Kinds {
		laws.US.Statements = append(laws.US.Statements, StatementType{Name: k, Phrases: []string{"us.net"}})
	}
	with := func(text string) error {
		b, err := load(laws, fstest.MapFS{"places/us.toml": {Data: us}, "places/x.toml": {Data: []byte(text)}}, templates.FS)
		if err == nil {
			_, _, err = b.set("x")
		}
		return err
	}
	for text, want := range map[string]string{
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\n":                                                                              "",
		"id = \"x\"\nname = \"X\"\nextends = \"us-or\"\n":                                                                           "no set standing on its own",
		"id = \"y\"\nname = \"X\"\nextends = \"us\"\n":                                                                              `id is "y"`,
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\nlanguages = [\"fr\"]\n":                                                        "lacks",
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\nkinds = [\"fanfare\"]\n":                                                       "no statement kind",
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\ncolour = 1\n":                                                                  "colour",
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\n[net]\nform = \"fpla\"\n":                                                      "net.heights", // replaced whole
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\n[[programme]]\nconfidence = \"primary\"\nrequired = [[\"x\"]]":                 "no particular",
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\n[[programme]]\nconfidence = \"hearsay\"\n":                                     "hearsay",
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\n[[product]]\nid = \"jam\"\nstatements = [{ id = \"sugar\", to = \"June\" }]\n": "June",
		"id = \"x\"\nname = \"X\"\nextends = \"us\"\nvalid_to = \"2026-13-01\"\n":                                                   "2026-13-01",
	} {
		err := with(text)
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
}

// A language is read with the first place that speaks it, and what is wrong with
// its files is told then, by file; other places do not mind.
func TestLanguagesWithFaults(t *testing.T) {
	us, err := templates.FS.ReadFile("places/us.toml")
	if err != nil {
		t.Fatal(err)
	}
	laws := Laws{US: Law{}}
	for _, k := range rulesOf(t, "us").Kinds {
		laws.US.Statements = append(laws.US.Statements, StatementType{Name: k})
	}
	words, err := fs.Glob(templates.FS, "languages/*.toml")
	if err != nil || len(words) == 0 {
		t.Fatal(err)
	}
	for text, want := range map[string]string{
		"\"us.net\" = \"twice\"\n":   "languages/en.toml: phrase us.net is written twice",
		"\"x\" = \"a\"\n\"y\" = 1\n": "languages/en-more.toml:2: y",
		"\"x\" = \n":                 "languages/en-more.toml:1",
	} {
		phrases := fstest.MapFS{"languages/en-more.toml": {Data: []byte(text)}}
		for _, n := range words {
			data, _ := templates.FS.ReadFile(n)
			phrases[n] = &fstest.MapFile{Data: data}
		}
		b, err := load(laws, fstest.MapFS{"places/us.toml": {Data: us}}, phrases)
		if err != nil {
			t.Fatal(err)
		}
		if _, _, err := b.set("us"); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
		if b.words["fr"].Say("us.none-such") != "[us.none-such]" || len(b.words["fr"].all()) < 10 {
			t.Error("another language is not read")
		}
	}
}
