package inspect

import (
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// The lowest letters of a block count, on the labels the law binds alone.
func TestLinesMeasureTheLowestLetters(t *testing.T) {
	c := &label.Content{Blocks: []label.Block{
		{ID: "maker", Kind: label.Maker, Runs: []label.Run{{Text: "Made by Wren, Millbrook"}}, Required: true,
			Min: label.Height{On: label.XHeight, Length: 1200 * unit.Micrometre}}, // Regulation (EU) 1169/2011 Art 13(2)
		{ID: "lot", Kind: label.Lot, Runs: []label.Run{{Text: "L1"}}, Required: true},
		{ID: "serve", Kind: label.Serve, Runs: []label.Run{{Text: "with cheese"}}},
	}}
	wrap := &page.Frame{W: 100 * mm, H: 40 * mm, Piece: "wrap", Items: []page.Item{
		line("maker", "Made by Wren,", 5*mm, 10*mm, 3*mm), line("maker", "Millbrook", 5*mm, 14*mm, 2*mm), line("serve", "with cheese", 5*mm, 20*mm, 1*mm)}}
	lid := &page.Frame{W: 40 * mm, H: 40 * mm, Piece: "lid", Items: []page.Item{line("maker", "Wren", 5*mm, 10*mm, 1*mm)}}
	lines := Lines([]*page.Frame{wrap, lid}, c, typefaces(t))
	if len(lines) != 2 || lines[1].Printed {
		t.Fatalf("%+v", lines)
	}
	maker := lines[0]
	want := measured(label.XHeight, "Millbrook", typefaces(t).Face(plain), 2*mm)
	if maker.Got != want || maker.Letter != "x" || maker.Short() != 1200*unit.Micrometre-want || maker.Short() <= 0 {
		t.Errorf("%+v, want %v", maker, want)
	}
}
