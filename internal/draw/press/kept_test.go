package press

import (
	"fmt"
	"reflect"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
	"jarmark/templates"
)

// TestComposedLabelsAreKept: what was set is not set anew, and nothing is taken
// for it that differs in anything a label hangs on. What is kept is what would
// be set, findings too, and is bounded.
func TestComposedLabelsAreKept(t *testing.T) {
	faces, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	p, _ := Load(templates.FS, faces)
	other, _ := face.Load(fonts.FS)
	orchard, _ := p.Designs.Get("orchard")
	hedgerow, _ := p.Designs.Get("hedgerow")
	again := *orchard
	picture := func(grey byte) *compose.Picture {
		im := &page.Image{W: 1, H: 1, Pix: []byte{grey, grey, grey, 255}}
		return &compose.Picture{Image: im, Grey: im, On: []label.Piece{label.Front}}
	}
	plum := func() *label.Content { // too long for the label, so that there is a finding
		return &label.Content{Title: "Plum", Blocks: []label.Block{
			{ID: "net", Kind: label.Net, Runs: []label.Run{{Text: "NET WT 10 OZ (283 g)"}}, Required: true},
			{ID: "statement", Kind: label.Statement, Runs: []label.Run{{Text: fmt.Sprint(make([]int, 2000))}}, Required: true, Exact: true}}}
	}
	set := func() *setting {
		return &setting{plum(), orchard, label.Front, compose.Options{Picture: picture(9), Codes: p.codes, Drawings: p.drawings}}
	}
	cell := compose.Cell{W: 80 * unit.Millimetre, H: 50 * unit.Millimetre, Shape: page.Rectangle}

	first, found := p.kept.compose(set(), cell, faces)
	if len(found) == 0 {
		t.Fatal("no finding to keep")
	}
	found[0].Message = "changed by the caller"
	x := set()
	x.design = &again
	_, told := p.kept.compose(x, cell, faces)
	told[0].Message = "changed by the next"
	got, told := p.kept.compose(x, cell, faces)
	want, should := compose.Compose(plum(), orchard, label.Front, cell, faces, x.opt)
	if got.Frame != first.Frame {
		t.Error("a label like the last is set anew")
	}
	if !reflect.DeepEqual(got, want) || !reflect.DeepEqual(told, should) {
		t.Errorf("kept: %v; set anew: %v", told, should)
	}

	for what, differ := range map[string]func(*setting, *compose.Cell, **face.Set){
		"words": func(x *setting, _ *compose.Cell, _ **face.Set) {
			x.content.Blocks[0].Runs[0].Text = "NET WT 9 OZ (255 g)"
		},
		"design":    func(x *setting, _ *compose.Cell, _ **face.Set) { x.design = hedgerow },
		"piece":     func(x *setting, _ *compose.Cell, _ **face.Set) { x.piece = label.InfoLabel },
		"ink":       func(x *setting, _ *compose.Cell, _ **face.Set) { x.opt.InkSaver = true },
		"alone":     func(x *setting, _ *compose.Cell, _ **face.Set) { x.opt.Alone = true },
		"slots":     func(x *setting, _ *compose.Cell, _ **face.Set) { x.opt.Reserve = []label.Kind{label.Serial} },
		"picture":   func(x *setting, _ *compose.Cell, _ **face.Set) { x.opt.Picture = picture(8) },
		"size":      func(_ *setting, c *compose.Cell, _ **face.Set) { c.W++ },
		"typefaces": func(_ *setting, _ *compose.Cell, f **face.Set) { *f = other },
	} {
		x, c, f := set(), cell, faces
		differ(x, &c, &f)
		if got, _ := p.kept.compose(x, c, f); got.Frame == first.Frame {
			t.Errorf("a label of another %s is taken for the same", what)
		}
	}

	for i := range mostKept + 3 {
		c := cell
		c.W += unit.Length(i)
		one, _ := p.kept.compose(set(), c, faces)
		p.kept.compose(set(), cell, faces) // used again and again, it stays
		if again, _ := p.kept.compose(set(), c, faces); again.Frame != one.Frame {
			t.Fatal("a label is forgotten for another that was used")
		}
	}
	if n := len(p.kept.labels); n != mostKept {
		t.Errorf("%d labels are kept, want %d", n, mostKept)
	}
	if got, _ := p.kept.compose(set(), cell, faces); got.Frame != first.Frame {
		t.Error("the label used most is forgotten")
	}
}
