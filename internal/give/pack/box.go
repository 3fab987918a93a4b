package pack

import (
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
)

// Box is one crate or carton of a stop.
type Box struct {
	Parts []Part
	Jars  int
	Gross unit.Mass // jars alone
}

// Part is jars of one size in a box.
type Part struct {
	JarText string
	Lot     string
	Count   int
}

// boxes fills boxes of one size each as far as they go, then puts what is
// left of every size together. A box holds no more jars than the kitchen's
// boxes do and weighs no more than the limit, except a single jar that is
// heavier by itself.
func (b *builder) boxes(lines []Line) []Box {
	var full, open []Box
	holds := b.holds()
	for _, size := range sizesOf(lines) {
		var cur Box
		for _, l := range lines {
			if l.Jar.Key != size {
				continue
			}
			each := b.plan.Stock[l.stock].Gross
			for left := l.Count; left > 0; {
				n := min(left, b.room(cur, holds, each))
				if n <= 0 {
					full, cur = append(full, cur), Box{}
					continue
				}
				cur.add(l, n, each)
				left -= n
			}
		}
		if cur.Jars == holds {
			full = append(full, cur)
		} else if cur.Jars > 0 {
			open = append(open, cur)
		}
	}
	return append(full, b.together(open, holds)...)
}

// together puts part-filled boxes into one another, first fit.
func (b *builder) together(open []Box, holds int) []Box {
	var out []Box
next:
	for _, o := range open {
		for i := range out {
			if t := &out[i]; t.Jars+o.Jars <= holds && t.Gross+o.Gross <= b.o.MaxBox {
				t.Parts, t.Jars, t.Gross = append(t.Parts, o.Parts...), t.Jars+o.Jars, t.Gross+o.Gross
				continue next
			}
		}
		out = append(out, o)
	}
	return out
}

// room is how many more jars a box takes; an empty box takes at least one.
func (b *builder) room(x Box, holds int, each unit.Mass) int {
	n := holds - x.Jars
	if each > 0 {
		n = min(n, int((b.o.MaxBox-x.Gross)/each))
	}
	if x.Jars == 0 {
		return max(n, 1)
	}
	return max(n, 0)
}

func (x *Box) add(l Line, n int, each unit.Mass) {
	x.Jars += n
	x.Gross += each * unit.Mass(n)
	for i := range x.Parts {
		if x.Parts[i].JarText == l.JarText && x.Parts[i].Lot == l.Lot {
			x.Parts[i].Count += n
			return
		}
	}
	x.Parts = append(x.Parts, Part{l.JarText, l.Lot, n})
}

func (b *builder) holds() int {
	for _, r := range b.results {
		if r.Kitchen != nil && r.Kitchen.Supplies.BoxHolds > 0 {
			return min(r.Kitchen.Supplies.BoxHolds, maxJars)
		}
	}
	return batch.DefaultBoxHolds
}

// sizesOf lists the jar keys of lines, each once, in order.
func sizesOf(lines []Line) []string {
	var out []string
	for _, l := range lines {
		out = append(out, l.Jar.Key)
	}
	return unique(out)
}
