package job_test

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// low are the low labels most makers own, on the jar they are for: at most so
// many of all may have a name under 1.4 times the net quantity or lack the
// maker's name (both common practice, no source), and each of those is told.
// Only five states want their sentence on the display panel; Montana's and
// Oregon's take two lines of it.
var low = []struct {
	name  string
	piece label.Piece
	w, h  float64
	jar   string // of the demo, else a half-pint
	fits  int    // percent of all that fit, at least
	most  int
}{
	{"4 x 2 in", label.Front, 101.6, 50.8, "", 100, 0},
	{"half-pint wrap", label.Wrap, 220, 46, "", 100, 0},
	{"4 x 1 1/3 in", label.Front, 101.6, 33.9, "4 fl oz", 100, 0},
	{"3 1/2 x 1 2/3 in", label.Front, 88.9, 42.3, "", 100, 29},        // of the five states with a sentence
	{"2 x 2 in", label.Front, 50.8, 50.8, "", 100, 30},                // of these
	{"2 1/4 x 1 1/4 in", label.Front, 57.2, 31.8, "4 fl oz", 100, 24}, // Montana, Oregon
	{"2 5/8 x 1 in", label.Front, 66.7, 25.4, "4 fl oz", 97, 8},       // Oregon
	{"26 mm strip", label.Wrap, 214, 26, "4 fl oz", 97, 12},           // Montana; Delaware wants all in 11 pt
}

// TestLowLabels sets each of these labels in every design for every place of the
// United States, and looks at what stands on it.
func TestLowLabels(t *testing.T) {
	cases := low
	switch {
	case testing.Short():
		cases = low[:1]
	case os.Getenv("JARMARK_MATRIX") != "full":
		cases = low[:7]
	}
	env := builtin(t)
	for _, u := range cases {
		t.Run(u.name, func(t *testing.T) {
			misses, fits, tried, bare := 0, 0, 0, 0
			seen := map[string]bool{}
			for _, p := range env.Book.List() {
				if !strings.HasPrefix(p.ID, "us") {
					continue
				}
				c := ofJar(t, env, u.jar, p.ID)
				if c == nil || seen[onPanel(c)] {
					continue // the panel is that of another place
				}
				seen[onPanel(c)] = true
				for _, d := range env.Designs.List() {
					tried++
					r, found := compose.Compose(c, d, u.piece, compose.Cell{W: unit.MM(u.w), H: unit.MM(u.h), Shape: page.Rectangle, Corner: unit.MM(2), Safe: unit.MM(2)},
						env.Faces, compose.Options{Codes: &matrixCodes, Drawings: &matrixDrawings})
					if found.HasErrors() {
						t.Logf("%s %s: %s", p.ID, d.ID, errorsIn(found))
						continue
					}
					fits++
					if r.Bare {
						bare++
					}
					for _, f := range inspect.Frame(r.Frame, c, env.Faces, inspect.Default()) {
						if f.Severity == diag.Error {
							t.Errorf("%s %s: %s", p.ID, d.ID, f.Message)
						}
					}
					name, net, sign := leadOf(c, r.Frame)
					small, lacks := name*1000 < net*1399, sign == 0
					if small || lacks {
						misses++
						t.Logf("%s %s: name %.1f pt, net quantity %.1f pt, maker's name %.1f pt", p.ID, d.ID, name.Points(), net.Points(), sign.Points())
					}
					if hasCode(found, "name-crowded") != small || hasCode(found, "sign-left-out") != lacks {
						t.Errorf("%s %s: name %.1f pt, net quantity %.1f pt, maker's name %.1f pt, told %v", p.ID, d.ID, name.Points(), net.Points(), sign.Points(), found)
					}
				}
			}
			t.Logf("%d panels, %d labels, %d fit, %d with a small name or without the maker's, %d without a drawing", len(seen), tried, fits, misses, bare)
			if bare*20 > fits {
				t.Errorf("%d of %d labels that fit are without a drawing of their design, want a twentieth at most", bare, fits)
			}
			if misses > u.most || fits*100 < tried*u.fits {
				t.Errorf("%d of %d labels fit, %d of them with a small name or without the maker's, want at most %d", fits, tried, misses, u.most)
			}
		})
	}
}

// ofJar is the demo as one of a place, in another jar.
func ofJar(t *testing.T, env *job.Env, jar, place string) *label.Content {
	t.Helper()
	in := demoInput(t, demoBatches[0])
	if jar != "" {
		for old, now := range map[string]string{`jar = "8 fl oz"`: `jar = "` + jar + `"`, `declared = "10 oz"`: `declared = "4 oz"`,
			`"10.3 oz", "10.5 oz", "10.2 oz", "10.4 oz", "10.6 oz", "10.3 oz"`: `"4.3 oz", "4.5 oz", "4.2 oz"`} {
			if !bytes.Contains(in.Batch.Data, []byte(old)) {
				t.Fatalf("the demo says no %s", old)
			}
			in.Batch.Data = bytes.Replace(in.Batch.Data, []byte(old), []byte(now), 1)
		}
	}
	b := env.Load(in, job.Choices{Place: place})
	if len(b.Contents) == 0 {
		return nil
	}
	return b.Contents[0]
}

// onPanel is all that a display panel bears, in one text.
func onPanel(c *label.Content) (s string) {
	for _, b := range c.Blocks {
		if b.Zone == label.Panel || b.Zone == label.Bottom || b.Kind == label.Statement {
			s += b.ID + b.Text() + b.Min.Length.Format("mm") + fmt.Sprint(b.Zone)
		}
	}
	return s
}

// leadOf gives the largest type of the name, the net quantity and the maker's sign.
func leadOf(c *label.Content, f *page.Frame) (name, net, sign unit.Length) {
	of := func(k label.Kind) string { b, _ := c.Find(k); return b.ID }
	for _, it := range f.Items {
		x, ok := it.(*page.Text)
		switch {
		case !ok:
		case x.Block == of(label.Net):
			net = max(net, x.Size)
		case x.Block == of(label.Brand):
			sign = max(sign, x.Size)
		case x.Block == "" || x.Block == of(label.Identity):
			name = max(name, x.Size)
		}
	}
	return name, net, sign
}
