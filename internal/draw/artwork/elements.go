package artwork

import (
	"encoding/xml"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

const svgSpace = "http://www.w3.org/2000/svg"

// state is what holds inside one element.
type state struct {
	style style
	to    matrix // from its units to the box
	skip  bool   // nothing in it is drawn
	sheet bool   // its text is a style sheet
	leaf  bool   // it is a shape: what stands in it can but describe it, or move it
}

// unseen are elements that draw nothing by themselves. What is drawn by way of
// them, a gradient, a mask, a marker, is told where it is used.
var unseen = words("title desc metadata defs symbol marker clipPath mask pattern linearGradient radialGradient filter view")

// help says how to get along without an element.
var help = map[string]string{
	"text":          "turn text into paths (in drawing programs: text to path, or create outlines), so that no typeface is missing",
	"image":         "a picture in a drawing is not read: export the whole as PNG, 2000 pixels wide, with a clear ground",
	"script":        "save it as plain SVG; nothing in a drawing is run",
	"svg":           "take the inner drawing out into a group, and save it as plain SVG",
	"foreignObject": asPicture,
}

// open reads the beginning of an element.
func (r *reader) open(e xml.StartElement) {
	r.elements++
	switch {
	case len(r.stack) >= mostDepth:
		r.stop("ungroup it and save it anew", "elements lie more than %d deep in one another", mostDepth)
		return
	case r.elements > mostElements:
		r.stop(asPicture, "the drawing has more than %d elements", mostElements)
		return
	}
	up := state{to: identity, style: first}
	if n := len(r.stack); n > 0 {
		up = r.stack[n-1]
		up.sheet = false
	}
	r.stack = append(r.stack, r.inside(e, up))
}

// inside gives the state of an element's inside, and draws the element.
func (r *reader) inside(e xml.StartElement, up state) state {
	name := e.Name.Local
	switch {
	case !r.root:
		return r.outermost(e, up)
	case e.Name.Space != r.space:
		up.skip = true // notes of the program that drew it; a browser draws none
		return up
	case name == "style":
		up.skip, up.sheet = true, true
		if media := attr(e, "media"); media != "" && media != "all" || len(r.out.Paths) > 0 {
			r.problem("save it with presentation attributes in place of a style sheet", "a style sheet stands where it is not read")
		}
		return up
	case up.skip:
		if name == "script" {
			r.problem(help[name], "there is a <script> in it")
		}
		return up
	case unseen[name]:
		up.skip = true
		return up
	}
	in := r.styled(e, up)
	if in.skip {
		return in
	}
	draw, drawn := shapes[name]
	switch {
	case drawn && !up.leaf:
		r.draw(e, in, draw)
		in.leaf = true
	case name == "use" && !up.leaf:
		r.use(e, in)
		in.skip = true
	case name != "g" || up.leaf:
		hint := help[name]
		if hint == "" {
			hint = asPicture
		}
		r.problem(hint, "<%s> cannot be drawn", name)
		in.skip = true
	}
	return in
}

// outermost reads the <svg> element.
func (r *reader) outermost(e xml.StartElement, up state) state {
	r.root, r.space = true, e.Name.Space
	if e.Name.Local != "svg" || e.Name.Space != svgSpace && e.Name.Space != "" {
		r.stop("save it as SVG", "the file begins with <%s>, which is no SVG drawing", e.Name.Local)
		return up
	}
	fit, w, h, ok := r.viewport(e)
	if !ok {
		return up
	}
	up = r.styled(e, up) // a transform of the outermost element is told
	r.out.W, r.out.H = w, h
	up.to = fit.mul(up.to)
	return up
}

// draw adds one shape in its colours.
func (r *reader) draw(e xml.StartElement, in state, shape func(*pen, geometry)) {
	s := in.style
	if s.hidden || in.to.flat() {
		return
	}
	p := &pen{to: in.to, most: mostPoints - r.points, path: &page.Path{EvenOdd: s.evenOdd}}
	shape(p, geometry{r, e})
	r.points += len(p.path.Pts)
	switch {
	case r.full():
		return
	case p.wrong != "":
		r.problem("draw it anew, or save it as plain SVG", "<%s>: %s", e.Name.Local, p.wrong)
		return
	case p.over:
		r.stop("simplify its paths (in drawing programs: simplify), or export it as PNG", "the drawing has more than %d points", mostPoints)
		return
	case p.far:
		r.problem("delete what lies far outside the drawing", "<%s> reaches far outside the drawing", e.Name.Local)
		return
	}
	if len(p.path.Ops) < 2 {
		return
	}
	r.paint(e.Name.Local, p.path, in)
}

// paint fills and strokes a path, and keeps it if anything of it is seen.
func (r *reader) paint(name string, p *page.Path, in state) {
	s := in.style
	if s.fill.kind == reference && s.fillOpacity == 1 {
		r.shade(name, p, in)
	} else {
		p.Fill = r.colour(name, "fill", s.fill, s.fillOpacity, s.colour)
	}
	p.Stroke = r.colour(name, "stroke", s.stroke, s.strokeOpacity, s.colour)
	if s.width <= 0 {
		p.Stroke = nil
	}
	if p.Stroke != nil {
		scale, even := in.to.scale()
		switch {
		case s.fixed:
			r.problem("turn the outline into a path (outline stroke, stroke to path)", "<%s> has a line that keeps its width at every size", name)
		case !even:
			r.problem("turn the outline into a path (outline stroke, stroke to path)", "<%s> is stretched more one way, its line too", name)
		case len(s.dash) > 0 && s.dashFrom != 0:
			r.problem("turn the outline into a path (outline stroke, stroke to path)", "<%s> has dashes that begin elsewhere (stroke-dashoffset)", name)
		}
		p.Width = unit.Length(s.width*scale + 0.5)
		p.Nib = &page.Nib{Cap: s.cap, Join: s.join, Mitre: s.mitre}
		for _, d := range s.dash {
			p.Dash = append(p.Dash, unit.Length(d*scale+0.5))
		}
	}
	if p.Fill == nil && p.Stroke == nil {
		return
	}
	p.Seal()
	r.out.Paths = append(r.out.Paths, p)
}

// colour is what a property paints with: nothing, or one full colour.
func (r *reader) colour(name, property string, p paint, opacity float64, current page.Colour) *page.Colour {
	switch {
	case p.kind == none || opacity == 0:
		return nil
	case p.kind == reference:
		r.problem(plainly, "<%s> is painted with a gradient or a pattern (%s)", name, property)
		return nil
	case opacity < 1:
		r.problem("give it a full colour that looks alike; half-clear ink does not print alike everywhere", "<%s> is half clear (%s-opacity)", name, property)
		return nil
	case p.kind == inkOfText:
		return &current
	}
	return &p.colour
}

func attr(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Space == "" && a.Name.Local == name {
			return strings.TrimSpace(a.Value)
		}
	}
	return ""
}

func words(s string) map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(s) {
		out[w] = true
	}
	return out
}
