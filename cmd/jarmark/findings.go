package main

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
)

const findingsHelp = `what jarmark may find, how grave it is, and what an error of it stops; "sale" is
labels for sale, while gifts may be printed. A note or a warning stops nothing.

`

// findings explains the register of findings: all of them, or those named, as
// check --json gives their codes.
func (a *app) findings(wanted []string) int {
	var codes []string
	for _, c := range diag.Codes() {
		codes = append(codes, c.Code)
	}
	if len(wanted) == 0 {
		wanted = codes
		fmt.Fprint(a.out, findingsHelp)
	}
	var rows [][]string
	for _, w := range wanted {
		c, ok := diag.Explain(w)
		if !ok {
			hint := "jarmark help findings lists them"
			if near, ok := diag.DidYouMean(w, codes); ok {
				hint = "did you mean " + near + "? " + hint
			}
			return a.fail(usagef(hint, "no finding %q", w))
		}
		rows = append(rows, []string{c.Code, strings.ReplaceAll(c.Severities, " ", ", "), strings.ReplaceAll(c.Blocks, " ", ", "), c.Meaning})
	}
	return a.fail(a.list(&options{}, []string{"finding", "told as", "stops", "meaning"}, rows))
}
