package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"slices"

	"github.com/go-pdf/fpdf"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// press draws the pages of one document.
type press struct {
	doc     *page.Doc
	fonts   map[page.Face]*typeface
	images  images
	arts    map[*page.Image]*form     // drawings of the maker's
	labels  map[*page.Frame]*form     // frames placed more than once
	parts   map[*page.Frame][]stretch // of frames placed once, where they share drawings
	ink     content                   // reused from form to form
	packed  []byte                    // likewise
	layered bool                      // pages bear lines to cut along
	err     error
}

func newPress(d *page.Doc, s *survey, fonts map[page.Face]*typeface, pictures images) *press {
	p := &press{doc: d, fonts: fonts, images: pictures, arts: map[*page.Image]*form{}, labels: map[*page.Frame]*form{}}
	p.drawArts(s.arts)
	for i := range d.Pages {
		for _, pl := range d.Pages[i].Places {
			if f := pl.Frame; s.frames[f] > 1 && p.labels[f] == nil {
				p.labels[f] = p.labelForm(f)
			}
		}
	}
	p.shareRuns(s)
	return p
}

// form is content that is drawn when fpdf writes it into the file, once, and
// not kept. It stands in for fpdf's own kind of template, which holds its
// bytes from the start and hashes them at every use.
type form struct {
	id   string
	w, h unit.Length
	uses []fpdf.Template
	draw func(*content)
	p    *press
}

var _ fpdf.Template = (*form)(nil)

func (f *form) ID() string { return f.id }

func (f *form) Size() (fpdf.PointType, fpdf.SizeType) { return fpdf.PointType{}, sizeOf(f.w, f.h) }

// Bytes draws the form and packs it. The result is good until the next form is
// drawn.
func (f *form) Bytes() []byte {
	p := f.p
	p.ink = content{b: p.ink.b[:0], saved: p.ink.saved[:0], fonts: p.fonts, images: p.images.ids, arts: p.arts}
	f.draw(&p.ink)
	packed, err := deflate(p.packed[:0], p.ink.b)
	if err != nil {
		p.err = err
		return nil
	}
	p.packed = packed
	return packed
}

func (f *form) Images() map[string]*fpdf.ImageInfoType { return f.p.images.byName }
func (f *form) Templates() []fpdf.Template             { return f.uses }
func (f *form) NumPages() int                          { return 1 }
func (f *form) FromPage(int) (fpdf.Template, error)    { return f, nil }
func (f *form) FromPages() []fpdf.Template             { return []fpdf.Template{f} }
func (f *form) Serialize() ([]byte, error)             { return nil, errNotStored }
func (f *form) GobEncode() ([]byte, error)             { return nil, errNotStored }
func (f *form) GobDecode([]byte) error                 { return errNotStored }

var errNotStored = errors.New("a form of this package is not stored")

// labelForm is a label with its bleed, origin at the lower left of the bleed.
func (p *press) labelForm(fr *page.Frame) *form {
	return &form{
		id: fmt.Sprintf("L%d", len(p.labels)+1),
		w:  fr.W + 2*fr.Bleed, h: fr.H + 2*fr.Bleed, p: p, uses: p.artsOf(nil, fr.Items),
		draw: func(c *content) { c.items(frameSpace(fr), fr.Items) },
	}
}

func frameSpace(fr *page.Frame) space { return space{left: fr.Bleed, top: fr.H + fr.Bleed} }

// sheets gives the form of every page; pages alike in a row share one.
func (p *press) sheets() []*form {
	out := make([]*form, len(p.doc.Pages))
	for i := range out {
		if i > 0 && alike(&p.doc.Pages[i-1], &p.doc.Pages[i]) {
			out[i] = out[i-1]
		} else {
			out[i] = p.pageForm(i)
		}
	}
	return out
}

// pageForm is all of one page.
func (p *press) pageForm(i int) *form {
	pg := &p.doc.Pages[i]
	f := &form{id: fmt.Sprintf("P%d", i+1), w: pg.W, h: pg.H, p: p}
	seen := map[*form]bool{}
	use := func(l *form) {
		if l != nil && !seen[l] {
			seen[l] = true
			f.uses = append(f.uses, l)
		}
	}
	for _, a := range p.artsOf(nil, pg.Marks) {
		use(a.(*form))
	}
	for _, pl := range pg.Places {
		for _, a := range p.artsOf(p.artsOf(nil, pl.Frame.Items), pl.Overlay) {
			use(a.(*form))
		}
		use(p.labels[pl.Frame])
		for _, part := range p.parts[pl.Frame] {
			use(part.form)
		}
	}
	f.draw = func(c *content) { p.page(c, pg) }
	return f
}

// alike reports whether two pages bear the very same marks in the same places.
func alike(a, b *page.Page) bool {
	if a.W != b.W || a.H != b.H || len(a.Places) != len(b.Places) || !slices.Equal(a.Marks, b.Marks) {
		return false
	}
	for i, x := range a.Places {
		y := b.Places[i]
		if x.Frame != y.Frame || x.At != y.At || x.Turn != y.Turn || x.Within != y.Within || !slices.Equal(x.Overlay, y.Overlay) {
			return false
		}
	}
	return true
}

func (p *press) page(c *content, pg *page.Page) {
	p.correct(c, pg)
	for i := range pg.Places {
		p.place(c, pg, &pg.Places[i])
	}
	c.items(space{top: pg.H}, pg.Marks)
	if p.layered {
		c.layers(pg)
	}
}

// words is the content of a tagged page, which is no form: a reader looks for its parts
// on the page itself.
func (p *press) words(t *tree, i int) *bytes.Reader {
	pg := &p.doc.Pages[i]
	c := content{fonts: p.fonts}
	c.save()
	p.correct(&c, pg)
	c.tagged(space{top: pg.H}, pg.Marks, t, i)
	c.restore()
	return bytes.NewReader(c.b)
}

// correct applies what the maker measured on the printer: scale about the top
// left corner of the paper, then offset to the right and down.
func (p *press) correct(c *content, pg *page.Page) {
	sx, sy := orOne(p.doc.ScaleX), orOne(p.doc.ScaleY)
	if sx == 1 && sy == 1 && p.doc.OffsetX == 0 && p.doc.OffsetY == 0 {
		return
	}
	c.number(sx)
	c.b = append(c.b, "0 0 "...)
	c.number(sy)
	c.length(p.doc.OffsetX)
	c.number(pg.H.Points()*(1-sy) - p.doc.OffsetY.Points())
	c.op("cm")
}

func orOne(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}

// place stamps a shared label or draws a single one, then what is its own.
func (p *press) place(c *content, pg *page.Page, pl *page.Placement) {
	fr := pl.Frame
	c.save()
	if pl.Clipped() {
		r := pl.Reach()
		c.length(r.X)
		c.length(pg.H - r.Y - r.H)
		c.length(r.W)
		c.length(r.H)
		c.op("re W n")
	}
	if pl.Turn == 90 {
		c.b = append(c.b, "0 -1 1 0 "...)
		c.length(pl.At.X - fr.Bleed)
		c.length(pg.H - pl.At.Y + fr.Bleed)
	} else {
		c.b = append(c.b, "1 0 0 1 "...)
		c.length(pl.At.X - fr.Bleed)
		c.length(pg.H - pl.At.Y - fr.H - fr.Bleed)
	}
	c.op("cm")
	if l := p.labels[fr]; l != nil {
		c.stamp(l)
	} else {
		p.single(c, fr)
	}
	c.items(frameSpace(fr), pl.Overlay)
	c.restore()
}

// single draws a label in place, clipped to its bleed as a form would be.
func (p *press) single(c *content, fr *page.Frame) {
	c.save()
	c.b = append(c.b, "0 0 "...)
	c.length(fr.W + 2*fr.Bleed)
	c.length(fr.H + 2*fr.Bleed)
	c.op("re W n")
	parts := p.parts[fr]
	if parts == nil {
		parts = []stretch{{items: fr.Items}}
	}
	for _, part := range parts {
		if part.form != nil {
			c.stamp(part.form)
		}
		c.items(frameSpace(fr), part.items)
	}
	c.restore()
}

func (c *content) stamp(f *form) {
	c.b = append(append(c.b, "/TPL"...), f.id...)
	c.op(" Do")
}
