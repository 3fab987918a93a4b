package compose_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
	"jarmark/templates"
)

const mm = unit.Millimetre

func run(s string) []label.Run { return []label.Run{{Text: s}} }

// head is a block that starts with a bold word.
func head(h, s string) []label.Run { return []label.Run{{Text: h + " ", Bold: true}, {Text: s}} }

// sixteenth is 1/16 in on the lower-case o, the least height of 21 CFR
// 101.2(c) for the information panel and of 101.7(i) for small panels.
var sixteenth = label.Height{On: label.AnyCase, Length: unit.Inch / 16}

// strawberry is a US label with all it has to say.
func strawberry() *label.Content {
	return &label.Content{
		Title: "Strawberry", Subtitle: "& rhubarb jam", Lang: "en", MainFruit: "strawberry",
		JarText: "10 oz jar", QR: label.QR{Payload: "https://thornfield.example/r/L26165-SR", MinModule: 350 * unit.Micrometre},
		Blocks: []label.Block{
			{ID: "identity", Kind: label.Identity, Runs: run("Strawberry & rhubarb jam"), Zone: label.Panel, Required: true, Min: sixteenth},
			{ID: "brand", Kind: label.Brand, Runs: run("Thornfield Lane Preserves")},
			{ID: "net", Kind: label.Net, Runs: []label.Run{{Text: "NET WT 10 OZ (283 g)", Bold: true}}, Zone: label.Bottom, Clear: true, Required: true, Exact: true,
				Min: label.Height{On: label.AnyCase, Length: unit.Inch / 8}},
			{ID: "ingredients", Kind: label.Ingredients, Runs: head("Ingredients:", "strawberries, sugar, rhubarb, lemon juice, pectin."), Zone: label.Info, Required: true, Min: sixteenth},
			{ID: "allergens", Kind: label.Allergens, Runs: head("Allergens:", "none of the nine major allergens in this recipe."), Zone: label.Info, Min: sixteenth},
			{ID: "storage", Kind: label.Storage, Runs: head("Keep", "sealed jars cool and dark. Once open, refrigerate and eat within a month. Do not use if the seal is broken.")},
			{ID: "date", Kind: label.Date, Runs: head("Best before", "14 Jun 2027")},
			{ID: "lot", Kind: label.Lot, Runs: head("Lot", "L26165-SR")},
			{ID: "serial", Kind: label.Serial, Runs: head("Jar", "07 / 12")},
			{ID: "maker", Kind: label.Maker, Runs: []label.Run{{Text: "Made by Thornfield Lane Preserves", Bold: true}, {Text: ", 14 Thornfield Lane, Millbrook, OR 97000"}}, Zone: label.Info, Required: true, Min: sixteenth},
			{ID: "statement", Kind: label.Statement, Runs: run("This product is homemade and is not prepared in an inspected food establishment."), Required: true, Exact: true, Min: sixteenth},
			{ID: "caption", Kind: label.Caption, Runs: run("how it was made, allergen notes")},
			{ID: "season", Kind: label.Season, Runs: run("winter 2026")},
			{ID: "serve", Kind: label.Serve, Runs: run("lovely with cold ham or warm scones")},
			{ID: "to", Kind: label.To, Runs: []label.Run{{Text: "for"}, {Text: "Marguerite"}}},
			{ID: "from", Kind: label.From, Runs: []label.Run{{Text: "from"}, {Text: "no. 14, Millbrook"}}},
			{ID: "price", Kind: label.Price, Runs: run("$9")},
			{ID: "unit-price", Kind: label.UnitPrice, Runs: run("90¢ per oz")},
			{ID: "seal", Kind: label.Seal, Runs: run("Sealed by hand, opened with joy")},
			{ID: "count", Kind: label.Count, Runs: run("12 jars of 10 oz")},
		},
	}
}

func typefaces(t testing.TB) *face.Set {
	t.Helper()
	s, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func designs(t testing.TB) []*design.Design {
	t.Helper()
	c, l := new(design.Catalogue).With(templates.FS)
	for _, d := range l {
		t.Errorf("%s: %s: %s (%s)", d.File, d.Path, d.Message, d.Hint)
	}
	return c.List()
}

// usual are the pieces at sizes makers use.
var usual = []struct {
	piece label.Piece
	name  string
	cell  compose.Cell
	alone bool
}{
	{label.Wrap, "210x60", cell(210, 60, page.Rectangle), false},
	{label.Front, "80x60", cell(80, 60, page.Rectangle), false},
	{label.Front, "70x42", cell(70, 42, page.Rectangle), false},
	{label.Wrap, "190x48", cell(190, 48, page.Rectangle), false},
	{label.Tag, "55x95", cell(55, 95, page.TagShape), false},
	{label.Lid, "63", cell(63, 63, page.Ellipse), false},
	{label.Lid, "50", cell(50, 50, page.Ellipse), false},
	{label.Front, "100x80 alone", cell(100, 80, page.Rectangle), true},
	{label.InfoLabel, "80x60", cell(80, 60, page.Rectangle), false},
	{label.AllergCard, "a6", cell(105, 148, page.Rectangle), false},
	{label.CaseLabel, "150x100", cell(150, 100, page.Rectangle), false},
	{label.ShelfCard, "100x70", cell(100, 70, page.Rectangle), false},
	{label.SealStrip, "120x20", cell(120, 20, page.Rectangle), false},
	{label.Front, "66x50 oval", cell(90, 60, page.Ellipse), false},
}

func cell(w, h float64, s page.Shape) compose.Cell {
	c := compose.Cell{W: unit.MM(w), H: unit.MM(h), Shape: s, Safe: unit.MM(2), Bleed: unit.MM(2)}
	if s == page.Rectangle {
		c.Corner = unit.MM(2)
	}
	return c
}

// dump writes a frame as text, for comparing.
func dump(f *page.Frame) string {
	var b strings.Builder
	for _, it := range f.Items {
		fmt.Fprintf(&b, "%+v\n", it)
	}
	return regexp.MustCompile(`0x[0-9a-f]+`).ReplaceAllString(b.String(), "")
}
