package job

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"jarmark/internal/draw/press"
	"jarmark/internal/give/ledger"
	"jarmark/internal/give/pack"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// orderOf is what to print of a batch: its files' wishes, and over them what
// the maker chose for this run.
func (b *Batch) orderOf(c Choices) *press.Order {
	own, k := b.Notes.Label, b.Kitchen
	o := &press.Order{
		File: b.Input.Batch.Name, Name: b.Notes.Name, Lot: b.Cooked.Lot, Maker: k.Name,
		Pieces:  b.pieces(c),
		Choice:  press.Choice{Design: c.Design, Sheet: c.Sheet, Size: c.Size, OwnDesign: own.Design, OwnSheet: own.Sheet, OwnSize: own.Size, OwnPiece: own.Piece},
		Paper:   b.paper(),
		PerBox:  k.Supplies.PerBox(),
		Serials: c.Serials || own.Serials || len(c.Numbers) > 0, Numbers: c.Numbers, InkSaver: c.InkSaver || own.InkSaver,
		Tagged: len(b.Notes.Gifts)+len(c.List) > 0, Allergens: len(b.Cooked.Allergy().Found) > 0,
		Copies: c.Copies, Skip: c.Skip, CutMarks: c.CutMarks, Trimmed: c.Trimmed,
		Correction: press.Correction(k.Printer), PartSheets: over(k.Supplies.PartSheets, c.Gone),
		Created: b.created(c), Picture: b.picture, Type: b.faces,
	}
	for i, content := range b.Contents {
		j := b.Cooked.Jars[i]
		one := press.Jars{}
		if b.chosen(j, c) {
			one = press.Jars{Content: content, Sealed: j.Sealed, Tags: b.tags(j.Jar.Key, c), At: j.FillPath, Sheet: b.sheetOf(j)}
		}
		o.Jars = append(o.Jars, one) // one that is not wanted keeps its place
	}
	if len(c.Pieces) == 0 && own.Piece == string(label.Front) && b.press != nil {
		b.press.Pair(o)
	}
	return o
}

// over lays one map over another; neither is changed.
func over(under, top map[string]int) map[string]int {
	out := map[string]int{}
	maps.Copy(out, under)
	maps.Copy(out, top)
	return out
}

// chosen reports whether jars of a plan are of the size asked for.
func (b *Batch) chosen(j cook.JarPlan, c Choices) bool {
	if c.Jar == "" {
		return true
	}
	asked, ok := b.Pantry.Jar(c.Jar)
	return ok && asked.Key == j.Jar.Key
}

// sheetOf is the label sheet the batch file names for a jar size.
func (b *Batch) sheetOf(j cook.JarPlan) string {
	for _, f := range b.Notes.Fills {
		if f.Path == j.FillPath {
			return f.Sheet
		}
	}
	return ""
}

// notThere tells that no batch has jars of the size, or of a number, asked for.
func notThere(batches []*Batch, c Choices) (l diag.List) {
	if len(batches) == 0 {
		return nil // what is wrong with them has been told
	}
	sizes, most, any := []string{}, 0, false
	for _, b := range batches {
		for _, j := range b.Cooked.Jars {
			if !slices.Contains(sizes, j.Jar.Description) {
				sizes = append(sizes, j.Jar.Description)
			}
			if b.chosen(j, c) {
				any, most = true, max(most, j.Sealed)
			}
		}
	}
	if c.Jar != "" && !any {
		l.Errorf("no-such-jar", diag.Command, "", "no jar here is a %q", c.Jar).Hinted("filled here: " + strings.Join(sizes, ", "))
		return l
	}
	for _, n := range c.Numbers {
		if n > most && c.Copies == 0 {
			l.Errorf("no-such-number", diag.Command, "", "there is no jar number %d", n).Hinted(fmt.Sprintf("sealed jars are numbered 1 to %d", most))
			return l
		}
	}
	return l
}

// pieces says which labels to print: those chosen, else the batch file's, else
// those the chosen sheet is made for, else a wrap-around that carries everything.
func (b *Batch) pieces(c Choices) []label.Piece {
	switch {
	case len(c.Pieces) > 0:
		return c.Pieces
	case b.Notes.Label.Piece != "":
		return []label.Piece{label.Piece(b.Notes.Label.Piece)}
	}
	id := cmp.Or(c.Sheet, b.Notes.Label.Sheet)
	for _, f := range b.Notes.Fills {
		id = cmp.Or(id, f.Sheet)
	}
	if b.press == nil || id == "" {
		return []label.Piece{label.Wrap}
	}
	return b.press.MadeFor(id)
}

// paper is the maker's paper.
func (b *Batch) paper() string { return table.Paper(b.Kitchen.Units) }

// tags gives one tag a gift jar of a size.
func (b *Batch) tags(jarKey string, c Choices) (out []press.Tag) {
	for _, t := range c.tags {
		if t.Lot == b.Cooked.Lot && t.JarKey == jarKey {
			out = append(out, press.Tag{To: t.To, From: t.From, Message: t.Message, Design: t.Design, File: t.File, Path: t.Path, Pos: t.Pos})
		}
	}
	return out
}

// Labels composes the pieces asked for and puts them on sheets. Findings tell
// what does not fit and what would take it; with an error nothing is returned.
func (e *Env) Labels(b *Batch, c Choices) ([]press.Run, diag.List) {
	o, found := e.order(b, c)
	stacks, l := e.Press.Set(o)
	found = append(found, b.locate(l)...)
	found = append(found, b.unfilled(o.Pieces, c)...)
	if found.HasErrors() {
		return nil, found
	}
	runs, l := e.Press.Impose(stacks, o)
	return runs, append(found, b.locate(l)...)
}

// order is orderOf with the tags allotted, where tags are to be printed.
func (e *Env) order(b *Batch, c Choices) (*press.Order, diag.List) {
	found := e.allot([]*Batch{b}, &c)
	return b.orderOf(c), found
}

// allot says which jars of the batches go to whom, when tags are to be
// printed: the batches' own gifts first, then a list kept apart. A jar that is
// promised twice is an error that names who goes without.
func (e *Env) allot(batches []*Batch, c *Choices) diag.List {
	if !slices.ContainsFunc(batches, func(b *Batch) bool { return slices.Contains(b.pieces(*c), label.Tag) }) {
		return nil
	}
	plan, l := e.Pack(batches, pack.Options{List: c.List})
	if plan != nil {
		c.tags = plan.Tags
	}
	if len(c.List) > 0 {
		return l.Errors()
	}
	return notOf(l.Errors(), ledgers(batches)) // gifts of the batch files have their tags whatever the ledger says
}

// notOf leaves out findings about the ledgers.
func notOf(l diag.List, books []*ledger.Ledger) (out diag.List) {
	for _, d := range l {
		if !slices.ContainsFunc(books, func(b *ledger.Ledger) bool { return b.File == d.File }) {
			out = append(out, d)
		}
	}
	return out
}
