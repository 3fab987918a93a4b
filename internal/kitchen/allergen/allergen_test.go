package allergen

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

func read(name string) (string, bool) {
	r := Default().Read(name)
	var ids []string
	for _, h := range r.Hits {
		if !slices.Contains(ids, h.ID) {
			ids = append(ids, h.ID)
		}
	}
	slices.Sort(ids)
	return strings.Join(ids, " "), r.Known
}

func TestTables(t *testing.T) {
	if _, err := Load(); err != nil {
		t.Fatal(err)
	}
}

// What each word is made from. The nine foods: 21 U.S.C. 321(qq); the fourteen:
// Regulation (EU) 1169/2011 Annex II; derivatives: common food knowledge, no
// source. "?" after the ids: more may be in it, so it is not known.
func TestWords(t *testing.T) {
	for name, want := range map[string]string{
		// derivatives and word forms
		"whey powder": "milk", "Casein": "milk", "ghee": "milk", "buttermilk": "milk", "lactose": "milk", "goat's milk": "milk_goat",
		"goat milk": "milk_goat", "duck eggs": "egg_duck", "albumen": "egg", "mayonnaise": "egg ?", "tahini": "sesame", "hummus": "sesame ?",
		"spelt flour": "spelt", "kamut": "khorasan", "einkorn": "wheat", "seitan": "wheat", "semolina": "wheat", "flour": "wheat", "malt extract": "barley",
		"beer": "barley ?", "wheat beer": "barley wheat", "soy sauce": "soy wheat ?", "miso": "soy", "soy lecithin": "soy", "lecithin": " ?", "sunflower lecithin": "",
		"soy-lecithin": "soy", "marzipan": "almond", "praline": "nuts ?", "gianduja": "hazelnut milk ?", "almond extract": "almond", "amaretto": "almond",
		"Worcestershire sauce": "anchovy ?", "fish sauce": "fish", "shrimp paste": "shrimp", "anchovies": "anchovy", "langoustines": "langoustine",
		"white chocolate": "milk ?", "chocolate": " ?", "peanut butter": "peanut", "arachis oil": "peanut", "chopped walnuts": "walnut", "black walnuts": "walnut_black",
		"pine nuts": "pine_nut", "oyster sauce": "molluscs ?", "E 322": " ?", "E330": "", "natural flavor": " ?", "natural vanilla flavor": "", "custard": "egg milk",
		"potassium metabisulphite": "sulphites", "caramel": " ?", "vegetable oil": " ?", "sunflower oil": "", "mystery powder": " ?", "unsalted butter": "milk",
		// German and French, umlaut-free and joined
		"Mandelmehl": "almond", "Haselnusskrokant": "hazelnut", "Milchpulver": "milk", "Butterreinfett": "milk", "Vollmilchpulver": "milk", "Walnüsse": "walnut",
		"Walnuesse": "walnut", "Walnusse": "walnut", "gemahlene Mandeln": "almond", "Süßmolkenpulver": "milk", "Weizengrieß": "wheat", "Sojalecithin": "soy",
		"Eigelb": "egg", "Hühnerei": "egg", "Hafermilch": "oats", "Erdnussbutter": "peanut", "Nussmischung": "nuts", "Senfkörner": "mustard", "Garnelen": "shrimp",
		"Milchwunder": "milk ?", "Gerstenmalzextrakt": "barley", "lait de chèvre": "milk_goat", "lait d'amande": "almond", "noix": "walnut", "noix de cajou": "cashew",
		"œufs": "egg", "crème fraîche": "milk", "blé": "wheat", "épeautre": "spelt", "beurre de cacahuète": "peanut", "crevettes": "shrimp", "céleri": "celery",
		// words that look like an allergen's and are none
		"nutmeg": "", "butternut squash": "", "coconut": "coconut", "coconut milk": "coconut", "water chestnuts": "", "cocoa butter": "", "cream of tartar": "", "buttercup squash": "",
		"apple butter": "", "milk thistle": "", "eggplant": "", "buckwheat": "", "buckwheat flour": "", "chestnuts": "chestnut", "Muskatnuss": "", "Kokosmilch": "coconut",
		"Kakaobutter": "", "noix de muscade": "", "noix de coco": "coconut", "beurre de cacao": "", "lait de coco": "coconut", "Reismilch": "", "Buchweizenmehl": "",
		"crème de cassis": "", "lactic acid": "", "butter beans": "", "honeydew": "", "honeycrisp apples": "", "Honigmelone": "", "Weinstein": "",
		// whole words only: what holds "cod", "sole", "bass", "egg", "nut", "rye", "ale"
		"rye bread": "rye wheat ?", "wheatberries": "wheat", "sucre roux": "", "rosemary sprigs": "", "unsulphured apricots": "", "basswood honey": "honey", "labneh": "milk",
		"codes": " ?", "solely": " ?", "bassoon": " ?", "basswood": "", "eggless": " ?", "minute tapioca": " ?", "kale": "", "Trye plums": " ?", "preiselbeeren": "",
		// a food made of several stays one whatever it is named after, and a food of
		// plants that is called after one of milk holds none
		"chilli chocolate": " ?", "orange chocolate chips": " ?", "sea salt caramel": " ?", "mango chutney": " ?", "lime pickle": " ?", "onion relish": " ?",
		"garlic margarine": " ?", "Orangenschokolade": " ?", "Salzkaramell": " ?", "chocolat à l'orange": " ?", "chocolate mint": "", "Karamellzucker": "",
		"surimi": "fish ?", "crab sticks": "fish ?", "frangipane": "almond ?", "custard powder": " ?", "corn flakes": "barley ?", "bread": "wheat ?", "Röstzwiebeln": "wheat ?",
		"English mustard": "mustard ?", "English mustard powder": "mustard", "soy yogurt": "soy", "Sojajoghurt": "soy", "Hafersahne": "oats", "yaourt de soja": "soy",
		"beurre d'amande": "almond", "crème d'avoine": "oats", "cashew cheese": "cashew ?", "almond yogurt": "almond ?", "beurre noisette": "milk", "Reissahne": " ?",
		"karamellisierte Zwiebeln": "", "caramel colouring": "", "lemon syrup": "", "citrus fibre": "", "pea protein": "", "orange liqueur": "",
		// denials name nothing, and prove nothing
		"peanut-free chocolate": " ?", "dairy-free butter": "milk", "Milchfrei": " ?", "free from nuts": " ?",
		"honey": "honey", "heather honey": "honey", "Heidehonig": "honey", "miel d'acacia": "honey",
	} {
		ids, known := read(name)
		if !known {
			ids += " ?"
		}
		if ids != want {
			t.Errorf("%q: %q, want %q", name, ids, want)
		}
	}
}

func TestSplit(t *testing.T) {
	got := Split("dark chocolate (cocoa mass, sugar, emulsifier: soy lecithin [E322]), salt; pectin")
	if len(got) != 3 || got[0].Name != "dark chocolate" || len(got[0].Parts) != 4 || !got[0].Parts[2].Heading() || got[0].Parts[3].Parts[0].Name != "E322" || got[2].Name != "pectin" {
		t.Errorf("%+v", got)
	}
	if got := Split("a (b (c, d"); len(got) != 1 || len(got[0].Parts) != 1 || len(got[0].Parts[0].Parts) != 2 {
		t.Errorf("open brackets: %+v", got)
	}
}

// Every word of the table is found again, in capitals, plural or not, and beside
// a word of state; adding words never takes an allergen away, but for those that
// make another phrase.
func TestWordsAreFound(t *testing.T) {
	v := Default()
	words := v.Words()
	rapid.Check(t, func(t *rapid.T) {
		w := rapid.SampledFrom(words).Draw(t, "word")
		want := v.Read(w)
		for _, form := range []string{strings.ToUpper(w), "organic " + w, w + ", chopped", strings.ReplaceAll(w, " ", "-")} {
			got := v.Read(form)
			for _, h := range want.Hits {
				if !slices.ContainsFunc(got.Hits, func(g Hit) bool { return g.ID == h.ID }) {
					t.Fatalf("%q: %v is lost in %q: %v", w, h, form, got)
				}
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	for _, s := range []string{"Mandelmehl", "soy lecithin (E322)", "a (b (c", "Süß\xff", "", "''", strings.Repeat("nuss", 30)} {
		f.Add(s)
	}
	v := Default()
	f.Fuzz(func(t *testing.T, s string) {
		for _, it := range Split(s) {
			r := v.Read(it.Name)
			if r.Known && (r.Empty || len(r.Rest) > 0) {
				t.Fatalf("%q is known and not: %+v", it.Name, r)
			}
			for _, h := range r.Hits {
				if _, ok := v.Substance(h.ID); !ok {
					t.Fatalf("%q names no substance of the table: %q", s, h.ID)
				}
			}
		}
	})
}
