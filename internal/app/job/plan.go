package job

import (
	"slices"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// toCome are the findings of the rules that only a cooked and filled batch can
// meet, with what a plan says instead.
var toCome = map[string]string{
	"net-not-weighed":   "a plan: the net weight is still to come",
	"no-net":            "a plan: the net weight is still to come",
	"brix-not-measured": "a plan: the refractometer reading is still to come",
}

// planned reports a jar size that is not filled yet: nothing counted, weighed
// or declared. A net weight can't be asked of it.
func planned(j cook.JarPlan) bool {
	return j.How == cook.Estimated && len(j.Weighed) == 0 && j.Declared == 0 && j.DeclText == ""
}

// planFindings tells of a planned jar what is still to come, instead of that it
// is missing. Printing for sale stays blocked: see unfilled.
func planFindings(j cook.JarPlan, l diag.List) diag.List {
	if !planned(j) {
		return l
	}
	out := slices.Clone(l)
	for i, d := range out {
		if words, ok := toCome[d.Code]; ok && d.Severity == diag.Error {
			out[i].Severity, out[i].Message = diag.Note, words
			out[i].Hint = "labels for sale can be printed once it is written here"
		}
	}
	return out
}

// unfilled forbids labels for sale that would bear no net content.
func (b *Batch) unfilled(pieces []label.Piece, c Choices) (l diag.List) {
	if c.Gift || !slices.ContainsFunc(pieces, bearsNet) {
		return nil
	}
	for i, j := range b.Cooked.Jars {
		if i >= len(b.Contents) || !planned(j) {
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
	case label.Front, label.Wrap, label.CaseLabel:
		return true
	}
	return false
}
