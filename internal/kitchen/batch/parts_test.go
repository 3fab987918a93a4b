package batch

import (
	"reflect"
	"testing"
)

// Soft hyphens and marks in a name say where its words part and its lines end, and
// are no part of it; a name of nothing else is no name.
func TestMarksInNames(t *testing.T) {
	for _, c := range []struct {
		name, want string
		parts      map[string]string
	}{
		{`Stachel\u00ADbeer\u00ADkonfitüre fein`, "Stachelbeerkonfitüre fein", map[string]string{"Stachelbeerkonfitüre": "Stachel\u00adbeer\u00adkonfitüre"}},
		{`mit Va\u00ADnille\u00AD`, "mit Vanille", map[string]string{"Vanille": "Va\u00adnille"}},
		{`Stachel|beer|konfitüre fein`, "Stachelbeerkonfitüre fein", map[string]string{"Stachelbeerkonfitüre": "Stachel\u00adbeer\u00adkonfitüre"}},
		{`Plum | with star anise`, "Plum with star anise", map[string]string{"Plum with": "Plum\nwith"}},
		{`Plum| with |star anise`, "Plum with star anise", map[string]string{"Plum with": "Plum\nwith", "with star": "with\nstar"}},
		{`Plum| with`, "Plum with", map[string]string{"Plum with": "Plum\nwith"}},
		{`| Dam|son |`, "Damson", map[string]string{"Damson": "Dam\u00adson"}},
		{`Dam|son | jelly`, "Damson jelly", map[string]string{"Damson": "Dam\u00adson", "Damson jelly": "Damson\njelly"}},
	} {
		b, l := Parse("a.toml", []byte("name = \"Jam\"\nmade = 2026-06-14\n[label]\ntitle = \""+c.name+"\"\n"), nil)
		if b == nil || b.Label.Title != c.want || !reflect.DeepEqual(b.Label.Parts, c.parts) {
			t.Errorf("%q: %q %q %v", c.name, b.Label.Title, b.Label.Parts, l)
		}
		for _, d := range l {
			if d.Code == "unseen-character" || d.Code == "control-character" {
				t.Error(d.Message)
			}
		}
	}
	b, l := Parse("a.toml", []byte("name = \"Damson | plum\"\nmade = 2026-06-14\n"), nil)
	if b == nil || b.Name != "Damson plum" || b.Label.Parts["Damson plum"] == "" {
		t.Errorf("%+v %v", b, l)
	}
	for _, none := range []string{`\u00AD`, "|", "| |", `|\u00AD`} {
		if _, l = Parse("a.toml", []byte("name = \""+none+"\"\nmade = 2026-06-14\n"), nil); !l.HasErrors() {
			t.Errorf("a name of %q alone", none)
		}
	}
}
