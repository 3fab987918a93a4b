package cook

import (
	"fmt"
	"math"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// weigh finds the weight of one line from what the maker wrote.
func (c *calc) weigh(ln *Line, g batch.Ingredient, known bool) {
	q := g.Amount
	switch {
	case q.Dim == unit.ByMass:
		ln.Mass, ln.Prepared = q.Mass, "weighed"
	case !known: // told already
	case q.Dim == unit.ByVolume:
		c.byVolume(ln, g)
	case q.Dim == unit.ByCount:
		c.byCount(ln, g)
	case c.b.File == nil: // the reader of the file has told it already
		c.errorf("no-amount", g.Path+".amount", "%s has no amount", ln.Name).Hinted("give a weight or a kitchen measure")
	}
	if ln.Mass <= 0 && q.Dim == unit.ByMass {
		c.errorf("no-amount", g.Path+".amount", "%s weighs %s", ln.Name, say(ln.Mass)).Hinted("give a weight above zero")
	}
	if ln.Mass <= 0 {
		ln.Mass, c.incomplete = 0, true
	}
}

func (c *calc) byVolume(ln *Line, g batch.Ingredient) {
	m, ok := household(ln.Row, g.Amount, g.Form+" "+g.Name)
	v := g.Amount.Volume
	if !ok || v <= 0 {
		c.errorf("no-kitchen-measure", g.Path+".amount", "no weight is known for %s of %s", q(g.Amount), ln.Name).
			Hinted("weigh it, or count it if the table has a piece weight")
		return
	}
	ln.Mass, ln.Estimated = grams(m.grams*v.ML()/m.per.ML()), true
	ln.Prepared = fmt.Sprintf("%s at %s g a %s%s", q(g.Amount), trim(m.grams), m.name, bracket(m.form))
	if m.assumed != "" {
		c.notef("assumed-form", g.Path, "%s of %s: %s", q(g.Amount), ln.Name, m.assumed).
			Hinted("weigh it, or say the form: whole, chopped, sliced, crushed")
	}
}

func (c *calc) byCount(ln *Line, g batch.Ingredient) {
	n := g.Amount.Count
	if !(n > 0) || math.IsInf(n, 0) || ln.Row.PieceG <= 0 || container[strings.ToLower(g.Amount.Piece)] {
		c.errorf("no-piece-weight", g.Path+".amount", "no weight is known for %s of %s", q(g.Amount), ln.Name).
			Hinted("weigh it, or give cups or spoons")
		return
	}
	ln.Mass, ln.Estimated = grams(n*ln.Row.PieceG), true
	ln.Prepared = fmt.Sprintf("%s at %s g each%s", q(g.Amount), trim(ln.Row.PieceG), bracket(ln.Row.PieceForm))
}

// container words say nothing of a weight.
var container = map[string]bool{"bag": true, "bags": true, "punnet": true, "punnets": true, "bunch": true, "bunches": true,
	"can": true, "cans": true, "tin": true, "tins": true, "jar": true, "jars": true, "bottle": true, "bottles": true,
	"handful": true, "handfuls": true, "basket": true, "baskets": true, "flat": true, "flats": true, "bucket": true, "crate": true}

func q(a unit.Quantity) string {
	if a.Text == "" {
		return "the amount"
	}
	return a.Text
}

func bracket(form string) string {
	if form == "" {
		return ""
	}
	return " (" + form + ")"
}

func trim(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

// measured is a household weight: grams of one measure in one form.
type measured struct {
	grams   float64
	per     unit.Volume
	name    string // "cup"
	form    string
	assumed string // why this form was taken, when it was not the one asked for
}

// crushedCup is USDA SR28's cup of strawberry purée, used for any crushed
// fruit: an extension of ours.
const crushedCup = 232

// household picks the kitchen weight of a row that fits the measure and form.
func household(row pantry.Ingredient, a unit.Quantity, words string) (measured, bool) {
	text := strings.ToLower(a.Text)
	spoon, tea := strings.Contains(text, "tb") || strings.Contains(text, "tablespoon"), strings.Contains(text, "tsp") || strings.Contains(text, "teaspoon")
	switch {
	case spoon && row.TbspG > 0:
		return measured{row.TbspG, unit.Tablespoon, "tablespoon", "", ""}, true
	case tea && row.TspG > 0:
		return measured{row.TspG, unit.Teaspoon, "teaspoon", "", ""}, true
	}
	if m, ok := cup(row, words); ok {
		return m, true
	}
	switch {
	case row.TbspG > 0:
		return measured{row.TbspG, unit.Tablespoon, "tablespoon", "", ""}, true
	case row.TspG > 0:
		return measured{row.TspG, unit.Teaspoon, "teaspoon", "", ""}, true
	}
	return measured{}, false
}

// alike are forms that fill a cup about alike.
var alike = []string{"pureed puree crushed mashed pulp", "chopped diced cubes cubed pieces chunks minced", "sliced slices",
	"halves halved", "grated shredded", "whole as is berries", "packed", "unpacked", "pitted", "juice strained", "sections segments", "ground", "drained"}

func cup(row pantry.Ingredient, words string) (measured, bool) {
	want := classes(words)
	first := measured{row.CupG, unit.Cup, "cup", row.CupForm, ""}
	second := measured{row.Cup2G, unit.Cup, "cup", row.Cup2Form, ""}
	for _, m := range []measured{first, second} {
		if m.grams > 0 && want&classes(m.form) != 0 {
			return m, true
		}
	}
	crushed := classes("crushed")
	if want&crushed != 0 && (row.Kind == "fruit" || row.Kind == "vegetable") {
		return measured{crushedCup, unit.Cup, "cup", "crushed", ""}, true
	}
	if first.grams <= 0 {
		return measured{}, false
	}
	if want&^classes("whole") != 0 && row.Kind == "fruit" {
		first.assumed = fmt.Sprintf("the table has no such form, so %s g a cup%s is taken", trim(first.grams), bracket(first.form))
	}
	return first, true
}

// classes gives the groups of alike that the words name, as bits.
func classes(words string) (set uint) {
	have := " " + strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' {
			return r
		}
		return ' '
	}, strings.ToLower(words)) + " "
	for i, group := range alike {
		for _, w := range strings.Fields(group) {
			if strings.Contains(have, " "+w+" ") {
				set |= 1 << i
			}
		}
	}
	return set
}
