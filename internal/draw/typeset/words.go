// Package typeset sets type: it measures text in a voice, breaks it into lines
// and places them as page items. Labels, lists and the alignment page are all
// set by it. It knows no label's layout, no paper and no finding.
package typeset

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Voice is how one role of a page speaks: its faces and their treatment.
// Widths inside a voice are in 1/1000 em, so they hold at every size.
type Voice struct {
	Regular, Bold *face.Face
	Track         int // letter-spacing, 1/1000 em after every letter
	KernMin       int // kerns smaller than this are not worth a split
	Leading       float64
	Colour        page.Colour
	Upper, Lower  bool // letters are re-cased, prescribed words excepted
}

// Face is the voice's face of an emphasis; without a bold it is the regular.
func (v Voice) Face(bold bool) *face.Face {
	if bold && v.Bold != nil {
		return v.Bold
	}
	return v.Regular
}

// Frag is a stretch of one emphasis and one block inside a word.
type Frag struct {
	Bold  bool
	Block string
	S     string
}

// Part is what one block says in a paragraph several blocks may share.
type Part struct {
	Block string
	Runs  []label.Run
	Exact bool // prescribed words: no line ends at a hyphen or slash
}

// Say makes a part of a block's runs.
func Say(block string, runs []label.Run, exact bool) Part { return Part{block, runs, exact} }

// Word is an unbreakable box of text. Space is the width of the blank after
// it, 0 where a line may end without one (after a hyphen).
type Word struct {
	Frags    []Frag
	W, Space int
	blank    Frag // the blank itself
	wide     bool // wider than a space: the next word starts a stretch of its own
	hyphen   int  // width of the hyphen a line that ends here takes; 0: none
	ends     bool // its line
}

// Para is text ready to be broken into lines at any size.
type Para struct {
	Voice Voice
	Words []Word
}

// New splits text into words. A line may end at a space, and after a
// hyphen or a slash unless the words are prescribed, and with a hyphen at a
// soft one; it does at a line end, and never at a no-break space. Blocks that share a paragraph stand an em apart.
func New(v Voice, parts ...Part) Para {
	p := Para{Voice: v}
	var w Word
	flush := func() {
		if len(w.Frags) > 0 {
			w.W = v.wordWidth(w.Frags)
			p.Words = append(p.Words, w)
		}
		w = Word{}
	}
	for n, part := range parts {
		if n > 0 {
			flush()
			p.gap(false, part.Block, 900)
		}
		for _, run := range part.Runs {
			p.split(run, part, &w, flush)
		}
	}
	flush()
	if k := len(p.Words); k > 0 {
		p.Words[k-1].Space = 0
	}
	p.keepNumbers()
	return p
}

// split cuts one run into words, ending the open word w with flush.
func (p *Para) split(run label.Run, part Part, w *Word, flush func()) {
	start := 0
	cut := func(end int) {
		if end > start {
			w.add(Frag{run.Bold, part.Block, strings.ReplaceAll(run.Text[start:end], string(NBSP), " ")})
		}
	}
	for i, r := range run.Text {
		n := i + utf8.RuneLen(r)
		switch {
		case r != NBSP && unicode.IsSpace(r):
			cut(i)
			start = n
			flush()
			p.gap(run.Bold, part.Block, 0)
			if k := len(p.Words); k > 0 && r == LineEnd {
				p.Words[k-1].ends = true
			}
		case r == SoftHyphen:
			cut(i)
			start = n
			if k := len(w.Frags); k > 0 && !part.Exact {
				w.hyphen = p.Voice.Width(w.Frags[k-1].Bold, "-")
				flush()
			}
		case (r == '-' || r == '/') && !part.Exact && i > start:
			cut(n)
			start = n
			flush()
		case !part.Exact && ideographic(r):
			cut(n)
			start = n
			if next, size := utf8.DecodeRuneInString(run.Text[n:]); size > 0 && mayBegin(next) {
				flush()
			}
		}
	}
	cut(len(run.Text))
}

// gap puts a blank after the last word; extra widens it.
func (p *Para) gap(bold bool, block string, extra int) {
	if k := len(p.Words); k > 0 {
		last := &p.Words[k-1]
		last.Space = p.Voice.Face(bold).Advance(' ') + p.Voice.Track + extra
		last.blank = Frag{bold, block, " "}
		last.wide = extra > 0
	}
}

// NBSP is the blank no line ends at, LineEnd that where one does; SoftHyphen is
// seen only at the end of a line.
const (
	NBSP       = '\u00a0'
	LineEnd    = '\u2028'
	SoftHyphen = face.SoftHyphen
)

func (w *Word) add(f Frag) {
	if k := len(w.Frags); k > 0 && w.Frags[k-1].Bold == f.Bold && w.Frags[k-1].Block == f.Block {
		w.Frags[k-1].S += f.S
		return
	}
	w.Frags = append(w.Frags, f)
}

// keepNumbers joins a figure with the short unit after it ("10 oz", "45 g"),
// and a bare number with the next word ("14 Jun"), so that no line ends
// between them.
func (p *Para) keepNumbers() {
	out := p.Words[:0]
	for _, w := range p.Words {
		if k := len(out); k > 0 && out[k-1].Space > 0 && !out[k-1].wide && !out[k-1].ends && (endsInDigit(out[k-1]) && isUnit(w) || isNumber(out[k-1]) && w.W < 6000) {
			last := &out[k-1]
			last.Frags = append([]Frag(nil), last.Frags...)
			last.add(last.blank)
			for _, f := range w.Frags {
				last.add(f)
			}
			last.W = p.Voice.wordWidth(last.Frags)
			last.Space, last.blank, last.wide, last.hyphen, last.ends = w.Space, w.blank, w.wide, w.hyphen, w.ends
			continue
		}
		out = append(out, w)
	}
	p.Words = out
}

func endsInDigit(w Word) bool {
	s := w.Frags[len(w.Frags)-1].S
	c := s[len(s)-1]
	return '0' <= c && c <= '9'
}

// isNumber reports a short figure on its own, such as a house number or a day.
func isNumber(w Word) bool {
	if len(w.Frags) != 1 || len(w.Frags[0].S) > 4 {
		return false
	}
	for _, r := range w.Frags[0].S {
		if r < '0' || r > '9' {
			return false
		}
	}
	return true
}

func isUnit(w Word) bool {
	letters := 0
	for _, f := range w.Frags {
		for _, r := range f.S {
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

func (v Voice) wordWidth(frags []Frag) int {
	w := 0
	for _, f := range frags {
		w += v.Width(f.Bold, f.S)
	}
	return w
}

// Width is the kerned and tracked width of s in 1/1000 em, the tracking after
// its last letter included.
func (v Voice) Width(bold bool, s string) int {
	f := v.Face(bold)
	w, last := 0, rune(-1)
	for _, r := range s {
		if last >= 0 {
			w += v.kern(f, last, r)
		}
		w += f.Advance(r) + v.Track
		last = r
	}
	return w
}

func (v Voice) kern(f *face.Face, a, b rune) int {
	if a == ' ' || b == ' ' {
		return 0
	}
	k := f.Kern(a, b)
	if k > -v.KernMin && k < v.KernMin {
		return 0
	}
	return k
}

// LineWidth is the width of words[from:to] on one line in 1/1000 em.
func (p Para) LineWidth(from, to int) int {
	w := 0
	for _, x := range p.Words[from:to] {
		w += x.W + x.Space
	}
	if to > from {
		w += p.Words[to-1].hyphen - p.Words[to-1].Space - p.Voice.Track
	}
	return w
}

// stretch is a part of a line set at one offset (1/1000 em).
type stretch struct {
	Frag
	x      int
	hyphen bool // at its end, of the line
}

// line joins words[from:to] into stretches of one emphasis and block.
func (p Para) line(from, to int) []stretch {
	var out []stretch
	var w Word
	x := 0
	flush := func() {
		for _, f := range w.Frags {
			out = append(out, stretch{Frag: f, x: x})
			x += p.Voice.Width(f.Bold, f.S)
		}
		w = Word{}
	}
	for i := from; i < to; i++ {
		for _, f := range p.Words[i].Frags {
			w.add(f)
		}
		if i+1 == to || p.Words[i].Space == 0 {
			continue
		}
		if p.Words[i].wide {
			flush()
			x += p.Words[i].Space
			continue
		}
		w.add(p.Words[i].blank)
	}
	ends := to > from && p.Words[to-1].hyphen > 0
	if ends {
		last := w.Frags[len(w.Frags)-1]
		last.S = "-"
		w.add(last)
	}
	if flush(); ends {
		out[len(out)-1].hyphen = true
	}
	return out
}

// At scales thousandths of an em to a length.
func At(thousandths int, size unit.Length) unit.Length {
	return unit.Length(int64(thousandths) * int64(size) / 1000)
}

// Em turns a length into thousandths of an em of a size, rounded down.
func Em(l, size unit.Length) int {
	if size <= 0 || l <= 0 {
		return 0
	}
	return int(int64(l) * 1000 / int64(size))
}
