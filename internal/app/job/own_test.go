package job_test

import (
	"bytes"
	"encoding/base64"
	stdhtml "html"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/diag"
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

// TestOwnTypefaces: files of fonts/ stand for the design's, open scripts ours
// lack, and are told where they cannot be used.
func TestOwnTypefaces(t *testing.T) {
	own := fstest.MapFS{"fonts/Alder-Regular.ttf": {Data: goregular.TTF}, "fonts/Alder-Bold.TTF": {Data: gobold.TTF}, "fonts/OFL.txt": {Data: []byte("licence")},
		"fonts/cut.ttf": {Data: goregular.TTF[:900]}, "fonts/film.otf": {Data: append([]byte("OTTO"), goregular.TTF[4:]...)}}
	env, l, err := job.NewEnv(own)
	if err != nil || len(l) != 2 || l.HasErrors() || l[0].File != "fonts/cut.ttf" || l[1].File != "fonts/film.otf" || l[1].Hint == "" {
		t.Fatal(err, l)
	}
	c := job.Choices{Pieces: []label.Piece{label.Wrap}}
	b := env.Load(ownInput(t, "\n[type]\ntitle = \"fonts/alder-regular.ttf\"\ntext = \"Alder-Regular.ttf\"\nbold = \"Alder-Bold.TTF\"\n", ""), c)
	runs, l := env.Labels(b, c)
	if !b.OK() || l.HasErrors() {
		t.Fatal(b.Findings.Errors(), l.Errors())
	}
	files, err := env.Files(runs[0].Doc, "labels", "pdf", 0)
	if err != nil || !bytes.Contains(files[0].Data, []byte("+GoRegular")) || !bytes.Contains(files[0].Data, []byte("+Go-Bold")) || bytes.Contains(files[0].Data, []byte("Fraunces")) {
		t.Errorf("the maker's faces are not those of the label: %v", err)
	}
	b = env.Load(ownInput(t, "\n[type]\ntext = \"cut.ttf\"\n", ""), c)
	if e := b.Findings.Errors(); len(e) != 1 || e[0].File != "kitchen.toml" || e[0].Pos.Line == 0 || !strings.Contains(e[0].Hint, "alder-regular.ttf") {
		t.Errorf("a typeface that cannot be used: %v", e)
	}
	for name, want := range map[string]string{"Сливовый джем": "", "Μαρμελάδα": "", "ריבה": "into fonts", "مربى": "cannot be set", "たまご": "into fonts"} {
		in := ownInput(t, "", "")
		in.Batch.Data = bytes.Replace(in.Batch.Data, []byte("[label]"), []byte("[label]\ntitle = \""+name+"\""), 1)
		b := env.Load(in, c)
		_, l := env.Labels(b, c)
		said := ""
		for _, d := range l.Errors() {
			said += d.Message + " " + d.Hint + "\n"
		}
		if (want == "") != (said == "") || !strings.Contains(said, want) {
			t.Errorf("%s: %q, want %q", name, said, want)
		}
	}
}

// TestOwnWords: a stamp and words of the maker's stand on the label as written,
// and pass the same check of claims as the story does.
func TestOwnWords(t *testing.T) {
	env, _, err := job.NewEnv(fstest.MapFS{})
	if err != nil {
		t.Fatal(err)
	}
	c := job.Choices{Pieces: []label.Piece{label.Wrap}}
	with := func(stamp, words string) *job.Batch {
		in := ownInput(t, "", "")
		in.Batch.Data = bytes.Replace(in.Batch.Data, []byte("[label]"), []byte("[label]\nstamp = \""+stamp+"\"\nwords = \""+words+"\""), 1)
		return env.Load(in, c)
	}
	b := with("First prize, village fair 2026", "Stirred in a copper pot.")
	runs, l := env.Labels(b, c)
	if !b.OK() || l.HasErrors() {
		t.Fatal(b.Findings.Errors(), l.Errors())
	}
	files, err := env.Files(runs[0].Doc, "labels", "pdf", 0)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Join(strings.Fields(presstest.Open(t, files[0].Data).Text(0)), " ")
	for _, w := range []string{"First", "village fair", "2026", "Stirred in a copper pot."} {
		if !strings.Contains(text, w) {
			t.Errorf("the label does not say %q", w)
		}
	}
	for path, b := range map[string]*job.Batch{"label.stamp": with("No added sugar", "x"), "label.words": with("x", "Made with no added sugar")} {
		found := false
		for _, d := range b.Findings {
			found = found || d.Path == path && d.Code == "nutrition-claim" && d.Severity == diag.Error
		}
		if !found {
			t.Errorf("%s: a claim passes: %v", path, b.Findings.Errors())
		}
	}
	long := with(strings.Repeat("very long words on a small seal ", 6), "x")
	_, l = env.Labels(long, c)
	told := false
	for _, d := range l {
		told = told || d.Code == "no-room-for-stamp" && d.Pos.Line > 0
	}
	if !told {
		t.Error("a stamp without room is lost in silence")
	}
}

// TestPhotosOfThePage: a photo stands in the page with its words, and where it
// was taken is not in it.
func TestPhotosOfThePage(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 64, 48))
	var b bytes.Buffer
	_ = jpeg.Encode(&b, m, nil)
	part := "Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x00 N 44.56 W 123.26"
	photo := append(append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(part) + 2)}, part...), b.Bytes()[2:]...)
	env, _, err := job.NewEnv(fstest.MapFS{"p/plums.jpg": {Data: photo}})
	if err != nil {
		t.Fatal(err)
	}
	page := func(lines string) (string, string) {
		in := env.Load(ownInput(t, "", "\n[[photo]]\n"+lines), job.Choices{})
		files, l, err := env.Make(in, job.Choices{})
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, d := range l.Errors() {
			said += d.Code + " " + d.File + " " + d.Path
		}
		for _, f := range files {
			if strings.HasPrefix(f.Name, "record/") {
				return string(f.Data), said
			}
		}
		return "", said
	}
	html, said := page("file = \"p/plums.jpg\"\nalt = \"plums & a <ladder>\"\n")
	_, rest, _ := strings.Cut(html, `src="data:image/jpeg;base64,`)
	data, _, _ := strings.Cut(rest, `"`)
	raw, err := base64.StdEncoding.DecodeString(stdhtml.UnescapeString(data))
	if err != nil || len(raw) == 0 || !strings.Contains(html, `alt="plums &amp; a &lt;ladder&gt;" width="64" height="48"`) {
		t.Fatalf("no photo on the page: %v %s", err, said)
	}
	if bytes.Contains(raw, []byte("123.26")) || bytes.Contains(raw, []byte("Exif")) {
		t.Error("the page tells where the photo was taken")
	}
	if _, err := jpeg.Decode(bytes.NewReader(raw)); err != nil {
		t.Error(err)
	}
	if html, _ = page("file = \"p/plums.jpg\"\nalt = \"14 Thornfield Lane from the gate\"\n"); strings.Contains(html, "from the gate") || !strings.Contains(html, `alt="Strawberry`) {
		t.Error("words beside a photo tell the address")
	}
	if html, said = page("file = \"p/none.jpg\"\nalt = \"x\"\n"); html != "" || said != "bad-photo b.toml photo[0].file" {
		t.Errorf("a photo that is not there: %q", said)
	}
}

// TestOwnFilesWithoutAFolder: where there is no folder, what is named is told.
func TestOwnFilesWithoutAFolder(t *testing.T) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	b := env.Load(ownInput(t, "\n[picture]\nfile = \"a.png\"\n\n[type]\ntext = \"a.ttf\"\n", "\n[[photo]]\nfile = \"a.jpg\"\nalt = \"a\"\n"), job.Choices{})
	if n := len(b.Findings.Errors()); n != 2 {
		t.Errorf("%d errors: %v", n, b.Findings.Errors())
	}
	if _, l := env.Site([]*job.Batch{b}); len(l.Errors()) != 1 {
		t.Errorf("the page: %v", l.Errors())
	}
}

// TestPicturesAreKnownAsRead: what a kitchen and a batch name is known, so that no
// output is written over it.
func TestPicturesAreKnownAsRead(t *testing.T) {
	in := ownInput(t, "\n[picture]\nfile = \"a.png\"\n", "\n[[photo]]\nfile = \"p/b.jpg\"\n[[photo]]\nfile = \"c.png\"\n")
	if got := strings.Join(job.Pictures(in), " "); got != "a.png p/b.jpg c.png" {
		t.Errorf("%q", got)
	}
	if got := job.Pictures(ownInput(t, "", "")); len(got) > 0 {
		t.Errorf("%q", got)
	}
}
