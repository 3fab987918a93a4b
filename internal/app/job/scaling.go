package job

import (
	"fmt"
	"strings"

	"jarmark/internal/give/facts"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/scale"
)

// ScaledLine is one ingredient of a scaled recipe.
type ScaledLine struct {
	Name    string  `json:"name"`
	Grams   float64 `json:"grams"`
	Weight  string  `json:"weight"`
	Measure string  `json:"measure,omitempty"`
	Cost    string  `json:"cost,omitempty"`
}

// Scaled is a recipe scaled to exact jars.
type Scaled struct {
	Lot    string       `json:"of_lot"`
	Jars   string       `json:"jars"`
	Factor float64      `json:"factor"`
	Cooks  int          `json:"cooks"` // how many pots to cook it in
	YieldG float64      `json:"yield_g"`
	PotML  float64      `json:"pot_ml"`
	Yield  string       `json:"-"` // both in the kitchen's units
	Pot    string       `json:"-"`
	Lines  []ScaledLine `json:"ingredients"`
	Cost   string       `json:"cost,omitempty"`
	PerJar []string     `json:"cost_per_jar,omitempty"`
	How    []string     `json:"fill_how"`
}

// Scale scales a batch to the jars wanted ("24 x 8 fl oz, 6 x 4 fl oz").
func (e *Env) Scale(b *Batch, jars string) (*Scaled, diag.List) {
	want, l := scale.Parse(jars)
	if l.HasErrors() || b.Cooked == nil {
		return nil, l
	}
	p, m := scale.Scale(b.Cooked, want, b.Pantry)
	l = b.locate(append(l, m...))
	if p == nil {
		return nil, l
	}
	out := &Scaled{Lot: b.Cooked.Lot, Jars: jars, Factor: p.Factor, Cooks: p.Batches, YieldG: facts.Grams(p.Yield), PotML: p.Pot.ML(),
		Yield: p.Yield.Format(b.Kitchen.Units), Pot: p.PotText(b.Kitchen.Units, 1)}
	for _, x := range p.Lines {
		s := ScaledLine{Name: x.Name, Grams: facts.Grams(x.Mass), Weight: x.Weight, Measure: x.Measure}
		if x.Cost.Minor > 0 {
			s.Cost = x.Cost.String()
		}
		out.Lines = append(out.Lines, s)
	}
	if p.Cost.Currency != "" {
		out.Cost = p.Cost.String()
	}
	for _, j := range p.Jars {
		out.How = append(out.How, fmt.Sprintf("%d x %s, %s each (%s)", j.Count, j.Jar.Description, j.Fill.Format(b.Kitchen.Units), howWord(j.How)))
		if j.Cost.Currency != "" {
			out.PerJar = append(out.PerJar, fmt.Sprintf("%s a jar of %s", j.Cost, j.Jar.Description))
		}
	}
	return out, l
}

func howWord(h cook.How) string { return strings.ToLower(string(h)) }
