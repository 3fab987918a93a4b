package job_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"strings"
	"testing"
	"testing/fstest"

	"jarmark/internal/app/job"
	"jarmark/internal/law/label"
	"jarmark/testdata/demo"
)

// logo is a PNG of w x h pixels.
func logo(w, h int) []byte {
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for i := range w * h {
		m.SetNRGBA(i%w, i/w, color.NRGBA{uint8(i), 90, 60, uint8(255 - i%3)})
	}
	var b bytes.Buffer
	_ = png.Encode(&b, m)
	return b.Bytes()
}

// ownInput is the demo with lines added to its kitchen and batch.
func ownInput(t *testing.T, kitchen, batch string) job.Input {
	t.Helper()
	k, err := demo.FS.ReadFile("kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	b, err := demo.FS.ReadFile("strawberry-rhubarb.toml")
	if err != nil {
		t.Fatal(err)
	}
	return job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: append(k, kitchen...)}, Batch: job.Doc{Name: "b.toml", Data: append(b, batch...)}}
}

// TestOwnPicture: a picture of the kitchen's folder stands in the PDF, the PNG
// and the SVG, the same each time; one that cannot be read stops the labels
// and is told with the file, its line and what helps.
func TestOwnPicture(t *testing.T) {
	own := fstest.MapFS{"logo.png": {Data: logo(600, 400)}, "small.png": {Data: logo(60, 40)}, "cut.png": {Data: logo(60, 40)[:90]}, "words.png": {Data: []byte("hello")}}
	env, l, err := job.NewEnv(own)
	if err != nil || len(l) > 0 {
		t.Fatal(err, l)
	}
	c := job.Choices{Pieces: []label.Piece{label.Front, label.Wrap}}
	files := func(format string) []job.File {
		b := env.Load(ownInput(t, "\n[picture]\nfile = \"logo.png\"\nalt = \"two hares\"\n", ""), c)
		runs, l := env.Labels(b, c)
		if !b.OK() || l.HasErrors() || len(runs) == 0 {
			t.Fatal(b.Findings.Errors(), l.Errors())
		}
		out, err := env.Files(runs[0].Doc, "labels", format, 100)
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	for format, mark := range map[string]string{"pdf": "/Subtype /Image", "svg": "data:image/png;base64,", "png": "PNG"} {
		a, b := files(format), files(format)
		if !bytes.Contains(a[0].Data, []byte(mark)) || !bytes.Equal(a[0].Data, b[0].Data) {
			t.Errorf("%s: no picture, or another each time", format)
		}
	}
	for file, want := range map[string]string{"none.png": "no such file", "cut.png": "broken", "../logo.png": "outside", "words.png": "no PNG or JPEG"} {
		b := env.Load(ownInput(t, "\n[picture]\nfile = \""+file+"\"\n", ""), c)
		found := b.Findings.Errors()
		if len(found) != 1 || found[0].File != "kitchen.toml" || found[0].Pos.Line < 3 || !strings.Contains(found[0].Message, want) || found[0].Hint == "" {
			t.Errorf("%s: %v", file, found)
		}
	}
	b := env.Load(ownInput(t, "\n[picture]\nfile = \"small.png\"\n", ""), c)
	_, l = env.Labels(b, c)
	said := ""
	for _, d := range l {
		said += d.Message + " at line " + string(rune('0'+d.Pos.Line/10)) + "\n"
	}
	if !strings.Contains(said, "60 x 40 pixels") {
		t.Errorf("a coarse picture is not told: %s", said)
	}
}
