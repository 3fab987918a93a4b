package artwork

import (
	"encoding/xml"
	"math"
	"strings"

	"jarmark/internal/draw/page"
)

// A gradient is drawn as areas of one colour each, painted one over the other, so that
// all outputs draw it alike and a printer is given plain inks: a step of colour is too
// small to be seen.
const (
	finest     = 3  // of 255, a step of colour
	mostSteps  = 64 // between two stops
	mostStops  = 16
	mostParent = 4 // gradients taken from others
	around     = 48
)

// gradient is how an area is painted from one colour to the next (SVG 2, 14.2).
type gradient struct {
	radial bool
	at     [5]float64 // x1 y1 x2 y2, or cx cy r
	box    bool       // in parts of the area's own box
	to     matrix
	stops  []stop
}

type stop struct {
	at     float64
	colour page.Colour
}

const plainly = "give it one plain colour, or export the drawing as PNG, 2000 pixels wide"

// gradient reads the gradient of an id; ok is false where it is told.
func (r *reader) gradient(name, id string, current page.Colour) (g gradient, ok bool) {
	r.index()
	var chain []xml.StartElement // it, and those it takes over from
	g = gradient{box: true, to: identity}
	for next := id; next != "" && len(chain) < mostParent; {
		from, known := r.ids[next]
		if !known {
			break
		}
		e, _ := r.tokens[from].t.(xml.StartElement)
		if e.Name.Local != "linearGradient" && e.Name.Local != "radialGradient" {
			break
		}
		chain = append(chain, e)
		if len(g.stops) == 0 {
			if g.stops, ok = r.stops(from, current); !ok {
				r.problem(plainly, "<%s> is painted with a gradient that is half clear or has stops that are not read", name)
				return g, false
			}
		}
		next, _ = strings.CutPrefix(copied(e), "#")
	}
	if len(chain) == 0 {
		r.problem(plainly, "<%s> is painted with a gradient or a pattern (fill)", name)
		return g, false
	}
	if !r.measures(&g, chain) {
		r.problem(plainly, "<%s> is painted with a gradient that is not read: #%s", name, clip(id))
		return g, false
	}
	return g, true
}

// measures reads where a gradient lies.
func (r *reader) measures(g *gradient, chain []xml.StartElement) (ok bool) {
	said := func(key string) string {
		for _, e := range chain {
			if s := attr(e, key); s != "" {
				return s
			}
		}
		return ""
	}
	ok = true
	g.radial = chain[0].Name.Local == "radialGradient"
	switch said("gradientUnits") {
	case "userSpaceOnUse":
		g.box = false
	case "", "objectBoundingBox":
	default:
		ok = false
	}
	if s := said("spreadMethod"); s != "" && s != "pad" {
		ok = false
	}
	if s := said("gradientTransform"); s != "" {
		m, known := transform(s)
		g.to, ok = m, ok && known && !m.flat()
	}
	keys, usual := []string{"x1", "y1", "x2", "y2"}, []string{"0%", "0%", "100%", "0%"}
	if g.radial {
		keys, usual = []string{"cx", "cy", "r"}, []string{"50%", "50%", "50%"}
	}
	across := []float64{r.view[0], r.view[1], r.view[0], r.view[1]}
	if g.radial {
		across[2] = math.Hypot(r.view[0], r.view[1]) / math.Sqrt2
	}
	for i, key := range keys {
		s := said(key)
		if s == "" {
			s = usual[i]
		}
		v, rest, known := number(s)
		switch {
		case rest == "%" && g.box:
			v /= 100
		case rest == "%":
			v *= across[i] / 100
		case rest != "" && rest != "px":
			known = false
		}
		g.at[i], ok = v, ok && known
	}
	for _, f := range [][2]string{{"fx", "cx"}, {"fy", "cy"}} { // a focus elsewhere is not drawn
		if s := said(f[0]); g.radial && s != "" && s != said(f[1]) {
			ok = false
		}
	}
	return ok && said("fr") == ""
}

// stops reads the stops of the gradient that begins at a token.
func (r *reader) stops(from int, current page.Colour) (out []stop, ok bool) {
	depth := 0
	for _, t := range r.tokens[from:] {
		if !r.spend(1) {
			return nil, true
		}
		switch e := t.t.(type) {
		case xml.StartElement:
			depth++
			if depth != 2 || e.Name.Local != "stop" {
				continue
			}
			said := map[string]string{"offset": attr(e, "offset"), "stop-color": attr(e, "stop-color"), "stop-opacity": attr(e, "stop-opacity")}
			for _, d := range declarations(attr(e, "style")) {
				said[d.name] = d.value
			}
			s := stop{}
			if said["offset"] != "" {
				if s.at, ok = opacity(said["offset"]); !ok { // a share, as an opacity is
					return nil, false
				}
			}
			if c := said["stop-color"]; c != "" {
				p, known := readPaint(c)
				if p.kind == inkOfText {
					p.colour = current
				} else if p.kind != plainColour {
					known = false
				}
				if s.colour = p.colour; !known {
					return nil, false
				}
			}
			if o := said["stop-opacity"]; o != "" {
				if v, known := opacity(o); !known || v < 1 {
					return nil, false
				}
			}
			if n := len(out); n > 0 {
				s.at = max(s.at, out[n-1].at)
			}
			if out = append(out, s); len(out) > mostStops || attr(e, "class") != "" {
				return nil, false
			}
		case xml.EndElement:
			if depth--; depth == 0 {
				return out, true
			}
		}
	}
	return out, true
}
