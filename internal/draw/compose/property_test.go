package compose_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

var fruits = strings.Fields("strawberry rhubarb blackcurrant gooseberry elderflower apricot lavender plum damson quince fig lemon Boysenberry crème Früchte-Mischung")

func words(t *rapid.T, name string, lo, hi int) string {
	n := rapid.IntRange(lo, hi).Draw(t, name)
	out := make([]string, n)
	for i := range out {
		out[i] = rapid.SampledFrom(fruits).Draw(t, name)
	}
	return strings.Join(out, rapid.SampledFrom([]string{" ", " & ", ", "}).Draw(t, "join"))
}

// heights are the minima of the law books: none; 1/16, 1/8 and 3/16 in on the
// letter o (21 CFR 101.7(i), 101.2(c)); 1.2 mm x-height (Regulation (EU)
// 1169/2011, Article 13(2)); a point size (state statements).
var heights = []label.Height{
	{}, {On: label.AnyCase, Length: unit.Inch / 16}, {On: label.AnyCase, Length: unit.Inch / 8}, {On: label.LowerO, Length: unit.Inch * 3 / 16},
	{On: label.XHeight, Length: unit.MM(1.2)}, {On: label.PointSize, Length: unit.Points(10)}, {On: label.Digit, Length: unit.MM(4)},
}

func randomContent(t *rapid.T) *label.Content {
	c := &label.Content{
		Title: words(t, "title", 1, 3), Subtitle: words(t, "subtitle", 0, 3),
		MainFruit: rapid.SampledFrom(fruits).Draw(t, "fruit"), JarText: "8 oz jar",
	}
	if rapid.Bool().Draw(t, "coded") {
		c.QR = label.QR{Payload: "https://thornfield.example/" + strings.Repeat("x", rapid.IntRange(0, 120).Draw(t, "payload")), MinModule: 350 * unit.Micrometre}
	}
	add := func(k label.Kind, text string, z label.Zone) {
		if rapid.IntRange(0, 4).Draw(t, string(k)) == 0 {
			return
		}
		b := label.Block{ID: string(k), Kind: k, Zone: z, Min: rapid.SampledFrom(heights[:5]).Draw(t, "min"), Runs: []label.Run{{Text: text}},
			Required: rapid.Bool().Draw(t, "required"), Exact: rapid.Bool().Draw(t, "exact"), Bold: rapid.Bool().Draw(t, "bold")}
		if rapid.Bool().Draw(t, "headed") {
			b.Runs = []label.Run{{Text: "Note ", Bold: true}, {Text: text}}
		}
		c.Blocks = append(c.Blocks, b)
	}
	add(label.Identity, c.Title+" "+c.Subtitle, label.Panel)
	add(label.Brand, "Thornfield Lane Preserves", label.Anywhere)
	add(label.Net, rapid.SampledFrom([]string{"NET WT 8 OZ (226 g)", "Net Wt 1 lb 2 oz (510 g)", "340 g"}).Draw(t, "net"), label.Bottom)
	if k := len(c.Blocks) - 1; k >= 0 && c.Blocks[k].Kind == label.Net {
		c.Blocks[k].Clear = true
		c.Blocks[k].Min = rapid.SampledFrom(heights).Draw(t, "net height")
	}
	for _, k := range []label.Kind{label.Ingredients, label.Allergens, label.Maker, label.Statement, label.Advisory, label.Storage, label.Fruit, label.Caution} {
		add(k, words(t, "text", 1, 14), label.Info)
	}
	for _, k := range []label.Kind{label.Date, label.Lot, label.Serial, label.Caption, label.Season, label.Serve, label.To, label.From, label.Message, label.Price, label.UnitPrice, label.Seal, label.Count} {
		add(k, words(t, "note", 1, 4), label.Anywhere)
	}
	return c
}

// TestAnyContentAnyDesignAnySize: whatever is asked, either something does
// not fit and a finding says so, or the finished frame passes inspection.
func TestAnyContentAnyDesignAnySize(t *testing.T) {
	fs, ds, codes := typefaces(t), designs(t), &compose.Codes{}
	fit, tried := 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		c := randomContent(rt)
		d := rapid.SampledFrom(ds).Draw(rt, "design")
		p := rapid.SampledFrom(label.Pieces).Draw(rt, "piece")
		cl := compose.Cell{
			W: unit.MM(rapid.Float64Range(10, 260).Draw(rt, "w")), H: unit.MM(rapid.Float64Range(10, 200).Draw(rt, "h")),
			Safe: unit.MM(rapid.Float64Range(0, 4).Draw(rt, "safe")), Bleed: unit.MM(rapid.Float64Range(0, 3).Draw(rt, "bleed")),
			Corner: unit.MM(rapid.Float64Range(0, 8).Draw(rt, "corner")),
			Shape:  rapid.SampledFrom([]page.Shape{page.Rectangle, page.Rectangle, page.Ellipse, page.TagShape}).Draw(rt, "shape"),
		}
		o := compose.Options{InkSaver: rapid.Bool().Draw(rt, "saver"), Alone: rapid.Bool().Draw(rt, "alone"), Codes: codes}
		r, l := compose.Compose(c, d, p, cl, fs, o)
		tried++
		if len(r.Overflow) > 0 {
			if !l.HasErrors() {
				rt.Fatal("something does not fit and no error says so")
			}
			for _, v := range r.Overflow {
				if v.Need <= v.Have {
					rt.Fatalf("%s: needs %v, has %v", v.Block, v.Need, v.Have)
				}
			}
			return
		}
		if l.HasErrors() {
			rt.Fatalf("errors without overflow: %v", l)
		}
		fit++
		for _, f := range inspect.Frame(r.Frame, c, fs, inspect.Default()) {
			if f.Severity == diag.Error {
				rt.Fatalf("%s %s %.1fx%.1f %s safe %.1f corner %.1f %+v: %s: %s", d.ID, p, cl.W.MM(), cl.H.MM(), cl.Shape, cl.Safe.MM(), cl.Corner.MM(), o, f.Code, f.Message)
			}
		}
	})
	t.Logf("%d of %d fitted", fit, tried)
	if tried >= 100 && fit*10 < tried { // a short run may draw small labels by chance
		t.Error("hardly anything fits: the test says little")
	}
}
