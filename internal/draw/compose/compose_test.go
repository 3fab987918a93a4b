package compose_test

import (
	"image"
	"image/color"
	"slices"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// A second, independent reader must get the payload back from the matrix
// with a quiet zone of four modules (ISO/IEC 18004).
func TestQRMatrixReadsBack(t *testing.T) {
	for _, payload := range []string{"https://thornfield.example/r/L26165-SR", "Contains: milk. Lot L26165-SR", strings.Repeat("Zwetschgenmus über Nacht ", 8)} {
		m := code(t, payload)
		const px, quiet = 4, 4
		n := (len(m) + 2*quiet) * px
		img := image.NewGray(image.Rect(0, 0, n, n))
		for i := range img.Pix {
			img.Pix[i] = 255
		}
		for y, row := range m {
			for x, dark := range row {
				for i := 0; dark && i < px*px; i++ {
					img.Set((x+quiet)*px+i%px, (y+quiet)*px+i/px, color.Black)
				}
			}
		}
		bmp, err := gozxing.NewBinaryBitmapFromImage(img)
		if err != nil {
			t.Fatal(err)
		}
		got, err := qrcode.NewQRCodeReader().Decode(bmp, nil)
		if err != nil || got.GetText() != payload {
			t.Errorf("%q reads back as %v, %v", payload, got, err)
		}
	}
	c := strawberry()
	c.QR.Payload = strings.Repeat("x", 5000) // more than version 40 holds
	_, l := compose.Label(c, designs(t)[0], label.Wrap, usual[0].cell, typefaces(t), compose.Options{})
	if _, ok := find(l, "qr-payload"); !ok {
		t.Error("5000 characters are encoded")
	}
}

// code is the matrix a label of a payload bears.
func code(t *testing.T, payload string) [][]bool {
	c := strawberry()
	c.QR.Payload = payload
	fr, _ := compose.Label(c, designs(t)[0], label.InfoLabel, cell(150, 120, page.Rectangle), typefaces(t), compose.Options{})
	for _, it := range fr.Items {
		if k, ok := it.(*page.Code); ok {
			return k.Modules
		}
	}
	t.Fatalf("no code for %q", payload)
	return nil
}

func find(l diag.List, code string) (diag.Diagnostic, bool) {
	for _, d := range l {
		if d.Code == code {
			return d, true
		}
	}
	return diag.Diagnostic{}, false
}

func TestMissingGlyphIsNamed(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	c := strawberry()
	c.Blocks[3].Runs = []label.Run{{Text: "strawberries 🍓, 莓, sugar"}}
	c.Blocks[3].Path = "ingredient[0].name"
	fr, l := compose.Label(c, d, label.Wrap, usual[0].cell, fs, compose.Options{})
	n := 0
	for _, f := range l {
		if f.Code == "missing-glyph" {
			n++
			if f.Severity != diag.Error || f.Path != "ingredient[0].name" || !strings.Contains(f.Message, "ingredients") ||
				!strings.Contains(f.Message, "U+1F353") || !strings.Contains(f.Message, "莓") {
				t.Errorf("finding %+v", f)
			}
		}
	}
	if n != 1 {
		t.Errorf("%d findings, want one that names both characters", n)
	}
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok && strings.ContainsAny(x.String(), "🍓莓\uFFFD") {
			t.Errorf("%q is printed", x.String())
		}
	}
}

func TestOverflowTellsMillimetres(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	c := strawberry()
	c.Blocks[3].Runs = []label.Run{{Text: strings.Repeat("candied citrus peel, ", 120)}}
	r, l := compose.Compose(c, d, label.Wrap, usual[0].cell, fs, compose.Options{})
	f, ok := find(l, "does-not-fit")
	if !ok || f.Severity != diag.Error || !strings.Contains(f.Message, " mm") || f.Hint == "" {
		t.Fatalf("finding %+v", f)
	}
	if len(r.Overflow) == 0 || r.Overflow[0].Need <= r.Overflow[0].Have {
		t.Fatalf("overflow %+v", r.Overflow)
	}
	tall := usual[0].cell
	tall.H += 2 * (r.Overflow[0].Need - r.Overflow[0].Have)
	if r, _ := compose.Compose(c, d, label.Wrap, tall, fs, compose.Options{}); len(r.Overflow) > 0 {
		t.Errorf("twice the missing height is still not enough: %+v", r.Overflow)
	}
}

func TestJarIsMeasured(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	for code, set := range map[string]func(*label.Content){
		"taller-than-jar": func(c *label.Content) { c.Straight = unit.MM(40) },
		"longer-than-jar": func(c *label.Content) { c.Around = unit.MM(180) },
	} {
		c := strawberry()
		c.Straight, c.Around, c.Measured = unit.MM(70), unit.MM(220), true
		if _, l := compose.Label(c, d, label.Wrap, usual[0].cell, fs, compose.Options{}); l.HasErrors() {
			t.Errorf("a jar that takes the label: %v", l)
		}
		set(c)
		if _, l := compose.Label(c, d, label.Wrap, usual[0].cell, fs, compose.Options{}); !l.HasErrors() {
			t.Errorf("no %s", code)
		} else if _, ok := find(l, code); !ok {
			t.Errorf("no %s in %v", code, l)
		}
		c.Measured = false
		if _, l := compose.Label(c, d, label.Wrap, usual[0].cell, fs, compose.Options{}); l.HasErrors() {
			t.Errorf("a typical value of a table refuses the print: %v", l)
		} else if _, ok := find(l, code); !ok {
			t.Errorf("no %s in %v", code, l)
		}
	}
	c := strawberry()
	c.LidAcross = unit.MM(60)
	_, l := compose.Label(c, d, label.Lid, cell(63, 63, page.Ellipse), fs, compose.Options{})
	if _, ok := find(l, "wider-than-lid"); !ok {
		t.Error("a label wider than the lid passes")
	}
}

func TestSlotsTakeVaryingText(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	fr, _ := compose.Label(strawberry(), d, label.Wrap, usual[0].cell, fs, compose.Options{Reserve: []label.Kind{label.Serial}})
	if len(fr.Slots) != 1 {
		t.Fatalf("slots %+v", fr.Slots)
	}
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok && strings.Contains(x.String(), "07 / 12") {
			t.Error("the sample is printed")
		}
	}
	items, ok := compose.Overlay(fr.Slots[0], "12 / 12", fs)
	if !ok || len(items) != 1 || items[0].(*page.Text).At != fr.Slots[0].At {
		t.Errorf("overlay %v %v", items, ok)
	}
	if _, ok := compose.Overlay(fr.Slots[0], strings.Repeat("9", 40), fs); ok {
		t.Error("forty figures fit a serial number's place")
	}
	if _, ok := compose.Overlay(fr.Slots[0], "🍓", fs); ok {
		t.Error("an emoji is drawn")
	}
}

func TestNothingAndNonsense(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	for _, c := range []*label.Content{nil, {}, {Title: "\xff\xfe", Blocks: []label.Block{{}, {Kind: label.Net}}}} {
		for _, p := range append(label.Pieces[:len(label.Pieces):len(label.Pieces)], "nonsense") {
			for _, cl := range []compose.Cell{{}, {W: -5, H: 1 << 60}, cell(9, 9, "star"), cell(80, 60, page.Rectangle)} {
				fr, l := compose.Label(c, d, p, cl, fs, compose.Options{})
				if fr == nil && !l.HasErrors() {
					t.Errorf("%v %s: neither label nor finding", c, p)
				}
				inspect.Frame(fr, c, fs, inspect.Default())
			}
		}
	}
	if _, l := compose.Label(strawberry(), nil, label.Front, usual[0].cell, fs, compose.Options{}); !l.HasErrors() {
		t.Error("no design, no finding")
	}
	if _, l := compose.Label(strawberry(), d, label.Front, usual[0].cell, nil, compose.Options{}); !l.HasErrors() {
		t.Error("no typefaces, no finding")
	}
}

func TestSameInputSameFrame(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		a, _ := compose.Label(strawberry(), d, label.Wrap, usual[0].cell, fs, compose.Options{})
		b, _ := compose.Label(strawberry(), d, label.Wrap, usual[0].cell, typefaces(t), compose.Options{})
		if dump(a) != dump(b) {
			t.Errorf("%s: two runs differ", d.ID)
		}
	}
}

// Where the list of ingredients emphasises the allergens and no block states
// them (Regulation (EU) 1169/2011, Article 21(1)), a stall's cards still do;
// a jar's label must not repeat them.
func TestCardsNameAllergens(t *testing.T) {
	fs := typefaces(t)
	c := strawberry()
	c.Blocks = slices.DeleteFunc(c.Blocks, func(b label.Block) bool { return b.Kind == label.Allergens })
	c.AllergenWord, c.AllergenNames = "Allergene", []string{"Mandeln", "Milch"}
	for _, d := range designs(t) {
		for p, want := range map[label.Piece]bool{label.ShelfCard: true, label.AllergCard: true, label.Wrap: false} {
			fr, l := compose.Label(c, d, p, cell(190, 130, page.Rectangle), fs, compose.Options{})
			if l.HasErrors() {
				t.Fatalf("%s %s: %v", d.ID, p, l)
			}
			said := ""
			for _, it := range fr.Items {
				if x, ok := it.(*page.Text); ok && x.Block == "allergen-names" {
					said += x.String()
				}
			}
			if got := said == "Allergene: Mandeln, Milch"; got != want {
				t.Errorf("%s %s says %q", d.ID, p, said)
			}
			for _, f := range inspect.Frame(fr, c, fs, inspect.Default()) {
				t.Errorf("%s %s: %s", d.ID, p, f.Message)
			}
		}
	}
}

func BenchmarkLabel(b *testing.B) {
	fs, codes := typefaces(b), &compose.Codes{}
	for _, d := range designs(b) {
		if d.ID != "orchard" && d.ID != "market-plain" {
			continue
		}
		for _, u := range usual[:6] {
			b.Run(d.ID+"/"+string(u.piece)+u.name, func(b *testing.B) {
				for b.Loop() {
					compose.Label(strawberry(), d, u.piece, u.cell, fs, compose.Options{Codes: codes})
				}
			})
		}
	}
}
