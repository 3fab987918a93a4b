package job

import (
	"fmt"

	"jarmark/internal/kit/cores"
	"jarmark/internal/kitchen/cook"
)

// mostPast bounds how many past batches a habit is learned from.
const mostPast = 200

// foresee moves the range of each batch not weighed by the weighed pots of the
// same kitchen: those loaded with it, and the past ones of the choices. A
// kitchen may switch that off with own_yields = false.
func (e *Env) foresee(batches []*Batch, c Choices) {
	if !wantsHabit(batches) {
		return
	}
	past := make([]*Batch, min(len(c.Past), mostPast))
	cores.Each(len(past), func(i int) { past[i] = e.cooked(c.Past[i], Choices{Place: c.Place, Today: c.Today}) })
	pots := map[string][]*cook.Result{} // by kitchen file
	seen := map[string]bool{}
	for _, b := range append(append([]*Batch(nil), batches...), past...) {
		if b.Cooked != nil && b.Kitchen != nil && !seen[b.Input.Batch.Name] {
			seen[b.Input.Batch.Name] = true
			pots[b.Input.Kitchen.Name] = append(pots[b.Input.Kitchen.Name], b.Cooked)
		}
	}
	for _, b := range batches {
		if b.Cooked != nil && b.Kitchen != nil && b.Kitchen.OwnYields {
			b.Cooked.Expect(cook.Learn(pots[b.Input.Kitchen.Name]))
		}
	}
}

// wantsHabit reports that a pot is planned that a habit could say more of.
func wantsHabit(batches []*Batch) bool {
	for _, b := range batches {
		if b.Cooked != nil && b.Cooked.Yield.How != cook.Measured && b.Kitchen != nil && b.Kitchen.OwnYields {
			return true
		}
	}
	return false
}

// expected says how many jars a pot may fill that nobody has weighed, and what
// that rests on; empty where nothing is open.
func (b *Batch) expected() string {
	r := b.Cooked
	text := r.RangeText()
	if text == "" {
		return ""
	}
	text += fmt.Sprintf(" (%s to %s", r.Range.Low.Format(b.Kitchen.Units), r.Range.High.Format(b.Kitchen.Units))
	switch n := r.Range.Recipes; {
	case r.Range.Own.Pots > 0:
		return text + "; " + r.Range.Own.Say() + ")"
	case n < fewestYields:
		return text + "; hardly a published yield is known of its kind)"
	default:
		return text + fmt.Sprintf("; %.0f %% of %d published yields lie in such a range)", r.Range.Coverage, n)
	}
}

// fewestYields is from how many on a share of them says something (own reading).
const fewestYields = 4
