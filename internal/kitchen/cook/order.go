package cook

import "sort"

func sortedByMass(in []Line) []Line {
	out := append([]Line(nil), in...)
	sort.SliceStable(out, func(i, j int) bool { return out[i].Mass > out[j].Mass })
	return out
}
