package diag

import (
	_ "embed"
	"encoding/csv"
	"slices"
	"strings"
	"sync"
)

//go:embed codes.csv
var codesCSV string

// Use is what a finding can stand in the way of.
type Use string

// The uses of a batch. A row of codes.csv that says "everything" stands in the
// way of all of them; "sale" of labels for sale, while gifts may be printed.
const (
	Sale     Use = "sale"
	Labels   Use = "labels"
	Record   Use = "record"
	Packing  Use = "packing"
	Scaling  Use = "scaling"
	Weighing Use = "weighing"
)

// Code is one row of the register of findings.
type Code struct {
	Code       string
	Severities string // those it may be told with, such as "error note"
	Blocks     string // what its error stops: "nothing", "everything", or uses
	Meaning    string
}

// Codes lists the register in its order: by code.
var Codes = sync.OnceValue(func() (out []Code) {
	rows, err := csv.NewReader(strings.NewReader(codesCSV)).ReadAll()
	if err != nil {
		panic("codes.csv: " + err.Error()) // built in, and tested
	}
	for _, r := range rows[1:] {
		out = append(out, Code{r[0], r[1], r[2], r[3]})
	}
	return out
})

// Explain gives the row of a code.
func Explain(code string) (Code, bool) {
	i := slices.IndexFunc(Codes(), func(c Code) bool { return c.Code == code })
	if i < 0 {
		return Code{}, false
	}
	return Codes()[i], true
}

var blocks = sync.OnceValue(func() map[string][]string {
	out := map[string][]string{}
	for _, c := range Codes() {
		out[c.Code] = strings.Fields(c.Blocks)
	}
	return out
})

// Blocks reports whether an error of this code stands in the way of a use. A
// code that is not in the register stops everything.
func (d Diagnostic) Blocks(u Use) bool {
	what, known := blocks()[d.Code]
	return !known || slices.Contains(what, "everything") || slices.Contains(what, string(u)) ||
		u == Sale && slices.Contains(what, string(Labels))
}

// Against gives the errors that stand in the way of a use.
func (l List) Against(u Use) (out List) {
	for _, d := range l {
		if d.Severity == Error && d.Blocks(u) {
			out = append(out, d)
		}
	}
	return out
}
