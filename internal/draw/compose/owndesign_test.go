package compose_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/ornament"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// randomDesign writes a design file a maker might, wild but within range.
func randomDesign(t *rapid.T) string {
	var b strings.Builder
	pick := func(name string, words []string) string { return rapid.SampledFrom(words).Draw(t, name) }
	num := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
	fmt.Fprintf(&b, "name = \"Own\"\n[look]\nalign = %q\nmargin = %.3f\npaper = %q\ninfo = %q\nframe = %q\nframe_colour = %q\nrule = %q\ndivider = %q\nbrand = %q\n",
		pick("align", design.Aligns), num("margin", 0, 0.25), pick("paper", design.Colours), pick("info", design.Colours),
		pick("frame", design.Frames), pick("frame colour", design.Colours), pick("rule", design.Rules), pick("divider", design.Dividers), pick("brand", design.Brands))
	fmt.Fprintf(&b, "[look.band]\nedge = %q\nsize = %.3f\nfill = %q\npattern = %q\n",
		pick("edge", design.Edges), num("band", 0, 0.4), pick("fill", design.Colours), pick("pattern", design.Patterns))
	for range rapid.IntRange(0, 3).Draw(t, "ornaments") {
		fmt.Fprintf(&b, "[[look.ornament]]\nname = %q\nspot = %q\nsize = %.3f\nreach = %.3f\ndensity = %.2f\nseed = %d\n",
			pick("drawing", ornament.Names()), pick("place", design.Spots), num("size", 0, 1), num("reach", 0, 1), num("density", 0, 2), rapid.IntRange(0, 9).Draw(t, "seed"))
	}
	fmt.Fprintf(&b, "[voice.title]\nface = %q\ncase = %q\ntracking = %.3f\nleading = %.2f\ncolour = %q\nsize = [%.3f, 0.5]\n",
		pick("face", []string{"Fraunces_600SemiBold", "Fraunces_500Medium_Italic", "Caveat_600SemiBold", "Figtree_700Bold"}),
		pick("case", design.Cases), num("tracking", -0.05, 0.5), num("leading", 0.9, 2), pick("colour", design.Colours), num("least", 0.01, 0.4))
	return b.String()
}

// TestAnyOwnDesign: whatever a maker's own design asks for, the words stand
// whole, legal and clear of everything, or a finding says what does not fit.
func TestAnyOwnDesign(t *testing.T) {
	fs, codes := typefaces(t), &compose.Codes{}
	rapid.Check(t, func(rt *rapid.T) {
		text := randomDesign(rt)
		d, l := design.Parse("own.toml", []byte(text))
		if d == nil {
			rt.Fatalf("refused: %v\n%s", l, text)
		}
		p := rapid.SampledFrom(label.Pieces).Draw(rt, "piece")
		cl := compose.Cell{
			W: unit.MM(rapid.Float64Range(30, 260).Draw(rt, "w")), H: unit.MM(rapid.Float64Range(20, 200).Draw(rt, "h")), Safe: unit.MM(2), Bleed: unit.MM(2),
			Corner: unit.MM(rapid.Float64Range(0, 5).Draw(rt, "corner")), Shape: rapid.SampledFrom([]page.Shape{page.Rectangle, page.Ellipse, page.TagShape}).Draw(rt, "shape"),
		}
		o := compose.Options{InkSaver: rapid.Bool().Draw(rt, "saver"), Alone: rapid.Bool().Draw(rt, "alone"), Codes: codes}
		c := strawberry()
		r, found := compose.Compose(c, d, p, cl, fs, o)
		if len(r.Overflow) > 0 {
			return
		}
		for _, f := range append(found, inspect.Frame(r.Frame, c, fs, inspect.Default())...) {
			if f.Severity == diag.Error {
				rt.Fatalf("%s %.1fx%.1f %s corner %.1f %+v: %s: %s\n%s", p, cl.W.MM(), cl.H.MM(), cl.Shape, cl.Corner.MM(), o, f.Code, f.Message, text)
			}
		}
	})
}

// TestCodeKeepsItsBlank: the sizes of the facts are tried in turn, and what an
// earlier one kept free for its code is not moved by a later one (ISO/IEC 18004,
// quiet zone). The widest letter-spacing leaves the name little room, so that
// many sizes are tried.
func TestCodeKeepsItsBlank(t *testing.T) {
	fs, c := typefaces(t), strawberry()
	d, l := design.Parse("own.toml", []byte(`name = "Own"
[look]
align = "centre"
margin = 0.25
frame = "none"
rule = "none"
divider = "none"
brand = "below"
[look.band]
edge = "none"
[voice.title]
face = "Fraunces_600SemiBold"
tracking = 0.5
leading = 1.0
size = [0.4, 0.5]
`))
	if d == nil {
		t.Fatal(l)
	}
	for w := unit.MM(70); w <= unit.MM(100); w += unit.MM(1.5) {
		cl := compose.Cell{W: w, H: unit.MM(53.5), Safe: unit.MM(2), Bleed: unit.MM(2), Corner: unit.MM(1), Shape: page.TagShape}
		r, found := compose.Compose(c, d, label.Front, cl, fs, compose.Options{Alone: true, Codes: &compose.Codes{}})
		if len(r.Overflow) > 0 {
			continue
		}
		for _, f := range append(found, inspect.Frame(r.Frame, c, fs, inspect.Default())...) {
			if f.Severity == diag.Error {
				t.Errorf("%.1f mm: %s: %s", w.MM(), f.Code, f.Message)
			}
		}
	}
}
