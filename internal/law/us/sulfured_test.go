package us

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// What the maker calls sulfured is declared so among the ingredients, and not
// asked about again (21 CFR 101.100(a)(4)); what may be is asked about, and what
// is said to be free of it is not.
func TestSulfuredIsDeclared(t *testing.T) {
	for name, want := range map[string][2]string{
		"dried apricots, sulphured": {"dried apricots (sulfites)", ""},
		"sulfured apricots":         {"dried apricots (sulfites)", ""},
		"dried apricots":            {"dried apricots", "sulfites-unknown"},
		"unsulfured dried apricots": {"dried apricots", ""},
		"wine with sulfites":        {"wine with sulfites", ""},
	} {
		src := "name = \"Plum jam\"\nkind = \"jam\"\nmade = 2026-09-05\n[[ingredient]]\nname = \"plums\"\namount = \"2 kg\"\n[[ingredient]]\nname = \"sugar\"\namount = \"2 kg\"\n[[ingredient]]\nname = \"" + name + "\"\namount = \"100 g\"\n"
		b, _ := batch.Parse("plum.toml", []byte(src), nil)
		r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
		c, l := declare(t, r, "us", draft.Options{})
		got := strings.ToLower(strings.TrimSuffix(text(c, label.Ingredients), "."))
		if _, asked := found(l, "sulfites-unknown"); !strings.HasSuffix(got, want[0]) || asked != (want[1] != "") {
			t.Errorf("%s: %q, asked %t", name, got, asked)
		}
	}
}
