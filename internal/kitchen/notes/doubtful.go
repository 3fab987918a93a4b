package notes

import (
	"strconv"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// gramsMeant asks of numbers without a unit that are large for a count:
// "strawberries 1200".
func (r *Reading) gramsMeant() {
	for i := range r.Lines {
		l := &r.Lines[i]
		for k := range l.Ingredients {
			in := &l.Ingredients[k]
			n, err := strconv.Atoi(in.Amount)
			if err != nil || n < pantry.ManyPieces {
				continue
			}
			in.Amounts, in.Amount = []string{in.Amount + " g", in.Amount}, ""
			l.ask("%d g, or %d of them? Take the # off one", n, n)
		}
	}
}

// unweighed asks of cups and spoons of a food the table of the kitchen weighs by the
// piece alone: "2 cups kumquats, sliced".
func (r *Reading) unweighed(p *pantry.Pantry) {
	for i := range r.Lines {
		l := &r.Lines[i]
		for _, in := range l.Ingredients {
			q, err := unit.ParseQuantity(in.Amount)
			row, known := p.Ingredient(in.Name)
			if err != nil || !known || q.Dim != unit.ByVolume || row.CupG+row.Cup2G+row.TbspG+row.TspG > 0 || crushedForm.MatchString(in.Form) {
				continue
			}
			l.ask("what does %s of %s weigh? Write the weight as amount, or how many there were", in.Amount, in.Name)
		}
	}
}

// crushedForm fills any cup about alike.
var crushedForm = pattern(`(?i)\b(?:crushed|mashed|puree?d?|purée?d?|pulp|zerdrückt|püriert|écrasée?s?)\b`)

// hotReading is said of a refractometer's sample that was not cooled, which reads
// otherwise: cook.brix is of the cooled batch.
var hotReading = pattern(`(?i)\b(?:hot|warm|boiling|still hot|heiß|heiss|warm|chaude?|bouillante?)\b`)
