package main

import (
	"fmt"
	"strings"
	"text/tabwriter"

	"jarmark/internal/app/job"
)

// topic prints the keys of a file the maker writes; false when there is no such
// file.
func (a *app) topic(name string) bool {
	for _, t := range job.Topics() {
		if t.Name != name {
			continue
		}
		fmt.Fprintln(a.out, t.About)
		for _, p := range t.Parts {
			fmt.Fprintln(a.out)
			if p.Head != "" {
				fmt.Fprintln(a.out, p.Head)
			}
			w := tabwriter.NewWriter(a.out, 0, 4, 2, ' ', 0)
			for _, r := range p.Rows {
				what := r[1]
				if r[2] != "" {
					what += " (" + r[2] + ")"
				}
				fmt.Fprintln(w, "  "+strings.Join([]string{r[0], r[3], what}, "\t"))
			}
			w.Flush()
		}
		return true
	}
	return false
}
