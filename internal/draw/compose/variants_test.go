package compose_test

import (
	"reflect"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// lowWrap is a wrap-around cut for a half-pint jar with a long home-kitchen
// statement that must stand on the display panel: the hardest usual case.
func lowWrap() *label.Content {
	c := strawberry()
	for i := range c.Blocks {
		b := &c.Blocks[i]
		switch b.Kind {
		case label.Statement:
			b.Zone = label.Panel
			b.Runs = run("This product is homemade, is not prepared in an inspected food establishment, and must be stored and displayed separately if merchandised by a retailer.")
		case label.Identity:
			b.OfLargest = 50
		}
	}
	return c
}

func largest(fr *page.Frame, block string) (most, least unit.Length) {
	for _, it := range fr.Items {
		if t, ok := it.(*page.Text); ok && t.Block == block {
			most = max(most, t.Size)
			if least == 0 || t.Size < least {
				least = t.Size
			}
		}
	}
	return most, least
}

// The name leads the display panel, whatever stands there with it: it is
// about as large as the net quantity or larger, never under 14 pt (both common
// practice, no source), and no line of it is less than half the largest print,
// which is the FDA's reading of 21 CFR 101.3(d) in its Food Labeling Guide
// ("at least 1/2 the size of the largest print on the label").
func TestNameLeadsThePanel(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range []struct {
			piece label.Piece
			w, h  float64
		}{{label.Wrap, 220, 46}, {label.Wrap, 220, 60}, {label.Wrap, 220, 76}, {label.Front, 88, 46}, {label.Front, 101.6, 50.8}} {
			c := lowWrap()
			fr, l := compose.Label(c, d, u.piece, cell(u.w, u.h, page.Rectangle), fs, compose.Options{})
			for _, f := range append(l, inspect.Frame(fr, c, fs, inspect.Default())...) {
				switch f.Code {
				case "no-room-for-ornament", "name-crowded", "sign-left-out":
				default:
					t.Errorf("%s %s %gx%g: %s", d.ID, u.piece, u.w, u.h, f.Message)
				}
			}
			name, second := largest(fr, "identity")
			net, _ := largest(fr, "net")
			if name*100 < net*92 || name < unit.Points(14) {
				t.Errorf("%s %s %gx%g: name %.1f pt, net quantity %.1f pt", d.ID, u.piece, u.w, u.h, name.Points(), net.Points())
			}
			if second*2+unit.Micrometre < max(name, net) {
				t.Errorf("%s %s %gx%g: a line of the name has %.1f pt beside %.1f pt", d.ID, u.piece, u.w, u.h, second.Points(), max(name, net).Points())
			}
		}
	}
}

// What a label gives up for room it gives up in this order: the wide faces, the
// size of its ornaments, the size of the name, the maker's sign. With a
// home-kitchen statement on the panel of a half-pint (46 mm of straight side)
// every design keeps sign and drawing, and the name stays 1.1 times the net
// quantity at least (wish 1.4; both our own taste).
func TestOrnamentShrinksBeforeTheSignGoes(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range []struct {
			piece label.Piece
			w, h  float64
		}{{label.Wrap, 220, 46}, {label.Wrap, 220, 60}, {label.Front, 101.6, 50.8}, {label.Front, 96, 63.5}, {label.Front, 101.6, 76.2}} {
			fr, l := compose.Label(lowWrap(), d, u.piece, cell(u.w, u.h, page.Rectangle), fs, compose.Options{})
			for _, f := range l {
				t.Errorf("%s %s %gx%g: %s", d.ID, u.piece, u.w, u.h, f.Message)
			}
			if sign, _ := largest(fr, "brand"); sign == 0 && d.Look(u.piece).Brand != "none" {
				t.Errorf("%s %s %gx%g: the maker's sign is gone", d.ID, u.piece, u.w, u.h)
			}
			name, _ := largest(fr, "identity")
			net, _ := largest(fr, "net")
			if name*100 < net*110 {
				t.Errorf("%s %s %gx%g: name %.1f pt, net quantity %.1f pt", d.ID, u.piece, u.w, u.h, name.Points(), net.Points())
			}
		}
	}
}

// A round of 40 mm, the commonest lid label, shows the drawing of every design.
func TestSmallRoundIsAdorned(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, mm := range []float64{38.1, 40, 50.8} {
			_, l := compose.Label(strawberry(), d, label.Lid, cell(mm, mm, page.Ellipse), fs, compose.Options{})
			for _, f := range l {
				t.Errorf("%s on %g mm: %s", d.ID, mm, f.Message)
			}
		}
	}
}

// A letter the narrow faces lack is set in the others, not left out.
func TestNarrowFaceLacksALetter(t *testing.T) {
	fs := typefaces(t)
	if f := fs.Face("AsapCondensed_400Regular"); f.Has('☃') || f.Has('\u0416') {
		t.Fatal("the narrow face draws more than this test thinks")
	}
	for _, d := range designs(t) {
		v := d.Voices.Narrowed()
		for _, r := range "0123456789áčďéěíňóřšťúůýžÄÖÜßœæøåłńśź€$£¢½¼¾%°µ()&/–—’‘“”„«»…" {
			for _, name := range []page.Face{v.Net.Face, v.Text.Face, v.Text.Bold, v.Small.Face} {
				if fs.Face(d.Voices.Text.Face).Has(r) && !fs.Face(name).Has(r) {
					t.Errorf("%s lacks %q", name, r)
				}
			}
		}
	}
}

// Check sees a name that is too small beside the net quantity.
func TestCheckSeesSmallName(t *testing.T) {
	fs := typefaces(t)
	c := lowWrap()
	fr, _ := compose.Label(c, designs(t)[0], label.Front, cell(100, 60, page.Rectangle), fs, compose.Options{})
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok && x.Block == "identity" {
			x.Size = unit.Points(7)
		}
	}
	if _, ok := find(inspect.Frame(fr, c, fs, inspect.Default()), "not-prominent"); !ok {
		t.Error("a name of half the size it should have passes")
	}
}

// A panel and its facts share out the statements: each stands once, also where
// one of two statements belongs on the panel.
func TestEveryStatementOnce(t *testing.T) {
	fs := typefaces(t)
	c := lowWrap()
	c.Blocks = append(c.Blocks, label.Block{ID: "statement-2", Kind: label.Statement, Runs: run("Kept by the register of home kitchens."), Required: true, Exact: true, Min: sixteenth})
	for _, d := range designs(t) {
		fr, l := compose.Label(c, d, label.Wrap, cell(220, 60, page.Rectangle), fs, compose.Options{})
		if l.HasErrors() {
			t.Fatalf("%s: %v", d.ID, l)
		}
		for _, f := range inspect.Frame(fr, c, fs, inspect.Default()) {
			t.Errorf("%s: %s", d.ID, f.Message)
		}
	}
}

// The first look is the design's own, the last bare type, and every step
// between them changes something.
func TestLeanerLooks(t *testing.T) {
	for _, d := range designs(t) {
		looks := d.Look(label.Wrap).Leaner()
		if !reflect.DeepEqual(looks[0], d.Look(label.Wrap)) {
			t.Errorf("%s: the first look is not as written", d.ID)
		}
		for i, l := range looks[1:] {
			if reflect.DeepEqual(l, looks[i]) {
				t.Errorf("%s: look %d is the one before", d.ID, i+1)
			}
		}
		if last := looks[len(looks)-1]; len(last.Ornaments) > 0 || last.Frame != "none" || last.Band.Edge != "none" {
			t.Errorf("%s: the last look is not bare: %+v", d.ID, last)
		}
	}
}
