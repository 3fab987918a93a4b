package palette

import (
	"encoding/csv"
	"strings"
	"sync"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/words"
	"jarmark/templates"
)

// fallback is the key of the row for foods without a row of their own.
const fallback = "default"

// row is one line of fruit-colours.csv. A new fruit is a new line there: key (the
// pantry's), words (other pantry keys and common words, | between), motif
// (an ornament of the ornament package), ink, berry, highlight, shade, leaf1
// to leaf4 (dark to light; leaf3 and leaf4 may be empty), paper, second,
// deep, gold.
type row struct {
	key, motif                    string
	words                         []string
	ink, berry, highlight, shade  page.Colour
	leaves                        []page.Colour
	paper, second, deep, goldTone page.Colour
}

type table struct {
	rows   []*row
	byWord map[string]*row
}

var fruits = sync.OnceValue(func() *table {
	text, err := templates.FS.ReadFile("pantry/fruit-colours.csv")
	if err != nil {
		panic(err)
	}
	return readTable(string(text))
})

// readTable reads the embedded file. It is part of the program and a test
// reads every line of it, so a fault is a bug and stops at once.
func readTable(text string) *table {
	r := csv.NewReader(strings.NewReader(text))
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		panic("fruit-colours.csv: " + err.Error())
	}
	t := &table{byWord: map[string]*row{}}
	for _, cells := range lines[1:] {
		one := readRow(cells)
		t.rows = append(t.rows, one)
		for _, w := range append([]string{one.key}, one.words...) {
			if _, taken := t.byWord[fold(w)]; !taken {
				t.byWord[fold(w)] = one
			}
		}
	}
	return t
}

func readRow(cells []string) *row {
	one := &row{key: cells[0], motif: cells[2]}
	if cells[1] != "" {
		one.words = strings.Split(cells[1], "|")
	}
	colour := func(i int) page.Colour {
		c, ok := hex(strings.TrimPrefix(cells[i], "#"))
		if !ok {
			panic("fruit-colours.csv: " + cells[0] + ": bad colour " + cells[i])
		}
		return c
	}
	one.ink, one.berry, one.highlight, one.shade = colour(3), colour(4), colour(5), colour(6)
	for i := 7; i <= 10; i++ {
		if cells[i] != "" {
			one.leaves = append(one.leaves, colour(i))
		}
	}
	one.paper, one.second, one.deep, one.goldTone = colour(11), colour(12), colour(13), colour(14)
	return one
}

// find looks a fruit up by pantry key or common word, singular or plural.
func (t *table) find(name string) (*row, bool) {
	k := fold(name)
	for _, try := range []string{k, words.Singular(k)} {
		if r, ok := t.byWord[try]; ok && try != "" {
			return r, true
		}
	}
	return nil, false
}

var joined = strings.NewReplacer("_", "", "-", "", " ", "")

// fold makes "Black currant", "black_currant" and "blackcurrant" one word.
func fold(s string) string {
	return joined.Replace(strings.ToLower(strings.TrimSpace(s)))
}

// ByMotif gives the colours of the first fruit drawn by a motif: what a
// strawberry looks like on the label of another fruit.
func ByMotif(motif string) (Palette, bool) {
	for _, r := range fruits().rows {
		if r.motif == motif {
			return r.palette(), true
		}
	}
	return Palette{}, false
}

// palette spreads a row over the roles.
func (r *row) palette() Palette {
	p := Palette{
		Fruit: r.key, Motif: r.motif,
		Ink: r.ink, Text: page.Colour{}, Soft: page.Colour{R: 0x5a, G: 0x54, B: 0x4e},
		Berry: r.berry, Highlight: r.highlight, Shade: r.shade,
		Leaves: append([]page.Colour(nil), r.leaves...),
		Paper:  r.paper, Second: r.second, White: page.Colour{R: 255, G: 255, B: 255},
		Deep: r.deep, OnDeep: page.Colour{R: 0xf7, G: 0xea, B: 0xd3}, Gold: r.goldTone,
	}
	p.DeepLeaves = deepLeaves(p.Leaves)
	p.Stem, p.DeepStem = stems(p.Leaves)
	return p.settle()
}

// deepLeaves lifts leaf tones so that they glow softly on a dark ground.
func deepLeaves(leaves []page.Colour) []page.Colour {
	out := make([]page.Colour, len(leaves))
	for i, c := range leaves {
		step := 0.0
		if len(leaves) > 1 {
			step = float64(i) / float64(len(leaves)-1)
		}
		out[i] = atLightness(c, 0.55+0.16*step, 0.8)
	}
	return out
}

func stems(leaves []page.Colour) (onPaper, onDeep page.Colour) {
	wood := page.Colour{R: 0x6b, G: 0x4f, B: 0x36}
	return Mix(leaves[0], wood, 0.45), Mix(deepLeaves(leaves)[0], page.Colour{R: 0xb9, G: 0x9a, B: 0x6c}, 0.45)
}
