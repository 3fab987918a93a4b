package compose_test

import (
	"strings"
	"testing"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/law/label"
)

// TestNamesNeedNoBoldTypeface: with a typeface of the maker's that comes in one weight, a
// name in its letters is set in every design; an allergen in them is not, since it must
// stand out (Regulation (EU) 1169/2011, Article 21(1)(b)), until there is a bold one.
func TestNamesNeedNoBoldTypeface(t *testing.T) {
	own := func(files ...[]byte) *face.Set {
		var faces []*face.Face
		for _, data := range files {
			f, err := face.Own("Alder.ttf", data)
			if err != nil {
				t.Fatal(err)
			}
			faces = append(faces, f)
		}
		return typefaces(t).With(faces)
	}
	regular, both := own(goregular.TTF), own(goregular.TTF, gobold.TTF)
	for _, d := range designs(t) {
		for _, u := range []struct {
			fs     *face.Set
			bold   bool
			refuse bool
		}{{regular, false, false}, {regular, true, true}, {both, true, false}} {
			c := named("Сливовый джем", "ru")
			c.Blocks[3].Runs = []label.Run{{Text: "sugar, "}, {Text: "молоко", Bold: u.bold}}
			fr, l := compose.Label(c, d, label.Wrap, cell(214, 60, page.Rectangle), u.fs, compose.Options{})
			f, told := find(l, "missing-glyph")
			if told != u.refuse || told && !strings.Contains(f.Hint, "bold one") {
				t.Errorf("%s, bold %v: %v", d.ID, u.bold, l)
			}
			if said := strings.ToLower(strings.Join(titleLines(fr), " ")); !strings.Contains(said, "джем") {
				t.Errorf("%s: the name is %q", d.ID, said)
			}
		}
	}
}
