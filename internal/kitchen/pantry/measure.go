package pantry

import (
	"fmt"
	"slices"
	"strings"
)

// Measure is one row of measures.csv: what a word after a count weighs or
// holds. A row without a size is one to ask about.
type Measure struct {
	Words         []string // "pinch", "Prise"
	Rows, Classes []string // of which ingredients; both empty = of any
	Grams, ML     float64  // of one; 0 = not by weight, not by volume
	Says          string   // "a sixteenth of a teaspoon"
	Ask           string   // what to write instead, when no size is known
	Source        string
}

func (p *Pantry) loadMeasures() error {
	t := readTable(p.from, "measures")
	t.each(func(r row) {
		m := Measure{Words: r.list("words"), Rows: r.list("rows"), Classes: r.list("kinds"), Grams: r.number("grams", 0),
			ML: r.number("ml", 0), Says: r.text("says"), Ask: r.text("ask"), Source: r.need("source")}
		known := m.Grams > 0 || m.ML > 0
		if len(m.Words) == 0 || m.Grams > 0 && m.ML > 0 || known == (m.Ask != "") || known != (m.Says != "") {
			r.fail("grams", "a size and what it is, or what to ask; never both")
		}
		for _, key := range m.Rows {
			if !slices.ContainsFunc(p.ingredients, func(g Ingredient) bool { return g.Key == key }) {
				r.fail("rows", fmt.Sprintf("%q is no ingredient", key))
			}
		}
		p.measures = append(p.measures, m)
	})
	return t.err
}

// Measure finds what a word after a count means for an ingredient: "sticks" of
// butter, "pinch" of anything. The first row that fits wins.
func (p *Pantry) Measure(piece string, g Ingredient) (Measure, bool) {
	words := strings.Fields(strings.ToLower(piece))
	for _, m := range p.measures {
		fits := len(m.Rows)+len(m.Classes) == 0 || slices.Contains(m.Rows, g.Key) || slices.Contains(m.Classes, g.Class)
		if fits && slices.ContainsFunc(words, func(w string) bool { return slices.Contains(m.Words, w) }) {
			return m, true
		}
	}
	return Measure{}, false
}

// MeasureWord reports a word after a count that the table speaks of.
func (p *Pantry) MeasureWord(word string) bool {
	return slices.ContainsFunc(p.measures, func(m Measure) bool { return slices.Contains(m.Words, word) })
}

// asBought are words for a weight with what is thrown away: pits, peel, core.
var asBought = []string{"as bought", "as purchased", "gross weight", "before preparing", "before preparation", "untrimmed", "unprepared",
	"with pits", "with pit", "with stones", "with the stones", "with stems and pits", "with shells", "in the shell", "in shell", "unpitted", "unstoned", "unshelled",
	"mit stein", "mit steinen", "mit kernen", "mit schale gewogen", "brutto", "wie gekauft", "avec noyaux", "avec noyau", "avec les noyaux", "non dénoyautées", "non dénoyautés", "poids brut"}

// AsBought tells that words of a maker mean the weight as bought, and gives the
// words without it. A whole fruit of which a fifth or more is thrown away is
// one as bought, too ("whole pineapple"): the caller asks [Ingredient.Whole].
func AsBought(words string) (rest string, yes bool) {
	low := strings.ToLower(words)
	for _, w := range asBought {
		if from, to, ok := wordAt(low, w, true); ok && len(low) == len(words) {
			return strings.Join(strings.Fields(strings.Trim(words[:from]+" "+words[to:], " ,()")), " "), true
		}
	}
	return words, false
}

// Whole reports that "whole" of this ingredient is more than what is eaten. A
// whole citrus fruit is one with its peel, which marmalade is made of.
func (g Ingredient) Whole(words string) bool {
	_, _, whole := wordAt(strings.ToLower(words), "whole", true)
	return whole && g.RefusePct >= 20 && !strings.Contains(strings.ToLower(g.Refuse), "peel") && (g.Class == "fruit" || g.Class == "vegetable")
}
