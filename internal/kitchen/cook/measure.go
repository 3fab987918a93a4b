package cook

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

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
		c.asBought(ln, g)
	case !known: // told already
	case q.Dim == unit.ByVolume:
		c.byVolume(ln, g)
	case q.Dim == unit.ByCount && c.oddPiece(ln, g): // told there
	case q.Dim == unit.ByCount:
		c.byCount(ln, g)
	case c.b.File == nil: // the reader of the file has told it already
		c.errorf("no-amount", g.Path+".amount", "%s has no amount", ln.Name).Hinted("give a weight or a kitchen measure")
	}
	if ln.Mass = positive(ln.Mass); ln.Mass != 0 {
		return
	}
	c.incomplete = true
	if q.Dim == unit.ByMass {
		c.errorf("no-amount", g.Path+".amount", "%s weighs nothing", ln.Name).Hinted("give a weight above zero")
	}
}

// asBought takes off what is thrown away from a weight that says so: "with
// pits", "as bought", "whole pineapple". The share is USDA's refuse.
func (c *calc) asBought(ln *Line, g batch.Ingredient) {
	_, said := pantry.AsBought(g.Form + " " + g.Name)
	if !known(ln) || !said && !ln.Row.Whole(g.Name+" "+g.Form) {
		return
	}
	if ln.Row.RefusePct == 0 {
		c.warnf("refuse-unknown", g.Path, "how much of %s is thrown away is not known; the whole weight is taken", ln.Name).
			Hinted("weigh it again when it is prepared")
		return
	}
	ln.Mass, ln.Estimated = grams(ln.Mass.Grams()*(1-ln.Row.RefusePct/100)), true
	ln.Prepared = fmt.Sprintf("%s as bought, less %s %% (%s)", q(g.Amount), trim(ln.Row.RefusePct), strings.ToLower(ln.Row.Refuse))
	c.notef("as-bought", g.Path, "%s of %s as bought is taken as %s prepared: %s %% is thrown away (%s)",
		q(g.Amount), ln.Name, c.say(ln.Mass), trim(ln.Row.RefusePct), strings.ToLower(ln.Row.Refuse)).
		Hinted("weigh the prepared fruit to be exact").Cited("USDA SR28, refuse")
}

func known(ln *Line) bool { return ln.Key != "" }

func (c *calc) byVolume(ln *Line, g batch.Ingredient) {
	m, ok := household(ln.Row, g.Amount, g.Form+" "+g.Amount.Form+" "+g.Name)
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
	m, known := c.p.Measure(g.Amount.Piece, ln.Row)
	sized := m.Says != ""
	named := pieceNamed(ln.Row.PieceForm, g.Amount.Piece)
	switch {
	case !(n > 0):
		c.noWeight(ln, g, "weigh it, or give cups or spoons")
	case known && sized:
		c.byMeasure(ln, g, m)
	case known && !named:
		c.noWeight(ln, g, m.Ask)
	case ln.Row.PieceG == 0:
		c.noWeight(ln, g, "weigh it, or give cups or spoons")
	default:
		ln.Mass, ln.Estimated = grams(n*ln.Row.PieceG), true
		ln.Prepared = fmt.Sprintf("%s at %s g each%s", q(g.Amount), trim(ln.Row.PieceG), bracket(ln.Row.PieceForm))
		c.gramsMeant(ln, g, n)
	}
}

// ofSomeWeight is the weight in g from which a piece is not counted by the hundred.
const ofSomeWeight = 10

// gramsMeant asks of a number without a unit that is large for a count: "300" of
// rhubarb is 15 kg of stalks.
func (c *calc) gramsMeant(ln *Line, g batch.Ingredient, n float64) {
	if n < pantry.ManyPieces || g.Amount.Piece != "" || ln.Row.PieceG < ofSomeWeight {
		return
	}
	c.warnf("grams-meant", g.Path+".amount", "%s of %s weigh %s, at %s g each: were grams meant?", q(g.Amount), ln.Name, c.say(ln.Mass), trim(ln.Row.PieceG)).
		Hinted(fmt.Sprintf("write amount = \"%s g\" if so", trim(n)))
}

func (c *calc) noWeight(ln *Line, g batch.Ingredient, hint string) {
	c.errorf("no-piece-weight", g.Path+".amount", "no weight is known for %s of %s", q(g.Amount), ln.Name).Hinted(hint)
}

// pieceNamed reports that the table weighs a piece by the maker's word: "1
// can" of beer.
func pieceNamed(form, piece string) bool {
	for _, w := range strings.Fields(strings.ToLower(piece)) {
		if strings.HasPrefix(strings.ToLower(form), strings.TrimSuffix(w, "s")) {
			return true
		}
	}
	return false
}

// byMeasure weighs pinches, sticks and bottles by the table of measures.
func (c *calc) byMeasure(ln *Line, g batch.Ingredient, m pantry.Measure) {
	one := m.Grams
	if m.ML != 0 {
		spoon, ok := household(ln.Row, unit.Quantity{Text: "tsp", Dim: unit.ByVolume}, g.Form)
		if !ok {
			c.noWeight(ln, g, fmt.Sprintf("weigh it; one is taken as %s, but the table has no weight for that", m.Says))
			return
		}
		one = spoon.grams * m.ML / spoon.per.ML()
	}
	ln.Mass, ln.Estimated = grams(g.Amount.Count*one), true
	ln.Prepared = fmt.Sprintf("%s at %s g each (%s)", q(g.Amount), trim(one), m.Says)
}

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
	case spoon && row.TbspG != 0:
		return measured{row.TbspG, unit.Tablespoon, "tablespoon", "", ""}, true
	case tea && row.TspG != 0:
		return measured{row.TspG, unit.Teaspoon, "teaspoon", "", ""}, true
	}
	if m, ok := cup(row, words); ok {
		return m, true
	}
	switch {
	case row.TbspG != 0:
		return measured{row.TbspG, unit.Tablespoon, "tablespoon", "", ""}, true
	case row.TspG != 0:
		return measured{row.TspG, unit.Teaspoon, "teaspoon", "", ""}, true
	}
	return measured{}, false
}

// alike are forms that fill a cup about alike.
var alike = []string{"pureed puree crushed mashed pulp", "chopped diced cubes cubed pieces chunks minced", "sliced slices",
	"halves halved", "grated shredded", "whole as is berries", "packed", "unpacked", "pitted", "juice strained", "sections segments", "ground", "drained"}

func cup(row pantry.Ingredient, words string) (measured, bool) {
	if row.Class == "fruit" { // cut fine it packs like crushed (own reading of USDA HG 56: 4 cups of cherries, finely chopped, are 3 lb)
		words = fine.ReplaceAllString(words, "crushed")
	}
	want := classes(words)
	first := measured{row.CupG, unit.Cup, "cup", row.CupForm, ""}
	second := measured{row.Cup2G, unit.Cup, "cup", row.Cup2Form, ""}
	for _, m := range []measured{first, second} {
		if m.grams != 0 && want&classes(m.form) != 0 {
			return m, true
		}
	}
	crushed := classes("crushed")
	if want&crushed != 0 && (row.Class == "fruit" || row.Class == "vegetable") {
		return measured{crushedCup, unit.Cup, "cup", "crushed", ""}, true
	}
	if m, ok := cut(row, want, first, second); ok {
		return m, true
	}
	if first.grams == 0 {
		return measured{}, false
	}
	if want&^classes("whole") != 0 && row.Class == "fruit" {
		first.assumed = fmt.Sprintf("the table has no such form, so %s g a cup%s is taken", trim(first.grams), bracket(first.form))
	}
	return first, true
}

// choppedOverSliced is how much more chopped fruit a cup holds than slices. USDA
// SR28 weighs both of apple (125 over 109 g), pear (161 over 140) and starfruit
// (132 over 108): 1.15 to 1.22. A kitchen table has 2 3/4 to 3 cups of peaches
// sliced, 2 1/4 chopped, to the pound: 1.28 (homecooking.about.com, peach
// equivalents, read 27 Nov 2026). The slices themselves are those of a table of
// canning yields where it weighs more than SR28, whose cups are of a plate: fruit
// cut for the pot settles in its juice (ingredients.csv, peaches and pears).
const choppedOverSliced = 1.2

// slicedOverWhole is how much more sliced berries a cup holds than whole ones: a
// quart of strawberries is 1 1/4 to 1 1/2 lb and 4 cups sliced, 142 to 170 g a cup
// (craftybaking.com, Fruit and Purees; nashobawinery.com/weights, both read 27 Nov
// 2026), over SR28's 144 g whole: up to 1.18.
const slicedOverWhole = 1.15

// cut weighs a cup of cut fruit of which the table has larger pieces alone:
// chopped by its slices, both by the whole berry.
func cut(row pantry.Ingredient, want uint, forms ...measured) (measured, bool) {
	chopped, sliced := want&classes("chopped") != 0, want&classes("sliced halves") != 0
	if row.Class != "fruit" || !chopped && !sliced {
		return measured{}, false
	}
	for _, m := range forms {
		switch has := classes(m.form); {
		case m.grams <= 0:
			continue
		case chopped && has&classes("sliced") != 0:
			m.grams, m.form = m.grams*choppedOverSliced, "chopped, a fifth over the table's slices"
		case chopped && has&classes("whole") != 0:
			m.grams, m.form = m.grams*slicedOverWhole*choppedOverSliced, "chopped, over the table's whole fruit"
		case has&classes("whole") != 0:
			m.grams, m.form = m.grams*slicedOverWhole, "sliced, over the table's whole fruit"
		default:
			continue
		}
		return m, true
	}
	return measured{}, false
}

var fine = regexp.MustCompile(`(?i)\b(?:finely|fine) (?:chopped|diced|cut|minced)\b`)

// classes gives the groups of alike that the words name, as bits.
func classes(words string) (set uint) {
	have := strings.FieldsFunc(strings.ToLower(words), func(r rune) bool { return !unicode.IsLetter(r) })
	for i, group := range alike {
		for _, w := range strings.Fields(group) {
			if slices.Contains(have, w) {
				set |= 1 << i
			}
		}
	}
	return set
}
