package compose_test

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// small is a label of a 4 oz jar, whose panel is at most 5 square inches: its net
// quantity may be 1/16 in high (21 CFR 101.7(i)(1)).
func small() *label.Content {
	c := strawberry()
	for i := range c.Blocks {
		if b := &c.Blocks[i]; b.Kind == label.Net {
			b.Min, b.Zone, b.Runs = sixteenth, label.Panel, []label.Run{{Text: "Net Wt 4 oz (113 g)", Bold: true}}
		}
	}
	return c
}

// On a long thin label the net quantity stands beside the name; design and
// maker's name stay, and the name leads: 1.4 times the net quantity at least,
// and 9 pt (all common practice, no source).
func TestThinLabelsKeepTheirCharacter(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range []struct {
			p    label.Piece
			w, h float64
		}{{label.Wrap, 214, 26}, {label.Front, 66.7, 25.4}, {label.Front, 88, 30}} {
			c := small()
			fr, l := compose.Label(c, d, u.p, cell(u.w, u.h, page.Rectangle), fs, compose.Options{})
			at := fmt.Sprintf("%s %s %gx%g", d.ID, u.p, u.w, u.h)
			for _, f := range append(l, inspect.Frame(fr, c, fs, inspect.Default())...) {
				if f.Code == "no-room-for-ornament" && u.h < 26 {
					continue // bare type, on the smallest
				}
				t.Errorf("%s: %s", at, f.Message)
			}
			name, _ := largest(fr, "identity")
			net, _ := largest(fr, "net")
			if brand, _ := largest(fr, "brand"); brand == 0 {
				t.Errorf("%s: the maker's name is gone", at)
			}
			if name < unit.Points(9) || name*100 < net*140 {
				t.Errorf("%s: name %.1f pt, net quantity %.1f pt", at, name.Points(), net.Points())
			}
		}
	}
}

// What a finding says is missing is what is missing: a label larger by it fits,
// and one larger by half of it does not.
func TestShortfallIsTrue(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	for _, u := range []struct {
		p     label.Piece
		cell  compose.Cell
		alone bool
		words int
	}{
		{label.InfoLabel, cell(80, 40, page.Rectangle), false, 18}, {label.InfoLabel, cell(60, 44, page.Ellipse), false, 2},
		{label.Front, cell(70, 40, page.Rectangle), true, 4},
		{label.Front, cell(30, 30, page.Ellipse), false, 1}, {label.ShelfCard, cell(60, 20, page.Rectangle), false, 1},
		{label.Lid, cell(12, 12, page.Ellipse), false, 1},
	} {
		c := strawberry()
		c.Blocks[3].Runs = run("sugar" + strings.Repeat(", candied citrus peel", u.words))
		grown := func(f float64) compose.Result {
			r, _ := compose.Compose(c, d, u.p, u.cell, fs, compose.Options{Alone: u.alone})
			big := u.cell
			for _, o := range r.Overflow {
				by := unit.Length(float64(o.Need-o.Have) * f)
				switch {
				case u.cell.Shape == page.Ellipse: // its form stays, and its margins grow with it
					k := 1 + float64(o.Need-o.Have)/float64(o.Have)*f
					big.W, big.H = max(big.W, unit.Length(float64(u.cell.W)*k)), max(big.H, unit.Length(float64(u.cell.H)*k))
				case o.Across:
					big.W = max(big.W, u.cell.W+by)
				default:
					big.H = max(big.H, u.cell.H+by)
				}
			}
			r, _ = compose.Compose(c, d, u.p, big, fs, compose.Options{Alone: u.alone})
			return r
		}
		if r := grown(0); len(r.Overflow) == 0 {
			t.Errorf("%s %v fits: nothing is tested", u.p, u.cell)
		} else if len(grown(0.4).Overflow) == 0 {
			t.Errorf("%s %v: %+v, and less than half of it is enough", u.p, u.cell, r.Overflow)
		} else {
			for _, o := range grown(1.15).Overflow {
				if o.Block == r.Overflow[0].Block {
					t.Errorf("%s %v: %+v, and still %+v", u.p, u.cell, r.Overflow, o)
				}
			}
		}
	}
}

// A name breaks at its hyphens before its letters get small, and a statement of
// identity that begins with the name is not a second name under it.
func TestNamesAreSaidOnceAndBreak(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		c := strawberry()
		c.Title, c.Subtitle = "Johannisbeer-Himbeer-Fruchtaufstrich", ""
		c.Blocks[0].Runs = run(c.Title)
		fr, _ := compose.Label(c, d, label.Front, cell(80, 60, page.Rectangle), fs, compose.Options{})
		if size, _ := largest(fr, "identity"); size < unit.Points(14) {
			t.Errorf("%s: the name is %.1f pt", d.ID, size.Points())
		}
		c.Title = "Fig"
		c.Blocks[0].Runs = run("Fig jam")
		fr, _ = compose.Label(c, d, label.Front, cell(80, 60, page.Rectangle), fs, compose.Options{})
		said := ""
		for _, it := range fr.Items {
			if x, ok := it.(*page.Text); ok && (x.Block == "identity" || x.Block == "") {
				said += strings.ToLower(x.String()) + " "
			}
		}
		if said != "fig jam " {
			t.Errorf("%s says %q", d.ID, said)
		}
	}
}

// Facts and codes are pure black on light ground, which no printer screens, and
// no line is thinner than a quarter of a point (common practice, no source).
func TestBlackAndHairlines(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range usual[:6] {
			fr, _ := compose.Label(strawberry(), d, u.piece, u.cell, fs, compose.Options{Alone: u.alone})
			for _, it := range fr.Items {
				switch x := it.(type) {
				case *page.Path:
					if x.Stroke != nil && x.Width < unit.Points(0.25) {
						t.Fatalf("%s %s: a line of %d nm", d.ID, u.piece, x.Width)
					}
				case *page.Code:
					if x.Dark != (page.Colour{}) {
						t.Errorf("%s %s: the code is %v", d.ID, u.piece, x.Dark)
					}
				case *page.Text:
					if x.Block == "ingredients" && x.Colour != (page.Colour{}) && d.Look(u.piece).Paper != "deep" {
						t.Errorf("%s %s: facts are %v", d.ID, u.piece, x.Colour)
					}
				}
			}
		}
	}
}
