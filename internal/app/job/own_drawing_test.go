package job_test

import (
	"fmt"
	"image"
	"image/color"
	"image/png"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// TestOwnDrawing: an SVG stands as paths in the PDF and the SVG, once however many
// labels bear it, and without colour for black ink; what of it cannot be drawn stops
// the labels and is told at its line in the drawing.
func TestOwnDrawing(t *testing.T) {
	const head = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 80">`
	own := fstest.MapFS{"logo.svg": {Data: []byte(head + `<path fill="#f010d0" d="M5 5h110v70H5z"/><path fill="none" stroke="#204060" stroke-width="9" stroke-linejoin="bevel" d="M9 9l99 60"/></svg>`)},
		"thin.svg": {Data: []byte(head + `<path stroke-width=".2" stroke="red" d="M5 5h110v70H5z"/></svg>`)},
		"text.svg": {Data: []byte(head + "\n<text>Jam</text>\n  <image/></svg>")}, "bomb.svg": {Data: []byte(`<!DOCTYPE svg [<!ENTITY a "a">]>` + head + "&a;</svg>")}}
	env, _, err := job.NewEnv(own)
	if err != nil {
		t.Fatal(err)
	}
	labels := func(file string, c job.Choices) (map[string]string, diag.List) {
		b := env.Load(ownInput(t, "\n[picture]\nfile = \""+file+"\"\n", ""), c)
		runs, l := env.Labels(b, c)
		if !b.OK() || l.HasErrors() {
			t.Fatal(b.Findings.Errors(), l.Errors())
		}
		out := map[string]string{}
		for _, format := range []string{"pdf", "svg", "png"} {
			files, err := env.Files(runs[0].Doc, "labels", format, 100)
			if err != nil {
				t.Fatal(err)
			}
			out[format] = string(files[0].Data)
		}
		return out, l
	}
	pieces := []label.Piece{label.Front, label.Wrap, label.Lid}
	got, _ := labels("logo.svg", job.Choices{Pieces: pieces})
	if strings.Contains(got["pdf"], "/Subtype /Image") || strings.Contains(got["svg"], "<image") || strings.Count(got["svg"], "#f010d0") != 1 || !strings.Contains(got["svg"], `stroke-linejoin="bevel"`) {
		t.Error("the drawing is no drawing")
	}
	for i, page := range []string{"pdf", "png"} {
		var m image.Image
		if i == 0 {
			m = presstest.Open(t, []byte(got[page])).Render(0, 100)
		} else if m, err = png.Decode(strings.NewReader(got[page])); err != nil {
			t.Fatal(err)
		}
		if n := dots(m, color.NRGBA{0xf0, 0x10, 0xd0, 255}); n < 500 {
			t.Errorf("%s: %d dots of the drawing", page, n)
		}
	}
	black, _ := labels("logo.svg", job.Choices{Pieces: pieces, InkSaver: true})
	if strings.Contains(black["svg"], "#f010d0") || strings.Contains(black["svg"], "#204060") {
		t.Error("the ink saver prints colours")
	}
	if _, l := labels("thin.svg", job.Choices{Pieces: pieces}); !slices.ContainsFunc(l, func(d diag.Diagnostic) bool { return d.Code == "picture-thin" && d.Pos.Line > 0 }) {
		t.Error("thin lines are not told")
	}
	for file, want := range map[string]string{"text.svg": "text.svg 2:1 <text> cannot be, text.svg 3:3 <image> cannot be", "bomb.svg": "bomb.svg 1:1 the file declares"} {
		var said []string
		for _, d := range env.Load(ownInput(t, "\n[picture]\nfile = \""+file+"\"\n", ""), job.Choices{}).Findings.Errors() {
			words := strings.Fields(d.Message)
			if d.Hint == "" || d.Code != "bad-picture" {
				t.Errorf("%s: %v", file, d)
			}
			said = append(said, fmt.Sprintf("%s %d:%d %s", d.File, d.Pos.Line, d.Pos.Column, strings.Join(words[:min(3, len(words))], " ")))
		}
		if s := strings.Join(said, ", "); s != want {
			t.Errorf("%s: %s, want %s", file, s, want)
		}
	}
}

// dots counts those of a colour.
func dots(m image.Image, c color.NRGBA) (n int) {
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			if color.NRGBAModel.Convert(m.At(x, y)) == c {
				n++
			}
		}
	}
	return n
}
