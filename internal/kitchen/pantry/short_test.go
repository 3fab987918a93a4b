package pantry

import (
	"strings"
	"testing"
)

// A short word means a food of the table, or one that is asked about; and none is
// already a food by itself, for then the table says what it is.
func TestShortWords(t *testing.T) {
	p := Default()
	if len(p.short) < 40 {
		t.Fatalf("%d short words", len(p.short))
	}
	speaking := []*Pantry{p, p.Speaking("de"), p.Speaking("fr")}
	known := func(w string) bool {
		for _, q := range speaking {
			if _, ok := q.Ingredient(w); ok {
				return true
			}
			if _, ok := q.Ambiguous(w, ""); ok {
				return true
			}
		}
		return false
	}
	states := " entsteint entkernt geschält gemahlen getrocknet unbehandelt dénoyautées " // what was done to a food
	for w, means := range p.short {
		if !strings.Contains(states, " "+means+" ") && !known(means) {
			t.Errorf("%s means %s, which no row knows", w, means)
		}
		if g, ok := p.Ingredient(w); ok && g.Key != "gooseberry" { // goosegogs is a word of its own
			t.Errorf("%s is %s already", w, g.Name)
		}
	}
	for _, c := range []struct{ say, want string }{{"Strawbs", "strawberries"}, {"himb.", "Himbeeren"}, {"GZ", "Gelierzucker"}, {"straw", ""}} {
		if got, _ := p.Short(c.say); got != c.want {
			t.Errorf("%s: %q, want %q", c.say, got, c.want)
		}
	}
}
