package palette

import (
	"math"
	"os"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	_ "jarmark/internal/kit/steady"
)

func must(t *testing.T, s string) page.Colour {
	t.Helper()
	c, ok := hex(strings.TrimPrefix(s, "#"))
	if !ok {
		t.Fatalf("bad colour %q", s)
	}
	return c
}

// The formula and the extremes 1:1 and 21:1 are WCAG 2.2's own ("contrast
// ratio", "relative luminance"). The greys are the usual worked examples
// around its 4.5:1 limit (from memory, unverified); red follows from the
// formula alone: (1.05)/(0.2126+0.05).
func TestContrast(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want float64
	}{
		{"#000000", "#ffffff", 21}, {"#ffffff", "#000000", 21}, {"#b3202a", "#b3202a", 1},
		{"#777777", "#ffffff", 4.48}, {"#767676", "#ffffff", 4.54}, {"#ff0000", "#ffffff", 4.00},
		{"#949494", "#ffffff", 3.03}, {"#595959", "#ffffff", 7.00},
	} {
		if got := Contrast(must(t, c.a), must(t, c.b)); math.Abs(got-c.want) > 0.0051 {
			t.Errorf("Contrast(%s, %s) = %.3f, want %.2f", c.a, c.b, got, c.want)
		}
	}
}

// Luminance of the primaries: the coefficients of WCAG 2.2 themselves.
func TestLuminance(t *testing.T) {
	for s, want := range map[string]float64{
		"#ff0000": 0.2126, "#00ff00": 0.7152, "#0000ff": 0.0722, "#ffffff": 1, "#000000": 0,
	} {
		if got := Luminance(must(t, s)); math.Abs(got-want) > 1e-9 {
			t.Errorf("Luminance(%s) = %g, want %g", s, got, want)
		}
	}
}

// Oklab of white, black and red (from memory, unverified: 0.628, 0.225,
// 0.126 for red), and that the way there and back keeps every colour.
func TestOklab(t *testing.T) {
	near := func(got, want lab) bool {
		return math.Abs(got.l-want.l) < 6e-4 && math.Abs(got.a-want.a) < 6e-4 && math.Abs(got.b-want.b) < 6e-4
	}
	for s, want := range map[string]lab{
		"#ffffff": {1, 0, 0}, "#000000": {}, "#ff0000": {0.628, 0.2249, 0.1258},
	} {
		if got := toLab(must(t, s)); !near(got, want) {
			t.Errorf("toLab(%s) = %+v, want %+v", s, got, want)
		}
	}
	rapid.Check(t, func(r *rapid.T) {
		c := anyColour(r, "c")
		if got := toLab(c).colour(); got != c {
			r.Fatalf("%v came back as %v", c, got)
		}
	})
}

func anyColour(r *rapid.T, label string) page.Colour {
	return page.Colour{R: rapid.Uint8().Draw(r, label+"R"), G: rapid.Uint8().Draw(r, label+"G"), B: rapid.Uint8().Draw(r, label+"B")}
}

func TestEnsureReachesEveryReachableRatio(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		fg, bg := anyColour(r, "fg"), anyColour(r, "bg")
		ratio := rapid.Float64Range(1, 21).Draw(r, "ratio")
		got := Ensure(fg, bg, ratio)
		if Contrast(fg, bg) >= ratio && got != fg {
			r.Fatalf("changed a colour that was good enough: %v to %v", fg, got)
		}
		best := max(Contrast(page.Colour{}, bg), Contrast(page.Colour{R: 255, G: 255, B: 255}, bg))
		if best >= ratio && Contrast(got, bg) < ratio {
			r.Fatalf("%.3f on %v, want %.3f (best is %.3f)", Contrast(got, bg), bg, ratio, best)
		}
	})
}

// checkReadable holds the promise of the Palette type.
func checkReadable(t interface{ Errorf(string, ...any) }, name string, p Palette) {
	for _, c := range []struct {
		role   string
		fg, bg page.Colour
		ratio  float64
	}{
		{"ink on paper", p.Ink, p.Paper, 4.5}, {"ink on second", p.Ink, p.Second, 4.5}, {"ink on white", p.Ink, p.White, 4.5},
		{"text on paper", p.Text, p.Paper, 7}, {"text on second", p.Text, p.Second, 7}, {"text on white", p.Text, p.White, 7},
		{"soft on paper", p.Soft, p.Paper, 4.5}, {"soft on second", p.Soft, p.Second, 4.5},
		{"cream on deep", p.OnDeep, p.Deep, 7}, {"gold on deep", p.Gold, p.Deep, 4.5},
	} {
		if got := Contrast(c.fg, c.bg); got < c.ratio {
			t.Errorf("%s: %s has contrast %.2f, want %.1f", name, c.role, got, c.ratio)
		}
	}
}

func TestEveryFruitIsReadableAndComplete(t *testing.T) {
	if fruits().rows[0].key != fallback {
		t.Fatalf("first row is %q, want %q", fruits().rows[0].key, fallback)
	}
	for _, r := range fruits().rows {
		p, found := For(r.key, nil)
		if len(found) > 0 {
			t.Errorf("%s: %v", r.key, found)
		}
		checkReadable(t, r.key, p)
		if n := len(p.Leaves); n < 2 || n > 4 || len(p.DeepLeaves) != n {
			t.Errorf("%s: %d leaf tones, %d on dark", r.key, n, len(p.DeepLeaves))
		}
		if toLab(p.Paper).l < 0.93 || toLab(p.Deep).l > 0.42 {
			t.Errorf("%s: paper or deep ground is neither", r.key)
		}
	}
}

// The fruits, vegetables and dried fruits of the pantry have colours of their
// own; a new row of the pantry may go without, and is drawn in the default.
func TestPantryFruitsHaveColours(t *testing.T) {
	keys, err := os.ReadFile("../../../templates/pantry/ingredients.csv")
	if err != nil {
		t.Fatal(err)
	}
	n, bare := 0, []string{}
	for _, line := range strings.Split(string(keys), "\n") {
		cells := strings.SplitN(line, ",", 2)
		if len(cells) < 2 || !(strings.Contains(line, ",fruit,") || strings.Contains(line, ",dried fruit,") || strings.Contains(line, ",vegetable,")) {
			continue
		}
		n++
		if r, ok := fruits().find(cells[0]); !ok || r.key == fallback {
			bare = append(bare, cells[0])
		}
	}
	if n < 40 || len(bare)*20 > n {
		t.Errorf("%d fruits in the pantry, no colours for %v", n, bare)
	}
}

func TestOwnColours(t *testing.T) {
	plain, _ := For("strawberry", nil)
	p, found := For("strawberry", []string{"#4b2450", "sagish", "  "})
	if len(found) != 1 || found[0].Path != "label.colours[1]" || found[0].Code != "unknown-colour" {
		t.Errorf("findings: %+v", found)
	}
	if p.Ink != (page.Colour{R: 0x4b, G: 0x24, B: 0x50}) || p.Paper != plain.Paper || p.Motif != "strawberry" {
		t.Errorf("own first colour gave %+v", p)
	}
	plum, _ := For("plum", nil)
	if p, found = For("strawberry", []string{"Plums"}); len(found) > 0 || p.Berry != plum.Berry || p.Motif != "strawberry" {
		t.Errorf("a fruit's word gave %+v, %v", p.Berry, found)
	}
	if p, found = For("", []string{"teal"}); len(found) > 0 || p.Berry != (page.Colour{G: 128, B: 128}) {
		t.Errorf("a CSS name gave %+v, %v", p.Berry, found)
	}
	if _, found = For("plum", []string{"", "", "", "red", "blue"}); len(found) != 1 || found[0].Code != "too-many-colours" {
		t.Errorf("five colours gave %v", found)
	}
	for _, bad := range []string{"#12", "#12345g", "#", "b3202a", "##fff", "#ffff", strings.Repeat("x", 9000), "default", "#+12345"} {
		if _, found = For("", []string{bad}); len(found) != 1 || len(found[0].Message) > 200 {
			t.Errorf("%.20q gave %v", bad, found)
		}
	}
}

func TestOwnColoursStayReadable(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		own := make([]string, 3)
		for i := range own {
			c := anyColour(r, string(rune('a'+i)))
			own[i] = "#" + hexOf(c)
		}
		p, found := For(rapid.SampledFrom([]string{"", "lemon", "plum"}).Draw(r, "fruit"), own)
		if len(found) > 0 {
			r.Fatalf("findings: %v", found)
		}
		checkReadable(r, strings.Join(own, " "), p)
	})
}

func hexOf(c page.Colour) string {
	const digits = "0123456789abcdef"
	return string([]byte{digits[c.R>>4], digits[c.R&15], digits[c.G>>4], digits[c.G&15], digits[c.B>>4], digits[c.B&15]})
}

func TestInkSaverIsBlackOnWhite(t *testing.T) {
	p, _ := For("plum", nil)
	s := p.InkSaver()
	black, white := page.Colour{}, page.Colour{R: 255, G: 255, B: 255}
	for _, c := range append([]page.Colour{s.Ink, s.Text, s.Soft, s.Berry, s.Shade, s.OnDeep, s.Gold, s.Stem}, s.Leaves...) {
		if c != black {
			t.Errorf("an ink is %v", c)
		}
	}
	for _, c := range []page.Colour{s.Paper, s.Second, s.White, s.Deep} {
		if c != white {
			t.Errorf("a ground is %v", c)
		}
	}
	if !s.Mono || s.Motif != "plum" {
		t.Errorf("mono %v, motif %q", s.Mono, s.Motif)
	}
}

func TestNamesOfFruits(t *testing.T) {
	for words, key := range map[string]string{
		"Strawberries": "strawberry", "black currants": "blackcurrant", "raspberry": "raspberry_red", "cherries": "cherry_sour",
		"lemon_juice": "lemon", "Seville orange": "orange", "damsons": "plum", "tomatoes": "tomato", "mango": "mango",
	} {
		if r, ok := fruits().find(words); !ok || r.key != key {
			t.Errorf("%q: %v, want %s", words, r, key)
		}
	}
	if _, ok := fruits().find(""); ok {
		t.Error("an empty word found a fruit")
	}
}

// Greengages are green and mirabelles yellow (common practice, no source): a label
// in the purple of plums shows another fruit.
func TestPlumsOfOtherColours(t *testing.T) {
	hue := func(name string) (out [3]int) {
		r, ok := fruits().find(name)
		if !ok {
			t.Fatalf("%s is unknown", name)
		}
		return [3]int{int(r.berry.R), int(r.berry.G), int(r.berry.B)}
	}
	for _, name := range []string{"greengage", "greengages", "reine_claude", "green plums"} {
		if c := hue(name); c[1] <= c[0] || c[1] <= c[2] {
			t.Errorf("%s: %v is not green", name, c)
		}
	}
	for _, name := range []string{"mirabelle", "mirabelles", "yellow plums"} {
		if c := hue(name); c[0] < c[1] || c[1] <= 2*c[2] {
			t.Errorf("%s: %v is not yellow", name, c)
		}
	}
	if c := hue("damson"); c[1] >= c[0] {
		t.Errorf("damson: %v", c)
	}
}
