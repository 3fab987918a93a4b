package svg

import (
	"encoding/xml"
	"fmt"
	"hash/fnv"
	"math"
	"strconv"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// drawing collects the body and what it refers to. The first fault stays in
// err and the rest of the drawing is lost.
type drawing struct {
	b, defs []byte
	faces   *face.Set
	done    map[string]bool        // ids that are defined
	labels  map[*page.Frame]string // ids of labels
	whole   bool                   // each line of text is one path
	err     error
}

func newDrawing(fs *face.Set) *drawing {
	return &drawing{faces: fs, done: map[string]bool{}, labels: map[*page.Frame]string{}}
}

func (d *drawing) fail(format string, args ...any) {
	if d.err == nil {
		d.err = fmt.Errorf(format, args...)
	}
}

// define adds a definition once.
func (d *drawing) define(id string, content func()) {
	if d.done[id] {
		return
	}
	d.done[id] = true
	outer := d.b
	d.b = nil
	content()
	d.defs = append(d.defs, d.b...)
	d.b = outer
}

// clip defines the outline of a label as a clip and gives its id.
func (d *drawing) clip(f *page.Frame) string {
	return d.clipPath(f.Outline())
}

func (d *drawing) clipPath(o *page.Path) string {
	mark := len(d.b)
	d.data(o)
	data := string(d.b[mark:])
	d.b = d.b[:mark]
	id := "c" + hash(data)
	d.define(id, func() {
		d.b = append(d.b, `<clipPath id="`+id+`"><path clip-rule="evenodd" d="`+data+`"/></clipPath>`...)
	})
	return id
}

// boxPath is the outline of a box.
func boxPath(r page.Rect) *page.Path {
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}},
	}
}

// label defines a label with its bleed and gives its id.
func (d *drawing) label(f *page.Frame) string {
	if id, ok := d.labels[f]; ok {
		return id
	}
	clip := d.clipPath(boxPath(page.Rect{W: f.W, H: f.H}.Grow(f.Bleed, f.Bleed)))
	outer := d.b
	d.b = nil
	d.items(f.Items)
	content := string(d.b)
	d.b = outer
	id := "l" + hash(clip+content)
	d.define(id, func() {
		d.b = append(d.b, `<g id="`+id+`" clip-path="url(#`+clip+`)">`+content+"</g>"...)
	})
	d.labels[f] = id
	return id
}

func (d *drawing) items(list []page.Item) {
	for _, it := range list {
		d.line()
		switch it := it.(type) {
		case *page.Text:
			d.text(it)
		case *page.Path:
			d.path(it)
		case *page.Code:
			d.code(it)
		case *page.Picture:
			d.picture(it)
		}
	}
}

// line ends a line of a drawing that is told line by line.
func (d *drawing) line() {
	if d.whole {
		d.b = append(d.b, '\n')
	}
}

func (d *drawing) attr(name, value string) {
	d.b = append(d.b, ' ')
	d.b = append(append(append(append(d.b, name...), '=', '"'), value...), '"')
}

// block names the statement an item prints, so that a page around the picture
// can tell which rule it follows.
func (d *drawing) block(id string) {
	if id != "" {
		d.attr("data-block", escape(id))
	}
}

func (d *drawing) path(p *page.Path) {
	stroked := p.Stroke != nil && p.Width > 0
	if len(p.Ops) == 0 || p.Fill == nil && !stroked {
		return
	}
	d.b = append(d.b, "<path"...)
	d.block(p.Block)
	if p.Fill == nil {
		d.attr("fill", "none")
	} else if *p.Fill != (page.Colour{}) { // black is what SVG fills with
		d.attr("fill", colour(*p.Fill))
	}
	if p.EvenOdd {
		d.attr("fill-rule", "evenodd")
	}
	if stroked {
		d.stroke(p)
	}
	d.b = append(d.b, ` d="`...)
	d.data(p)
	d.b = append(d.b, `"/>`...)
}

func (d *drawing) stroke(p *page.Path) {
	d.attr("stroke", colour(*p.Stroke))
	d.b = append(d.b, ` stroke-width="`...)
	d.number(max(1, micro(p.Width)))
	d.b = append(d.b, '"')
	if n := p.Nib; n != nil {
		d.nib(n)
	} else if p.Round {
		d.attr("stroke-linecap", "round")
		d.attr("stroke-linejoin", "round")
	}
	var sum unit.Length
	for _, l := range p.Dash {
		sum += max(0, l)
	}
	if sum > 0 {
		d.b = append(d.b, ` stroke-dasharray="`...)
		for i, l := range p.Dash {
			if i > 0 {
				d.b = append(d.b, ' ')
			}
			d.number(max(0, micro(l)))
		}
		d.b = append(d.b, '"')
	}
}

// nib writes how a stroke ends and turns.
func (d *drawing) nib(n *page.Nib) {
	d.attr("stroke-linecap", [...]string{"butt", "round", "square"}[n.Cap])
	d.attr("stroke-linejoin", [...]string{"miter", "round", "bevel"}[n.Join])
	d.b = append(d.b, ` stroke-miterlimit="`...)
	d.float(n.Mitre)
	d.b = append(d.b, '"')
}

// code draws the dark runs of each row as one path in units of a module.
func (d *drawing) code(k *page.Code) {
	n := len(k.Modules)
	if n == 0 {
		return
	}
	d.b = append(d.b, "<path"...)
	d.block(k.Block)
	d.attr("fill", colour(k.Dark))
	d.attr("shape-rendering", "crispEdges")
	d.into(k.At, k.Turn, k.At.W.MM()/float64(n), k.At.H.MM()/float64(n))
	d.b = append(d.b, `)" d="`...)
	for y, row := range k.Modules {
		if len(row) != n {
			d.fail("a QR code has %d rows but a row of %d modules", n, len(row))
			return
		}
		for x := 0; x < n; x++ {
			start := x
			for x < n && row[x] {
				x++
			}
			if x > start {
				d.b = fmt.Appendf(d.b, "M%d %dh%dv1h-%dz", start, y, x-start, x-start)
			}
		}
	}
	d.b = append(d.b, `"/>`...)
}

// into opens the transform that puts what is drawn from the origin on into a box,
// turned about its middle, and leaves its last bracket open.
func (d *drawing) into(at page.Rect, turn, across, down float64) {
	d.b = append(d.b, ` transform="`...)
	if turn != 0 {
		d.b = append(d.b, "rotate("...)
		d.float(turn)
		d.b = append(d.b, ' ')
		d.pair(micro(at.X+at.W/2), micro(at.Y+at.H/2))
		d.b = append(d.b, ") "...)
	}
	d.b = append(d.b, "translate("...)
	d.pair(micro(at.X), micro(at.Y))
	d.b = append(d.b, ") scale("...)
	d.float(across)
	d.b = append(d.b, ' ')
	d.float(down)
}

func colour(c page.Colour) string {
	const hex = "0123456789abcdef"
	b := []byte{'#', hex[c.R>>4], hex[c.R&15], hex[c.G>>4], hex[c.G&15], hex[c.B>>4], hex[c.B&15]}
	if b[1] == b[2] && b[3] == b[4] && b[5] == b[6] {
		b = []byte{'#', b[1], b[3], b[5]}
	}
	return string(b)
}

func escape(s string) string {
	var b strings.Builder
	if err := xml.EscapeText(&b, []byte(s)); err != nil { // a Builder never fails
		return ""
	}
	return b.String()
}

func hash(s string) string {
	h := fnv.New64a()
	h.Write([]byte(s))
	return strconv.FormatUint(h.Sum64(), 36)
}

// float writes a ratio with six decimals at most.
func (d *drawing) float(v float64) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		d.fail("%g is not a number to draw with", v)
		return
	}
	d.b = strconv.AppendFloat(d.b, math.Round(v*1e6)/1e6, 'f', -1, 64)
}
