package artwork

import "slices"

// chain is a part of an outline on the side that is kept, from where it comes in over
// the line to where it goes out.
type chain struct {
	spots []spot
	used  bool
}

// end is one end of a chain on the line.
type end struct {
	chain int
	in    bool
	at    float64 // along the line
	mate  int     // the end it is joined to, along the line
}

// cut keeps the side of polygons where a linear function is not below zero. What is cut
// open is closed along the line between each two ends with the inside between them, so
// that no line runs over a hole.
func cut(parts [][]spot, evenOdd bool, side func(spot) float64) (out [][]spot) {
	var chains []chain
	for _, part := range parts {
		whole, cuts := chainsOf(part, side)
		if whole {
			out = append(out, part)
		}
		chains = append(chains, cuts...)
	}
	if len(chains) == 0 {
		return out
	}
	ends := endsOf(chains)
	pair(ends, evenOdd)
	where := make([][2]int, len(chains)) // of a chain, its ends in the list
	for i, e := range ends {
		where[e.chain][oneIf(!e.in)] = i
	}
	for i := range chains {
		if !chains[i].used {
			out = append(out, joined(chains, ends, where, i))
		}
	}
	return out
}

func oneIf(b bool) int {
	if b {
		return 1
	}
	return 0
}

// chainsOf cuts one outline; whole says that all of it is kept.
func chainsOf(part []spot, side func(spot) float64) (whole bool, out []chain) {
	n := len(part)
	v := make([]float64, n)
	first := -1 // the first spot that is kept after one that is not
	for i, q := range part {
		v[i] = side(q)
	}
	for i := range part {
		if v[i] >= 0 && v[(i+n-1)%n] < 0 {
			first = i
			break
		}
	}
	if first < 0 {
		return n > 2 && v[0] >= 0, nil
	}
	between := func(i, j int) spot {
		t := v[i] / (v[i] - v[j])
		return spot{part[i].x + (part[j].x-part[i].x)*t, part[i].y + (part[j].y-part[i].y)*t}
	}
	for k := range n {
		i := (first + k) % n
		before := (i + n - 1) % n
		switch {
		case v[i] >= 0 && v[before] < 0:
			out = append(out, chain{spots: []spot{between(before, i), part[i]}})
		case v[i] >= 0:
			last := &out[len(out)-1]
			last.spots = append(last.spots, part[i])
		case v[before] >= 0:
			last := &out[len(out)-1]
			last.spots = append(last.spots, between(before, i))
		}
	}
	return false, out
}

// endsOf lists the ends of chains along the line they lie on.
func endsOf(chains []chain) (ends []end) {
	a, far := chains[0].spots[0], spot{}
	most := -1.0
	for _, c := range chains { // the line runs from one end to the farthest
		for _, q := range []spot{c.spots[0], c.spots[len(c.spots)-1]} {
			if d := (q.x-a.x)*(q.x-a.x) + (q.y-a.y)*(q.y-a.y); d > most {
				most, far = d, q
			}
		}
	}
	along := func(q spot) float64 { return (q.x-a.x)*(far.x-a.x) + (q.y-a.y)*(far.y-a.y) }
	for i, c := range chains {
		ends = append(ends, end{chain: i, in: true, at: along(c.spots[0])}, end{chain: i, at: along(c.spots[len(c.spots)-1])})
	}
	slices.SortStableFunc(ends, func(a, b end) int {
		switch {
		case a.at < b.at:
			return -1
		case a.at > b.at:
			return 1
		}
		return 0
	})
	return ends
}

// pair joins each two ends with the inside between them: one after the other, or where
// the turns of an outline count, each way in with its way out.
func pair(ends []end, evenOdd bool) {
	var open []int
	for i := range ends {
		if n := len(open); n > 0 && (evenOdd || ends[open[n-1]].in != ends[i].in) {
			ends[i].mate, ends[open[n-1]].mate = open[n-1], i
			open = open[:n-1]
			continue
		}
		open = append(open, i)
	}
}

// joined goes along chains from one until it comes back to it.
func joined(chains []chain, ends []end, where [][2]int, first int) (out []spot) {
	at, forward := first, true
	for !chains[at].used {
		c := &chains[at]
		c.used = true
		spots := c.spots
		if !forward {
			spots = slices.Clone(spots)
			slices.Reverse(spots)
		}
		out = append(out, spots...)
		next := ends[ends[where[at][oneIf(forward)]].mate]
		at, forward = next.chain, next.in
	}
	return out
}
