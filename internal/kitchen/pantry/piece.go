package pantry

import "strings"

// ManyPieces is from how many pieces on a number without a unit is rather grams:
// common practice, no source.
const ManyPieces = 100

// anyPiece are words that go with a count of anything and change nothing of
// its weight; sizes and states are in stateWords.
var anyPiece = wordSet(`piece pc pcs fruit each sized size jumbo whole stuck stueck grosse grosser kleine kleiner mittelgrosse
	mittelgrosser gros petit petite moyen moyenne`)

// samePiece are words for one kind of piece, the first as the table writes it.
var samePiece = func() map[string]string {
	out := map[string]string{}
	for _, group := range []string{"package packet pkg pack box sachet envelope", "stalk stick rib stem", "ear cob", "head umbel flowerhead",
		"bean pod", "leaf leave blatt blatter feuille", "sprig branch", "clove zehe gousse", "pouch pouche"} {
		words := strings.Fields(group)
		for _, w := range words {
			out[w] = words[0]
		}
	}
	return out
}()

// CountsBy reports whether the words after a count name a piece of this
// ingredient, called name by the maker: its own name, the piece the table
// weighs, a size, or nothing. No other word can be weighed: "1 furlong".
func (g Ingredient) CountsBy(piece, name string) (ok bool, odd string) {
	known := map[string]bool{}
	for _, words := range append([]string{name, g.Name, g.PieceForm, strings.ReplaceAll(g.Key, "_", " ")}, g.Aliases...) {
		g.learn(known, words)
	}
	for _, n := range g.Words {
		g.learn(known, n.Label+" "+n.Singular)
	}
	for _, w := range tokens(piece) {
		if !known[pieceWord(w)] && !anyPiece[w] && !stateWords[w] {
			return false, w
		}
	}
	return true, ""
}

// Counts reports as [Ingredient.CountsBy] does, and knows the fruit a juice or a peel
// is counted by under its names in every language: "juice of 2 Zitronen".
func (p *Pantry) Counts(g Ingredient, piece, name string) (ok bool, odd string) {
	if ok, odd = g.CountsBy(piece, name); ok {
		return true, ""
	}
	for _, lang := range []string{"de", "fr"} {
		food, known := p.Speaking(lang).Ingredient(piece)
		if en := food.Words["en"].Singular; known && en != "" {
			if said, _ := g.CountsBy(en, name); said {
				return true, ""
			}
		}
	}
	return false, odd
}

func (g Ingredient) learn(known map[string]bool, words string) {
	for _, w := range tokens(words) {
		known[pieceWord(w)] = true
	}
}

func pieceWord(w string) string {
	if same, ok := samePiece[w]; ok {
		return same
	}
	return w
}
