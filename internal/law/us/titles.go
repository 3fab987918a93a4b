package us

import (
	"slices"
	"strings"

	"jarmark/internal/kit/words"
	"jarmark/internal/law/draft"
)

// titles reports lines beside the name of the food that call it another kind of
// preserve than the name does: a jelly over a jam (21 U.S.C. 343(b), (g)).
func (p *pass) titles() {
	own := draft.ProductWord(calledWhat(p.B))
	if own == "" {
		return
	}
	for _, line := range p.TitleLines() {
		if word := p.otherKind(line.Text, own); word != "" {
			p.Duty("reserved-name", p.BatchFile(), line.Path, "%q is the name of another food, and by its name this one is %s", word, own).
				Hinted("call it what the name says, or leave the word out").Cited("21 U.S.C. 343(b), (g)")
		}
	}
}

// alsoFoods are kinds of preserve whose word is as often an ingredient or what a
// jar is eaten with: peanut butter, maple syrup.
var alsoFoods = []string{"butter", "curd", "spread", "syrup", "sauce"}

// otherKind finds a word of another kind in a line. Words that are foods too count
// only where they stand alone or behind fruit of the pot.
func (p *pass) otherKind(line, own string) string {
	ws := strings.FieldsFunc(strings.ToLower(line), draft.NotLetter)
	for i, w := range ws {
		kind := draft.ProductWord(w)
		if kind == "" || kind == own || i > 0 && slices.Contains(denying, ws[i-1]) || i > 1 && slices.Contains(denying, ws[i-2]) {
			continue
		}
		if !slices.Contains(alsoFoods, w) || i == 0 && len(ws) == 1 || i > 0 && p.isFruitWord(ws[i-1]) {
			return w
		}
	}
	return ""
}

// denying are words before a kind that is not meant.
var denying = []string{"not", "no", "never", "unlike", "than", "like"}

// isFruitWord reports a word that stands for the fruit of the pot.
func (p *pass) isFruitWord(w string) bool {
	w = words.Singular(w)
	return w == "fruit" || slices.ContainsFunc(p.list, func(e entry) bool {
		return countsAsFruit(e.line) && slices.ContainsFunc(strings.Fields(draft.Spaced(e.line.Name)), func(n string) bool { return words.Singular(n) == w })
	})
}
