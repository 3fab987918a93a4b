package scale

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// lines writes every ingredient as a kitchen would measure it.
func (plan *Plan) lines(r *cook.Result) {
	units := kitchenUnits(r)
	for _, ln := range r.Lines {
		m := mass(ln.Mass.Grams() * plan.Factor)
		plan.Lines = append(plan.Lines, Line{Name: ln.Name, Mass: m, Weight: m.OnScale(units), Measure: plan.measure(r, ln, m, units)})
	}
}

// measure gives cups, spoons or pieces, in the way the maker measured; a
// weighed ingredient gets cups only in a US kitchen and where the table has a
// cup weight.
func (plan *Plan) measure(r *cook.Result, ln cook.Line, m unit.Mass, units string) string {
	v, n, piece, mixed := plan.asWritten(r, ln)
	switch {
	case mixed:
		return ""
	case n != 0:
		return pieces(n, piece)
	case v != 0 && units != unit.US:
		return metric(v)
	case v != 0:
		return Cups(v)
	case units == unit.US && ln.Row.CupG != 0:
		return Cups(unit.ML(m.Grams() / ln.Row.CupG * unit.Cup.ML()))
	case units == unit.US && ln.Row.TspG != 0:
		return Cups(unit.ML(m.Grams() / ln.Row.TspG * unit.Teaspoon.ML()))
	}
	return ""
}

// asWritten sums the scaled amounts of a line in the maker's own measure;
// mixed when they were not all of one kind.
func (plan *Plan) asWritten(r *cook.Result, ln cook.Line) (v unit.Volume, n float64, piece string, mixed bool) {
	kinds := map[unit.Dimension]bool{}
	for i, g := range r.Batch.Ingredients {
		at := cmp.Or(g.Path, fmt.Sprintf("ingredient[%d]", i))
		for _, p := range ln.Paths {
			if p == at {
				q := times(g.Amount, plan.Factor)
				kinds[q.Dim] = true
				v += q.Volume
				n += q.Count
				piece = q.Piece
				if q.Part != "" {
					piece = strings.TrimSpace(piece + " (" + q.Part + ")")
				}
			}
		}
	}
	return v, n, piece, len(kinds) > 1
}

// pieces rounds a count to halves, small ones to quarters.
func pieces(n float64, word string) string {
	step := 2.0
	if n < 3 {
		step = 4
	}
	s := fraction(int(math.Max(1, math.Round(n*step))), int(step))
	if word == "" {
		return s
	}
	return s + " " + word
}

func metric(v unit.Volume) string {
	ml := v.ML()
	switch {
	case ml >= 1000:
		return strconv.FormatFloat(math.Round(ml/10)/100, 'f', -1, 64) + " l"
	case ml >= 50:
		return strconv.FormatFloat(math.Round(ml/5)*5, 'f', 0, 64) + " ml"
	case ml >= 10:
		return strconv.FormatFloat(ml, 'f', 0, 64) + " ml"
	}
	return strconv.FormatFloat(ml, 'f', 1, 64) + " ml"
}

// Cups writes a volume in US kitchen measures: cups in quarters with spoons for
// the rest, then tablespoons and teaspoons, down to a pinch. It is off by half
// a tablespoon at most from a quarter cup up (6 % at worst, 1 % from 3 cups).
func Cups(v unit.Volume) string {
	switch {
	case v <= 0:
		return ""
	case v >= unit.Cup/4-unit.Teaspoon/4:
		return cups(v)
	case v >= unit.Tablespoon-unit.Teaspoon/4:
		return spoons(v)
	}
	if n := nearest(v, unit.Teaspoon/8); n != 0 {
		return fraction(n, 8) + " tsp"
	}
	return "a pinch"
}

func cups(v unit.Volume) string {
	spoons := nearest(v, unit.Tablespoon) // 16 to the cup, 4 to the quarter
	quarters, rest := spoons/4, spoons%4
	if quarters == 0 {
		quarters, rest = 1, 0
	}
	s := fraction(quarters, 4) + " cup"
	if quarters > 4 {
		s += "s"
	}
	if rest != 0 && v < 20*unit.Cup {
		s += fmt.Sprintf(" + %d tbsp", rest)
	}
	return s
}

func spoons(v unit.Volume) string {
	halves := nearest(v, unit.Teaspoon/2) // 6 to the tablespoon
	big, small := halves/6, halves%6
	s := fmt.Sprintf("%d tbsp", big)
	if small != 0 {
		s += " + " + fraction(small, 2) + " tsp"
	}
	return s
}

func nearest(v, step unit.Volume) int { return int((v + step/2) / step) }

// fraction prints n/den as a mixed number: "2 1/4".
func fraction(n, den int) string {
	whole, part := n/den, n%den
	for part > 0 && part%2 == 0 && den%2 == 0 {
		part, den = part/2, den/2
	}
	switch {
	case part == 0:
		return strconv.Itoa(whole)
	case whole == 0:
		return fmt.Sprintf("%d/%d", part, den)
	}
	return fmt.Sprintf("%d %d/%d", whole, part, den)
}
