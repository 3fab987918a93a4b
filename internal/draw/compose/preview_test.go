package compose_test

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/png"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

var (
	previewDir  = flag.String("preview", "", "write a contact sheet of every design to this folder")
	previewOnly = flag.String("only", "", "limit -preview to one design")
	previewDPI  = flag.Float64("dpi", 110, "resolution of -preview")
)

// TestPreview draws everything for a designer's eye:
// go test ./internal/draw/compose -run Preview -v -args -preview DIR.
// Without the flag it draws small and checks that every usual piece fits.
func TestPreview(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		if *previewOnly != "" && d.ID != *previewOnly {
			continue
		}
		for _, saver := range []bool{false, true} {
			doc := contact(t, d, fs, saver, strawberry())
			if *previewDir == "" {
				continue
			}
			img, err := png.Page(doc, 0, fs, *previewDPI)
			if err != nil {
				t.Fatal(err)
			}
			var data bytes.Buffer
			if err := png.Encode(&data, img, *previewDPI); err != nil {
				t.Fatal(err)
			}
			name := d.ID
			if saver {
				name += "_saver"
			}
			if err := os.WriteFile(filepath.Join(*previewDir, name+".png"), data.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

// contact composes every usual piece and lays them on one page.
func contact(t *testing.T, d *design.Design, fs *face.Set, saver bool, c *label.Content) *page.Doc {
	pg := page.Page{W: 390 * mm}
	x, y, high := 6*mm, 6*mm, 0*mm
	codes := &compose.Codes{}
	for _, u := range usual {
		fr, l := compose.Label(c, d, u.piece, u.cell, fs, compose.Options{InkSaver: saver, Codes: codes, Alone: u.alone})
		for _, f := range l {
			if t.Logf("%s %s %s: %s", d.ID, u.piece, u.name, f.Message); f.Severity == diag.Error {
				t.Fail()
			}
		}
		if x+fr.W+6*mm > pg.W {
			x, y, high = 6*mm, y+high+6*mm, 0
		}
		white := page.Colour{R: 255, G: 255, B: 255}
		paper := &page.Frame{W: fr.W, H: fr.H, Items: []page.Item{&page.Path{Fill: &white,
			Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
			Pts: []page.Point{{}, {X: fr.W}, {X: fr.W, Y: fr.H}, {Y: fr.H}}}}}
		pg.Places = append(pg.Places, page.Placement{Frame: paper, At: page.Point{X: x, Y: y}})
		pg.Places = append(pg.Places, page.Placement{Frame: fr, At: page.Point{X: x, Y: y}})
		x, high = x+fr.W+6*mm, max(high, fr.H)
	}
	pg.H = y + high + 6*mm
	grey := page.Colour{R: 0xe8, G: 0xe5, B: 0xdf}
	table := &page.Frame{W: pg.W, H: pg.H, Items: []page.Item{&page.Path{Fill: &grey, Bleed: true,
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{{}, {X: pg.W}, {X: pg.W, Y: pg.H}, {Y: pg.H}}}}}
	pg.Places = append([]page.Placement{{Frame: table}}, pg.Places...)
	return &page.Doc{Pages: []page.Page{pg}}
}
