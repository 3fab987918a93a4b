package us

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
)

// toldOf are the codes told of a line under the title of a strawberry jam with
// lemon juice and sugar.
func toldOf(t *testing.T, set, says string) string {
	t.Helper()
	src := "name = \"Strawberry jam\"\nkind = \"jam\"\nmade = 2026-09-05\n[[ingredient]]\nname = \"strawberries\"\namount = \"1 kg\"\n" +
		"[[ingredient]]\nname = \"sugar\"\namount = \"1.1 kg\"\n[[ingredient]]\nname = \"lemon juice\"\namount = \"40 g\"\n[[ingredient]]\nname = \"water\"\namount = \"60 g\"\n[cook]\nbrix = 66\n[label]\nsubtitle = \"" + says + "\"\n"
	b, l := batch.Parse("jam.toml", []byte(src), nil)
	if l.HasErrors() {
		t.Fatal(l)
	}
	r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
	_, l = declare(t, r, set, draft.Options{})
	var out []string
	for _, d := range l {
		if d.Path == "label.subtitle" {
			out = append(out, d.Code)
		}
	}
	return strings.Join(out, " ")
}

// 21 U.S.C. 343(a)(1): a label is false in any particular that the recipe shows to
// be so, and what the recipe can't show is asked about.
func TestPromisesOfALabel(t *testing.T) {
	for says, want := range map[string]string{
		// groups that an ingredient belongs to
		"no citrus": "absence-claim", "no added acid": "absence-claim", "no fructose": "absence-claim", "no added sweetener": "unsweetened",
		"no corn syrup": "", "no dairy": "", "no gelatin": "", "no dyes": "", "alcohol-free": "", "no cherries": "",
		// what no recipe shows
		"no nasties": "absence-unproven", "without fillers": "absence-unproven", "filler-free": "absence-unproven", "no cane sugar": "absence-unproven", "nothing added": "purity-claim", "real fruit only": "purity-claim", "no rubbish, no rush": "absence-unproven",
		"No. 7": "", "free range": "", "feel free to share": "", "no two jars alike": "", "for Sunday": "", "no rush": "", "a day without jam": "", "soothing as an evening": "", "stir into yoghurt": "", "carefree days": "",
		// all that is in it
		"just strawberries": "purity-claim", "only strawberries": "purity-claim", "only strawberries and sugar": "purity-claim", "strawberries, sugar, nothing else": "purity-claim",
		"only strawberries, sugar and lemon": "", "strawberries, sugar and lemon juice, nothing else": "", "only the best strawberries": "", "just like home": "", "just picked": "", "only at our stall": "",
		// shares in words
		"two thirds fruit": "share-claim", "twice the fruit": "share-claim", "more fruit than sugar": "share-claim", "half sugar": "nutrition-claim", "half fruit": "",
		"three berry": "share-claim", "four fruits": "share-claim", "two fruits": "", "triple berry": "share-claim", "one fruit": "", "a third fruit": "share-claim",
		// keeping and safety
		"safe at room temperature": "keeping-claim", "lasts a lifetime": "keeping-claim", "best within 5 years": "keeping-claim", "won't go off": "keeping-claim", "botulism-safe": "safety-claim",
		// health, those who stand behind it
		"good for the gut": "health-claim", "soothes a sore throat": "health-claim", "a tonic": "health-claim", "slimming": "health-claim", "low-glycaemic": "nutrition-claim", "low GI": "nutrition-claim",
		"clinically tested": "authority-claim", "dermatologist approved": "authority-claim", "no pesticide residue": "certified-claim", "pareve": "certified-claim",
		"loaded with vitamins": "nutrition-claim", "carb smart": "nutrition-claim",
		// dishes and foods
		"strawberry cheesecake": "says-absent-ingredient", "salted caramel": "says-absent-ingredient", "strawberry daiquiri": "says-absent-ingredient",
		"cheesecake flavored": "", "lovely with cheesecake": "", "our strawberry butter": "reserved-name",
	} {
		if got := toldOf(t, "us", says); got != want {
			t.Errorf("%q: %q, want %q", says, got, want)
		}
	}
}
