package page

// seal is what is measured once of a path that stands on many labels.
type seal struct {
	bounds Rect
	parts  []piece
}

// piece is one part of a path, from a MoveTo to the next.
type piece struct {
	ops    []Op
	pts    []Point
	lo, hi Point // the box of its points
}

// Seal measures a path that is finished and will stand on many labels; it must
// not be changed after.
func (p *Path) Seal() {
	p.sealed = nil
	p.sealed = &seal{bounds: p.Bounds(), parts: p.pieces()}
}

// Sealed reports whether a path is finished and shared.
func (p *Path) Sealed() bool { return p.sealed != nil }

// pieces parts a path; a broken one is a single piece.
func (p *Path) pieces() (out []piece) {
	if p.sealed != nil {
		return p.sealed.parts
	}
	from, at := 0, 0
	ops, pts := p.Ops, p.Pts
	cut := func(to, end int) {
		if end > at {
			lo, hi := hull(pts[at:end])
			out = append(out, piece{ops[from:to], pts[at:end], lo, hi})
		}
		from, at = to, end
	}
	n := 0
	for i, op := range ops {
		if op == MoveTo {
			cut(i, n)
		}
		if n += taken[op]; n > len(pts) {
			n = len(pts)
			break
		}
	}
	cut(len(ops), n)
	return out
}

// taken is how many points each operation takes.
var taken = [...]int{MoveTo: 1, LineTo: 1, CubicTo: 3, Close: 0}
