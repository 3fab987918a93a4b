package png

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"slices"

	"jarmark/internal/draw/page"
)

// rows is how many lines a dot is cut into where contours may cross themselves;
// along a line the cover is exact.
const rows = 16

// fillWild paints with the even-odd rule (ISO 32000-1, 8.5.3.3.3) contours that
// may cross themselves, line by line.
func (c *canvas) fillWild(lines []line, colour page.Colour) {
	all := bounds(lines).Intersect(c.clip).Intersect(c.img.Bounds())
	if all.Empty() {
		return
	}
	crossings := make([][]float64, all.Dy()*rows)
	for _, l := range lines {
		for i, a := range l.pts {
			cross(crossings, a, l.pts[(i+1)%len(l.pts)], float64(all.Min.Y))
		}
	}
	mask := image.NewAlpha(all)
	sum := make([]float64, all.Dx())
	for y := range all.Dy() {
		clear(sum)
		for _, xs := range crossings[y*rows : (y+1)*rows] {
			slices.Sort(xs)
			for i := 0; i+1 < len(xs); i += 2 {
				span(sum, xs[i]-float64(all.Min.X), xs[i+1]-float64(all.Min.X))
			}
		}
		for x, v := range sum {
			mask.SetAlpha(all.Min.X+x, all.Min.Y+y, color.Alpha{A: uint8(math.Round(min(v/rows, 1) * 255))})
		}
	}
	draw.DrawMask(c.img, all, image.NewUniform(rgba(colour)), image.Point{}, mask, all.Min, draw.Over)
}

// cross notes where an edge crosses the middles of the lines.
func cross(lines [][]float64, a, b vec, top float64) {
	if a.y > b.y {
		a, b = b, a
	}
	from := max(0, math.Ceil((a.y-top)*rows-0.5))
	to := min(float64(len(lines)), math.Ceil((b.y-top)*rows-0.5))
	for k := from; k < to; k++ {
		y := top + (k+0.5)/rows
		lines[int(k)] = append(lines[int(k)], a.x+(b.x-a.x)*(y-a.y)/(b.y-a.y))
	}
}

// span adds the cover of a stretch to the dots it lies on.
func span(sum []float64, from, to float64) {
	from, to = max(from, 0), min(to, float64(len(sum)))
	for x := int(from); x < len(sum) && float64(x) < to; x++ {
		sum[x] += min(to, float64(x+1)) - max(from, float64(x))
	}
}
