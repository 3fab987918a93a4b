package artwork

import (
	"encoding/xml"
	"slices"
	"strings"

	"jarmark/internal/draw/page"
)

// style are the properties that hold for an element (SVG 2, 6 and 13).
type style struct {
	fill, stroke               paint
	colour                     page.Colour // what "currentColor" means
	fillOpacity, strokeOpacity float64
	evenOdd, hidden, fixed     bool
	width, mitre, dashFrom     float64
	cap                        page.Cap
	join                       page.Join
	dash                       []float64
}

// first are the initial values.
var first = style{fill: paint{kind: plainColour}, fillOpacity: 1, strokeOpacity: 1, width: 1, mitre: 4}

// rule is one class of a style sheet.
type rule struct {
	class        string
	declarations []declaration
}

type declaration struct{ name, value string }

// styled gives the state inside an element: presentation attributes, then the
// classes of style sheets, then the style attribute (SVG 2, 6.6; CSS 2, 6.4).
func (r *reader) styled(e xml.StartElement, up state) state {
	in := up
	name := e.Name.Local
	for _, a := range e.Attr {
		if a.Name.Space == "" && properties[a.Name.Local] {
			r.set(name, &in, up, declaration{a.Name.Local, strings.TrimSpace(a.Value)})
		}
	}
	classes := strings.Fields(attr(e, "class"))
	for _, c := range r.rules {
		if slices.Contains(classes, c.class) {
			r.setAll(name, &in, up, c.declarations)
		}
	}
	list := declarations(attr(e, "style"))
	for _, d := range list {
		if !properties[d.name] && !idle(d.name) {
			r.problem("save it as plain SVG, with presentation attributes", "<%s> has a style that is not read: %s", name, clip(d.name))
		}
	}
	r.setAll(name, &in, up, list)
	if s := attr(e, "transform"); s != "" && s != "none" {
		m, ok := transform(s)
		if !ok {
			r.problem("save it as plain SVG", "<%s> has a transform that is not read: %s", name, clip(s))
		}
		in.to = up.to.mul(m)
	}
	if attr(e, "transform-origin") != "" || attr(e, "systemLanguage") != "" || attr(e, "requiredExtensions") != "" {
		r.problem(asPicture, "<%s> has a transform-origin or a condition, which are not read", name)
	}
	return in
}

// setAll takes over the properties of a list that change what is drawn.
func (r *reader) setAll(element string, in *state, up state, list []declaration) {
	for _, d := range list {
		if properties[d.name] {
			r.set(element, in, up, d)
		}
	}
}

// declarations parts the text of a style.
func declarations(s string) (out []declaration) {
	for _, part := range strings.Split(s, ";") {
		name, value, _ := strings.Cut(part, ":")
		if name = strings.ToLower(strings.TrimSpace(name)); name != "" {
			value, _, _ = strings.Cut(value, "!important")
			out = append(out, declaration{name, strings.TrimSpace(value)})
		}
	}
	return out
}

// properties are those that change what is drawn.
var properties = words(`fill fill-opacity fill-rule stroke stroke-opacity stroke-width stroke-linecap stroke-linejoin
	stroke-miterlimit stroke-dasharray stroke-dashoffset color opacity display visibility vector-effect clip-path mask filter
	marker marker-start marker-mid marker-end mix-blend-mode paint-order`)

// idle reports whether a property changes nothing in what is read here: type,
// gradients and filters are told where they are used, the rest moves no ink.
func idle(name string) bool {
	if still[name] {
		return true
	}
	for _, p := range [...]string{"-", "font", "text-", "stop-", "flood-", "lighting-", "color-", "solid-", "shape-", "image-", "letter-", "word-", "line-", "writing-", "glyph-"} {
		if strings.HasPrefix(name, p) {
			return true
		}
	}
	return false
}

var still = words(`clip-rule enable-background isolation overflow cursor pointer-events direction unicode-bidi white-space
	baseline-shift dominant-baseline alignment-baseline kerning mask-type user-select inline-size shape-inside`)

// set takes over one property; "inherit" is what the element above has.
func (r *reader) set(element string, in *state, up state, d declaration) {
	s, v, ok := &in.style, d.value, true
	same := v == "inherit"
	switch d.name {
	case "fill":
		if s.fill, ok = readPaint(v); same {
			s.fill, ok = up.style.fill, true
		}
	case "stroke":
		if s.stroke, ok = readPaint(v); same {
			s.stroke, ok = up.style.stroke, true
		}
	case "color":
		if same || v == "currentColor" {
			s.colour = up.style.colour
			return
		}
		var p paint
		p, ok = readPaint(v)
		s.colour, ok = p.colour, ok && p.kind == plainColour
	case "visibility":
		s.hidden = v == "hidden" || v == "collapse" || same && up.style.hidden
	case "display":
		in.skip = in.skip || v == "none"
	default:
		if !same {
			ok = r.detail(element, in, d)
		}
	}
	if !ok {
		r.problem("save it as plain SVG, with plain colours and numbers", "<%s>: %s=%q is not read", element, d.name, clip(v))
	}
}

// detail takes over the properties that matter to lines, and refuses those that
// would change the drawing and are not read.
func (r *reader) detail(element string, in *state, d declaration) (ok bool) {
	s, v := &in.style, d.value
	switch d.name {
	case "fill-rule":
		s.evenOdd, ok = v == "evenodd", v == "evenodd" || v == "nonzero"
	case "fill-opacity":
		s.fillOpacity, ok = opacity(v)
	case "stroke-opacity":
		s.strokeOpacity, ok = opacity(v)
	case "stroke-width":
		s.width, ok = length(v)
	case "stroke-miterlimit":
		s.mitre, ok = length(v)
		s.mitre = max(s.mitre, 1)
	case "stroke-linecap":
		i := slices.Index([]string{"butt", "round", "square"}, v)
		s.cap, ok = page.Cap(max(i, 0)), i >= 0
	case "stroke-linejoin":
		i := slices.Index([]string{"miter", "round", "bevel"}, v)
		s.join, ok = page.Join(max(i, 0)), i >= 0
	case "stroke-dashoffset":
		s.dashFrom, ok = length(v)
	case "stroke-dasharray":
		s.dash, ok = dashes(v)
	case "opacity":
		var o float64
		if o, ok = opacity(v); ok && o == 0 {
			in.skip = true
		} else if ok && o < 1 {
			r.problem("give it a full colour that looks alike; half-clear ink does not print alike everywhere", "<%s> is half clear (opacity)", element)
		}
	default:
		return r.effect(element, in, d)
	}
	return ok
}

// effect takes the properties whose plain value alone is drawn.
func (r *reader) effect(element string, in *state, d declaration) bool {
	v := strings.ToLower(d.value)
	switch {
	case v == "none" || v == "normal" || v == "":
	case d.name == "vector-effect":
		in.style.fixed = true
	case d.name == "paint-order" && strings.HasPrefix(v, "fill"):
	default:
		r.problem(asPicture, "<%s> has a %s, which cannot be drawn", element, d.name)
	}
	return true
}

func opacity(s string) (v float64, ok bool) {
	v, rest, ok := number(s)
	if rest == "%" {
		v, rest = v/100, ""
	}
	return min(max(v, 0), 1), ok && rest == ""
}

// dashes reads a dash list; one that sums to nothing is a full line.
func dashes(s string) (out []float64, ok bool) {
	if s == "none" {
		return nil, true
	}
	sum := 0.0
	for _, part := range strings.FieldsFunc(s, func(c rune) bool { return strings.ContainsRune(space+",", c) }) {
		v, ok := length(part)
		if !ok || v < 0 || len(out) >= 32 {
			return nil, false
		}
		out, sum = append(out, v), sum+v
	}
	if sum == 0 {
		return nil, true
	}
	return out, true
}

// styleSheet reads classes; anything else in a sheet is told.
func (r *reader) styleSheet(text string) {
	const hint = "save it with presentation attributes in place of a style sheet"
	for {
		before, after, found := strings.Cut(text, "/*")
		if !found {
			break
		}
		_, after, _ = strings.Cut(after, "*/")
		text = before + " " + after
	}
	for text = strings.TrimSpace(text); text != ""; text = strings.TrimSpace(text) {
		selectors, rest, found := strings.Cut(text, "{")
		body, after, closed := strings.Cut(rest, "}")
		if !found || !closed || strings.ContainsAny(body, "{@") {
			r.problem(hint, "a style sheet in it is not read: %s", clip(strings.TrimSpace(selectors)))
			return
		}
		text = after
		list := declarations(body)
		for _, s := range strings.Split(selectors, ",") {
			class, is := strings.CutPrefix(strings.TrimSpace(s), ".")
			if !is || class == "" || strings.ContainsAny(class, ". >+~:[#*\t\r\n") || len(r.rules) > 1000 {
				r.problem(hint, "a style sheet in it has more than classes: %s", clip(strings.TrimSpace(s)))
				return
			}
			r.rules = append(r.rules, rule{class, list})
		}
		for _, d := range list {
			if !properties[d.name] && !idle(d.name) {
				r.problem(hint, "a style sheet in it sets what is not read: %s", clip(d.name))
			}
		}
	}
}
