package typeset

import (
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

// bruteBreak tries every way to break boxes and keeps the fewest lines, then
// the least cost: the definition of total fit (Knuth and Plass 1981) without
// its dynamic programming.
func bruteBreak(boxes []Box, m []int, style Ragged, exactly int) (lines int, cost int64, ok bool) {
	n := len(boxes)
	for mask := range 1 << (n - 1) {
		var ends []int
		for i := 1; i < n; i++ {
			if mask>>(i-1)&1 == 1 {
				ends = append(ends, i)
			}
		}
		ends = append(ends, n)
		if len(ends) > len(m) || exactly > 0 && len(ends) != min(exactly, n) {
			continue
		}
		c, fits := costOf(boxes, ends, m, style)
		if fits && (!ok || len(ends) < lines || len(ends) == lines && c < cost) {
			lines, cost, ok = len(ends), c, true
		}
	}
	return lines, cost, ok
}

// drawBox is a word, one that ends its line, or a syllable that a line ends with a
// hyphen after.
func drawBox(t *rapid.T, most int) Box {
	b := Box{W: rapid.IntRange(1, most).Draw(t, "w"), Space: rapid.IntRange(0, most/8).Draw(t, "space"), Ends: rapid.IntRange(0, 5).Draw(t, "ends") == 0}
	if rapid.IntRange(0, 3).Draw(t, "soft") == 0 {
		b.Space, b.Hyphen = 0, rapid.IntRange(1, 30).Draw(t, "hyphen")
	}
	return b
}

func costOf(boxes []Box, ends, m []int, style Ragged) (int64, bool) {
	var total int64
	from := 0
	for line, to := range ends {
		w := 0
		for i := from; i < to; i++ {
			w += boxes[i].W
			if i+1 < to {
				w += boxes[i].Space
			}
			if boxes[i].Ends && i+1 < to {
				return 0, false
			}
		}
		if boxes[to-1].Hyphen > 0 {
			w += boxes[to-1].Hyphen
			total += parted
		}
		if w > m[line] {
			return 0, false
		}
		total += lineCost(w, m[line], to == len(boxes), style)
		from = to
	}
	return total, true
}

func TestBreakLinesIsTheBestOfAllWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 10).Draw(t, "words")
		boxes := make([]Box, n)
		for i := range boxes {
			boxes[i] = drawBox(t, 500)
		}
		m := make([]int, rapid.IntRange(1, 10).Draw(t, "lines"))
		for i := range m {
			m[i] = rapid.IntRange(100, 1500).Draw(t, "measure")
		}
		style := rapid.SampledFrom([]Ragged{Running, Balanced}).Draw(t, "style")
		exactly := rapid.IntRange(0, 4).Draw(t, "exactly")
		measure := func(line int) int {
			if line >= len(m) {
				return -1
			}
			return m[line]
		}
		lines, cost, want := bruteBreak(boxes, m, style, exactly)
		ends, got := Break(boxes, measure, style, exactly)
		if got != want {
			t.Fatalf("breaks: %v, want %v", got, want)
		}
		if !got {
			return
		}
		c, fits := costOf(boxes, ends, m, style)
		if !fits || len(ends) != lines || c != cost {
			t.Fatalf("%v: %d lines, cost %d; best is %d lines, cost %d", ends, len(ends), c, lines, cost)
		}
	})
}

func TestNarrowestIsTheLeastWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boxes := make([]Box, rapid.IntRange(1, 9).Draw(t, "words"))
		for i := range boxes {
			boxes[i] = drawBox(t, 400)
		}
		least := 1
		for _, b := range boxes[:len(boxes)-1] {
			if b.Ends {
				least++
			}
		}
		n := rapid.IntRange(least, len(boxes)).Draw(t, "lines")
		w := Narrowest(boxes, n)
		wide := func(m int) []int {
			out := make([]int, n)
			for i := range out {
				out[i] = m
			}
			return out
		}
		if _, _, ok := bruteBreak(boxes, wide(w), Balanced, 0); !ok {
			t.Fatalf("%d does not hold them in %d lines", w, n)
		}
		if _, _, ok := bruteBreak(boxes, wide(w-1), Balanced, 0); ok && w > 0 {
			t.Fatalf("%d also holds them in %d lines", w-1, n)
		}
	})
}

// FuzzBreakLines: any boxes and measures, no panic, and what is set is set
// whole and fits.
func FuzzBreakLines(f *testing.F) {
	f.Add([]byte{10, 3, 20, 3, 30, 3}, 40, 0)
	f.Add([]byte{255, 0, 1, 9}, 12, 2)
	f.Add([]byte{}, -1, -3)
	f.Fuzz(func(t *testing.T, data []byte, m, exactly int) {
		if len(data) > 400 {
			return
		}
		var boxes []Box
		for i := 0; i+1 < len(data); i += 2 {
			boxes = append(boxes, Box{W: int(data[i]), Space: int(data[i+1]), Ends: data[i] == 77})
		}
		ends, ok := Break(boxes, func(line int) int { return m - line }, Running, exactly)
		if !ok || len(boxes) == 0 {
			return
		}
		from := 0
		for line, to := range ends {
			w := 0
			for i := from; i < to; i++ {
				w += boxes[i].W
				if i+1 < to {
					w += boxes[i].Space
				}
			}
			if to <= from || w > m-line {
				t.Fatalf("line %d of %v: %d in %d", line, ends, w, m-line)
			}
			from = to
		}
		if from != len(boxes) {
			t.Fatalf("%v sets %d of %d", ends, from, len(boxes))
		}
	})
}

// Counting lines by filling them must agree with the breaker that looks at the
// paragraph as a whole, where filling succeeds at all.
func TestFewestAgreesWithBreaking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		boxes := make([]Box, rapid.IntRange(1, 12).Draw(t, "n"))
		for i := range boxes {
			boxes[i] = drawBox(t, 60)
		}
		widths := rapid.SliceOfN(rapid.IntRange(30, 150), 12, 12).Draw(t, "widths")
		measure := func(line int) int { return widths[min(line, 11)] }
		ends, ok := Break(boxes, measure, Running, 0)
		lines, ok2 := Fewest(boxes, measure)
		if ok2 && (!ok || lines != len(ends)) {
			t.Fatalf("%d lines counted (%v), %d set", lines, ok2, len(ends))
		}
	})
}
