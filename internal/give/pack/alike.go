package pack

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"jarmark/internal/give/table"
)

// alike is a finding that several rows share: it is told at the first, and the
// others are counted there.
type alike struct {
	at   int   // in the findings
	rows []int // lines of the others
}

// again reports whether a finding of this key was told before; then the row is
// only noted. Else the next finding is the one to be told.
func (b *builder) again(line int, key ...string) bool {
	k := strings.Join(key, "\x00")
	if a := b.shared[k]; a != nil {
		a.rows = append(a.rows, line)
		return true
	}
	if b.shared == nil {
		b.shared = map[string]*alike{}
	}
	b.shared[k] = &alike{at: len(b.found)}
	return false
}

// mostLines is how many lines of a finding's other rows are named.
const mostLines = 8

// gather names the other rows at the finding they share.
func (b *builder) gather() {
	for _, k := range slices.Sorted(maps.Keys(b.shared)) {
		a := b.shared[k]
		n := len(a.rows)
		if n == 0 {
			continue
		}
		var lines []string
		for _, r := range a.rows[:min(n, mostLines)] {
			lines = append(lines, fmt.Sprint(r))
		}
		d := &b.found[a.at]
		d.Message += fmt.Sprintf("; so with %s, %s %s", table.Count(n, "row more", "rows more"), table.Plural(n, "line", "lines"), table.Join(lines))
		if n > mostLines {
			d.Message += " and after"
		}
	}
	b.shared = nil
}
