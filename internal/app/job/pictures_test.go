package job_test

import (
	"bytes"
	"cmp"
	"flag"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	paint "jarmark/internal/draw/png"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
	"jarmark/testdata/demo"
)

var update = flag.Bool("update", false, "draw the pictures of testdata/pictures anew")

const mm = unit.Millimetre

// picture is one of the README's: a file, its size limits and what draws it.
type picture struct {
	file        string
	wide, bytes int
	draw        func(*testing.T, *job.Env) *image.RGBA
}

func pictures() []picture {
	return []picture{
		{"sheet.png", 1000, 250_000, sheetPicture},
		{"designs.png", 1400, 700_000, designsPicture},
		{"kinds.png", 1400, 700_000, kindsPicture},
	}
}

// TestPictures composes what the README shows, from the demo's own files, and
// looks at the finished labels with inspect.Frame. With
//
//	go test ./internal/app/job -run Pictures -args -update
//
// it draws the pictures anew; else it asks that they are there and readable and,
// unless -short, that they show what would be drawn now.
func TestPictures(t *testing.T) {
	env, _, err := job.NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range pictures() {
		path := filepath.Join("..", "..", "..", "testdata", "pictures", p.file)
		img := p.draw(t, env)
		if *update {
			savePicture(t, path, img)
		}
		data, err := os.ReadFile(path)
		if err != nil {
			t.Errorf("%v: draw it with -args -update", err)
			continue
		}
		got, err := png.Decode(bytes.NewReader(data))
		if err != nil {
			t.Errorf("%s: %v", p.file, err)
			continue
		}
		if w := got.Bounds().Dx(); w < p.wide*9/10 || w > p.wide*11/10 {
			t.Errorf("%s is %d px wide, not about %d", p.file, w, p.wide)
		}
		if off := unlike(img, got); drawn() && off > 0.002 {
			t.Errorf("%s shows what was drawn before, %.1f %% is another picture: draw it with -args -update", p.file, 100*off)
		}
		if len(data) > p.bytes {
			t.Errorf("%s has %d bytes, more than %d", p.file, len(data), p.bytes)
		}
	}
}

// drawn says whether the pictures are drawn, which takes some seconds.
func drawn() bool { return *update || !testing.Short() }

// unlike is the part of the picture that looks otherwise than the stored one, whose
// colours are fewer; all of it where the sizes differ.
func unlike(now *image.RGBA, stored image.Image) float64 {
	if now == nil || now.Bounds() != stored.Bounds() {
		return 1
	}
	b, n := now.Bounds(), 0
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			r0, g0, b0, _ := now.At(x, y).RGBA()
			r1, g1, b1, _ := stored.At(x, y).RGBA()
			for _, d := range []int{int(r0) - int(r1), int(g0) - int(g1), int(b0) - int(b1)} {
				if d > 0x3000 || d < -0x3000 {
					n++
					break
				}
			}
		}
	}
	return float64(n) / float64(b.Dx()*b.Dy())
}

// demoBatch loads a batch of the demo by the rules of a place; "" is the
// demo's own.
func demoBatch(t *testing.T, env *job.Env, name, place string) *job.Batch {
	t.Helper()
	kitchen, err := demo.FS.ReadFile("kitchen.toml")
	if err != nil {
		t.Fatal(err)
	}
	text, err := demo.FS.ReadFile(name + ".toml")
	if err != nil {
		t.Fatal(err)
	}
	b := env.Load(job.Input{Kitchen: job.Doc{Name: "kitchen.toml", Data: kitchen}, Batch: job.Doc{Name: name + ".toml", Data: text}}, job.Choices{Place: place})
	if !b.OK() || len(b.Contents) == 0 || b.Contents[0] == nil {
		t.Fatalf("%s %s: %v", name, place, b.Findings)
	}
	return b
}

// laidOut sets one label of a batch and inspects it.
func laidOut(t *testing.T, env *job.Env, b *job.Batch, designID string, p label.Piece, w, h float64, s page.Shape) *page.Frame {
	t.Helper()
	d, ok := env.Designs.Get(designID)
	if !ok {
		t.Fatalf("no design %q", designID)
	}
	c := *b.Contents[0]
	c.Around, c.Straight, c.LidAcross = 0, 0, 0 // sizes of the picture, not of the jar
	if p == label.Tag {
		c.Blocks = append(slices.DeleteFunc(slices.Clone(c.Blocks), func(b label.Block) bool {
			return b.Kind == label.To || b.Kind == label.From || b.Kind == label.Message
		}), label.Block{ID: "to", Kind: label.To, Runs: []label.Run{{Text: "for"}, {Text: "Ottilie"}}},
			label.Block{ID: "from", Kind: label.From, Runs: []label.Run{{Text: "from"}, {Text: "Wren & Marlo"}}})
	}
	cell := compose.Cell{W: unit.MM(w), H: unit.MM(h), Shape: s, Corner: 3 * mm / 2, Safe: 2 * mm, Bleed: 2 * mm}
	fr, l := compose.Label(&c, d, p, cell, env.Faces, compose.Options{})
	for _, f := range append(l, inspect.Frame(fr, &c, env.Faces, inspect.Default())...) {
		t.Errorf("%s %s %gx%g: %s %s", designID, p, w, h, f.Code, f.Message)
	}
	return fr
}

// sheetPicture is the first page of the demo's labels as it leaves the printer,
// with labels that can be read as it lies.
func sheetPicture(t *testing.T, env *job.Env) *image.RGBA {
	b := demoBatch(t, env, "strawberry-rhubarb", "")
	runs, l := env.Labels(b, job.Choices{})
	if len(runs) == 0 || l.HasErrors() {
		t.Fatal(l)
	}
	doc := runs[0].Doc
	for _, pl := range doc.Pages[0].Places {
		if pl.Turn != 0 {
			t.Error("sheet: a label lies on its side")
		}
		for _, f := range inspect.Frame(pl.Frame, b.Contents[0], env.Faces, inspect.Default()) {
			t.Errorf("sheet: %s", f.Message)
		}
	}
	pg := &doc.Pages[0]
	margin := 8 * mm
	p := newTable(t, env, pg.W+2*margin, pg.H+2*margin, 1000)
	if !drawn() {
		return nil
	}
	img, err := paint.Page(doc, 0, env.Faces, p.dpi)
	if err != nil {
		t.Fatal(err)
	}
	all := image.NewAlpha(img.Bounds())
	draw.Draw(all, all.Bounds(), image.Opaque, image.Point{}, draw.Src)
	p.put(img, all, image.Pt(p.px(margin), p.px(margin)))
	return p.img
}

// designsPicture shows every design: front label, lid and tag.
func designsPicture(t *testing.T, env *job.Env) *image.RGBA {
	const columns = 3
	wide, high := 168*mm, 132*mm
	list := env.Designs.List()
	rows := (len(list) + columns - 1) / columns
	p := newTable(t, env, columns*wide+8*mm, unit.Length(rows)*high+12*mm, 1400)
	names := map[string]string{"botanic": "apricot-lavender", "harvest": "apricot-lavender", "market-plain": "apricot-lavender",
		"hedgerow": "blackcurrant-jelly", "snow": "blackcurrant-jelly"}
	for i, d := range list {
		b := demoBatch(t, env, cmp.Or(names[d.ID], "strawberry-rhubarb"), "us")
		x, y := 4*mm+unit.Length(i%columns)*wide+10*mm, 10*mm+unit.Length(i/columns)*high
		p.lay(laidOut(t, env, b, d.ID, label.Front, 92, 56, page.Rectangle), x, y)
		p.lay(laidOut(t, env, b, d.ID, label.Lid, 52, 52, page.Ellipse), x+20*mm, y+62*mm)
		p.lay(laidOut(t, env, b, d.ID, label.Tag, 50, 84, page.TagShape), x+99*mm, y+15*mm)
		p.write(d.Name, "Fraunces_600SemiBold", 15, x+124*mm, y+110*mm)
	}
	return p.img
}

// kindsPicture shows every kind of label in one design.
func kindsPicture(t *testing.T, env *job.Env) *image.RGBA {
	type spot struct {
		piece      label.Piece
		w, h, x, y float64
		shape      page.Shape
	}
	spots := []spot{
		{label.Wrap, 220, 60, 12, 12, page.Rectangle},
		{label.Front, 92, 60, 12, 88, page.Rectangle},
		{label.InfoLabel, 92, 60, 116, 88, page.Rectangle},
		{label.Lid, 60, 60, 250, 12, page.Ellipse},
		{label.Tag, 54, 92, 251, 88, page.TagShape},
		{label.SealStrip, 130, 18, 45, 164, page.Rectangle},
		{label.ShelfCard, 92, 66, 12, 198, page.Rectangle},
		{label.AllergCard, 98, 66, 116, 198, page.Rectangle},
		{label.CaseLabel, 78, 66, 227, 198, page.Rectangle},
	}
	b := demoBatch(t, env, "strawberry-rhubarb", "us")
	p := newTable(t, env, 318*mm, 280*mm, 1400)
	for _, s := range spots {
		x, y := unit.MM(s.x), unit.MM(s.y)
		p.lay(laidOut(t, env, b, "orchard", s.piece, s.w, s.h, s.shape), x, y)
		p.write(string(s.piece), "Figtree_400Regular", 10, x+unit.MM(s.w/2), y+unit.MM(s.h+7))
	}
	return p.img
}
