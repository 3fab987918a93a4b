package ornament

import "math"

// spine is the twig a spray grows along: a curve known by distance.
type spine struct {
	pts    []vec
	run    []float64 // distance from the start at each point
	closed bool
}

func newSpine(closed bool, n int, at func(t float64) vec) *spine {
	s := &spine{closed: closed}
	for i := 0; i <= n; i++ {
		p := at(float64(i) / float64(n))
		d := 0.0
		if i > 0 {
			d = s.run[i-1] + p.sub(s.pts[i-1]).len()
		}
		s.pts, s.run = append(s.pts, p), append(s.run, d)
	}
	return s
}

// bezier is a spine along one cubic.
func bezier(a, b, c, d vec) *spine {
	return newSpine(false, 48, func(t float64) vec {
		u := 1 - t
		return a.mul(u * u * u).add(b.mul(3 * u * u * t)).add(c.mul(3 * u * t * t)).add(d.mul(t * t * t))
	})
}

func (s *spine) length() float64 { return s.run[len(s.run)-1] }

// at gives the place and the direction at a distance along the spine.
func (s *spine) at(d float64) (vec, float64) {
	return s.raw(d), s.heading(d)
}

// heading is smoothed over a short stretch, so that leaves turn evenly.
func (s *spine) heading(d float64) float64 {
	h := s.length() / 60
	a, b := s.raw(d-h), s.raw(d+h)
	return math.Atan2(b.y-a.y, b.x-a.x)
}

func (s *spine) raw(d float64) vec {
	if s.closed {
		d = math.Mod(math.Mod(d, s.length())+s.length(), s.length())
	}
	d = min(max(d, 0), s.length())
	i := 1
	for i < len(s.run)-1 && s.run[i] < d {
		i++
	}
	t := 0.0
	if step := s.run[i] - s.run[i-1]; step > 0 {
		t = (d - s.run[i-1]) / step
	}
	return s.pts[i-1].lerp(s.pts[i], t)
}

// line traces the spine from one distance to another through n points.
func (s *spine) line(from, to float64, n int) *trace {
	pts := make([]vec, 0, n+1)
	for i := 0; i <= n; i++ {
		p := s.raw(from + (to-from)*float64(i)/float64(n))
		pts = append(pts, p)
	}
	return smooth(pts, false)
}

// offset moves a place to the left (negative) or right of the spine.
func offset(p vec, heading, by float64) vec {
	return p.add(polar(heading+math.Pi/2, by))
}
