package notes

import (
	"fmt"
	"slices"
	"strconv"
)

// whichJars is asked of a count without a size.
const whichJars = `jars of which size? Write jar = "8 fl oz" or another`

// gotten puts what was filled beside what a recipe promised. A count without a
// size is of the recipe's jars where it names one size alone; and where anything was
// counted the promise is no second plan.
func (r *Reading) gotten() {
	promised, lines, got := []Fill{}, []int{}, false
	for i, l := range r.Lines {
		for _, f := range l.Fills {
			if !f.Planned {
				got = true
				continue
			}
			if !slices.Contains(lines, i) {
				lines = append(lines, i)
			}
			if !slices.ContainsFunc(promised, func(p Fill) bool { return p.Jar == f.Jar && p.Said == f.Said }) {
				promised = append(promised, f)
			}
		}
	}
	if !got || len(promised) == 0 {
		return
	}
	for i := range r.Lines {
		r.Lines[i].ofPromised(promised, r.Lines[lines[0]].No)
	}
}

// ofPromised settles the fills of a line by those a recipe promised at another.
func (l *Line) ofPromised(promised []Fill, at int) {
	for k := range l.Fills {
		f := &l.Fills[k]
		switch {
		case f.Planned:
			f.Outdone = true
			l.Says = append(l.Says, fmt.Sprintf("the recipe says %s; what was filled counts", strconv.FormatFloat(f.Low, 'f', -1, 64)))
		case f.Jar == "" && f.Said == "" && len(promised) == 1 && promised[0].Jar != "" && slices.Contains(l.Asks, whichJars):
			f.Jar = promised[0].Jar
			l.Asks = slices.DeleteFunc(l.Asks, func(a string) bool { return a == whichJars })
			l.Says = append(l.Says, fmt.Sprintf("taken for the jars of line %d", at))
		}
	}
}
