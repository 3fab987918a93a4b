package cook

import (
	"cmp"
	"slices"
)

func sortedByMass(in []Line) []Line {
	out := slices.Clone(in)
	slices.SortStableFunc(out, func(a, b Line) int { return cmp.Compare(b.Mass, a.Mass) })
	return out
}
