package notes

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

var update = flag.Bool("update", false, "write testdata/lines.txt again from what is read; look at the difference")

// summary is all that was read of a line, each thing on a line of its own.
func summary(l Line) string {
	var b strings.Builder
	f := func(format string, args ...any) { fmt.Fprintf(&b, "    "+format+"\n", args...) }
	for _, in := range l.Ingredients {
		f("%s | %s | %s", join(in.Amount, in.Amounts), join(in.Name, in.Names), in.Form)
	}
	for _, k := range l.Keys {
		f("%s%s = %s", map[bool]string{true: "# "}[k.Asked], k.Path, k.Value)
	}
	for _, x := range l.Fills {
		f("fill %q %g-%g planned %v sealed %d", x.Jar, x.Low, x.High, x.Planned, x.Sealed)
	}
	for _, s := range l.Asks {
		f("asks: %s", s)
	}
	for _, s := range l.Says {
		f("says: %s", s)
	}
	return b.String()
}

// Lines as makers write them, our invention, with everything that is read of
// each: the kinds of line side by side, and the numbers on both sides of their
// limits. Notes of several lines stand together, an empty line parts them.
func TestLines(t *testing.T) {
	const file = "testdata/lines.txt"
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	p := pantry.Default()
	var out strings.Builder
	for _, block := range strings.Split(strings.TrimSpace(string(data)), "\n\n") {
		var text, want []string
		for _, s := range strings.Split(block, "\n") {
			if strings.HasPrefix(s, "    ") {
				want = append(want, s+"\n")
			} else {
				text = append(text, s)
			}
		}
		got := ""
		for _, l := range Read(strings.Join(text, "\n"), p).Lines {
			got += summary(l)
		}
		if !*update && got != strings.Join(want, "") {
			t.Errorf("%q is read as\n%swant\n%s", text, got, strings.Join(want, ""))
		}
		out.WriteString(strings.Join(text, "\n") + "\n" + got + "\n")
	}
	if *update {
		if err := os.WriteFile(file, []byte(strings.TrimSpace(out.String())+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
