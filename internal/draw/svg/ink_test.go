package svg

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
)

var pen = regexp.MustCompile(`[Mlqcz]|-?\d+`)

// ends reads the path of a line back, by the grammar of SVG 1.1, 8.3, and gives
// the end of each operation in 1/1000 em.
func ends(t *testing.T, d string) (out [][2]float64) {
	t.Helper()
	var op string
	var at, start [2]float64
	words := pen.FindAllString(d, -1)
	if strings.Join(words, "") != strings.ReplaceAll(d, " ", "") {
		t.Fatalf("not the grammar: %s", d)
	}
	for i := 0; i < len(words); {
		if w := words[i]; strings.Contains("Mlqcz", w) {
			op = w
			i++
		}
		n := map[string]int{"M": 2, "l": 2, "q": 4, "c": 6, "z": 0}[op]
		var v [6]float64
		for j := range n {
			if _, err := fmt.Sscan(words[i+j], &v[j]); err != nil {
				t.Fatalf("%v at %q of %s", err, words[i+j], d)
			}
		}
		i += n
		switch op {
		case "M":
			at = [2]float64{v[0], v[1]}
			start = at
		case "z":
			at = start
			continue
		default:
			at = [2]float64{at[0] + v[n-2], at[1] + v[n-1]}
		}
		out = append(out, at)
	}
	return out
}

// Every operation of every letter ends where the typeface has it, within half a
// thousandth of an em, at the end of a long line too; TrueType's curves are
// quadratic (Apple, TrueType Reference Manual, "Digitizing Letterform Designs",
// from memory), so that none is written as a cubic one.
func TestLineIsOnePathOfItsLetters(t *testing.T) {
	fs := faces(t)
	for _, name := range []page.Face{"Fraunces_600SemiBold", "Figtree_400Regular"} {
		f, err := fs.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		words := strings.Repeat("Quetschgsälz & œufs, 1½ kg; ", 6)
		line := &page.Text{Face: name, Size: 3 * mm, Segs: []page.Seg{{S: words}}}
		var b bytes.Buffer
		if err := Frame(&b, &page.Frame{W: 90 * mm, H: 20 * mm, Items: []page.Item{line}}, nil, fs); err != nil {
			t.Fatal(err)
		}
		var data []string
		walk(t, b.String(), func(e xml.StartElement) {
			if e.Name.Local == "use" || e.Name.Local == "g" && attr(e, "transform") != "" {
				t.Errorf("a letter of its own: %v", e)
			}
			if attr(e, "transform") != "" {
				data = append(data, attr(e, "d"))
			}
		})
		if len(data) != 1 || strings.Contains(data[0], "c") {
			t.Fatalf("%s: %d paths, or cubic curves: %.200s", name, len(data), data)
		}
		got, i, x := ends(t, data[0]), 0, 0.0
		for _, r := range words {
			o := f.Outline(r)
			pts := o.Pts
			for _, op := range o.Ops {
				n := counts[op]
				if n == 0 {
					continue
				}
				want := [2]float64{x + pts[n-1].X*1000, pts[n-1].Y * 1000}
				if i >= len(got) || math.Abs(got[i][0]-want[0]) > 0.501 || math.Abs(got[i][1]-want[1]) > 0.501 {
					t.Fatalf("%s: operation %d, of %q, does not end at %v", name, i, r, want)
				}
				pts, i = pts[n:], i+1
			}
			x += float64(f.Advance(r))
		}
		if i != len(got) {
			t.Errorf("%s: %d operations, want %d", name, len(got), i)
		}
	}
}

// A drawing for a screen has each element on a line of its own, whatever its
// words are, so that drawings can be compared line by line.
func TestElementsStandOnLines(t *testing.T) {
	f := sample()
	f.Name = "two\nlines\r\n\"of\" name"
	lines := strings.Split(strings.TrimSuffix(draw(t, f, faces(t)), "\n"), "\n")
	if n := len(lines); n != len(f.Items)+8 || !strings.HasPrefix(lines[0], "<svg ") || lines[n-2] != "</g>" || lines[n-1] != "</svg>" {
		t.Errorf("%d lines, of %d items:\n%s", n, len(f.Items), strings.Join(lines, "\n"))
	}
	for _, l := range lines[5 : len(lines)-2] {
		if !strings.HasPrefix(l, "<") || !strings.HasSuffix(l, ">") {
			t.Errorf("half an element: %s", l)
		}
	}
}
