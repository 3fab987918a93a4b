package eu

import (
	"cmp"
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Regulation (EU) 1169/2011 Art 7(1): food information shall not be misleading as to
// the characteristics of the food. What the recipe shows to be untrue is told, and
// what it can't show is asked about.
func TestPromisesOfALabel(t *testing.T) {
	names := map[string][4]string{"gb": {"Strawberry jam", "strawberries", "sugar", "lemon juice"}, "de": {"Erdbeerkonfitüre", "Erdbeeren", "Zucker", "Zitronensaft"}, "fr": {"Confiture de fraises", "fraises", "sucre", "jus de citron"}}
	for set, all := range map[string]map[string]string{
		"gb": {
			"no citrus": "absence-claim", "no added acid": "absence-claim", "no nasties": "absence-unproven", "no dairy": "", "just strawberries": "purity-claim", "just strawberries, sugar and lemon": "",
			"twice the fruit": "share-claim", "four fruits": "share-claim", "low GI": "nutrition-claim", "packed with vitamins": "nutrition-claim", "clinically tested": "authority-claim",
			"won’t go off": "keeping-claim", "strawberry daiquiri": "says-absent-ingredient", "good for the gut": "health-claim", "for Sunday": "",
		},
		"de": {
			"ohne Zitrusfrüchte": "absence-claim", "ohne Säure": "absence-claim", "ohne Schnickschnack": "absence-unproven", "nur Erdbeeren und Zucker": "purity-claim", "Erdbeeren, Zucker, sonst nichts": "purity-claim",
			"nur Erdbeeren, Zucker und Zitronensaft": "", "mehr Frucht als Zucker": "share-claim", "zwei Drittel Frucht": "share-claim", "doppelt so viel Frucht": "share-claim", "drei Beeren": "share-claim",
			"70 % Frucht": "share-claim", "46 % Frucht": "", "mit Sekt": "says-absent-ingredient", "heilsam": "health-claim", "Hausmittel gegen Husten": "health-claim", "dermatologisch getestet": "authority-claim",
			"mindestens 3 Jahre haltbar": "keeping-claim", "verdirbt nicht": "keeping-claim", "Demeter": "certified-claim", "nach Omas Rezept": "", "ohne Frage gut": "",
		},
		"fr": {
			"sans agrumes": "absence-claim", "sans acide": "absence-claim", "sans chichis": "absence-unproven", "que des fraises": "purity-claim", "rien que des fraises": "purity-claim", "fraises et sucre, c’est tout": "purity-claim",
			"plus de fruits que de sucre": "share-claim", "deux tiers de fruits": "share-claim", "trois fruits": "share-claim", "pleine de vitamines": "nutrition-claim", "apaise la gorge": "health-claim",
			"remède de grand-mère": "health-claim", "ne périme jamais": "keeping-claim", "Label Rouge": "certified-claim", "sans colorants": "", "recette de grand-mère": "",
		},
	} {
		for says, want := range all {
			n := names[set]
			src := "name = \"" + n[0] + "\"\nkind = \"jam\"\nmade = 2026-09-05\n"
			for i, amount := range []string{"1 kg", "1.1 kg", "40 g"} {
				src += "[[ingredient]]\nname = \"" + n[i+1] + "\"\namount = \"" + amount + "\"\n"
			}
			b, l := batch.Parse("jam.toml", []byte(src+"[cook]\nbrix = 66\n[label]\nsubtitle = \""+says+"\"\n"), nil)
			if l.HasErrors() {
				t.Fatal(l)
			}
			lang := cmp.Or(map[string]string{"gb": "en"}[set], set)
			r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default().Speaking(lang))
			e := tester(t, set, lang, after, r, cylinder(68, 60, 340))
			e.declare()
			var got []string
			for _, d := range e.L {
				if d.Path == "label.subtitle" {
					got = append(got, d.Code)
				}
			}
			if strings.Join(got, " ") != want {
				t.Errorf("%s %q: %q, want %q", set, says, got, want)
			}
		}
	}
}
