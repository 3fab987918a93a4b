package design

import "slices"

// flat is the look with its arches lying flat, so that their ends take nothing of
// the width.
func (l Look) flat() Look {
	low := slices.Clone(l.Ornaments)
	for i, o := range low {
		if o.Spot == "top" {
			low[i].Reach = 0
		}
	}
	l.Ornaments = low
	return l
}

// Flattened reports whether an arch of the look as written lies flat.
func (l Look) Flattened(own Look) bool {
	return slices.ContainsFunc(l.Ornaments, func(o Ornament) bool {
		return o.Reach == 0 && slices.ContainsFunc(own.Ornaments, func(was Ornament) bool { return was.Spot == o.Spot && was.Reach > was.Size })
	})
}
