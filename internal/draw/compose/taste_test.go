package compose_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/png"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// drawer are the labels most makers have in the drawer: a strip round a 4 oz jar,
// a 40 mm round, 30 and 10 on a Letter sheet, a half-pint's set, tag and lid.
var drawer = []struct {
	piece label.Piece
	name  string
	cell  compose.Cell
	say   func() *label.Content
}{
	{label.Wrap, "strip", cell(214, 26, page.Rectangle), small},
	{label.Lid, "round-40", cell(40, 40, page.Ellipse), strawberry},
	{label.Front, "two", cell(50.8, 50.8, page.Rectangle), square("Net Wt 10 oz (283 g)")},
	{label.Front, "two-more", cell(50.8, 50.8, page.Rectangle), square("Net Wt 10.5 oz (298 g)")},
	{label.Front, "roll", cell(57.2, 31.8, page.Rectangle), small},
	{label.Front, "thirty", cell(66.7, 25.4, page.Rectangle), small},
	{label.Front, "ten", cell(101.6, 50.8, page.Rectangle), strawberry},
	{label.Front, "half-pint", cell(80, 60, page.Rectangle), strawberry},
	{label.InfoLabel, "half-pint-info", cell(80, 60, page.Rectangle), strawberry},
	{label.Wrap, "half-pint-wrap", cell(190, 48, page.Rectangle), strawberry},
	{label.Tag, "tag", cell(52, 90, page.TagShape), strawberry},
	{label.Lid, "lid", cell(63, 63, page.Ellipse), strawberry},
}

// square is what a 2 x 2 in front says, its net quantity on one line or, of a
// half ounce more, on two.
func square(net string) func() *label.Content {
	return func() *label.Content {
		c := strawberry()
		for i := range c.Blocks {
			if b := &c.Blocks[i]; b.Kind == label.Net {
				b.Runs = []label.Run{{Text: net, Bold: true}}
			}
		}
		return c
	}
}

// TestTaste holds every design on these labels to what a designer would ask (all
// common practice, no source): the name is 1.4 times the net quantity, the maker's
// sign stays, what is centred is centred, and codes of a kind have one size. With
// -preview DIR it draws a contact sheet of all designs for each label.
func TestTaste(t *testing.T) {
	fs := typefaces(t)
	for _, u := range drawer {
		var frames []*page.Frame
		modules := map[unit.Length][]string{}
		for _, d := range designs(t) {
			c := u.say()
			fr, l := compose.Label(c, d, u.piece, u.cell, fs, compose.Options{})
			frames = append(frames, fr)
			at := u.name + " " + d.ID
			for _, f := range append(l, inspect.Frame(fr, c, fs, inspect.Default())...) {
				t.Errorf("%s: %s", at, f.Message)
			}
			if u.piece == label.Front || u.piece == label.Wrap {
				name, net := tallest(fr, "identity", ""), tallest(fr, "net")
				if name*1000 < net*1399 {
					t.Errorf("%s: name %.1f pt, net quantity %.1f pt", at, name.Points(), net.Points())
				}
				if tallest(fr, "brand") == 0 {
					t.Errorf("%s: the maker's sign is gone", at)
				}
			}
			if d.Look(u.piece).Align == "centre" && slices.Contains([]string{"round-40", "ten", "half-pint", "lid"}, u.name) {
				centred(t, at, fr, d.Look(u.piece))
			}
			for _, it := range fr.Items {
				if k, ok := it.(*page.Code); ok {
					m := k.At.W / unit.Length(len(k.Modules))
					modules[m] = append(modules[m], d.ID)
				}
			}
		}
		if len(modules) > 1 {
			t.Errorf("%s: codes of several sizes: %v", u.name, modules)
		}
		if *previewDir != "" {
			sheetOf(t, filepath.Join(*previewDir, u.name+".png"), frames)
		}
	}
}

// tallest is the type size of the largest words of the blocks.
func tallest(fr *page.Frame, blocks ...string) (most unit.Length) {
	for _, b := range blocks {
		size, _ := largest(fr, b)
		most = max(most, size)
	}
	return most
}

// centred asks that words and drawings stand evenly about the middle of the
// label less its side band.
func centred(t *testing.T, at string, fr *page.Frame, look design.Look) {
	t.Helper()
	middle := fr.W / 2
	if look.Band.Edge == "left" {
		middle += unit.Length(look.Band.Size * float64(min(fr.W, fr.H)) / 2)
	}
	var left, right unit.Length = fr.W, 0
	lines := map[unit.Length][2]unit.Length{} // by baseline: from, to
	for _, it := range fr.Items {
		switch x := it.(type) {
		case *page.Text:
			b := x.Box
			if b.W <= 0 {
				continue
			}
			s, ok := lines[x.At.Y]
			if !ok {
				s = [2]unit.Length{fr.W, 0}
			}
			lines[x.At.Y] = [2]unit.Length{min(s[0], b.X), max(s[1], b.X+b.W)}
		case *page.Path:
			if !x.Bleed && x.Block != "frame" {
				b := x.Bounds()
				left, right = min(left, b.X), max(right, b.X+b.W)
			}
		}
	}
	for y, s := range lines {
		if off := (s[0]+s[1])/2 - middle; max(off, -off) > mm {
			t.Errorf("%s: the line at %.1f mm stands %.2f mm off the middle", at, y.MM(), off.MM())
		}
	}
	if off := (left+right)/2 - middle; right > 0 && max(off, -off) > 4*mm/5 {
		t.Errorf("%s: drawings stand %.2f mm off the middle", at, off.MM())
	}
}

// sheetOf lays frames on a table and writes the picture.
func sheetOf(t *testing.T, file string, frames []*page.Frame) {
	grey, white := page.Colour{R: 0xe8, G: 0xe5, B: 0xdf}, page.Colour{R: 255, G: 255, B: 255}
	rect := func(w, h unit.Length, c page.Colour) *page.Frame {
		return &page.Frame{W: w, H: h, Items: []page.Item{&page.Path{Fill: &c, Bleed: true,
			Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
			Pts: []page.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}}}}}
	}
	pg := page.Page{W: 440 * mm}
	x, y, high := 5*mm, 5*mm, 0*mm
	var places []page.Placement
	for _, fr := range frames {
		if x+fr.W+5*mm > pg.W {
			x, y, high = 5*mm, y+high+5*mm, 0
		}
		places = append(places, page.Placement{Frame: rect(fr.W, fr.H, white), At: page.Point{X: x, Y: y}},
			page.Placement{Frame: fr, At: page.Point{X: x, Y: y}})
		x, high = x+fr.W+5*mm, max(high, fr.H)
	}
	pg.H = y + high + 5*mm
	pg.Places = append([]page.Placement{{Frame: rect(pg.W, pg.H, grey)}}, places...)
	img, err := png.Page(&page.Doc{Pages: []page.Page{pg}}, 0, typefaces(t), *previewDPI)
	if err != nil {
		t.Fatal(err)
	}
	var data bytes.Buffer
	if err := png.Encode(&data, img, *previewDPI); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, data.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
