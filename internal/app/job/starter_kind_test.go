package job

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
)

// The kind decides which rules judge a batch, so it is never guessed in silence:
// by the name, else by the heading of the notes, else asked. The notes are our
// own.
func TestKindOfNotes(t *testing.T) {
	const pot = "\n2 lb quinces\n1 lb sugar\nmakes 5 half-pints of jam\n"
	for _, c := range []struct{ name, kind, notes, want, comment, asked string }{
		{"Autumn batch", "", "Quince jelly, Sunday 4 Oct" + pot, "jelly", "by line 1", ""},
		{"Autumn batch", "", "Hill kitchen\nBread relish" + pot, "relish", "by line 2", ""},
		{"Autumn batch", "", "Quittengelee" + pot, "jelly", "by line 1", ""},
		{"Autumn batch", "", pot, "jam", "asked", "neither the name nor the notes"},
		{"Autumn batch", "", "no idea yet" + pot + "relish", "jam", "asked", "neither the name nor the notes"},
		{"Autumn batch", "", "a\nb\nc\nrelish" + pot, "jam", "asked", "neither"},
		{"Autumn batch", "", "spread the fruit on a tray overnight before you begin" + pot, "jam", "asked", "neither"},
		{"Quince jam", "", "Quince jelly" + pot, "jam", "asked", "that is jelly, and the name says jam"},
		{"Quince jelly", "", "Quince jelly" + pot, "jelly", "", ""},
		{"Quince jelly", "", pot, "jelly", "", ""},
		{"Quince jam", "marmalade", "Quince jelly" + pot, "marmalade", "", ""},
	} {
		doc, l, err := BatchFromNotes(c.name, c.kind, []byte(c.notes), unit.Date{Year: 2026, Month: 10, Day: 4})
		if err != nil {
			t.Fatal(err)
		}
		_, line, _ := strings.Cut(string(doc.Data), "kind = ")
		line, _, _ = strings.Cut(line, "\n")
		if value, comment, _ := strings.Cut(line, "#"); strings.TrimSpace(value) != `"`+c.want+`"` || (c.comment == "") != (comment == "") || !strings.Contains(comment, c.comment) {
			t.Errorf("%s with %q: kind = %s, want %s # %s", c.name, c.notes, line, c.want, c.comment)
		}
		var asked []string
		for _, d := range l {
			if strings.Contains(d.Message, "kind") || strings.Contains(d.Message, "which of the two") {
				asked = append(asked, d.Message)
			}
		}
		if got := strings.Join(asked, "; "); (c.asked == "") != (got == "") || !strings.Contains(got, c.asked) {
			t.Errorf("%s with %q asks %q, want %q", c.name, c.notes, got, c.asked)
		}
	}
}
