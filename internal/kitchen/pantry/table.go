package pantry

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"sort"
	"strconv"
	"strings"
)

// table is one CSV file with named columns; it collects faults and goes on.
type table struct {
	name string
	col  map[string]int
	said []string // the languages, in order
	rows [][]string
	err  error
}

func readTable(from fs.FS, name string) *table {
	t := &table{name: name, col: map[string]int{}}
	f, err := from.Open("pantry/" + name + ".csv")
	if err != nil {
		t.err = err
		return t
	}
	defer f.Close()
	t.parse(csv.NewReader(f))
	return t
}

func (t *table) parse(r *csv.Reader) {
	rows, err := r.ReadAll()
	if err != nil || len(rows) == 0 {
		t.err = fmt.Errorf("%s.csv: no rows: %w", t.name, err)
		return
	}
	for i, name := range rows[0] {
		t.col[name] = i
	}
	t.rows = rows[1:]
}

// languages lists the languages of the columns name_<language>, in order.
func (t *table) languages() []string {
	if t.said == nil {
		t.said = []string{}
		for name := range t.col {
			if lang, ok := strings.CutPrefix(name, "name_"); ok {
				t.said = append(t.said, lang)
			}
		}
		sort.Strings(t.said)
	}
	return t.said
}

// between lists the columns that stand between two others, in their order.
func (t *table) between(first, last string) (out []string) {
	for name, i := range t.col {
		if i > t.col[first] && i < t.col[last] {
			out = append(out, name)
		}
	}
	slices.SortFunc(out, func(a, b string) int { return t.col[a] - t.col[b] })
	return out
}

// each calls f for every row.
func (t *table) each(f func(r row)) {
	for i := range t.rows {
		f(row{t, i})
	}
}

// row is one line of a table.
type row struct {
	t *table
	n int
}

func (r row) fail(col, why string) {
	err := fmt.Errorf("%s.csv: line %d: %s: %s", r.t.name, r.n+2, col, why)
	r.t.err = errors.Join(r.t.err, err)
}

// text gives a cell; a missing column is a fault of the table.
func (r row) text(col string) string {
	i, ok := r.t.col[col]
	if !ok {
		r.fail(col, "no such column")
		return ""
	}
	return strings.TrimSpace(r.t.rows[r.n][i])
}

// need is text that must not be empty.
func (r row) need(col string) string {
	s := r.text(col)
	if s == "" {
		r.fail(col, "empty")
	}
	return s
}

// number gives a cell as a number, or blank when it is empty.
func (r row) number(col string, blank float64) float64 {
	s := r.text(col)
	if s == "" {
		return blank
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || v != v || v > 1e9 || v < -1e9 {
		r.fail(col, fmt.Sprintf("%q is not a number", s))
		return blank
	}
	return v
}

// yes gives a cell that says yes or no; an empty one says no.
func (r row) yes(col string) bool {
	s := r.text(col)
	if s != "" && s != "yes" && s != "no" {
		r.fail(col, fmt.Sprintf("%q is neither yes nor no", s))
	}
	return s == "yes"
}

// list splits a cell at "|".
func (r row) list(col string) []string {
	var out []string
	for _, s := range strings.Split(r.text(col), "|") {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}
