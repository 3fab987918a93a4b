package ornament

import (
	"math"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/palette"
)

// body frame of one fruit: places in units of its radius, stalk up.
type easel struct {
	k     *sketch
	c     vec
	r     float64
	angle float64
}

func (e easel) p(x, y float64) vec {
	cos, sin := math.Cos(e.angle), math.Sin(e.angle)
	return e.c.add(vec{(x*cos - y*sin) * e.r, (x*sin + y*cos) * e.r})
}

func (e easel) all(xy ...float64) []vec {
	out := make([]vec, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		out = append(out, e.p(xy[i], xy[i+1]))
	}
	return out
}

// mirror gives the closed outline of a fruit from its right half, listed
// from the top down: x, y, x, y …; the points on the axis (x = 0) once.
func (e easel) mirror(right ...float64) []vec {
	pts := e.all(right...)
	for i := len(right) - 2; i >= 0; i -= 2 {
		if x := right[i]; x != 0 {
			pts = append(pts, e.p(-x, right[i+1]))
		}
	}
	return pts
}

// form fills an outline with colour, its shadow side at the lower right.
func (e easel) form(outline []vec, fruit, shade page.Colour) {
	k := e.k
	if k.tint.line {
		k.body(smooth(outline, true), fruit)
		return
	}
	k.body(smooth(outline, true), palette.Mix(fruit, shade, 0.7))
	inner := make([]vec, len(outline))
	lightward := vec{-0.055 * e.r, -0.05 * e.r}
	for i, q := range outline {
		inner[i] = e.c.add(q.sub(e.c).mul(0.905)).add(lightward)
	}
	k.body(smooth(inner, true), fruit)
}

// glow is a soft lighter patch and a glint on it.
func (e easel) glow(x, y, rx, ry, tilt float64) {
	k := e.k
	k.shadeBody(spot(e.p(x, y), rx*e.r, ry*e.r, tilt+e.angle), palette.Mix(k.tint.fruit, k.tint.light, 0.34))
	k.shadeBody(spot(e.p(x-0.02, y-0.05), rx*e.r*0.42, ry*e.r*0.4, tilt+e.angle), palette.Mix(k.tint.fruit, k.tint.light, 0.88))
}

// stalk draws a stem through points, thickness in parts of the radius.
func (e easel) stalk(width float64, xy ...float64) {
	e.k.stroke(smooth(e.all(xy...), false), e.k.tint.stem, max(0.11, width*e.r))
}

// leafAt draws a leaf in the frame's units; angle 0 points right.
func (e easel) leafAt(x, y, angle, length float64, b blade, bend float64, tone int) {
	e.k.leaf(e.p(x, y), angle+e.angle, length*e.r, b, bend, tone)
}

// motif is one kind of fruit: how it is drawn alone, and whether its clusters
// on a twig are three small round ones or one fruit.
type motif struct {
	draw  func(easel)
	small func(easel) // one of a trio; nil: a single fruit stands on the twig
}

// motifs lists the fruits. A new one is a function and a line here, and a
// word in the motif column of palette's fruit-colours.csv.
func motifs() map[string]motif {
	round := func(e easel) { e.k.berry(e.c, e.r*0.95, false) }
	own := func(e easel) { e.k.bead(e.c, e.r*0.95) }
	return map[string]motif{
		"berry":       {berrySprig, round},
		"currant":     {currants, own},
		"elder":       {elder, own},
		"blueberry":   {blueberries, crowned},
		"gooseberry":  {gooseberry, striped},
		"cherry":      {cherries, nil},
		"grape":       {grapes, own},
		"strawberry":  {strawberry, nil},
		"bramble":     {bramble, nil},
		"apricot":     {apricot, nil},
		"peach":       {peach, nil},
		"plum":        {plum, nil},
		"apple":       {apple, nil},
		"pear":        {pear, nil},
		"fig":         {fig, nil},
		"pomegranate": {pomegranate, nil},
		"citrus":      {citrusSlice, nil},
		"kiwi":        {kiwi, nil},
		"pineapple":   {pineapple, nil},
		"rhubarb":     {rhubarb, nil},
		"tomato":      {tomato, nil},
		"pumpkin":     {pumpkin, nil},
		"carrot":      {carrot, nil},
		"chilli":      {chilli, nil},
		"wheat":       {ear, round},
		"anise":       {anise, round},
		"leaf":        {leafSprig, round},
		"blossom":     {flower, nil},
		"lavender":    {lavender, floret},
	}
}

func (k *sketch) motifOf() motif {
	all := motifs()
	if m, ok := all[k.motif]; ok {
		return m
	}
	return all["berry"]
}

// wear makes the drawing one of a named fruit: in the label's colours when it
// is the label's own fruit, else in those the fruit has by nature.
func (k *sketch) wear(motif string) {
	own := k.motif == motif
	k.motif = motif
	if p, ok := palette.ByMotif(motif); ok && !own {
		s := k.spec
		s.Palette.Berry, s.Palette.Highlight, s.Palette.Shade = p.Berry, p.Highlight, p.Shade
		k.tint = tintOf(s)
	}
}

// hero draws the motif itself, with its leaves, to a radius.
func (k *sketch) hero(c vec, r, angle float64) {
	k.element(func() { k.motifOf().draw(easel{k, c, r, angle}) })
}

// cluster draws fruit sitting on a twig: three small ones or one.
func (k *sketch) cluster(c vec, heading, side, r float64) {
	m := k.motifOf()
	k.clusters++
	if k.tint.dark && k.clusters%2 == 0 { // gold berries light up a dark ground
		m = motif{small: func(e easel) { e.k.berry(e.c, e.r*0.95, true) }}
	}
	if m.small == nil {
		k.element(func() {
			at := offset(c, heading, side*r*0.32)
			lean := math.Mod(heading+math.Pi, math.Pi)
			if lean > math.Pi/2 {
				lean -= math.Pi
			}
			m.draw(easel{k, at, r * 0.88, lean*0.35 + k.turn(0.2)})
		})
		return
	}
	size := r * 0.37
	spread := size * 1.14
	start := heading + k.turn(0.35)
	at := offset(c, heading, side*r*0.12)
	k.element(func() {
		for i := range 3 {
			q := at.add(polar(start+side*math.Pi/2+float64(i)*2*math.Pi/3, spread))
			m.small(easel{k, q, size * k.vary(0.07), k.turn(0.4)})
		}
	})
}
