package scale

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Plan is a recipe scaled to jars.
type Plan struct {
	Factor   float64 // of the recipe as written
	Jars     []Jars
	Lines    []Line
	Input    unit.Mass // all ingredients as added
	Yield    unit.Mass // finished food: exactly what the jars hold
	Pot      unit.Volume
	Batches  int          // how many times to cook, each Factor/Batches of the recipe
	Cost     unit.Money   // of the ingredients; zero currency when none is priced
	Unpriced []string     // ingredients without a price
	Batch    *batch.Batch // the scaled recipe, to be computed or saved
}

// Jars is one jar size of a plan.
type Jars struct {
	Jar   pantry.Jar
	Count int
	Fill  unit.Mass  // in one jar
	How   cook.How   // measured when the fill was weighed
	Cost  unit.Money // ingredients of one jar, by weight
}

// Line is one ingredient of a plan.
type Line struct {
	Name    string
	Mass    unit.Mass // exact
	Weight  string    // rounded for a kitchen scale: "1450 g", "3 lb 3.1 oz"
	Measure string    // in cups, spoons or pieces; empty when no measure is known
	Cost    unit.Money
}

// foam is how many times its own volume a pot must hold: common practice, no
// source.
const foam = 3

// Scale scales a computed batch so that it fills the wanted jars exactly. The
// plan is nil when it can't be made; the findings say why.
func Scale(r *cook.Result, want []Want, p *pantry.Pantry) (*Plan, diag.List) {
	var l diag.List
	if r == nil || r.Batch == nil || r.Yield.Mass == 0 {
		l.Errorf("no-yield", "", "", "the batch has no yield to scale").Hinted("give its ingredients weights or kitchen measures first")
		return nil, l
	}
	plan := &Plan{}
	need := plan.jars(r, want, cmp.Or(p, pantry.Default()), &l)
	if l.HasErrors() {
		return nil, l
	}
	plan.Yield = unit.Grams(need)
	plan.Factor = need / r.Yield.Mass.Grams()
	plan.scaled(r, &l)
	if l.HasErrors() {
		return nil, l
	}
	plan.lines(r)
	plan.costs(r)
	plan.pot(r)
	plan.advise(r, &l)
	return plan, l
}

// jars looks the sizes up and sums what they hold, in grams.
func (plan *Plan) jars(r *cook.Result, want []Want, p *pantry.Pantry, l *diag.List) (need float64) {
	if len(want) == 0 {
		l.Errorf("bad-jars", diag.Command, "", "no jars are wanted").Hinted(wantHint)
	}
	for _, w := range want {
		j, ok := p.Jar(w.Jar)
		if !ok || w.Count <= 0 || w.Count > mostJars {
			l.Errorf("unknown-jar", diag.Command, "", "%d x %q is no count of known jars", w.Count, w.Jar).Hinted(`write a jar of the table or the kitchen file: "8 fl oz", "212 ml"`)
			continue
		}
		one := Jars{Jar: j, Count: w.Count, Fill: r.FillMass(j), How: cook.Estimated}
		for _, made := range r.Jars {
			if made.Jar.Key == j.Key && len(made.Weighed) != 0 {
				one.Fill, one.How = made.Content(), cook.Measured
			}
		}
		if one.Fill == 0 {
			l.Errorf("no-room-in-jar", "", "", "the headspace leaves no room in a %s jar", j.Key).Hinted("check headspace, brimful and mouth")
		}
		need += float64(w.Count) * one.Fill.Grams()
		plan.Jars = append(plan.Jars, one)
	}
	return need
}

// scaled copies the batch with every amount multiplied; what was measured on
// the old pot scales with it.
func (plan *Plan) scaled(r *cook.Result, l *diag.List) {
	f := plan.Factor
	if total := r.Input.Grams() * f; !(total > 0) || total > 1e6 {
		l.Errorf("too-much", "", "", "those jars take more than a tonne of ingredients").Hinted("scale to fewer jars and cook several batches")
		return
	}
	b := *r.Batch
	b.Ingredients = append([]batch.Ingredient(nil), b.Ingredients...)
	for i := range b.Ingredients {
		g := &b.Ingredients[i]
		g.Amount = times(g.Amount, f)
		g.Cost.Minor = int64(math.Round(float64(g.Cost.Minor) * f))
	}
	b.Cook.FinishedPot = mass(b.Cook.FinishedPot.Grams() * f)
	b.Cook.Skimmed = mass(b.Cook.Skimmed.Grams() * f)
	b.Fills, b.Gifts, b.Markets, b.Lot = nil, nil, nil, ""
	for _, j := range plan.Jars {
		b.Fills = append(b.Fills, batch.Fill{Jar: j.Jar.Key, Count: j.Count, Sealed: -1})
	}
	plan.Batch = &b
}

func times(q unit.Quantity, f float64) unit.Quantity {
	q.Mass = mass(q.Mass.Grams() * f)
	q.Volume = unit.ML(q.Volume.ML() * f)
	q.Count *= f
	return q
}

func mass(g float64) unit.Mass { return unit.Grams(math.Min(math.Max(g, 0), 9e9)) }

// costs shares the price of the ingredients out over the jars by weight.
func (plan *Plan) costs(r *cook.Result) {
	for i, ln := range r.Lines {
		switch {
		case ln.Cost.Currency == "" || ln.Cost.Minor <= 0:
			if !ln.IsWater {
				plan.Unpriced = append(plan.Unpriced, ln.Name)
			}
		case plan.Cost.Currency == "" || plan.Cost.Currency == ln.Cost.Currency:
			c := math.Round(float64(ln.Cost.Minor) * plan.Factor)
			plan.Lines[i].Cost = unit.Money{Minor: int64(c), Currency: ln.Cost.Currency}
			plan.Cost.Currency = ln.Cost.Currency
			plan.Cost.Minor += int64(c)
		}
	}
	if plan.Cost.Currency == "" {
		plan.Unpriced = nil
		return
	}
	for i := range plan.Jars {
		j := &plan.Jars[i]
		share := j.Fill.Grams() / plan.Yield.Grams()
		j.Cost = unit.Money{Minor: int64(math.Round(share * float64(plan.Cost.Minor))), Currency: plan.Cost.Currency}
	}
}

// pot gives the pot the scaled batch needs in one go.
func (plan *Plan) pot(r *cook.Result) {
	solids := r.Input.Grams() - r.Insoluble.Grams()
	brix := 0.0
	if solids != 0 {
		brix = 100 * r.Soluble.Grams() / solids
	}
	plan.Input = mass(r.Input.Grams() * plan.Factor)
	plan.Pot = unit.ML(foam * plan.Input.Grams() / pantry.Density(brix, 20) * 1000)
}

// advise warns of pots that are too large to set or to fit.
func (plan *Plan) advise(r *cook.Result, l *diag.List) {
	const source = "USDA AIB 539 (rev. 1994): one batch at a time, larger quantities often gel softly; MSU Extension 1997: never double"
	plan.Batches = 1
	if plan.Factor > 1.01 {
		plan.Batches = int(math.Ceil(plan.Factor - 0.01))
	}
	switch {
	case plan.Factor >= 2 && gelled(r):
		l.Warnf("large-pectin-batch", "", "", "this is %.1f times the recipe; jam and jelly with added pectin may not set when it is doubled", plan.Factor).
			Hinted("cook it in several pots of the recipe as written").Cited(source)
	case plan.Factor > 1.25 && r.Batch.Product != batch.Chutney && r.Batch.Product != batch.Butter:
		l.Notef("large-batch", "", "", "this is %.1f times the recipe; a larger pot boils longer and sets more softly", plan.Factor).
			Hinted("cook it in several pots of the recipe as written").Cited(source)
	case plan.Factor < 0.25:
		l.Notef("small-batch", "", "", "this is %.2f of the recipe; a small pot boils down fast", plan.Factor).
			Hinted("use a small pan and test for a set early").Cited("common practice, no source")
	}
	if plan.Pot > 12*unit.Litre {
		l.Notef("large-pot", "", "", "in one go it needs a pot of about %s, foam included", plan.PotText(kitchenUnits(r), 0)).
			Hinted("share it between pots").Cited("common practice, no source")
	}
	if plan.Unpriced != nil {
		l.Notef("cost-incomplete", "", "", "the cost leaves out %s", strings.Join(plan.Unpriced, ", ")).Hinted("give each ingredient its cost")
	}
}

func gelled(r *cook.Result) bool {
	return slices.ContainsFunc(r.Lines, func(ln cook.Line) bool { return ln.Row.Class == "gelling" || ln.Row.Class == "gelling sugar" })
}

// PotText is the pot the plan needs in one go: quarts in US units, else litres.
func (p *Plan) PotText(units string, decimals int) string {
	if units == unit.US {
		return fmt.Sprintf("%.*f quarts", decimals, p.Pot.ML()/unit.Quart.ML())
	}
	return fmt.Sprintf("%.*f l", decimals, p.Pot.ML()/1000)
}

func kitchenUnits(r *cook.Result) string {
	if r.Kitchen == nil {
		return unit.Metric
	}
	return r.Kitchen.Units
}
