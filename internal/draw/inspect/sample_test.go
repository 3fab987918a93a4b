package inspect

import (
	"testing"

	qrcode "github.com/skip2/go-qrcode"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

const (
	mm    = unit.Millimetre
	plain = page.Face("Figtree_400Regular")
)

func typefaces(t testing.TB) *face.Set {
	t.Helper()
	s, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func modules(t testing.TB, payload string, level qrcode.RecoveryLevel) [][]bool {
	t.Helper()
	q, err := qrcode.New(payload, level)
	if err != nil {
		t.Fatal(err)
	}
	q.DisableBorder = true
	return q.Bitmap()
}

// line is one line of type, set by hand.
func line(block, text string, x, y, size unit.Length) *page.Text {
	return &page.Text{Block: block, Face: plain, Size: size, At: page.Point{X: x, Y: y}, Segs: []page.Seg{{S: text}}}
}

// bar is a filled box.
func bar(x, y, w, h unit.Length, c page.Colour) *page.Path {
	return &page.Path{
		Ops:  []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts:  []page.Point{{X: x, Y: y}, {X: x + w, Y: y}, {X: x + w, Y: y + h}, {X: x, Y: y + h}},
		Fill: &c,
	}
}

// sample is a label set by hand, without fault, and what it has to say.
// The heights are those of 21 CFR 101.7(h) and (i) and 101.2(c).
type sample struct {
	fr  *page.Frame
	c   *label.Content
	qr  *page.Code
	bar *page.Path
	// lines of the blocks of those names
	identity, net, ingredients, maker *page.Text
}

func newSample(t testing.TB) *sample {
	t.Helper()
	s := &sample{
		identity:    line("identity", "Plum jam", 5*mm, 14*mm, 9*mm),
		ingredients: line("ingredients", "Ingredients: plums, sugar", 5*mm, 22*mm, 3300*unit.Micrometre),
		maker:       line("maker", "Millbrook 97000", 5*mm, 28*mm, 3300*unit.Micrometre),
		net:         line("net", "Net Wt 10 oz (283 g)", 10*mm, 51*mm, 6500*unit.Micrometre),
		bar:         bar(5*mm, 32*mm, 20*mm, mm, page.Colour{R: 90}),
	}
	s.qr = &page.Code{Block: "qr", At: page.Rect{X: 58 * mm, Y: 19 * mm, W: 16 * mm, H: 16 * mm}, Quiet: 4,
		Modules: modules(t, "https://thornfield.example/r/1", qrcode.Medium)}
	s.fr = &page.Frame{W: 80 * mm, H: 60 * mm, Shape: page.Rectangle, Safe: 2 * mm, Piece: string(label.Wrap),
		Items: []page.Item{bar(0, 0, 80*mm, 60*mm, page.Colour{R: 255, G: 255, B: 255}), s.bar, s.qr, s.identity, s.ingredients, s.maker, s.net}}
	s.fr.Items[0].(*page.Path).Bleed = true
	said := func(t *page.Text) []label.Run { return []label.Run{{Text: t.String()}} }
	small := label.Height{On: label.AnyCase, Length: unit.Inch / 16}
	s.c = &label.Content{Blocks: []label.Block{
		{ID: "identity", Kind: label.Identity, Runs: said(s.identity), Required: true, OfLargest: 50, Zone: label.Panel},
		{ID: "net", Kind: label.Net, Runs: said(s.net), Required: true, Zone: label.Bottom, Clear: true, With: []label.Kind{label.Identity},
			Min: label.Height{On: label.AnyCase, Length: unit.Inch / 8}},
		{ID: "ingredients", Kind: label.Ingredients, Runs: said(s.ingredients), Required: true, Min: small, Zone: label.Info},
		{ID: "maker", Kind: label.Maker, Runs: said(s.maker), Required: true, Min: small, Zone: label.Info},
	}}
	return s
}

// drop takes an item off the frame.
func (s *sample) drop(gone page.Item) {
	var kept []page.Item
	for _, it := range s.fr.Items {
		if it != gone {
			kept = append(kept, it)
		}
	}
	s.fr.Items = kept
}

func (s *sample) say(id string, f func(*label.Block)) {
	for i := range s.c.Blocks {
		if s.c.Blocks[i].ID == id {
			f(&s.c.Blocks[i])
		}
	}
}
