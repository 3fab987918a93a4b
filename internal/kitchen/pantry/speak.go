package pantry

import (
	"slices"
	"strings"
)

// Speaking gives the pantry that also finds its built-in rows by the names of
// another language, by key ("strawberry" -> "Erdbeeren"). They win over the
// English words: "raisins" are grapes in French. The receiver is not changed.
func (p *Pantry) Speaking(names map[string]string) *Pantry {
	if len(names) == 0 {
		return p
	}
	q := *p
	q.spoken = map[string]int{}
	put := func(form string, i int) {
		if _, taken := q.spoken[form]; !taken && form != "" {
			q.spoken[form] = i
		}
	}
	for i, g := range p.ingredients { // one name for two rows: the first
		put(fold(names[g.Key]), i)
	}
	for i, g := range p.ingredients {
		for _, form := range singulars(fold(names[g.Key])) {
			put(form, i)
		}
	}
	return &q
}

// singulars cuts the endings German plurals take; what is no word harms none.
func singulars(form string) (out []string) {
	for _, end := range []string{"n", "en", "e"} {
		if cut, ok := strings.CutSuffix(form, end); ok && len(cut) >= 4 {
			out = append(out, cut)
		}
	}
	return slices.Compact(out)
}
