package artwork

import (
	"bytes"
	"encoding/xml"
	"math"
	"slices"
	"strings"

	"jarmark/internal/draw/page"
)

const (
	xlink    = "http://www.w3.org/1999/xlink"
	expand   = "unlink copies and symbols (expand them, or unlink clone), so that each is drawn for itself"
	mostUses = 8 // copies within copies
)

// token is a part of the file that a copy may draw again.
type token struct {
	at int64
	t  xml.Token
}

// index reads the file once more for what its copies are of: the tokens, and where the
// element of each id begins (the first of that id, as in a browser).
func (r *reader) index() {
	if r.ids != nil {
		return
	}
	r.ids = map[string]int{}
	d := xml.NewDecoder(bytes.NewReader(r.data))
	for {
		at := d.InputOffset()
		t, err := d.Token()
		if err != nil { // a broken file is told by the reading itself
			return
		}
		if e, ok := t.(xml.StartElement); ok {
			if id := attr(e, "id"); id != "" {
				if r.ids[id] == 0 { // no element of an id is the first token of all
					r.ids[id] = len(r.tokens)
				}
			}
		}
		r.tokens = append(r.tokens, token{at, xml.CopyToken(t)})
	}
}

// use draws a copy of another element (SVG 2, 5.5), which takes over what holds for the
// <use>. Elements and points count again with each copy, so that copies of copies end.
func (r *reader) use(e xml.StartElement, in state) {
	id, inside := strings.CutPrefix(copied(e), "#")
	at, size, ok := place(e)
	r.index()
	from, known := r.ids[id]
	switch {
	case !inside:
		r.problem(expand, "<use> copies from another file: %s", clip(id))
	case !ok:
		r.problem(expand, "<use> has a place or size that is not read")
	case !known:
		r.problem(expand, "<use> copies what is not in the drawing: #%s", clip(id))
	case slices.Contains(r.using, id):
		r.problem(expand, "<use> copies itself: #%s", clip(id))
	case len(r.using) >= mostUses:
		r.problem(expand, "copies lie more than %d deep in one another", mostUses)
	default:
		here := r.at
		in.to = in.to.mul(matrix{a: 1, d: 1, e: at[0], f: at[1]})
		r.stack, r.using = append(r.stack, in), append(r.using, id)
		r.replay(from, size)
		r.stack, r.using, r.at = r.stack[:len(r.stack)-1], r.using[:len(r.using)-1], here
	}
}

// copied is what a <use> copies, of SVG 2 or 1.1.
func copied(e xml.StartElement) (to string) {
	for _, a := range e.Attr {
		switch {
		case a.Name.Local == "href" && a.Name.Space == "":
			return strings.TrimSpace(a.Value)
		case a.Name.Local == "href" && a.Name.Space == xlink:
			to = strings.TrimSpace(a.Value)
		}
	}
	return to
}

// place reads where a copy lies and, of a symbol, how large it is; 0: not said.
func place(e xml.StartElement) (at, size [2]float64, ok bool) {
	for i, name := range []string{"x", "y", "width", "height"} {
		s := attr(e, name)
		if s == "" || i >= 2 && (s == "auto" || s == "100%") {
			continue
		}
		v, known := length(s)
		if !known || i >= 2 && v < 0 {
			return at, size, false
		}
		if i < 2 {
			at[i] = v
		} else {
			size[i-2] = v
		}
	}
	return at, size, true
}

// replay draws the element at a token, as if it stood in the one on top of the stack.
func (r *reader) replay(from int, size [2]float64) {
	depth := len(r.stack)
	for _, k := range r.tokens[from:] {
		r.at = k.at
		switch t := k.t.(type) {
		case xml.StartElement:
			if len(r.stack) == depth && t.Name.Local == "symbol" && t.Name.Space == r.space {
				defer r.symbol(t, size)()
				continue
			}
			r.open(t)
		case xml.EndElement:
			if len(r.stack) > depth {
				r.stack = r.stack[:len(r.stack)-1]
			}
		}
		if r.full() || len(r.stack) <= depth {
			break
		}
	}
	r.stack = r.stack[:min(len(r.stack), depth)]
}

// symbol opens a symbol: its own units in a box as large as the copy says, or as the
// whole drawing (SVG 2, 5.6). A browser cuts off what reaches out of the box; here that is told,
// by the function it gives, once the symbol is drawn.
func (r *reader) symbol(e xml.StartElement, size [2]float64) (close func()) {
	up := r.stack[len(r.stack)-1]
	in := r.styled(e, up)
	for i, side := range r.view {
		if size[i] == 0 {
			size[i] = side
		}
	}
	frame := in.to
	if s := attr(e, "viewBox"); s != "" {
		box, ok := numbers(s)
		var fit matrix
		if ok = ok && len(box) == 4 && box[2] > 0 && box[3] > 0; ok {
			fit, ok = fitted(attr(e, "preserveAspectRatio"), box, size[0], size[1])
		}
		if !ok {
			r.problem(expand, "<symbol> has a viewBox or preserveAspectRatio that is not read")
			in.skip = true
		}
		in.to = in.to.mul(fit)
	}
	for _, name := range []string{"refX", "refY", "x", "y", "width", "height"} {
		if s := attr(e, name); s != "" && s != "0" && (name[0] == 'r' || name[0] == 'x' || name[0] == 'y') {
			r.problem(expand, "<symbol> has a %s, which is not read", name)
		}
	}
	r.stack = append(r.stack, in)
	first, at := len(r.out.Paths), r.at
	cut := attr(e, "overflow") != "visible" && attr(e, "overflow") != "auto"
	return func() {
		if cut && !r.full() && !within(r.out.Paths[first:], frame, size) {
			r.at = at
			r.problem(expand, "<symbol> reaches out of its box, where a browser cuts it off")
		}
	}
}

// within reports whether paths lie in a box of the size at the origin of a frame, but for
// a hundredth of its side.
func within(paths []*page.Path, frame matrix, size [2]float64) bool {
	det := frame.a*frame.d - frame.b*frame.c
	for _, p := range paths {
		half := float64(p.Width) / 2 / math.Sqrt(math.Abs(det))
		if p.Stroke == nil {
			half = 0
		}
		for _, q := range p.Pts {
			x, y := float64(q.X)-frame.e, float64(q.Y)-frame.f
			for i, v := range [2]float64{(frame.d*x - frame.c*y) / det, (frame.a*y - frame.b*x) / det} {
				if slack := size[i] / 100; v-half < -slack || v+half > size[i]+slack {
					return false
				}
			}
		}
	}
	return true
}
