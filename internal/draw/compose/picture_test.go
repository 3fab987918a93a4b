package compose_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// orchard is the design with room for a picture on every piece.
func orchard(t *testing.T) *design.Design {
	all := designs(t)
	return all[slices.IndexFunc(all, func(d *design.Design) bool { return d.ID == "orchard" })]
}

// sign is a maker's picture of w x h pixels.
func sign(w, h int, spot string) *compose.Picture {
	m := &page.Image{Name: "sign.png", W: w, H: h, FullW: w, FullH: h, Pix: make([]byte, 4*w*h), Data: []byte{1}}
	g := *m
	return &compose.Picture{Image: m, Grey: &g, Spot: spot, Ornament: true,
		On: []label.Piece{label.Front, label.Wrap, label.Lid, label.Tag, label.ShelfCard}}
}

func pictureOf(f *page.Frame) (out []*page.Picture) {
	for _, it := range f.Items {
		if p, ok := it.(*page.Picture); ok {
			out = append(out, p)
		}
	}
	return out
}

// TestPictureStandsClear: in every design, on every piece and in every place, a
// picture wide, square or tall stands once, whole and in its shape, and
// nothing on it, as the second look at the label finds; or a finding says it
// has no room.
func TestPictureStandsClear(t *testing.T) {
	faces, c := typefaces(t), strawberry()
	list := designs(t)
	if testing.Short() {
		list = list[2:5]
	}
	stood, asked := 0, 0
	for i, d := range list {
		for k, u := range usual {
			spot := []string{"", "top", "left", "right", "corner"}[(i+k)%5]
			shape := [][2]int{{600, 600}, {900, 300}, {300, 900}}[k%3]
			p := sign(shape[0], shape[1], spot)
			p.Ornament = (i+k)%2 == 0
			r, l := compose.Compose(c, d, u.piece, u.cell, faces, compose.Options{Alone: u.alone, Picture: p, InkSaver: k%4 == 0})
			what := fmt.Sprintf("%s %s %s %q %v", d.ID, u.piece, u.name, spot, shape)
			for _, f := range append(l.Errors(), inspect.Frame(r.Frame, c, faces, inspect.Default())...) {
				t.Errorf("%s: %s", what, f.Message)
			}
			got, told := pictureOf(r.Frame), has(l, "no-room-for-picture")
			wanted := strings.Contains("front wrap lid tag shelf", string(u.piece))
			if wanted != (len(got) == 1 || told) || len(got) > 1 || told && len(got) > 0 {
				t.Errorf("%s: %d pictures, told %v", what, len(got), told)
			}
			if wanted {
				asked++
				stood += len(got)
			}
			if want := p.Image; len(got) == 1 && k%4 == 0 == (got[0].Image == want) {
				t.Errorf("%s: in colour with little ink, or grey without", what)
			}
		}
	}
	if stood*10 < asked*9 {
		t.Errorf("%d of %d pictures stand", stood, asked)
	}
}

func has(l diag.List, code string) bool {
	for _, f := range l {
		if f.Code == code {
			return true
		}
	}
	return false
}

// TestPictureSharpness: 200 dots per inch is the limit, and the message says how
// large the file can be printed.
func TestPictureSharpness(t *testing.T) {
	faces, c, d := typefaces(t), strawberry(), orchard(t)
	u := usual[1]
	set := func(p *compose.Picture) (page.Rect, diag.List) {
		r, l := compose.Compose(c, d, u.piece, u.cell, faces, compose.Options{Picture: p})
		got := pictureOf(r.Frame)
		if len(got) != 1 {
			t.Fatalf("no picture stands: %v %s", l, d.ID)
		}
		return got[0].At, l
	}
	p := sign(400, 400, "top")
	at, l := set(p)
	if has(l, "picture-coarse") {
		t.Errorf("%.1f mm of 400 pixels is told coarse", at.W.MM())
	}
	for _, n := range []int{-2, 2} {
		pixels := int(at.W.MM()/25.4*200) + n
		p.Image.FullW, p.Image.FullH = pixels, pixels
		if _, l = set(p); has(l, "picture-coarse") != (n < 0) {
			t.Errorf("%d pixels on %.2f mm", pixels, at.W.MM())
		}
	}
	p.Image.FullW, p.Image.FullH = 80, 80
	_, l = set(p)
	for _, f := range l {
		if f.Code == "picture-coarse" && (!strings.Contains(f.Message, "80 x 80 pixels") || !strings.Contains(f.Hint, "10 x 10 mm")) { // 80/200 in = 10.2 mm
			t.Errorf("%s %s", f.Message, f.Hint)
		}
	}
	p.Size = 6 * unit.Millimetre
	if at, _ = set(p); at.H > p.Size+unit.Micrometre {
		t.Errorf("%.2f mm high, at most 6 were asked for", at.H.MM())
	}
}

// TestPictureForTheMakersName: it stands for the sign where it is told to.
func TestPictureForTheMakersName(t *testing.T) {
	faces, c, d := typefaces(t), strawberry(), orchard(t)
	u := usual[1]
	signs := func(p *compose.Picture) (n int) {
		r, _ := compose.Compose(c, d, u.piece, u.cell, faces, compose.Options{Picture: p})
		b, _ := c.Find(label.Brand)
		for _, it := range r.Frame.Items {
			if x, ok := it.(*page.Text); ok && x.Block == b.ID {
				n++
			}
		}
		return n
	}
	p := sign(300, 300, "top")
	if signs(p) == 0 {
		t.Error("the maker's name gave way unasked")
	}
	if p.Name = true; signs(p) > 0 {
		t.Error("the maker's name stands beside the picture that stands for it")
	}
}

// TestStampStandsClear: in every design the maker's words stand in a seal on
// front and wrap labels, beside a picture too, and the second look at the label
// finds no fault; or a finding says that there is no room.
func TestStampStandsClear(t *testing.T) {
	faces, c := typefaces(t), *strawberry()
	c.Blocks = append(append([]label.Block(nil), c.Blocks...), label.Block{ID: "stamp", Kind: label.Stamp, Runs: run("First prize, village fair 2026"), Path: "label.stamp"})
	list := designs(t)
	if testing.Short() {
		list = list[2:5]
	}
	stood, asked := 0, 0
	for i, d := range list {
		for k, u := range usual {
			opt := compose.Options{Alone: u.alone, InkSaver: (i+k)%4 == 0}
			if (i+k)%3 == 0 {
				opt.Picture = sign(600, 400, []string{"", "corner"}[k%2])
			}
			r, l := compose.Compose(&c, d, u.piece, u.cell, faces, opt)
			for _, f := range append(l.Errors(), inspect.Frame(r.Frame, &c, faces, inspect.Default())...) {
				t.Errorf("%s %s %s: %s", d.ID, u.piece, u.name, f.Message)
			}
			said := false
			for _, it := range r.Frame.Items {
				x, ok := it.(*page.Text)
				said = said || ok && x.Block == "stamp"
			}
			wanted := u.piece == label.Front || u.piece == label.Wrap
			if told := has(l, "no-room-for-stamp"); wanted != (said || told) || said && told {
				t.Errorf("%s %s %s: said %v, told %v", d.ID, u.piece, u.name, said, told)
			}
			if wanted {
				asked++
			}
			if said {
				stood++
			}
		}
	}
	if stood*100 < asked*85 {
		t.Errorf("%d of %d stamps stand", stood, asked)
	}
}
