package pack

import (
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// leaf marks what is as it should be.
var leaf = page.Colour{R: 62, G: 104, B: 66}

// Columns of a proof's lines: the letter drawn large, the words, the verdict.
const (
	letterSide  = 19 * unit.Millimetre
	verdictSide = 48 * unit.Millimetre
)

// ProofDoc sets the proofs of the labels of a batch, each beginning on a page
// of its own: the labels at true size, and every required line drawn out.
func ProofDoc(proofs []Proof, fs *face.Set, paper string) (*page.Doc, diag.List) {
	if len(proofs) == 0 {
		return nil, nil
	}
	w := proofs[0].words()
	head := w.say("Label proof") + ", " + proofs[0].Name + ", " + w.say("lot %s", proofs[0].Lot)
	c, found := newLayout(fs, paper, head)
	if c == nil {
		return nil, found
	}
	if lying(proofs, c.w) {
		c.lie()
	}
	for i, p := range proofs {
		if i > 0 {
			c.newPage()
		}
		p.set(c, fs)
	}
	doc, l := c.finish(head, proofs[0].Maker)
	doc.Lang = proofs[0].Law.Lang
	return doc, append(found, l...)
}

// edge is how near to the paper's edge a label may be printed.
const edge = 6 * unit.Millimetre

// lying reports whether a label is too long for upright paper.
func lying(proofs []Proof, w unit.Length) bool {
	for _, p := range proofs {
		for _, pl := range p.Labels {
			if pl.Frame.W > w-2*edge {
				return true
			}
		}
	}
	return false
}

// lie turns the paper on its side, before anything stands on it.
func (c *layout) lie() {
	c.w, c.h = c.h, c.w
	c.pages = nil
	c.newPage()
}

func (p Proof) words() words {
	if p.American {
		return wordsIn(american)
	}
	return wordsIn(p.Law.Lang)
}

func (p Proof) set(c *layout, fs *face.Set) {
	w := p.words()
	title, name := w.say("Label proof")+": "+p.Name, ""
	if c.width(titleFace, pt(18), title) > c.w-2*margin {
		title, name = w.say("Label proof"), p.Name
	}
	for _, b := range c.titleBands(title, strings.Join(drop([]string{name, p.Maker, w.say("lot %s", p.Lot), p.about(w)}), " · ")) {
		c.put(b)
	}
	for _, pl := range p.Labels {
		c.placed(pl, w.say("true size when printed at 100 %"))
	}
	g := group{head: headBand(w.say("Required on the label"), p.summary(w)), cont: p.contBand(w, "Required on the label")}
	for _, l := range p.Lines {
		g.rows = append(g.rows, p.lineBand(c, w, l, fs))
	}
	c.flow(g)
	p.wrongGroup(c, w)
	p.restsGroup(c, w)
}

func (p Proof) contBand(w words, title string) band {
	return headBand(w.say(title)+", "+w.say("continued"), "")
}

// summary counts the verdicts.
func (p Proof) summary(w words) string {
	n := 0
	for _, l := range p.Lines {
		if _, ok := p.verdict(w, l); ok {
			n++
		}
	}
	return w.say("%d of %d meet", n, len(p.Lines))
}

// placed puts a label at true size in the middle of the page, upright where it
// fits and turned where only that does, with hairlines at its edge.
func (c *layout) placed(pl page.Placement, note string) {
	f := pl.Frame
	wide, high := f.W, f.H
	if wide > c.w-2*edge {
		wide, high, pl.Turn = f.H, f.W, 90
	}
	c.put(band{h: min(high+9*unit.Millimetre, c.bottom()-margin-6*unit.Millimetre), draw: func(c *layout, y unit.Length) {
		at := page.Point{X: (c.w - wide) / 2, Y: y + 2*unit.Millimetre}
		pl.At = at
		pg := &c.pages[len(c.pages)-1]
		pg.Places = append(pg.Places, pl)
		col := line
		if f.Shape == "" || f.Shape == page.Rectangle {
			b := box(page.Rect{X: at.X, Y: at.Y, W: wide, H: high}, nil, &col)
			b.Width, b.Bleed = unit.Points(0.4), true
			c.add(b)
		}
		c.text(italicFace, pt(8.5), at.X+max(0, (wide-c.width(italicFace, pt(8.5), note))/2), at.Y+high+4500*unit.Micrometre, soft, note)
	}})
}

// lineBand draws one required line out: the letter measured, between the
// baseline and the law's least height, the words with their clause, and the verdict.
func (p Proof) lineBand(c *layout, w words, l ProofLine, fs *face.Set) band {
	x := margin + letterSide + 4*unit.Millimetre
	end := c.w - margin - verdictSide - 5*unit.Millimetre
	words := c.wrap(plainFace, pt(10), end-x, l.Block.Text())
	small := c.wrap(plainFace, pt(8.5), end-x, p.clause(w, l))
	also := c.wrap(italicFace, pt(8.5), end-x, p.asked(w, l.Block))
	const lead, fine = 4700 * unit.Micrometre, 4000 * unit.Micrometre
	h := 9*unit.Millimetre + lead*unit.Length(len(words)) + fine*unit.Length(len(small)+len(also))
	return band{h: max(h, 19*unit.Millimetre), draw: func(c *layout, y unit.Length) {
		base := y + 5500*unit.Micrometre
		c.text(boldFace, pt(9), x, base, accent, l.name(w))
		for _, s := range words {
			base += lead
			c.text(plainFace, pt(10), x, base, ink, s)
		}
		base += 500 * unit.Micrometre
		for _, s := range also {
			base += fine
			c.text(italicFace, pt(8.5), x, base, soft, s)
		}
		for _, s := range small {
			base += fine
			c.text(plainFace, pt(8.5), x, base, soft, s)
		}
		p.verdictAt(c, w, l, y)
		c.letterAt(l, fs, y)
		c.rule(margin, c.w-margin, y+max(h, 19*unit.Millimetre)-300*unit.Micrometre)
	}}
}

// verdictAt sets the verdict and the two heights at the right edge.
func (p Proof) verdictAt(c *layout, w words, l ProofLine, y unit.Length) {
	text, ok := p.verdict(w, l)
	col := leaf
	if !ok {
		col = accent
	}
	end, base := c.w-margin, y+6*unit.Millimetre
	size := pt(12)
	for size > pt(8) && c.width(boldFace, size, text) > verdictSide {
		size -= pt(0.5)
	}
	c.right(boldFace, size, end, base, col, text)
	if l.Printed {
		c.right(plainFace, pt(9.5), end, base+4800*unit.Micrometre, ink, p.measuredText(w, l))
	}
	c.right(plainFace, pt(8.5), end, base+9200*unit.Micrometre, soft, p.least(w, l))
}

// measuredText says which letter was measured and how high it is: "o 1.66 mm".
func (p Proof) measuredText(w words, l ProofLine) string {
	return strings.TrimSpace(l.Letter + " " + p.height(w, l.Block.Min.On, l.Got))
}

// letterAt draws the measured letter of the label's own face enlarged, with
// the law's least height as a line: the letter must reach it.
func (c *layout) letterAt(l ProofLine, fs *face.Set, y unit.Length) {
	if !l.Printed || l.Got <= 0 {
		return
	}
	f, err := fs.Open(l.Face)
	if err != nil {
		return
	}
	c.voices[l.Face] = typeset.Voice{Regular: f}
	letter := l.Letter
	if letter == "" {
		letter = "Ag"
	}
	times := unit.Length(4)
	for times > 1 && max(l.Got, l.Block.Min.Length)*times > 12*unit.Millimetre {
		times--
	}
	size, base := l.Size*times, y+15*unit.Millimetre
	const ruled = letterSide - 6*unit.Millimetre
	c.text(l.Face, size, margin+max(0, ruled-c.width(l.Face, size, letter))/2, base, ink, letter)
	c.stroke(margin, margin+ruled, base, line, unit.Points(0.5))
	if least := l.Block.Min.Length * times; least > 0 && l.Block.Min.On != label.PointSize {
		col := leaf
		if l.Short() > 0 {
			col = accent
		}
		c.stroke(margin, margin+ruled, base-least, col, unit.Points(0.8))
	}
	c.text(plainFace, pt(7), margin+letterSide-5*unit.Millimetre, base, soft, "× "+string(rune('0'+times)))
}

// wrongGroup lists what the inspection of the finished label found.
func (p Proof) wrongGroup(c *layout, w words) {
	if len(p.Wrong) == 0 {
		return
	}
	g := group{head: headBand(w.say("To be mended"), ""), cont: p.contBand(w, "To be mended")}
	for _, s := range p.Wrong {
		g.rows = append(g.rows, c.paragraph(plainFace, pt(10.5), margin, accent, s)...)
	}
	c.group(g)
}

// restsGroup says what the allergen and keeping words rest on.
func (p Proof) restsGroup(c *layout, w words) {
	g := group{head: headBand(w.say("What the words rest on"), ""), cont: p.contBand(w, "What the words rest on")}
	before := ""
	row := func(name, text string) {
		shown := name
		if name == before {
			shown = ""
		}
		before = name
		g.rows = append(g.rows, c.fact(shown, text)...)
	}
	for _, a := range p.Allergens {
		row(w.say("Allergens"), a.Name+": "+join(a.From))
	}
	if p.None {
		row(w.say("Allergens"), w.say("none, proven for every ingredient"))
	}
	if len(p.Doubt) > 0 {
		row(w.say("Allergens"), w.say("nothing is known of %s", join(p.Doubt)))
	}
	for _, s := range p.Keeping {
		row(w.say("Keeping"), s)
	}
	if len(g.rows) > 0 {
		c.flow(g)
	}
	for _, b := range append([]band{gap(3 * unit.Millimetre)}, c.paragraph(italicFace, pt(9.5), margin, soft, w.say("Measured on the drawn outlines of the letters, before printing. Your food agency has the last word."))...) {
		c.put(b)
	}
}

// fact is a name and its words beside it, wrapped.
func (c *layout) fact(name, text string) (out []band) {
	x := margin + 34*unit.Millimetre
	for i, s := range c.wrap(plainFace, pt(10), c.w-margin-x, text) {
		out = append(out, band{h: 5 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
			if i == 0 {
				c.text(boldFace, pt(9), margin, y+4*unit.Millimetre, soft, c.short(boldFace, pt(9), 32*unit.Millimetre, name))
			}
			c.text(plainFace, pt(10), x, y+4*unit.Millimetre, ink, s)
		}})
	}
	return out
}
