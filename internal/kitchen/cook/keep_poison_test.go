package cook

import (
	"strings"
	"testing"
)

// What published lists call poisonous is told, whatever language it is written
// in and wherever it stands; what only sounds like it is not. Sources: the rows
// of poisonous.csv (CDC MMWR 1983 outbreak, Regulation (EU) 2017/1237, Colorado
// State University Extension, Northern New England Poison Center).
func TestPoisonsAreTold(t *testing.T) {
	errs := []string{"rhubarb leaves", "Rhabarberblätter", "feuilles de rhubarbe", "unripe elderberries", "grüne Holunderbeeren", "elder leaves", "lily of the valley", "Maiglöckchen", "muguet", "oleander flowers", "Narzissen", "yew berries", "Tollkirschen",
		"pokeberries", "Virginia creeper berries", "privet berries", "holly berries", "ivy berries", "Ligusterbeeren", "Efeubeeren", "Pfaffenhütchen", "baies de houx", "horse chestnuts", "Rosskastanien", "water hemlock", "hydrangea petals", "Hortensienblüten", "clématites", "hemlock water dropwort", "wild buttercups", "lords and ladies", "aspirin", "salicylic acid", "Borax", "canning powder"}
	warns := []string{"apricot kernels", "Aprikosenkerne", "noyaux", "bitter almonds", "Bittermandeln", "cherry pits", "Kirschkerne", "bittere Mandeln", "black nightshade berries", "Nachtschattenbeeren", "comfrey leaves", "pennyroyal", "Rainfarn", "tanaisie", "mad honey", "loquat seeds", "Wollmispelkerne"}
	none := []string{"Wermut", "absinthe", "vermouth", "borage flowers", "apples", "rhubarb", "rhubarb, leaves removed", "elderberries", "Holunderbeeren", "elderflowers", "Holunderblüten", "bitter almond extract", "Bittermandelaroma", "cherries without stones", "almonds", "bay laurel", "grape hyacinth", "Kirschen", "Eibisch", "foxberries", "prunes", "lilac", "holly-smoked salt",
		"bittersweet chocolate", "bittersüße Schokolade", "ivy honey", "lemon juice, if needed", "chestnuts", "Maronen", "wild grapes", "haskap berries", "snow peas", "glycine", "hemlock tips", "buttercup squash", "winter squash (buttercup)", "loquats", "water lilies", "Butterblumen", "mustard powder", "pectin powder", "Weinbeeren", "spinach"}
	told := func(name string) string {
		b := demo(t)
		b.Ingredients = append(b.Ingredients, ing(t, name, "20 g", ""))
		_, l := compute(t, b)
		for _, d := range l {
			if d.Code == "poisonous" {
				if d.Hint == "" || d.Cite == "" || !strings.Contains(d.Path, "ingredient[") {
					t.Errorf("%s: %+v", name, d)
				}
				return d.Severity.String()
			}
		}
		return ""
	}
	for want, names := range map[string][]string{"error": errs, "warning": warns, "": none} {
		for _, name := range names {
			if got := told(name); got != want {
				t.Errorf("%s: %q, want %q", name, got, want)
			}
		}
	}
	b := demo(t)
	b.Ingredients[0].Form = "with their kernels, plum kernels crushed"
	if _, l := compute(t, b); !has(l, "poisonous") {
		t.Error("kernels in the form of the fruit are not told")
	}
}
