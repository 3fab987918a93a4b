package typeset

import "math"

// Box is what the line breaker sees of a word: its width, that of the blank
// after it, which vanishes at the end of a line, and that of the hyphen that
// appears there, 0 for a whole word. A line goes no further than a box that Ends it.
type Box struct {
	W, Space, Hyphen int
	Ends             bool
}

// Ragged is the style of a paragraph's raggedness.
type Ragged int

// The styles.
const (
	Running  Ragged = iota // text: a short last line costs nothing, a lone word does
	Balanced               // titles: all lines count alike
)

// Break sets boxes into the fewest lines that hold them, and among those
// ways picks the least ragged as a whole: the total-fit idea of Knuth and
// Plass, "Breaking Paragraphs into Lines" (Software: Practice and Experience
// 11, 1981), without stretch. measure gives the width of line n (from 0);
// a negative width says there is no room for another line. exactly > 0 asks
// for that many lines. It returns the end of each line, or false when no
// breaking fits.
func Break(boxes []Box, measure func(line int) int, style Ragged, exactly int) ([]int, bool) {
	n := len(boxes)
	if n == 0 {
		return nil, true
	}
	limit := n
	if exactly > 0 {
		limit = min(exactly, n)
	}
	from := make([]int64, n+1) // least cost of setting the first i boxes so far
	for i := range from {
		from[i] = unset
	}
	from[0] = 0
	var prev [][]int // prev[line][i]: where that line starts when it ends at i
	for line := range limit {
		m := measure(line)
		if m < 0 {
			return nil, false
		}
		to, start := nextLine(boxes, from, m, style)
		prev = append(prev, start)
		if to[n] != unset && (exactly <= 0 || line+1 == limit) {
			return unwind(prev, n), true
		}
		from = to
		from[n] = unset
	}
	return nil, false
}

// Fewest counts the lines Break would set: filling each line as far as it
// goes leaves the least for the next. ok is false when a line so filled leaves
// a word the next is too narrow for; another breaking may fit.
func Fewest(boxes []Box, measure func(line int) int) (lines int, ok bool) {
	for i := 0; i < len(boxes); lines++ {
		end := filled(boxes, i, measure(lines))
		if end == i {
			return lines, false
		}
		i = end
	}
	return lines, true
}

// filled is where a line of at most m that starts at box i ends at the latest;
// i when not even one box fits.
func filled(boxes []Box, i, m int) int {
	end := i
	for w := 0; i < len(boxes); i++ {
		if w += boxes[i].W; w > m {
			break
		}
		if w+boxes[i].Hyphen <= m {
			end = i + 1
		}
		if boxes[i].Ends {
			break
		}
		w += boxes[i].Space
	}
	return end
}

const unset = int64(math.MaxInt64)

// parted is the cost of a word parted at the end of a line: as much as half a
// line left blank.
const parted = 500 * 500

// nextLine extends every set prefix by one line of at most m.
func nextLine(boxes []Box, from []int64, m int, style Ragged) (to []int64, start []int) {
	n := len(boxes)
	to, start = make([]int64, n+1), make([]int, n+1)
	for i := range to {
		to[i] = unset
	}
	for i := range n {
		if from[i] == unset {
			continue
		}
		w := 0
		for j := i; j < n; j++ {
			w += boxes[j].W
			if w > m {
				break
			}
			if end := w + boxes[j].Hyphen; end <= m {
				c := from[i] + lineCost(end, m, j+1 == n, style)
				if boxes[j].Hyphen > 0 {
					c += parted
				}
				if c < to[j+1] {
					to[j+1], start[j+1] = c, i
				}
			}
			if boxes[j].Ends {
				break
			}
			w += boxes[j].Space
		}
	}
	return to, start
}

// lineCost is the square of the blank share of a line in thousandths. The
// last line of running text is free unless it is shorter than a third.
func lineCost(w, m int, last bool, style Ragged) int64 {
	if m <= 0 {
		return 0
	}
	blank := int64(m-w) * 1000 / int64(m)
	if last && style == Running {
		blank = max(0, blank-667)
	}
	return blank * blank
}

func unwind(prev [][]int, n int) []int {
	ends := make([]int, len(prev))
	for line := len(prev) - 1; line >= 0; line-- {
		ends[line] = n
		n = prev[line][n]
	}
	return ends
}

// Boxes gives the breaker's view of the paragraph.
func (p Para) Boxes() []Box {
	out := make([]Box, len(p.Words))
	for i, w := range p.Words {
		out[i] = Box{w.W, w.Space, w.hyphen, w.ends}
	}
	return out
}

// Narrowest is the least width that holds the boxes in n lines: minimise the
// longest line.
func Narrowest(boxes []Box, n int) int {
	sum, longest := 0, 0
	for _, b := range boxes {
		longest = max(longest, b.W)
		sum += b.W + b.Space + b.Hyphen
	}
	lo, hi := longest, max(longest, sum)
	for lo < hi {
		mid := (lo + hi) / 2
		if linesAt(boxes, mid) <= n {
			hi = mid
		} else {
			lo = mid + 1
		}
	}
	return lo
}

// linesAt counts the lines first-fit needs, which is the fewest; more than
// there are boxes when one of them is too wide.
func linesAt(boxes []Box, m int) int {
	lines := 0
	for i := 0; i < len(boxes); lines++ {
		end := filled(boxes, i, m)
		if end == i {
			return len(boxes) + 1
		}
		i = end
	}
	return lines
}
