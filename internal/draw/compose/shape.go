package compose

import (
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// rectPath is an upright box as a path.
func rectPath(r page.Rect) *page.Path {
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{{X: r.X, Y: r.Y}, {X: r.X + r.W, Y: r.Y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}},
	}
}

// kappa places the control points of a quarter circle (error under 0.03 %).
const kappa = 0.5522847498

// ellipsePath is the ellipse in a box.
func ellipsePath(r page.Rect) *page.Path {
	cx, cy, rx, ry := r.X+r.W/2, r.Y+r.H/2, r.W/2, r.H/2
	kx, ky := share(rx, kappa), share(ry, kappa)
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.CubicTo, page.CubicTo, page.CubicTo, page.CubicTo, page.Close},
		Pts: []page.Point{
			{X: cx + rx, Y: cy},
			{X: cx + rx, Y: cy + ky}, {X: cx + kx, Y: cy + ry}, {X: cx, Y: cy + ry},
			{X: cx - kx, Y: cy + ry}, {X: cx - rx, Y: cy + ky}, {X: cx - rx, Y: cy},
			{X: cx - rx, Y: cy - ky}, {X: cx - kx, Y: cy - ry}, {X: cx, Y: cy - ry},
			{X: cx + kx, Y: cy - ry}, {X: cx + rx, Y: cy - ky}, {X: cx + rx, Y: cy},
		},
	}
}

// roundPath is a box with rounded corners.
func roundPath(r page.Rect, radius unit.Length) *page.Path {
	q := min(radius, r.W/2, r.H/2)
	if q <= 0 {
		return rectPath(r)
	}
	k := q - share(q, kappa)
	x0, y0, x1, y1 := r.X, r.Y, r.X+r.W, r.Y+r.H
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.CubicTo, page.LineTo, page.CubicTo,
			page.LineTo, page.CubicTo, page.LineTo, page.CubicTo, page.Close},
		Pts: []page.Point{
			{X: x0 + q, Y: y0}, {X: x1 - q, Y: y0},
			{X: x1 - k, Y: y0}, {X: x1, Y: y0 + k}, {X: x1, Y: y0 + q}, {X: x1, Y: y1 - q},
			{X: x1, Y: y1 - k}, {X: x1 - k, Y: y1}, {X: x1 - q, Y: y1}, {X: x0 + q, Y: y1},
			{X: x0 + k, Y: y1}, {X: x0, Y: y1 - k}, {X: x0, Y: y1 - q}, {X: x0, Y: y0 + q},
			{X: x0, Y: y0 + k}, {X: x0 + k, Y: y0}, {X: x0 + q, Y: y0},
		},
	}
}

// cutPath is a box with its top corners cut off, cx across and cy down.
func cutPath(r page.Rect, cx, cy unit.Length) *page.Path {
	x0, y0, x1, y1 := r.X, r.Y, r.X+r.W, r.Y+r.H
	return &page.Path{
		Ops: []page.Op{page.MoveTo, page.LineTo, page.LineTo, page.LineTo, page.LineTo, page.LineTo, page.Close},
		Pts: []page.Point{{X: x0 + cx, Y: y0}, {X: x1 - cx, Y: y0}, {X: x1, Y: y0 + cy}, {X: x1, Y: y1}, {X: x0, Y: y1}, {X: x0, Y: y0 + cy}},
	}
}

// linePath is a stroked line.
func linePath(a, b page.Point, width unit.Length, c page.Colour) *page.Path {
	return &page.Path{Ops: []page.Op{page.MoveTo, page.LineTo}, Pts: []page.Point{a, b}, Stroke: &c, Width: width}
}
