package compose_test

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// named is the sample with another name, in a language.
func named(title, lang string) *label.Content {
	c := strawberry()
	c.Title, c.Subtitle, c.Lang = title, "", lang
	c.Blocks[0].Runs = run(title)
	return c
}

// titleLines are the lines of the name, as printed.
func titleLines(fr *page.Frame) (out []string) {
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok && (x.Block == "identity" || x.Block == "") {
			out = append(out, x.String())
		}
	}
	return out
}

// A long word on a narrow piece is parted rather than set small: where its
// maker marked it, else where its language parts it; the parts say the name, and
// with the hyphen left out it passes the second look. 9 pt is the least size of
// display type on a label of 40 mm (common practice, no source).
func TestLongNamesArePartedOnNarrowPieces(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range []struct{ name, lang, line string }{
			{"Stachelbeerkonfitüre", "de", ""}, {"Stachelbeer\u00adkonfitüre", "de", "stachelbeer-"},
			{"Stachelbeer\u00adkonfitüre", "xx", "stachelbeer-"}, {"Boysenberrymarmalade", "en", ""},
		} {
			for _, cell := range []compose.Cell{cell(40, 40, page.Ellipse), cell(40, 60, page.Rectangle)} {
				piece := label.Lid
				if cell.Shape == page.Rectangle {
					piece = label.Front
				}
				checkParted(t, fs, d, piece, cell, named(u.name, u.lang), u.line)
			}
		}
	}
}

func checkParted(t *testing.T, fs *face.Set, d *design.Design, p label.Piece, cell compose.Cell, c *label.Content, line string) {
	t.Helper()
	if p == label.Front { // the name alone is tested
		c.Blocks = c.Blocks[:2]
	}
	fr, l := compose.Label(c, d, p, cell, fs, compose.Options{})
	if l.HasErrors() {
		t.Errorf("%s %s: %v", d.ID, p, l)
		return
	}
	lines := titleLines(fr)
	said := strings.ToLower(strings.Join(lines, " "))
	size := unit.Length(0)
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok && x.Hyphen {
			size = x.Size
		}
	}
	if size < unit.Points(9) || !strings.Contains(said, "-") || strings.ContainsRune(said, '\u00ad') || !strings.Contains(said, line) {
		t.Errorf("%s %s %q: %q in %.1f pt", d.ID, p, c.Title, lines, size.Points())
	}
	if p == label.Front {
		for _, f := range inspect.Frame(fr, c, fs, inspect.Default()) {
			t.Errorf("%s %q: %s", d.ID, c.Title, f.Message)
		}
	}
}

// The maker's marks come beside the name, which stays free of them.
func TestMarksBesideTheName(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		c := named("Stachelbeerkonfitüre", "de")
		c.Parts = map[string]string{"Stachelbeerkonfitüre": "Stachelbeer\u00adkonfitüre"}
		checkParted(t, fs, d, label.Lid, cell(40, 40, page.Ellipse), c, "stachelbeer-")
	}
}

// A word that has room is never parted, marked or not.
func TestNamesWithRoomStayWhole(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, name := range []string{"Stachelbeerkonfitüre", "Stachel\u00adbeer\u00adkonfitüre", "Straw\u00adberry"} {
			fr, _ := compose.Label(named(name, "de"), d, label.Front, cell(101.6, 76.2, page.Rectangle), fs, compose.Options{})
			if said := strings.Join(titleLines(fr), "|"); strings.ContainsAny(said, "-\u00ad") {
				t.Errorf("%s parts %q", d.ID, said)
			}
		}
	}
}

// Quotation marks are the language's, except in prescribed words.
func TestQuotationMarks(t *testing.T) {
	fs := typefaces(t)
	c := named(`"Old Tom" plum`, "en")
	c.Blocks[10].Runs = run(`This "product" is exact.`)
	fr, l := compose.Label(c, designs(t)[0], label.Wrap, cell(210, 60, page.Rectangle), fs, compose.Options{})
	said := ""
	for _, it := range fr.Items {
		if x, ok := it.(*page.Text); ok {
			said += x.String() + " "
		}
	}
	if !strings.Contains(strings.ToLower(said), "“old tom”") || !strings.Contains(said, `This "product" is exact.`) {
		t.Errorf("%s %v", said, l)
	}
	for _, f := range inspect.Frame(fr, c, fs, inspect.Default()) {
		t.Error(f.Message)
	}
}

// A letter and its mark are set as one letter where Unicode has it ready-made
// (normal form C), written together or apart; a mark that belongs to no such
// letter is not drawn somewhere over it, but told.
func TestMarksStandOnTheirLetters(t *testing.T) {
	fs, d := typefaces(t), designs(t)[0]
	for name, told := range map[string]bool{"Mứt dâu": false, "Mu\u031b\u0301t da\u0302u": false, "x\u0302 jam": true} {
		c := strawberry()
		c.Title, c.Subtitle, c.Blocks[0].Runs = name, "", run(name)
		fr, l := compose.Label(c, d, label.Front, cell(80, 60, page.Rectangle), fs, compose.Options{})
		got := false
		for _, f := range l {
			got = got || f.Code == "missing-glyph" && strings.Contains(f.Hint, "without the mark")
		}
		if got != told {
			t.Errorf("%q: told %v", name, got)
		}
		for _, it := range fr.Items {
			if x, ok := it.(*page.Text); ok && strings.ContainsAny(x.String(), "\u031b\u0301\u0302") {
				t.Errorf("%q is set as %q", name, x.String())
			}
		}
	}
}

// Where its maker ends a line of the name, it ends: on every piece that has room for
// so many lines, in every design, and nowhere else but at need. On one line alone,
// over the facts and along a strip, the name runs on.
func TestLinesEndWhereTheMakerSays(t *testing.T) {
	fs := typefaces(t)
	for _, d := range designs(t) {
		for _, u := range []struct {
			piece label.Piece
			cell  compose.Cell
			lines []string // of the name
		}{
			{label.Front, cell(80, 60, page.Rectangle), []string{"plum with", "star anise"}},
			{label.Lid, cell(63, 63, page.Ellipse), []string{"plum with", "star anise"}},
			{label.Tag, cell(52, 90, page.TagShape), []string{"plum with", "star anise"}},
			{label.Wrap, cell(214, 60, page.Rectangle), []string{"plum with", "star anise"}},
			{label.ShelfCard, cell(90, 55, page.Rectangle), []string{"plum with", "star anise"}},
			{label.SealStrip, cell(130, 15, page.Rectangle), []string{"plum with star anise"}},
			{label.Front, cell(101.6, 50.8, page.Rectangle), []string{"damson", "jelly"}},
			{label.Front, cell(101.6, 33.9, page.Rectangle), []string{"damson", "jelly"}},
			{label.Wrap, cell(220, 46, page.Rectangle), []string{"damson", "jelly"}},
		} {
			c := named("Plum with star anise", "en")
			c.Parts = map[string]string{"with star": "with\nstar"}
			if u.lines[0] == "damson" { // the name and the kind of food
				c = named("Damson jelly", "en")
				c.Title, c.Subtitle = "Damson", "jelly"
				c.Parts = map[string]string{"Damson jelly": "Damson\njelly"}
			}
			c.JarText = ""
			c.Blocks = slices.DeleteFunc(c.Blocks, func(b label.Block) bool { return b.Kind == label.Seal })
			fr, l := compose.Label(c, d, u.piece, u.cell, fs, compose.Options{})
			if got := titleLines(fr); l.HasErrors() || strings.ToLower(strings.Join(got, "|")) != strings.Join(u.lines, "|") {
				t.Errorf("%s %s: %q %v", d.ID, u.piece, got, l)
			}
			for _, f := range inspect.Frame(fr, c, fs, inspect.Default()) {
				t.Errorf("%s %s: %s", d.ID, u.piece, f.Message)
			}
		}
	}
}
