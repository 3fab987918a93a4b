package job

import (
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// locate fills in where findings stand in the maker's files.
func (b *Batch) locate(l diag.List) diag.List {
	var batchFile, kitchenFile *source.File
	if b.Notes != nil {
		batchFile = b.Notes.File
	}
	if b.Kitchen != nil {
		kitchenFile = b.Kitchen.File
	}
	l = atHome(l, batchFile, kitchenFile)
	return byName(batchFile.Locate(kitchenFile.Locate(l)), batchFile)
}

// byName points a finding about a table the batch does not have at the batch's
// name, since the top of the file is often a comment.
func byName(l diag.List, f *source.File) diag.List {
	for i, d := range l {
		table, _, _ := strings.Cut(d.Path, ".")
		if f == nil || d.File != f.Name || d.Path == "" || d.Pos.Line > 1 || holds(f, table) {
			continue
		}
		l[i].Pos = f.Locate(diag.List{{File: f.Name, Path: "name"}})[0].Pos
	}
	return l
}

// atHome names the file of findings that know a path at most: layout does not
// know which file a word came from. What blocks printing always has a place,
// if need be the batch's [label] table or its first line.
func atHome(l diag.List, batch, kitchen *source.File) diag.List {
	out := append(diag.List(nil), l...)
	for i := range out {
		d := &out[i]
		switch {
		case d.File != "":
		case d.Path != "" && holds(batch, d.Path):
			d.File = batch.Name
		case d.Path != "" && holds(kitchen, d.Path):
			d.File = kitchen.Name
		case d.Severity == diag.Error && batch != nil:
			d.File = batch.Name
			if d.Path == "" && holds(batch, "label") {
				d.Path = "label"
			}
		}
	}
	return out
}

func holds(f *source.File, path string) bool {
	if f == nil {
		return false
	}
	_, ok := f.Entry(path)
	return ok
}
