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
	if !ok || g.FruitClassEU == "" {
		return Ingredient{}, false
	}
	if g.Kind == "juice" || g.WaterG <= 0 {
		return g, g.Kind == "juice"
	}
	brix := 100 * g.SolubleG / (g.WaterG + g.SolubleG)
	g.Name, g.Kind = strings.Join(ts, " ")+" juice", "juice"
	g.SolubleG, g.OtherSolidsG, g.WaterG = brix, 0, 100-brix
	g.CupG, g.CupForm, g.Cup2G, g.Cup2Form = Density(brix, 20)*unit.Cup.ML()/1000, "juice", 0, ""
	g.TbspG, g.TspG, g.PieceG, g.PieceForm, g.FibreG, g.RefusePct = 0, 0, 0, "", 0, 0
	return g, true
}
