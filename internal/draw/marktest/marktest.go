// Package marktest writes a laid out document as text, for tests that hold it
// against one that was looked at and found right.
package marktest

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

var update = flag.Bool("update", false, "write the marks of the sheets in testdata anew; look at the printed sheets, too")

// Drawn writes out where each mark and each placed frame of a document stands,
// in micrometres, with its colours, face and size.
func Drawn(d *page.Doc) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s / %s / %s\n", d.Title, d.Author, d.Lang)
	for i, p := range d.Pages {
		fmt.Fprintf(&b, "page %d %d x %d\n", i+1, µm(p.W), µm(p.H))
		for _, m := range p.Marks {
			switch x := m.(type) {
			case *page.Text:
				fmt.Fprintf(&b, "%d %d %s %d %v %s\n", µm(x.At.X), µm(x.At.Y), x.Face, µm(x.Size), x.Colour, x.String())
			case *page.Path:
				for _, at := range x.Pts {
					fmt.Fprintf(&b, "%d,%d ", µm(at.X), µm(at.Y))
				}
				fmt.Fprintf(&b, "%s %s %d %v %v\n", colour(x.Fill), colour(x.Stroke), µm(x.Width), x.Ops, x.Bleed)
			}
		}
		for _, f := range p.Places {
			fmt.Fprintf(&b, "frame %s at %d,%d turned %d\n", f.Frame.Name, µm(f.At.X), µm(f.At.Y), f.Turn)
		}
	}
	return b.String()
}

func µm(l unit.Length) int64 { return int64(l / unit.Micrometre) }

func colour(c *page.Colour) string {
	if c == nil {
		return "-"
	}
	return fmt.Sprint(*c)
}

// Same holds what was drawn against a file of testdata, line by line; with
// -update it writes the file.
func Same(t *testing.T, file, drawn string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(drawn), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	got, want := strings.Split(drawn, "\n"), strings.Split(string(data), "\n")
	for i := range min(len(got), len(want)) {
		if got[i] != want[i] {
			t.Fatal(file, "line", i+1, "was", want[i], "and is now", got[i])
		}
	}
	if len(got) != len(want) {
		t.Error(file, "has", len(want), "lines, now", len(got))
	}
}
