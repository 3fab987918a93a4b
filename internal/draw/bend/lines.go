package bend

import (
	"cmp"
	"math"
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// A line of type keeps its word spaces, so round the wide edge of a cone it takes
// less of the way than on the straight label. The end it shares with other lines, or
// its middle, stays where it is.

// line is the texts of one line of type.
type line struct {
	texts       []*page.Text
	left, right unit.Length
}

// alike is how far ends that are meant to stand in line may differ.
const alike = unit.Millimetre / 5

// anchors gives for each text the place of its line that keeps its angle.
func anchors(list []page.Item) map[*page.Text]unit.Length {
	lines := linesOf(list)
	out := map[*page.Text]unit.Length{}
	for _, l := range lines {
		at := l.anchor(lines)
		for _, t := range l.texts {
			out[t] = at
		}
	}
	return out
}

// linesOf gathers texts that stand on one foot, near each other.
func linesOf(list []page.Item) (out []*line) {
	var texts []*page.Text
	for _, it := range list {
		if t, ok := it.(*page.Text); ok && math.Mod(t.Turn, 360) == 0 {
			texts = append(texts, t)
		}
	}
	slices.SortStableFunc(texts, func(a, b *page.Text) int { return cmp.Or(cmp.Compare(a.At.Y, b.At.Y), cmp.Compare(a.At.X, b.At.X)) })
	for i, t := range texts {
		right := t.At.X + t.Box.W
		if n := len(out) - 1; i > 0 && texts[i-1].At.Y == t.At.Y && t.At.X-out[n].right <= t.Size*3/2 {
			out[n].texts = append(out[n].texts, t)
			out[n].right = max(out[n].right, right)
			continue
		}
		out = append(out, &line{[]*page.Text{t}, t.At.X, right})
	}
	return out
}

// anchor is the end or the middle that most other lines share.
func (l *line) anchor(all []*line) unit.Length {
	near := func(a, b unit.Length) int {
		if a-b <= alike && b-a <= alike {
			return 1
		}
		return 0
	}
	var left, mid, right int
	for _, o := range all {
		if o != l {
			left, right, mid = left+near(o.left, l.left), right+near(o.right, l.right), mid+near((o.left+o.right)/2, (l.left+l.right)/2)
		}
	}
	switch {
	case left > mid && left >= right:
		return l.left
	case right > mid:
		return l.right
	}
	return (l.left + l.right) / 2
}
