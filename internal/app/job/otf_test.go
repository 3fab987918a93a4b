package job_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/law/label"
)

// TestOwnPostScriptTypefaces: labels set in OpenType files with PostScript outlines are
// those set in the TrueType files of the same letters: their words can be read from the
// PDF, which has the faces embedded as TrueType (ISO 32000-1, 9.9: FontFile2), and PDF
// and PNG show the same ink.
func TestOwnPostScriptTypefaces(t *testing.T) {
	made := map[string]map[string][]byte{}
	for _, kind := range []string{"ttf", "otf"} {
		made[kind] = labelsIn(t, kind)
	}
	otf, ttf := made["otf"], made["ttf"]
	for _, want := range []string{"+GoRegular", "+Go-Bold", "/CIDFontType2", "/FontFile2"} {
		if !bytes.Contains(otf["pdf"], []byte(want)) {
			t.Errorf("the PDF has no %s", want)
		}
	}
	a, b := presstest.Open(t, otf["pdf"]), presstest.Open(t, ttf["pdf"])
	if got, want := a.Text(0), b.Text(0); got != want || !strings.Contains(got, "Strawberry") {
		t.Errorf("other words:\n%s\n%s", got, want)
	}
	pdf, png := lightness(t, a.Render(0, 200)), lightness(t, decoded(t, otf["png"]))
	for what, off := range map[string]float64{
		"PDF to that of TrueType outlines":                     differs(pdf, lightness(t, b.Render(0, 200))),
		"PNG to that of TrueType outlines":                     differs(png, lightness(t, decoded(t, ttf["png"]))),
		"PNG to PDF, whose renderers smooth edges in two ways": differs(png, pdf) / 5,
	} {
		if off > 0.01 {
			t.Errorf("%s: ink differs by %.4f", what, off)
		}
	}
	for _, op := range "Mlcz" {
		if got, want := operations(otf["svg"], op), operations(ttf["svg"], op); got != want || got == 0 {
			t.Errorf("the SVG has %d operations %c, %d with TrueType outlines", got, op, want)
		}
	}
}

// operations counts one kind in the paths of an SVG.
func operations(svg []byte, op rune) (n int) {
	for _, d := range regexp.MustCompile(` d="[^"]*"`).FindAll(svg, -1) {
		n += bytes.Count(d, []byte(string(op)))
	}
	return n
}

func decoded(t *testing.T, data []byte) image.Image {
	t.Helper()
	m, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// lightness sums how dark each field of 16 x 16 pixels is, in pixels of black: reader
// and renderer smooth edges each in their way, which a field evens out.
func lightness(t *testing.T, m image.Image) map[image.Point]float64 {
	t.Helper()
	out := map[image.Point]float64{}
	for y := m.Bounds().Min.Y; y < m.Bounds().Max.Y; y++ {
		for x := m.Bounds().Min.X; x < m.Bounds().Max.X; x++ {
			g := color.GrayModel.Convert(m.At(x, y)).(color.Gray)
			out[image.Pt(x/16, y/16)] += 1 - float64(g.Y)/255
		}
	}
	return out
}

// differs is how much ink of two pictures is not at the same place, as a part of all.
func differs(a, b map[image.Point]float64) float64 {
	var off, all float64
	for p, v := range b {
		off, all = off+math.Abs(a[p]-v), all+v
	}
	return off / all
}

// labelsIn makes a wrap in each format in Go Regular and Go Bold.
func labelsIn(t *testing.T, kind string) map[string][]byte {
	t.Helper()
	own := fstest.MapFS{}
	for name, data := range map[string][]byte{"Alder-Regular": goregular.TTF, "Alder-Bold": gobold.TTF} {
		if kind == "otf" {
			var err error
			if data, err = presstest.PostScript(data); err != nil {
				t.Fatal(err)
			}
		}
		own["fonts/"+name+"."+kind] = &fstest.MapFile{Data: data}
	}
	env, l, err := job.NewEnv(own)
	if err != nil || len(l) > 0 {
		t.Fatal(err, l)
	}
	c := job.Choices{Pieces: []label.Piece{label.Wrap}}
	b := env.Load(ownInput(t, strings.ReplaceAll("\n[type]\ntitle = \"Alder-Regular.EXT\"\ntext = \"Alder-Regular.EXT\"\nbold = \"Alder-Bold.EXT\"\nhand = \"Alder-Bold.EXT\"\n", "EXT", kind), ""), c)
	runs, l := env.Labels(b, c)
	if !b.OK() || l.HasErrors() {
		t.Fatal(b.Findings.Errors(), l.Errors())
	}
	out := map[string][]byte{}
	for _, format := range []string{"pdf", "png", "svg"} {
		files, err := env.Files(runs[0].Doc, "labels", format, 200)
		if err != nil {
			t.Fatal(err)
		}
		out[format] = files[0].Data
	}
	return out
}
