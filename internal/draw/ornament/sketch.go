package ornament

import (
	"hash/fnv"
	"math"
	"math/rand/v2"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// vec is a place in millimetres, y down.
type vec struct{ x, y float64 }

func (a vec) add(b vec) vec             { return vec{a.x + b.x, a.y + b.y} }
func (a vec) sub(b vec) vec             { return vec{a.x - b.x, a.y - b.y} }
func (a vec) mul(k float64) vec         { return vec{a.x * k, a.y * k} }
func (a vec) len() float64              { return math.Hypot(a.x, a.y) }
func (a vec) lerp(b vec, t float64) vec { return a.add(b.sub(a).mul(t)) }
func polar(angle, r float64) vec        { return vec{math.Cos(angle) * r, math.Sin(angle) * r} }

// box is an upright box in millimetres.
type box struct{ x0, y0, x1, y1 float64 }

func boxOf(r page.Rect) box {
	return box{r.X.MM(), r.Y.MM(), (r.X + r.W).MM(), (r.Y + r.H).MM()}
}

var nowhere = box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}

func (b box) w() float64     { return b.x1 - b.x0 }
func (b box) h() float64     { return b.y1 - b.y0 }
func (b box) centre() vec    { return vec{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2} }
func (b box) empty() bool    { return !(b.x0 <= b.x1 && b.y0 <= b.y1) }
func (b box) short() float64 { return min(b.w(), b.h()) }
func (b box) grow(d float64) box {
	return box{b.x0 - d, b.y0 - d, b.x1 + d, b.y1 + d}
}
func (b box) join(c box) box {
	return box{min(b.x0, c.x0), min(b.y0, c.y0), max(b.x1, c.x1), max(b.y1, c.y1)}
}
func (b box) meets(c box) bool {
	return b.x0 < c.x1 && c.x0 < b.x1 && b.y0 < c.y1 && c.y0 < b.y1
}

// shape is one path before it is placed.
type shape struct {
	ops    []page.Op
	pts    []vec
	fill   *page.Colour
	stroke *page.Colour
	width  float64
	dash   []float64
	butt   bool // square ends; round otherwise
}

// reach bounds the control points and the stroke: never smaller than the ink.
func (p *shape) reach() box {
	b := nowhere
	for _, q := range p.pts {
		b = b.join(box{q.x, q.y, q.x, q.y})
	}
	if p.stroke != nil {
		b = b.grow(p.width / 2)
	}
	return b
}

// sketch is a drawing in the making: elements (a leaf, a fruit with its
// stalk), each of some shapes. An element is kept or dropped whole.
type sketch struct {
	spec     Spec
	box      box
	keep     []box
	flipX    bool
	flipY    bool
	density  float64
	tint     tint
	motif    string
	rng      *rand.Rand
	elements [][]shape
	depth    int
	clusters int     // drawn so far
	asked    bool    // where the free zones are: it grows around them
	fine     float64 // how fine leaves are, 1 usual, less when room is short
}

func newSketch(name string, s Spec, fine float64) *sketch {
	h := fnv.New64a()
	h.Write([]byte(name))
	k := &sketch{
		spec: s, box: boxOf(s.Rect), density: s.Density, tint: tintOf(s), motif: s.Motif,
		fine: fine, flipX: s.FlipX, flipY: s.FlipY,
		rng: rand.New(rand.NewPCG(s.Seed, h.Sum64())),
	}
	if k.motif == "" {
		k.motif = s.Palette.Motif
	}
	if !(k.density > 0) {
		k.density = 1
	}
	k.density = min(max(k.density, 0.3), 2.5)
	for _, r := range s.Keep {
		if r.W > 0 && r.H > 0 {
			k.keep = append(k.keep, boxOf(r))
		}
	}
	return k
}

// element groups what draw draws.
func (k *sketch) element(draw func()) {
	if k.depth == 0 {
		k.elements = append(k.elements, make([]shape, 0, 4))
	}
	k.depth++
	draw()
	k.depth--
}

func (k *sketch) put(p shape) {
	if k.depth == 0 {
		k.elements = append(k.elements, make([]shape, 0, 4))
	}
	last := len(k.elements) - 1
	k.elements[last] = append(k.elements[last], p)
}

// vary gives a value between 1-by and 1+by.
func (k *sketch) vary(by float64) float64 { return 1 + (2*k.rng.Float64()-1)*by }

// between gives a value from a to b.
func (k *sketch) between(a, b float64) float64 { return a + (b-a)*k.rng.Float64() }

// turn gives an angle between -by and by, in radians.
func (k *sketch) turn(by float64) float64 { return (2*k.rng.Float64() - 1) * by }

// air is what scattered pieces keep from type, mm, so that no dot can be taken
// for a full stop.
const air = 1.2

// free reports whether a disc keeps off the keep-out zones and in the box.
func (k *sketch) free(c vec, r float64) bool {
	if c.x-r < k.box.x0 || c.x+r > k.box.x1 || c.y-r < k.box.y0 || c.y+r > k.box.y1 {
		return false
	}
	r += air
	k.asked = true
	return !meetsAny([]box{{c.x - r, c.y - r, c.x + r, c.y + r}}, k.keep)
}

func (k *sketch) extent() box {
	b := nowhere
	for _, e := range k.elements {
		for i := range e {
			b = b.join(e[i].reach())
		}
	}
	return b
}

// mirror turns the finished drawing over.
func (k *sketch) mirror() {
	if !k.flipX && !k.flipY {
		return
	}
	for _, e := range k.elements {
		for i := range e {
			for j, p := range e[i].pts {
				if k.flipX {
					p.x = k.box.x0 + k.box.x1 - p.x
				}
				if k.flipY {
					p.y = k.box.y0 + k.box.y1 - p.y
				}
				e[i].pts[j] = p
			}
		}
	}
}

// rounding is how far the final micrometre grid may move a point and a hairline
// be widened, with room.
const rounding = 0.047

// fit shrinks the drawing into its box when it is too large, and moves it in
// when it stands over an edge.
func (k *sketch) fit() {
	have, room := k.extent(), k.box.grow(-rounding)
	if have.empty() || room.empty() {
		return
	}
	s := min(1, room.w()/max(have.w(), 1e-9), room.h()/max(have.h(), 1e-9))
	if s == 1 && have.x0 >= room.x0 && have.y0 >= room.y0 && have.x1 <= room.x1 && have.y1 <= room.y1 {
		return
	}
	from := have.centre()
	half := vec{have.w() * s / 2, have.h() * s / 2}
	to := vec{
		min(max(from.x, room.x0+half.x), room.x1-half.x),
		min(max(from.y, room.y0+half.y), room.y1-half.y),
	}
	for _, e := range k.elements {
		for i := range e {
			e[i].width *= s
			for j, p := range e[i].pts {
				e[i].pts[j] = to.add(p.sub(from).mul(s))
			}
		}
	}
}

// finish places the drawing.
func (k *sketch) finish() *plant {
	k.fit()
	k.mirror()
	p := &plant{elements: k.elements, reach: make([][]box, len(k.elements))}
	for i, e := range k.elements {
		for j := range e {
			p.reach[i] = append(p.reach[i], e[j].reach().grow(rounding))
			p.points += len(e[j].pts)
		}
	}
	return p
}

// micro rounds to the micrometre: finer than any printer, short in the file.
func micro(mm float64) unit.Length {
	return unit.Length(math.Round(mm*1000)) * unit.Micrometre
}
