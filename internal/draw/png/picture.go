package png

import (
	"fmt"
	"image"
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// fine is how many places of a dot, across and down, are looked up in a
// picture.
const fine = 4

// picture draws an image: each dot is the mean of what lies under it.
func (c *canvas) picture(p *page.Picture, at affine) error {
	m := p.Image
	if m.Broken() {
		return fmt.Errorf("an empty picture")
	}
	if p.Turn != 0 {
		at = at.mul(turning(p.At, p.Turn))
	}
	if len(m.Art) > 0 {
		return c.art(p, at)
	}
	to := at.mul(affine{a: float64(p.At.W) / float64(m.W), d: float64(p.At.H) / float64(m.H), e: float64(p.At.X), f: float64(p.At.Y)})
	back, ok := to.inverse()
	r := bounds(corners(to, float64(m.W), float64(m.H))).Intersect(c.clip).Intersect(c.img.Bounds())
	if !ok || r.Empty() {
		return nil
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			c.dotOf(m, back, x, y)
		}
	}
	return nil
}

// corners is a box of w x h under a map.
func corners(to affine, w, h float64) []line {
	var pts []vec
	for _, v := range [...]vec{{0, 0}, {w, 0}, {w, h}, {0, h}} {
		x, y := to.apply(v.x, v.y)
		pts = append(pts, vec{x, y})
	}
	return []line{{pts: pts, closed: true}}
}

// art draws a drawing of the maker's, cut off at its box.
func (c *canvas) art(p *page.Picture, at affine) error {
	w, h := float64(unit.Length(p.Image.W)*page.ArtUnit), float64(unit.Length(p.Image.H)*page.ArtUnit)
	to := at.mul(affine{a: float64(p.At.W) / w, d: float64(p.At.H) / h, e: float64(p.At.X), f: float64(p.At.Y)})
	box := corners(to, w, h)[0].pts
	x0, y0, x1, y1 := box[0].x, box[0].y, box[0].x, box[0].y
	for _, v := range box {
		x0, y0, x1, y1 = min(x0, v.x), min(y0, v.y), max(x1, v.x), max(y1, v.y)
	}
	before := c.clip
	c.wild = true
	defer func() { c.clip, c.wild = before, false }()
	c.clip = image.Rect(int(math.Round(x0)), int(math.Round(y0)), int(math.Round(x1)), int(math.Round(y1))).Intersect(before)
	for _, path := range p.Image.Art {
		if err := c.path(path, to); err != nil {
			return err
		}
	}
	return nil
}

// dotOf lays the mean of a picture under one dot over what is there.
func (c *canvas) dotOf(m *page.Image, back affine, x, y int) {
	var sum [4]int // colours times cover, cover
	for i := range fine * fine {
		u, v := back.apply(float64(x)+(float64(i%fine)+0.5)/fine, float64(y)+(float64(i/fine)+0.5)/fine)
		px, py := int(math.Floor(u)), int(math.Floor(v))
		if px < 0 || py < 0 || px >= m.W || py >= m.H {
			continue
		}
		q := m.Pix[4*(py*m.W+px):]
		a := int(q[3])
		sum[0], sum[1], sum[2], sum[3] = sum[0]+int(q[0])*a, sum[1]+int(q[1])*a, sum[2]+int(q[2])*a, sum[3]+a
	}
	const whole = 255 * fine * fine
	pix := c.img.Pix[c.img.PixOffset(x, y):]
	for k := range 3 {
		pix[k] = uint8((sum[k] + int(pix[k])*(whole-sum[3]) + whole/2) / whole)
	}
	pix[3] = uint8(sum[3]*255/whole + int(pix[3])*(whole-sum[3])/whole)
}

// inverse undoes m; not ok where m flattens.
func (m affine) inverse() (affine, bool) {
	det := m.a*m.d - m.b*m.c
	if det == 0 || math.IsNaN(det) {
		return m, false
	}
	n := affine{a: m.d / det, b: -m.b / det, c: -m.c / det, d: m.a / det}
	n.e, n.f = -(n.a*m.e + n.c*m.f), -(n.b*m.e + n.d*m.f)
	return n, true
}
