package job

import (
	"jarmark/internal/draw/press"
	"jarmark/internal/give/facts"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
)

// Shown is one label as a page on a screen shows it.
type Shown = press.Shown

// Show draws every different label of the pieces chosen. A piece that cannot
// be printed leaves a finding and does not hide the others.
func (e *Env) Show(b *Batch, c Choices) ([]Shown, diag.List) {
	if b.Notes == nil || b.Cooked == nil || len(b.Contents) == 0 {
		return nil, nil
	}
	o, found := e.order(b, c)
	shown, l := e.Press.Show(o)
	return shown, append(found, b.locate(l)...)
}

// Plan is the packing list of batches together as a value, for a page.
func (e *Env) Plan(batches []*Batch, c PackChoices) (*pack.Plan, diag.List) {
	return e.Pack(batches, pack.Options{Event: c.Event, Date: c.Date, Gifts: c.Gifts, List: c.List})
}

// ParseNumbers reads jar numbers as one writes them: "17, 20-22".
func ParseNumbers(s string) ([]int, error) { return press.ParseNumbers(s) }

// MaxLabels bounds one print run.
const MaxLabels = press.MaxLabels

// DefaultDesign is the design used where none is chosen.
func DefaultDesign() string { return press.DefaultDesign }

// PaperOf is the paper a kitchen prints on, as sheet ids begin: "letter", "a4".
func (e *Env) PaperOf(kitchen Doc) string {
	k, _ := batch.ParseKitchen(kitchen.Name, kitchen.Data, e.Book.Find)
	return (&Batch{Kitchen: k}).paper()
}

// ProductWords lists the kinds of preserve a batch may be.
func ProductWords() (out []string) {
	for _, k := range batch.ProductTypes {
		out = append(out, string(k))
	}
	return out
}

// ProcessMethods lists the ways of processing a batch file may name.
func ProcessMethods() []string { return batch.ProcessMethods() }

// Finding is one finding as a page shows it.
type Finding = facts.Finding

// FindingRows gives findings as `check --json` words them, for a page, which
// has no command line.
func FindingRows(l diag.List) []Finding {
	out := facts.Findings(l)
	for i := range out {
		if out[i].File == diag.Command {
			out[i].File = ""
		}
	}
	return out
}
