package job

import (
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// broken reports errors in what a label is made of: the rules then keep silent
// about the batch file.
func (b *Batch) broken() bool {
	for _, d := range b.Findings {
		if d.Severity != diag.Error || d.File != b.Input.Batch.Name {
			continue
		}
		for _, part := range []string{"name", "kind", "made", "ingredient"} {
			if d.Path == part || strings.HasPrefix(d.Path, part+"[") || strings.HasPrefix(d.Path, part+".") {
				return true
			}
		}
	}
	return false
}

// surroundings tells of a kitchen that is not there, and of jars counted before
// the day they were made.
func (b *Batch) surroundings(c Choices) (l diag.List) {
	if len(b.Input.Kitchen.Data) == 0 && b.Input.Kitchen.Name == "" {
		l.Warnf("no-kitchen", b.Input.Batch.Name, "", "there is no kitchen.toml beside this file or in a folder above it").
			Hinted("jarmark new NAME writes one to fill in: who makes the jam, and where it is sold")
	}
	if b.Notes != nil && !c.Today.IsZero() && c.Today.Before(b.Notes.Made) && counted(b.Notes) {
		l.Warnf("made-later", b.Input.Batch.Name, "made", "jars are counted, and the day they are made, %s, is still to come", b.day(b.Notes.Made)).
			Hinted("check the date; a plan has no counts yet")
	}
	return l
}

// past warns of a batch whose date is over on the day its labels are made.
func (b *Batch) past(c Choices) (l diag.List) {
	if best := b.Cooked.BestBefore; !c.Today.IsZero() && !best.IsZero() && best.Before(c.Today) && !best.Before(b.Notes.Made) {
		l.Warnf("date-over", b.Input.Batch.Name, "made", "the date on the label, %s, is over: today is %s", b.day(best), b.day(c.Today)).
			Hinted("do not sell or give these jars as fresh; check made, and best_before if you gave one").
			Cited("common practice, no source")
	}
	return l
}

// day is a date in a message, as the kitchen's place writes it.
func (b *Batch) day(d unit.Date) string { return d.Words(b.Kitchen.US()) }

// counted reports a batch with filled jars.
func counted(b *batch.Batch) bool {
	return slices.ContainsFunc(b.Fills, func(f batch.Fill) bool { return f.Count > 0 })
}

// unfilled forbids labels for sale that would bear no net content. A plan may
// still be checked: there a note tells it.
func (b *Batch) unfilled(pieces []label.Piece, c Choices) (l diag.List) {
	if c.dry {
		return nil
	}
	if c.Gift || !slices.ContainsFunc(pieces, bearsNet) {
		return nil
	}
	for i, j := range b.Cooked.Jars {
		if i >= len(b.Contents) || !j.Planned() {
			continue
		}
		if _, ok := b.Contents[i].Find(label.Net); !ok {
			l.Errorf("net-not-weighed", b.Input.Batch.Name, j.FillPath, "labels for sale need a net weight, and no jar is filled yet").
				Hinted("after filling write count, sealed and net = [...]; --gift prints labels to give away without")
		}
	}
	return b.locate(l)
}

// bearsNet reports the pieces that sell a jar: the others go beside a label.
func bearsNet(p label.Piece) bool {
	switch p {
	case label.Front, label.Wrap, label.BagCard, label.CaseLabel:
		return true
	}
	return false
}
