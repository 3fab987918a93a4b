package inspect

import (
	"testing"

	qrcode "github.com/skip2/go-qrcode"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Which piece must bear what: a wrap everything, a front the display panel, an
// information label the information panel, a sign its own words and nothing else.
func TestWhatAPieceMustBear(t *testing.T) {
	panel, info := label.Panel, label.Info
	for _, x := range []struct {
		piece    label.Piece
		kind     label.Kind
		zone     label.Zone
		required bool
		want     bool
	}{
		{label.Wrap, label.Net, panel, true, true}, {label.Wrap, label.Maker, info, true, true}, {label.Wrap, label.Maker, info, false, false},
		{label.Front, label.Net, label.Bottom, true, true}, {label.Front, label.Maker, info, true, false}, {label.InfoLabel, label.Maker, info, true, true},
		{label.InfoLabel, label.Net, panel, true, false}, {label.Lid, label.Net, panel, true, false}, {label.Wrap, label.Price, panel, true, false},
		{label.Sign, label.SignWords, info, false, true}, {label.Sign, label.Identity, panel, true, false}, {label.Wrap, label.SignWords, info, true, false},
	} {
		k := &inspector{fr: &page.Frame{Piece: string(x.piece)}}
		if got := k.mustBear(label.Block{Kind: x.kind, Zone: x.zone, Required: x.required, Runs: []label.Run{{Text: "x"}}}); got != x.want {
			t.Errorf("%+v: %v", x, got)
		}
	}
}

// Two lines of one block that are set into each other are seen, two parts of one
// line may kern together, and lines of two blocks on one line may not.
func TestLinesOfOneBlock(t *testing.T) {
	fs := typefaces(t)
	for what, x := range map[string]struct {
		block string
		down  unit.Length
		want  int
	}{"one line": {"maker", 0, 0}, "two lines": {"maker", mm / 2, 1}, "two blocks": {"net", 0, 1}} {
		s := newSample(t)
		k := &inspector{fr: s.fr, faces: fs}
		for _, l := range []*page.Text{s.maker, line(x.block, "Millbrook", s.maker.At.X, s.maker.At.Y+x.down, s.maker.Size)} {
			k.texts = append(k.texts, inked{l, inkOf(l, fs.Face(l.Face))})
		}
		if k.apart(); len(k.found) != x.want {
			t.Errorf("%s: %v", what, k.found)
		}
	}
}

// ISO/IEC 18004: a code of the next size has four modules more a side, the one
// after it eight; where those fit, level M would have.
func TestRoomForLevelM(t *testing.T) {
	m := modules(t, "https://thornfield.example/r/1", qrcode.Low)
	const least = 360 * unit.Micrometre
	for w, want := range map[unit.Length]int{least*unit.Length(len(m)+8) - 1: 0, least * unit.Length(len(m)+8): 1} {
		k := &inspector{}
		if k.level(&page.Code{Modules: m, At: page.Rect{W: w, H: w}}, least); len(k.found) != want {
			t.Errorf("%d nm: %v", w, k.found)
		}
	}
}

// The ground of a box is what lies under its middle.
func TestGroundUnderTheMiddle(t *testing.T) {
	k := &inspector{under: []*page.Path{bar(0, 0, 40*mm, 40*mm, grey(255)), bar(8*mm, 8*mm, 4*mm, 4*mm, grey(10))}}
	if got := k.groundAt(page.Rect{X: 0, Y: 0, W: 20 * mm, H: 20 * mm}); got != grey(10) {
		t.Errorf("the middle lies on %v", got)
	}
	if got := k.groundAt(page.Rect{X: 20 * mm, Y: 20 * mm, W: 20 * mm, H: 20 * mm}); got != grey(255) {
		t.Errorf("the middle lies on %v", got)
	}
}
