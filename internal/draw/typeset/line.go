package typeset

import (
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Line places one line of type with its left end at a point, and gives its
// advance width.
func (v Voice) Line(block string, bold bool, s string, size unit.Length, pt page.Point) (*page.Text, unit.Length) {
	drawn := visual(s)
	segs, w := v.Segs(bold, drawn, size)
	f := v.Face(bold)
	wide := At(w-v.Track, size)
	said := ""
	if drawn != s {
		said = s
	}
	return &page.Text{
		Said: said, Block: block, Face: f.Name, Size: size, At: pt, Segs: segs, Colour: v.Colour,
		Box: page.Rect{X: pt.X, Y: pt.Y - f.Ascent(size), W: wide, H: f.Ascent(size) + f.Descent(size)},
	}, wide
}

// Measure is the width of a line in the regular face at a size.
func (v Voice) Measure(s string, size unit.Length) unit.Length {
	if s == "" {
		return 0
	}
	return At(v.Width(false, s)-v.Track, size)
}

// Lines breaks plain text into lines of the regular face no wider than room; a
// word too long for a line is cut.
func (v Voice) Lines(s string, size, room unit.Length) []string {
	p := New(v, Say("", []label.Run{{Text: s}}, false)).cut(Em(room, size))
	ends, ok := Break(p.Boxes(), func(int) int { return Em(room, size) + v.Track }, Running, 0)
	if !ok { // not even one letter is as narrow as the room
		return []string{s}
	}
	var out []string
	from := 0
	for _, to := range ends {
		out = append(out, p.text(from, to))
		from = to
	}
	return out
}

// text is what words[from:to] say on one line.
func (p Para) text(from, to int) string {
	var b strings.Builder
	for _, s := range p.line(from, to) {
		b.WriteString(s.S)
	}
	return b.String()
}

// cut parts words wider than a measure, so that every word fits a line.
func (p Para) cut(measure int) Para {
	var out []Word
	for _, w := range p.Words {
		for w.W > measure && len(w.Frags) == 1 {
			n := p.Voice.reach(w.Frags[0], measure)
			if n == 0 {
				break
			}
			head, rest := w, w
			head.Frags, rest.Frags = []Frag{w.Frags[0]}, []Frag{w.Frags[0]}
			head.Frags[0].S, rest.Frags[0].S = w.Frags[0].S[:n], w.Frags[0].S[n:]
			head.W, rest.W, head.Space = p.Voice.wordWidth(head.Frags), p.Voice.wordWidth(rest.Frags), 0
			out, w = append(out, head), rest
		}
		out = append(out, w)
	}
	p.Words = out
	return p
}

// reach is how many bytes of a fragment fit a measure, less than all; 0 when
// it cannot be parted.
func (v Voice) reach(f Frag, measure int) int {
	n := 0
	for i := range f.S {
		if i > 0 && v.Width(f.Bold, f.S[:i]) > measure {
			break
		}
		n = i
	}
	return n
}

// Short cuts a line to a width, an ellipsis for what is left out.
func (v Voice) Short(s string, size, room unit.Length) string {
	if v.Measure(s, size) <= room {
		return s
	}
	r := []rune(s)
	for len(r) > 1 && v.Measure(string(r)+"…", size) > room {
		r = r[:len(r)-1]
	}
	return strings.TrimRight(string(r), " ") + "…"
}
