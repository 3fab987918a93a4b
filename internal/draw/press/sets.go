package press

import (
	"slices"
	"strings"

	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// onEachJar are the pieces of which every jar has one.
var onEachJar = []label.Piece{label.Wrap, label.Front, label.InfoLabel, label.Lid, label.Tag, label.SealStrip}

// inSets prints several pieces for the same jars as whole sets, where they come
// on the same plain paper and take no more of it so. It gives the stacks that
// stay by themselves.
func (p *Press) inSets(stacks []Stack, o *Order) (rest []Stack, out []Run, found diag.List) {
	if o.Skip > 0 || o.Trimmed {
		return stacks, nil, nil // rows that are gone, or no paper at all
	}
	papers, at := [][]Stack(nil), map[string]int{}
	for _, s := range stacks {
		if !s.sheet.Auto || s.sheet.Endless || !slices.Contains(onEachJar, s.Piece) || o.PartSheets[s.sheet.ID] > 0 {
			rest = append(rest, s)
			continue
		}
		i, ok := at[s.sheet.ID]
		if !ok {
			i, papers = len(papers), append(papers, nil)
			at[s.sheet.ID] = i
		}
		papers[i] = append(papers[i], s)
	}
	for _, mine := range papers {
		run, l, ok := o.setRun(mine)
		if !ok {
			rest = append(rest, mine...)
			continue
		}
		out, found = append(out, run), append(found, l...)
	}
	return rest, out, found
}

// setRun is the run of sets from stacks on one paper; ok is false where they are
// better printed each kind by itself.
func (o *Order) setRun(stacks []Stack) (r Run, found diag.List, ok bool) {
	var kinds []string
	for _, s := range stacks {
		if !slices.Contains(kinds, string(s.Piece)) {
			kinds = append(kinds, string(s.Piece))
		}
	}
	if len(kinds) < 2 {
		return Run{}, nil, false
	}
	paper, sets := stacks[0].sheet, setsOf(stacks)
	run, found := sheet.FillSets(sets, paper, o.printOptions(paper))
	if run.Doc == nil {
		return Run{}, nil, false
	}
	alone, labels := 0, 0
	for _, s := range gather(stacks) {
		each, _ := sheet.Fill(s.labels, paper, o.printOptions(paper))
		if each.Doc == nil {
			return Run{}, nil, false // which says what is wrong
		}
		alone, labels = alone+len(each.Doc.Pages), labels+len(s.labels)
	}
	if len(run.Doc.Pages) > alone {
		return Run{}, nil, false
	}
	piece := strings.Join(kinds, " + ")
	o.Describe(run.Doc, piece)
	return Run{Piece: label.Piece(piece), Sets: len(sets), Sheet: paper, Doc: run.Doc, Labels: labels, Used: run.Used, Cells: run.Cells}, found, true
}

// setsOf deals the labels of stacks to jars: the first of each kind to the first
// jar of its size.
func setsOf(stacks []Stack) (out []sheet.Set) {
	var jars []string
	for _, s := range stacks {
		if !slices.Contains(jars, s.jars) {
			jars = append(jars, s.jars)
		}
	}
	for _, j := range jars {
		for i := 0; ; i++ {
			var set sheet.Set
			for _, s := range stacks {
				if s.jars == j && i < len(s.labels) {
					set = append(set, s.labels[i])
				}
			}
			if set == nil {
				break
			}
			out = append(out, set)
		}
	}
	return out
}
