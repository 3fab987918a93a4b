package us

import (
	"fmt"
	"strings"

	"jarmark/internal/law/draft"
)

// namings reports ingredients, and parts of them, that are not called as they
// must be.
func (p *pass) namings() {
	for _, n := range p.Set.Namings {
		if len(n.NameSays) > 0 && draft.Said(p.B.Name, n.NameSays, nil) != "" {
			continue
		}
		for _, e := range p.list {
			for i, name := range append([]string{e.name}, partNames(e)...) {
				of := name // a whole is settled by its parts too: food coloring (Blue 1)
				if i == 0 {
					of += " " + strings.Join(partNames(e), ", ")
				}
				if draft.Said(name, n.Words, n.Unless) != "" && draft.Said(of, n.Settled, nil) == "" {
					p.Tell(n.Level, n.ID, p.BatchFile(), draft.LinePath(e.line), fmt.Sprintf("%q %s", name, n.Text)).Hinted(n.Hint).Cited(n.Cite)
					break
				}
			}
		}
	}
}

func partNames(e entry) (out []string) {
	for _, part := range e.line.Contains {
		out = append(out, part.Name)
	}
	return out
}
