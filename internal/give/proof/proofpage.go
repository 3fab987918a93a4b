package proof

import (
	"cmp"
	"jarmark/internal/give/table"
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

// Doc sets the proofs of the labels of a batch, each beginning on a page
// of its own: the labels at true size, and every required line drawn out.
func Doc(proofs []Proof, fs *face.Set, paper string) (*page.Doc, diag.List) {
	if len(proofs) == 0 {
		return nil, nil
	}
	w := proofs[0].words()
	head := w.Say("Label proof") + ", " + proofs[0].Name + ", " + w.Say("lot %s", proofs[0].Lot)
	c, found := table.NewLayout(fs, paper, head)
	if c == nil {
		return nil, found
	}
	if lying(proofs, c.W) {
		lie(c)
	}
	for i, p := range proofs {
		if i > 0 {
			c.NewPage()
		}
		p.set(c, fs)
	}
	doc, l := c.Finish(head, proofs[0].Maker)
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
func lie(c *table.Layout) {
	c.W, c.H = c.H, c.W
	c.Pages = nil
	c.NewPage()
}

func (p Proof) words() table.Words {
	if p.American {
		return table.WordsIn(table.American)
	}
	return table.WordsIn(p.Law.Lang)
}

func (p Proof) set(c *table.Layout, fs *face.Set) {
	w := p.words()
	title, name := w.Say("Label proof")+": "+p.Name, ""
	if c.Width(table.TitleFace, table.Pt(18), title) > c.W-2*table.Margin {
		title, name = w.Say("Label proof"), p.Name
	}
	for _, b := range c.TitleBands(title, strings.Join(table.Said([]string{name, p.Maker, w.Say("lot %s", p.Lot), p.about(w)}), " · ")) {
		c.Put(b)
	}
	for _, pl := range p.Labels {
		placed(c, pl, w.Say("true size when printed at 100 %"))
	}
	g := table.Group{Head: table.HeadBand(w.Say("Required on the label"), p.summary(w)), Cont: p.contBand(w, "Required on the label")}
	for _, l := range p.Lines {
		g.Rows = append(g.Rows, p.lineBand(c, w, l, fs))
	}
	c.Flow(g)
	p.wrongGroup(c, w)
	p.restsGroup(c, w)
}

func (p Proof) contBand(w table.Words, title string) table.Band {
	return table.HeadBand(w.Say(title)+", "+w.Say("continued"), "")
}

// summary counts the verdicts.
func (p Proof) summary(w table.Words) string {
	n := 0
	for _, l := range p.Lines {
		if _, ok := p.verdict(w, l); ok {
			n++
		}
	}
	return w.Say("%d of %d meet", n, len(p.Lines))
}

// placed puts a label at true size in the middle of the page, upright where it
// fits and turned where only that does, with hairlines at its edge.
func placed(c *table.Layout, pl page.Placement, note string) {
	f := pl.Frame
	wide, high := f.W, f.H
	if wide > c.W-2*edge {
		wide, high, pl.Turn = f.H, f.W, 90
	}
	c.Put(table.Band{H: min(high+9*unit.Millimetre, c.Bottom()-table.Margin-6*unit.Millimetre), Draw: func(c *table.Layout, y unit.Length) {
		at := page.Point{X: (c.W - wide) / 2, Y: y + 2*unit.Millimetre}
		pl.At = at
		pg := &c.Pages[len(c.Pages)-1]
		pg.Places = append(pg.Places, pl)
		col := table.Line
		if f.Shape == "" || f.Shape == page.Rectangle {
			b := table.Box(page.Rect{X: at.X, Y: at.Y, W: wide, H: high}, nil, &col)
			b.Width, b.Bleed = unit.Points(0.4), true
			c.Add(b)
		}
		c.Text(table.ItalicFace, table.Pt(8.5), at.X+max(0, (wide-c.Width(table.ItalicFace, table.Pt(8.5), note))/2), at.Y+high+4500*unit.Micrometre, table.Soft, note)
	}})
}

// lineBand draws one required line out: the letter measured, between the
// baseline and the law's least height, the words with their clause, and the verdict.
func (p Proof) lineBand(c *table.Layout, w table.Words, l Line, fs *face.Set) table.Band {
	x := table.Margin + letterSide + 4*unit.Millimetre
	end := c.W - table.Margin - verdictSide - 5*unit.Millimetre
	words := c.Wrap(table.PlainFace, table.Pt(10), end-x, l.Block.Text())
	small := c.Wrap(table.PlainFace, table.Pt(8.5), end-x, p.clause(w, l))
	also := c.Wrap(table.ItalicFace, table.Pt(8.5), end-x, p.asked(w, l.Block))
	const lead, fine = 4700 * unit.Micrometre, 4000 * unit.Micrometre
	h := 9*unit.Millimetre + lead*unit.Length(len(words)) + fine*unit.Length(len(small)+len(also))
	return table.Band{H: max(h, 19*unit.Millimetre), Drawn: true, Draw: func(c *table.Layout, y unit.Length) {
		base := y + 5500*unit.Micrometre
		c.Text(table.BoldFace, table.Pt(9), x, base, table.Accent, l.name(w))
		for _, s := range words {
			base += lead
			c.Text(table.PlainFace, table.Pt(10), x, base, table.Ink, s)
		}
		base += 500 * unit.Micrometre
		for _, s := range also {
			base += fine
			c.Text(table.ItalicFace, table.Pt(8.5), x, base, table.Soft, s)
		}
		for _, s := range small {
			base += fine
			c.Text(table.PlainFace, table.Pt(8.5), x, base, table.Soft, s)
		}
		p.verdictAt(c, w, l, y)
		letterAt(c, l, fs, y)
		c.Rule(table.Margin, c.W-table.Margin, y+max(h, 19*unit.Millimetre)-300*unit.Micrometre)
	}}
}

// verdictAt sets the verdict and the two heights at the right edge.
func (p Proof) verdictAt(c *table.Layout, w table.Words, l Line, y unit.Length) {
	text, ok := p.verdict(w, l)
	col := leaf
	if !ok {
		col = table.Accent
	}
	end, base := c.W-table.Margin, y+6*unit.Millimetre
	size := table.Pt(12)
	for size > table.Pt(8) && c.Width(table.BoldFace, size, text) > verdictSide {
		size -= table.Pt(0.5)
	}
	c.Right(table.BoldFace, size, end, base, col, text)
	if l.Printed {
		c.Right(table.PlainFace, table.Pt(9.5), end, base+4800*unit.Micrometre, table.Ink, p.measuredText(w, l))
	}
	c.Right(table.PlainFace, table.Pt(8.5), end, base+9200*unit.Micrometre, table.Soft, p.least(w, l))
}

// measuredText says which letter was measured and how high it is: "o 1.66 mm".
func (p Proof) measuredText(w table.Words, l Line) string {
	return strings.TrimSpace(l.Letter + " " + p.height(w, l.Block.Min.On, l.Got))
}

// letterAt draws the measured letter of the label's own face enlarged, with
// the law's least height as a line: the letter must reach it.
func letterAt(c *table.Layout, l Line, fs *face.Set, y unit.Length) {
	if !l.Printed || l.Got <= 0 {
		return
	}
	f, err := fs.Open(l.Face)
	if err != nil {
		return
	}
	c.Voices[l.Face] = typeset.Voice{Regular: f}
	letter := cmp.Or(l.Letter, "Ag")
	times := unit.Length(4)
	for times > 1 && max(l.Got, l.Block.Min.Length)*times > 12*unit.Millimetre {
		times--
	}
	size, base := l.Size*times, y+15*unit.Millimetre
	const ruled = letterSide - 6*unit.Millimetre
	c.Text(l.Face, size, table.Margin+max(0, ruled-c.Width(l.Face, size, letter))/2, base, table.Ink, letter)
	c.Stroke(table.Margin, table.Margin+ruled, base, table.Line, unit.Points(0.5))
	if least := l.Block.Min.Length * times; least > 0 && l.Block.Min.On != label.PointSize {
		col := leaf
		if l.Short() > 0 {
			col = table.Accent
		}
		c.Stroke(table.Margin, table.Margin+ruled, base-least, col, unit.Points(0.8))
	}
	c.Text(table.PlainFace, table.Pt(7), table.Margin+letterSide-5*unit.Millimetre, base, table.Soft, "× "+string(rune('0'+times)))
}

// wrongGroup lists what the inspection of the finished label found.
func (p Proof) wrongGroup(c *table.Layout, w table.Words) {
	if len(p.Wrong) == 0 {
		return
	}
	g := table.Group{Head: table.HeadBand(w.Say("To be mended"), ""), Cont: p.contBand(w, "To be mended")}
	for _, s := range p.Wrong {
		g.Rows = append(g.Rows, c.Paragraph(table.PlainFace, table.Pt(10.5), table.Margin, table.Accent, s)...)
	}
	c.Group(g)
}

// restsGroup says what the allergen and keeping words rest on.
func (p Proof) restsGroup(c *table.Layout, w table.Words) {
	g := table.Group{Head: table.HeadBand(w.Say("What the words rest on"), ""), Cont: p.contBand(w, "What the words rest on")}
	before := ""
	row := func(name, text string) {
		shown := name
		if name == before {
			shown = ""
		}
		before = name
		g.Rows = append(g.Rows, fact(c, shown, text)...)
	}
	for _, a := range p.Allergens {
		row(w.Say("Allergens"), a.Name+": "+strings.Join(a.From, ", "))
	}
	if p.None {
		row(w.Say("Allergens"), w.Say("none, proven for every ingredient"))
	}
	if len(p.Doubt) > 0 {
		row(w.Say("Allergens"), w.Say("nothing is known of %s", strings.Join(p.Doubt, ", ")))
	}
	for _, s := range p.Keeping {
		row(w.Say("Keeping"), s)
	}
	if len(g.Rows) > 0 {
		c.Flow(g)
	}
	for _, b := range append([]table.Band{table.Gap(3 * unit.Millimetre)}, c.Paragraph(table.ItalicFace, table.Pt(9.5), table.Margin, table.Soft, w.Say("Measured on the drawn outlines of the letters, before printing. Your food agency has the last word."))...) {
		c.Put(b)
	}
}

// fact is a name and its words beside it, wrapped.
func fact(c *table.Layout, name, text string) (out []table.Band) {
	x := table.Margin + 34*unit.Millimetre
	for i, s := range c.Wrap(table.PlainFace, table.Pt(10), c.W-table.Margin-x, text) {
		out = append(out, table.Band{H: 5 * unit.Millimetre, Draw: func(c *table.Layout, y unit.Length) {
			if i == 0 {
				c.Text(table.BoldFace, table.Pt(9), table.Margin, y+4*unit.Millimetre, table.Soft, c.Short(table.BoldFace, table.Pt(9), 32*unit.Millimetre, name))
			}
			c.Text(table.PlainFace, table.Pt(10), x, y+4*unit.Millimetre, table.Ink, s)
		}})
	}
	return out
}
