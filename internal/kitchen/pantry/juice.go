package pantry

import (
	"strings"

	"jarmark/internal/kit/unit"
)

// Juice gives the row of a strained fruit juice by words such as "grape
// juice" or "strawberries": the fruit's soluble solids in its own water,
// without skins, seeds and fibre. Its cup weight is the density of that syrup.
func (p *Pantry) Juice(words string) (Ingredient, bool) {
	ts := stripped(tokens(words))
	if n := len(ts); n > 1 && ts[n-1] == "juice" {
		ts = ts[:n-1]
	}
	g, ok := p.at(strings.Join(ts, " "))
	if !ok {
		return Ingredient{}, false
	}
	return juiceOf(g, strings.Join(ts, " ")+" juice")
}

// spokenJuices are the forms a language gives the juice of a fruit.
func spokenJuices(lang string, n Names) []string {
	switch lang {
	case "de": // Quittensaft, Saft aus Quitten
		if adj, noun, ok := strings.Cut(n.Label, "e "); ok && noun != "" && !strings.Contains(adj, " ") {
			return colouredJuices(adj, noun, n.Stem)
		}
		return []string{n.Stem + "saft", strings.TrimSuffix(n.Stem, "n") + "saft", "Saft aus " + n.Label, "Saft von " + n.Label}
	case "fr":
		return []string{"jus de " + n.Label, "jus de " + n.Singular, "jus d'" + n.Label, "jus d'" + n.Singular}
	}
	return nil
}

// colouredJuices are the German forms where an adjective tells the fruit from
// its sisters: roter Johannisbeersaft, Saft aus roten Johannisbeeren. Without it
// nothing is chosen.
func colouredJuices(adj, noun, stem string) (out []string) {
	for _, end := range []string{"e", "er", "en", "es"} {
		out = append(out, adj+end+" "+stem+"saft")
	}
	return append(out, "Saft aus "+adj+"en "+noun, "Saft von "+adj+"en "+noun)
}

func juiceOf(g Ingredient, name string) (Ingredient, bool) {
	if g.FruitClassEU == "" {
		return Ingredient{}, false
	}
	if g.Class == "juice" || g.WaterG <= 0 {
		return g, g.Class == "juice"
	}
	brix := 100 * g.SolubleG / (g.WaterG + g.SolubleG)
	g.Name, g.Class = name, "juice"
	g.SolubleG, g.OtherSolidsG, g.WaterG = brix, 0, 100-brix
	g.CupG, g.CupForm, g.Cup2G, g.Cup2Form = Density(brix, 20)*unit.Cup.ML()/1000, "juice", 0, ""
	g.TbspG, g.TspG, g.PieceG, g.PieceForm, g.FibreG, g.RefusePct = 0, 0, 0, "", 0, 0
	return g, true
}
