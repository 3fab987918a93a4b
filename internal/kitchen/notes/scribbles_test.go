package notes

import (
	"path/filepath"
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// Sets of a maker's own scribbles, invented and written with their readings before
// the first run on each, the grammar mended after each. At first sight: set 1 (76 lines)
// 57 right (75.0 %), 60 (78.9 %) once three readings written wrongly were put right; 3
// wrong without a word (Bramley in a bracket, a part jar, a bath of 85 °C).
// Set 2 (81 lines) 62 right (76.5 %), 64 (79.0 %) once two readings written wrongly were
// put right; none wrong without a word. Set 3 (78 lines) 67 right (85.9 %), 70 (89.7 %)
// once three were put right; 1 wrong without a word ("12 large (3 lb 4 oz)": the weight).
// Set 4 (159 lines, gone through by kinds of line) 130 right (81.8 %), 136 (85.5 %) once
// six readings were put right; 2 wrong without a word (an amount over the jars; a scant
// pound, whose amount took the words in). Set 5 (73 lines) 54 right (74.0 %), 55 (75.3 %)
// once a reading was put right; 1 wrong without a question (the kinds of a vinegar in a
// bracket). Set 6 (89 lines, German and French) 71 right (79.8 %), 73 (82.0 %) once two
// readings were put right; 3 wrong without a word (five minutes more of a jam too thin; less
// sugar "than usual" in a bracket; a spoon of ginger, ground or fresh). Set 7 (104 lines,
// hurried: letters for figures, tallies, prices, neighbours, times without a word) 78 right
// (75.0 %), 81 (77.9 %) once three readings were put right; none wrong without a word.
// Set 8 (133 lines in ten hands: gills, tables, paragraphs, what is taken back, planned,
// left out or did not seal) 96 right (72.2 %), 99 (74.4 %) once eight readings were put
// right; 3 wrong without a word (a figure taken back in a bracket, the minutes of each half,
// a box taken for a °Brix).
// Set 9 (130 lines in ten hands again, on the grammar mended after set 8) 86 right (66.2 %),
// 92 (70.8 %) once nine readings were put right; 3 wrong without a word (salt "for the
// chutney not this", gin short for ginger, the heat of jars taken for the set).
// Set 10 (116 lines in ten hands, on the grammar mended after set 9) 82 right (70.7 %), 84
// (72.4 %) once three readings were put right; 3 wrong without a word ("I mean limes", "that
// was 5 after all", stoned fruit in a bracket without its measure).
// Set 11 (96 lines in ten hands, plain lines of a notebook among the odd ones, on the grammar
// mended after set 10) 84 right (87.5 %), 86 (89.6 %) once two readings were put right; 2
// wrong without a word (one of eight "nicht dicht", brandy "not in Ida's jar").
// Set 12 (60 lines in several hands, on the grammar mended after set 11) 51 right (85.0 %), 52
// (86.7 %) once two readings were put right; 1 wrong without a word (sugar "un peu moins en fait").
// What is not read has been asked about since where it names a food, a set or
// jars beside a figure.
func TestScribbles(t *testing.T) {
	files, _ := filepath.Glob("testdata/scribbles*.txt")
	for _, file := range files {
		readStrictly(t, file)
	}
}

// readStrictly reads the lines of a set by itself: at least 95 of 100 are right, and
// none is wrong without a word.
func readStrictly(t *testing.T, file string) {
	t.Helper()
	p := pantry.Default()
	total, right := 0, 0
	for _, s := range linesOf(t, file) {
		line, want, ok := strings.Cut(s, " => ")
		if !ok || strings.HasPrefix(s, "# ") {
			continue
		}
		l := Read(line, p).Lines[0]
		total++
		switch verdict := strict(l, want); verdict {
		case "":
			right++
		case "unread":
			t.Logf("unread: %q => %s\n%s", line, want, summary(l))
		default:
			t.Errorf("%q => %s: %s\n%s", line, want, verdict, summary(l))
		}
	}
	t.Logf("%s: %d of %d lines right (%.1f %%)", filepath.Base(file), right, total, 100*float64(right)/float64(total))
	if float64(right) < 0.95*float64(total) {
		t.Errorf("%s: %d of %d lines right, less than 95 %%", file, right, total)
	}
}
