package batch

import (
	"reflect"
	"testing"
)

// Soft hyphens in a name say where its words part and are no part of it; a name
// of nothing else is no name.
func TestSoftHyphensInNames(t *testing.T) {
	b, l := Parse("a.toml", []byte("name = \"Stachel\\u00ADbeer\\u00ADkonfitüre fein\"\nmade = 2026-06-14\n[label]\nsubtitle = \"mit Va\\u00ADnille\\u00AD\"\n"), nil)
	want := map[string]string{"Stachelbeerkonfitüre": "Stachel\u00adbeer\u00adkonfitüre", "Vanille": "Va\u00adnille"}
	if b == nil || b.Name != "Stachelbeerkonfitüre fein" || b.Label.Subtitle != "mit Vanille" || !reflect.DeepEqual(b.Label.Parts, want) {
		t.Fatalf("%+v %v", b, l)
	}
	for _, d := range l {
		if d.Code == "unseen-character" {
			t.Error(d.Message)
		}
	}
	_, l = Parse("a.toml", []byte("name = \"\\u00AD\"\nmade = 2026-06-14\n"), nil)
	if !l.HasErrors() {
		t.Error("a name of a soft hyphen alone")
	}
}
