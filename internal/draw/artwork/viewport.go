package artwork

import (
	"encoding/xml"
	"strings"

	"jarmark/internal/kit/unit"
)

// viewport gives the box of a drawing and how its units lie in it (SVG 2, 8.2,
// 8.6 and 8.7: width, height, viewBox, preserveAspectRatio).
func (r *reader) viewport(e xml.StartElement) (fit matrix, w, h unit.Length, ok bool) {
	const hint = "give it a viewBox, or a width and a height in mm"
	box, isBox := numbers(attr(e, "viewBox"))
	if isBox = isBox && len(box) == 4; !isBox && attr(e, "viewBox") != "" || isBox && (box[2] <= 0 || box[3] <= 0) {
		r.stop(hint, "its viewBox %q is not read", clip(attr(e, "viewBox")))
		return fit, 0, 0, false
	}
	width, isW := side(e, "width")
	height, isH := side(e, "height")
	switch {
	case isBox && !isW && !isH:
		width, height = box[2], box[3]
	case isBox && !isW:
		width = height * box[2] / box[3]
	case isBox && !isH:
		height = width * box[3] / box[2]
	case !isBox && !(isW && isH):
		r.stop(hint, "the drawing does not say how large it is")
		return fit, 0, 0, false
	}
	if !(width > 0 && height > 0 && width <= 1000*height && height <= 1000*width) {
		r.stop(hint, "the drawing is %g x %g: that is no size to print", width, height)
		return fit, 0, 0, false
	}
	if r.view = [2]float64{width, height}; isBox {
		r.view = [2]float64{box[2], box[3]}
	}
	by := float64(long) / max(width, height)
	fit = matrix{a: by, d: by}
	if isBox {
		within, ok := fitted(attr(e, "preserveAspectRatio"), box, width, height)
		if !ok {
			r.stop(hint, "its preserveAspectRatio is not read")
			return fit, 0, 0, false
		}
		fit = fit.mul(within)
	}
	return fit, whole(width * by), whole(height * by), true
}

// whole rounds to micrometres, which are the units of a picture's proportions.
func whole(v float64) unit.Length {
	return max(1, unit.Length(v/float64(unit.Micrometre)+0.5)) * unit.Micrometre
}

// side reads a width or a height; one in percent is not known.
func side(e xml.StartElement, name string) (v float64, ok bool) {
	if s := attr(e, name); s != "" {
		return length(s)
	}
	return 0, false
}

// fitted lays a viewBox into a viewport.
func fitted(how string, box []float64, w, h float64) (m matrix, ok bool) {
	sx, sy := w/box[2], h/box[3]
	part := strings.Fields(how)
	if len(part) == 0 {
		part = []string{"xMidYMid"}
	}
	by := min(sx, sy)
	if len(part) == 2 && part[1] == "slice" {
		by = max(sx, sy)
	} else if len(part) > 2 || len(part) == 2 && part[1] != "meet" {
		return m, false
	}
	if part[0] == "none" {
		return matrix{a: sx, d: sy, e: -box[0] * sx, f: -box[1] * sy}, true
	}
	if len(part[0]) != len("xMidYMid") {
		return m, false
	}
	share := map[string]float64{"xMin": 0, "xMid": 0.5, "xMax": 1, "YMin": 0, "YMid": 0.5, "YMax": 1}
	ax, okX := share[part[0][:4]]
	ay, okY := share[part[0][4:]]
	return matrix{a: by, d: by, e: (w-box[2]*by)*ax - box[0]*by, f: (h-box[3]*by)*ay - box[1]*by}, okX && okY
}
