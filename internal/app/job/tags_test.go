package job_test

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// TestHardNamesStopNoTag: letters no face draws, 45 letters in one word and an
// unknown design are told by row and person; all tags are printed.
func TestHardNamesStopNoTag(t *testing.T) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	b := env.Load(demoInput(t, "apricot-lavender.toml"), job.Choices{})
	row := func(line int, to, message, design string) pack.Entry {
		return pack.Entry{To: to, Message: message, Design: design, Jars: 1, File: "friends.csv", Pos: diag.Pos{Line: line, Column: 1}}
	}
	list := []pack.Entry{row(2, "Ann", "hello", ""), row(3, "שרה", "", ""), row(4, "Bea", "with love 🎄", ""), row(5, strings.Repeat("Wolfeschlegel", 12), "", ""), row(6, "Cy", "", "blosom"),
		row(7, "Konstantin-Maximilian Bartholomäus-Vogelsang", "", ""),
		row(8, "Nguyễn Thị Ánh", "chúc mừng", "")}
	runs, found := env.Labels(b, job.Choices{Pieces: []label.Piece{label.Tag}, List: list})
	if found.HasErrors() || len(runs) != 1 || runs[0].Labels != len(list) {
		t.Fatalf("%d runs, %v", len(runs), found)
	}
	told := map[int]string{}
	for _, d := range found {
		if d.File == "friends.csv" {
			told[d.Pos.Line] += d.Code + " " + d.Message
		}
	}
	for line, want := range map[int]string{2: "", 3: "tag-by-hand the tag for שרה", 4: "tag-by-hand the tag for Bea is printed with a blank for the message", 5: "tag-by-hand", 6: `gift-design the tag for Cy: no design "blosom"`, 7: "", 8: ""} {
		if !strings.HasPrefix(told[line], want) || want == "" && told[line] != "" {
			t.Errorf("row %d: %q, want %q", line, told[line], want)
		}
	}
	said := ""
	for _, p := range runs[0].Doc.Pages {
		for _, pl := range p.Places {
			for _, it := range pl.Frame.Items {
				if x, ok := it.(*page.Text); ok {
					said += x.String() + "\n"
				}
			}
		}
	}
	for _, w := range []string{"Ann", "hello", "Bea", "Cy", "Vogelsang", "Nguyễn", "chúc mừng"} {
		if !strings.Contains(said, w) {
			t.Errorf("no tag says %q", w)
		}
	}
	if slices.Contains(strings.Split(said, "\n"), "?") {
		t.Error("a ? stands for a letter")
	}
}

// Tags hang, unless another sheet is asked for by its name.
func TestTagsHang(t *testing.T) {
	env := builtin(t)
	in := demoInput(t, demoBatches[0])
	for asked, want := range map[string]string{"": "letter-tag-2x3.25in-3x3", "letter-bag-4x2.5in-2x2": "letter-bag-4x2.5in-2x2", "letter-plain": "letter-plain"} {
		c := job.Choices{Pieces: []label.Piece{label.Tag}, Sheet: asked}
		run, found, err := env.Print([]job.Input{in}, c, "pdf")
		if err != nil || len(run.Printed) != 1 || run.Printed[0].Sheet.ID != want {
			t.Errorf("%q: %v %v %v, want %s", asked, run.Printed, found, err, want)
		}
	}
}
