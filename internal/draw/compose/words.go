package compose

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// voice is how one role of a design speaks: its faces and their treatment.
// Widths inside a voice are in 1/1000 em, so they hold at every size.
type voice struct {
	regular, bold *face.Face
	track         int // letter-spacing, 1/1000 em after every letter
	kernMin       int // kerns smaller than this are not worth a split
	leading       float64
	colour        page.Colour
	upper, lower  bool // letters are re-cased, prescribed words excepted
}

func (v voice) face(bold bool) *face.Face {
	if bold && v.bold != nil {
		return v.bold
	}
	return v.regular
}

// frag is a stretch of one emphasis and one block inside a word.
type frag struct {
	bold  bool
	block string
	s     string
}

// said is what one block says in a paragraph several blocks may share.
type said struct {
	block string
	runs  []label.Run
	exact bool
}

// word is an unbreakable box of text. space is the width of the blank after
// it, 0 where a line may end without one (after a hyphen).
type word struct {
	frags    []frag
	w, space int
	blank    frag // the blank itself
	wide     bool // wider than a space: the next word starts a stretch of its own
}

// para is text ready to be broken into lines at any size.
type para struct {
	voice voice
	words []word
}

// newPara splits text into words. A line may end at a space, and after a
// hyphen or a slash unless the words are prescribed; a no-break space never
// ends one. Blocks that share a paragraph stand an em apart.
func newPara(v voice, parts ...said) para {
	p := para{voice: v}
	var w word
	flush := func() {
		if len(w.frags) > 0 {
			w.w = v.wordWidth(w.frags)
			p.words = append(p.words, w)
		}
		w = word{}
	}
	for n, part := range parts {
		if n > 0 {
			flush()
			p.gap(false, part.block, 900)
		}
		for _, run := range part.runs {
			p.split(run, part, &w, flush)
		}
	}
	flush()
	if k := len(p.words); k > 0 {
		p.words[k-1].space = 0
	}
	p.keepNumbers()
	return p
}

// split cuts one run into words, ending the open word w with flush.
func (p *para) split(run label.Run, part said, w *word, flush func()) {
	start := 0
	cut := func(end int) {
		if end > start {
			w.add(frag{run.Bold, part.block, strings.ReplaceAll(run.Text[start:end], string(nbsp), " ")})
		}
	}
	for i, r := range run.Text {
		n := i + utf8.RuneLen(r)
		switch {
		case r != nbsp && unicode.IsSpace(r):
			cut(i)
			start = n
			flush()
			p.gap(run.Bold, part.block, 0)
		case (r == '-' || r == '/') && !part.exact && i > start:
			cut(n)
			start = n
			flush()
		}
	}
	cut(len(run.Text))
}

// gap puts a blank after the last word; extra widens it.
func (p *para) gap(bold bool, block string, extra int) {
	if k := len(p.words); k > 0 {
		last := &p.words[k-1]
		last.space = p.voice.face(bold).Advance(' ') + p.voice.track + extra
		last.blank = frag{bold, block, " "}
		last.wide = extra > 0
	}
}

const nbsp = '\u00a0'

func (w *word) add(f frag) {
	if k := len(w.frags); k > 0 && w.frags[k-1].bold == f.bold && w.frags[k-1].block == f.block {
		w.frags[k-1].s += f.s
		return
	}
	w.frags = append(w.frags, f)
}

// keepNumbers joins a figure with the short unit after it ("10 oz", "45 g"),
// and a bare number with the next word ("14 Jun"), so that no line ends
// between them.
func (p *para) keepNumbers() {
	out := p.words[:0]
	for _, w := range p.words {
		if k := len(out); k > 0 && out[k-1].space > 0 && !out[k-1].wide && (endsInDigit(out[k-1]) && isUnit(w) || isNumber(out[k-1]) && w.w < 6000) {
			last := &out[k-1]
			last.frags = append([]frag(nil), last.frags...)
			last.add(last.blank)
			for _, f := range w.frags {
				last.add(f)
			}
			last.w = p.voice.wordWidth(last.frags)
			last.space, last.blank, last.wide = w.space, w.blank, w.wide
			continue
		}
		out = append(out, w)
	}
	p.words = out
}

func endsInDigit(w word) bool {
	s := w.frags[len(w.frags)-1].s
	c := s[len(s)-1]
	return '0' <= c && c <= '9'
}

// isNumber reports a short figure on its own, such as a house number or a day.
func isNumber(w word) bool {
	if len(w.frags) != 1 || len(w.frags[0].s) > 4 {
		return false
	}
	for _, r := range w.frags[0].s {
		if r < '0' || r > '9' {
			return false
		}
	}
	return true
}

func isUnit(w word) bool {
	letters := 0
	for _, f := range w.frags {
		for _, r := range f.s {
			switch {
			case unicode.IsLetter(r) || r == '°' || r == '%':
				letters++
			case r == ')' || r == ',' || r == '.' || r == ';':
			default:
				return false
			}
		}
	}
	return letters > 0 && letters <= 2
}

func (v voice) wordWidth(frags []frag) int {
	w := 0
	for _, f := range frags {
		w += v.width(f.bold, f.s)
	}
	return w
}

// width is the kerned and tracked width of s in 1/1000 em, the tracking after
// its last letter included.
func (v voice) width(bold bool, s string) int {
	f := v.face(bold)
	w, last := 0, rune(-1)
	for _, r := range s {
		if last >= 0 {
			w += v.kern(f, last, r)
		}
		w += f.Advance(r) + v.track
		last = r
	}
	return w
}

func (v voice) kern(f *face.Face, a, b rune) int {
	if a == ' ' || b == ' ' {
		return 0
	}
	k := f.Kern(a, b)
	if k > -v.kernMin && k < v.kernMin {
		return 0
	}
	return k
}

// lineWidth is the width of words[from:to] on one line in 1/1000 em.
func (p para) lineWidth(from, to int) int {
	w := 0
	for _, x := range p.words[from:to] {
		w += x.w + x.space
	}
	if to > from {
		w -= p.words[to-1].space + p.voice.track
	}
	return w
}

// stretch is a part of a line set at one offset (1/1000 em).
type stretch struct {
	frag
	x int
}

// line joins words[from:to] into stretches of one emphasis and block.
func (p para) line(from, to int) []stretch {
	var out []stretch
	var w word
	x := 0
	flush := func() {
		for _, f := range w.frags {
			out = append(out, stretch{f, x})
			x += p.voice.width(f.bold, f.s)
		}
		w = word{}
	}
	for i := from; i < to; i++ {
		for _, f := range p.words[i].frags {
			w.add(f)
		}
		if i+1 == to || p.words[i].space == 0 {
			continue
		}
		if p.words[i].wide {
			flush()
			x += p.words[i].space
			continue
		}
		w.add(p.words[i].blank)
	}
	flush()
	return out
}

// at scales thousandths of an em to a length.
func at(thousandths int, size unit.Length) unit.Length {
	return unit.Length(int64(thousandths) * int64(size) / 1000)
}

// em turns a length into thousandths of an em of a size, rounded down.
func em(l, size unit.Length) int {
	if size <= 0 || l <= 0 {
		return 0
	}
	return int(int64(l) * 1000 / int64(size))
}
