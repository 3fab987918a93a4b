package notes

import (
	"strconv"

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

// hotReading is said of a refractometer's sample that was not cooled, which reads
// otherwise: cook.brix is of the cooled batch.
var hotReading = pattern(`(?i)\b(?:hot|warm|boiling|still hot|heiß|heiss|warm|chaude?|bouillante?)\b`)
