package cook

import (
	"cmp"
	"fmt"
	"math"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// most is the heaviest batch that is computed; more is a slip of the pen.
const most = 1000 * unit.Kilogram

// calc is one computation on its way: the batch, the tables and what is
// already known.
type calc struct {
	b     *batch.Batch
	fills []batch.Fill // those of the batch, each with its path
	k     *batch.Kitchen
	p     *pantry.Pantry
	r     *Result
	l     diag.List
	file  string
	// incomplete: an ingredient has no usable weight, so sums are too low and
	// comparing them with measurements would only repeat that finding.
	incomplete bool
	pot        outcome              // how the yield was found
	rejected   bool                 // a reading was taken and can't be right: no sugar is assumed in its place
	coarse     bool                 // the Brix was read at a temperature no table corrects
	doubted    bool                 // another reading shows much less sugar than the one that is used
	sour       sourness             // the acid of everything in the pot
	never      map[int]pantry.Never // lines that nothing makes keep
	recipe     *pantry.TestedRecipe // the tested recipe that counts; nil = none
	decisive   string               // source of the reason that set the keeping class
}

// Compute works out one batch. The result is never nil and holds no NaN; what
// can't be worked out is a finding and stays zero. Input = Yield + Evaporated +
// Skimmed always holds.
func Compute(b *batch.Batch, k *batch.Kitchen, p *pantry.Pantry) (*Result, diag.List) {
	if b == nil {
		b = &batch.Batch{}
	}
	if k == nil {
		k = nobody()
	}
	if p == nil {
		p = pantry.Default()
	}
	c := &calc{b: b, k: k, p: p, r: &Result{Batch: b, Kitchen: k, pantry: p}}
	if b.File != nil {
		c.file = b.File.Name
	}
	for i, f := range b.Fills {
		f.Path = cmp.Or(f.Path, path("fill", i))
		c.fills = append(c.fills, f)
	}
	c.ingredients()
	c.yield()
	c.shares()
	c.acidity()
	c.jars()
	c.foresee()
	c.keeping()
	c.r.Lot = Lot(b)
	c.bestBefore()
	c.supplies()
	all := c.r.Allergy()
	c.r.allergy = &all
	return c.r, c.l
}

// nobody is a kitchen of which nothing is known.
func nobody() *batch.Kitchen {
	return &batch.Kitchen{Supplies: batch.Supplies{Tags: -1, Boxes: -1, Ribbon: -1}}
}

func (c *calc) errorf(code, path, format string, args ...any) *diag.Diagnostic {
	return c.l.Errorf(code, c.file, path, format, args...)
}

func (c *calc) warnf(code, path, format string, args ...any) *diag.Diagnostic {
	return c.l.Warnf(code, c.file, path, format, args...)
}

func (c *calc) notef(code, path, format string, args ...any) *diag.Diagnostic {
	return c.l.Notef(code, c.file, path, format, args...)
}

// grams builds a mass from a computed number, safe against overflow and NaN.
func grams(g float64) unit.Mass {
	if !(g > -9e9) { // also NaN
		return 0
	}
	return unit.Grams(math.Min(g, 9e9))
}

// positive is v, or nought for less.
func positive[T float64 | unit.Mass](v T) T { return max(0, v) }

// percent is what a part is of the whole.
func percent(part, whole float64) float64 { return 100 * part / whole }

func path(list string, i int) string { return fmt.Sprintf("%s[%d]", list, i) }

// bad reports whether a maker's number can't be a number in lo..hi.
func bad(v *float64, lo, hi float64) bool { return v != nil && !(*v >= lo && *v <= hi) }
