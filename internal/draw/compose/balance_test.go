package compose_test

import (
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// widest is the width of the widest line of a block.
func widest(fr *page.Frame, blocks ...string) (most unit.Length) {
	lines := map[unit.Length][2]unit.Length{}
	for _, it := range fr.Items {
		x, ok := it.(*page.Text)
		if !ok {
			continue
		}
		for _, b := range blocks {
			if x.Block != b {
				continue
			}
			s, seen := lines[x.At.Y]
			if !seen {
				s = [2]unit.Length{fr.W, 0}
			}
			lines[x.At.Y] = [2]unit.Length{min(s[0], x.Box.X), max(s[1], x.Box.X+x.Box.W)}
		}
	}
	for _, s := range lines {
		most = max(most, s[1]-s[0])
	}
	return most
}

// A net quantity does not stretch beyond the name where its narrow face helps, and
// its height is the law's all the same; the facts of a wrap keep their wide face
// where it has room (common practice, no source).
func TestNetQuantityIsNoWiderThanTheName(t *testing.T) {
	fs := typefaces(t)
	for _, u := range []struct {
		piece label.Piece
		cell  compose.Cell
	}{
		{label.Front, cell(101.6, 50.8, page.Rectangle)}, {label.Front, cell(80, 60, page.Rectangle)},
		{label.Wrap, cell(210, 60, page.Rectangle)}, {label.Wrap, cell(190, 48, page.Rectangle)},
	} {
		for _, d := range designs(t) {
			c := strawberry()
			fr, l := compose.Label(c, d, u.piece, u.cell, fs, compose.Options{})
			if l.HasErrors() {
				t.Fatal(l)
			}
			name, net := widest(fr, "identity", ""), widest(fr, "net")
			if net > name*23/20 {
				t.Errorf("%s %s %.0f mm: net quantity %.1f mm wide, name %.1f mm", d.ID, u.piece, u.cell.W.MM(), net.MM(), name.MM())
			}
			for _, it := range fr.Items {
				x, ok := it.(*page.Text)
				if ok && u.piece == label.Wrap && u.cell.H > 50*mm && d.Look(u.piece).Band.Edge != "top" && x.Block == "ingredients" && x.Face == d.Voices.Text.Narrow.Face {
					t.Errorf("%s: the facts are narrow where there is room", d.ID)
				}
			}
		}
	}
}

// A band along one side of an oval would show as a sliver: it runs around.
func TestOvalsHaveNoSliverOfABand(t *testing.T) {
	d := one(t, "harvest")
	if d.Look(label.Front).Band.Edge != "left" {
		t.Fatal("nothing is tested")
	}
	fr, l := compose.Label(strawberry(), d, label.Front, cell(90, 60, page.Ellipse), typefaces(t), compose.Options{})
	if l.HasErrors() {
		t.Fatal(l)
	}
	bands := 0
	for _, it := range fr.Items {
		p, ok := it.(*page.Path)
		if !ok || !p.Bleed {
			continue
		}
		b := p.Bounds()
		if b.W < fr.W*9/10 {
			t.Errorf("a band %.1f mm wide at %.1f mm", b.W.MM(), b.X.MM())
		}
		bands++
	}
	if bands < 2 {
		t.Errorf("%d grounds and bands, want paper, ring and paper within", bands)
	}
}

func one(t *testing.T, id string) *design.Design {
	t.Helper()
	for _, d := range designs(t) {
		if d.ID == id {
			return d
		}
	}
	t.Fatalf("no design %q", id)
	return nil
}

// On a dark ground the code's patch stands a millimetre beside the words of a card and
// meets none (common practice, no source).
func TestPatchStandsOffTheWords(t *testing.T) {
	d := one(t, "winter-branch")
	for _, u := range []struct {
		piece label.Piece
		cell  compose.Cell
	}{
		{label.ShelfCard, cell(100, 70, page.Rectangle)}, {label.ShelfCard, cell(90, 55, page.Rectangle)},
		{label.CaseLabel, cell(150, 100, page.Rectangle)}, {label.CaseLabel, cell(101.6, 127, page.Rectangle)},
		{label.AllergCard, cell(105, 148, page.Rectangle)},
	} {
		fr, l := compose.Label(strawberry(), d, u.piece, u.cell, typefaces(t), compose.Options{})
		if l.HasErrors() {
			t.Fatal(l)
		}
		var patch page.Rect
		for _, it := range fr.Items {
			if p, ok := it.(*page.Path); ok && p.Block == "qr" {
				patch = p.Bounds()
			}
		}
		if patch.W == 0 {
			t.Fatalf("%s: no patch", u.piece)
		}
		for _, it := range fr.Items {
			if x, ok := it.(*page.Text); ok && x.Box.Overlaps(patch.Grow(mm, 0)) {
				t.Errorf("%s %.0f mm: %q stands at the code's patch", u.piece, u.cell.W.MM(), x.String())
			}
		}
	}
}
