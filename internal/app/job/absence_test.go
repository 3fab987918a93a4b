package job_test

import (
	"strings"
	"testing"
)

// What a label says is not in the jar is not in it, and what nothing here shows
// is not promised: food is misbranded when its labelling is false or misleading
// (21 U.S.C. 343(a)(1)), and food information must not mislead (Regulation (EU)
// 1169/2011 Art 7(1)). The words tried are our own.
func TestAbsencesAreTrue(t *testing.T) {
	env := builtin(t)
	const boiled = "[process]\nmethod = \"boiling water\"\nminutes = 10\n"
	plain := []string{"strawberries", "sugar", "lemon juice"}
	with := func(more ...string) []string { return append(append([]string(nil), plain...), more...) }
	for _, c := range []struct {
		place, words string
		in           []string
		want         string
	}{
		{"us-or", "no pectin added", with("pectin"), "error absence-claim"},
		{"us-or", "no pectin added", plain, ""},
		{"us-or", "Made without lemon juice", plain, "error absence-claim"},
		{"us-or", "butter free", with("salted butter"), "error free-from-claim, error absence-claim"},
		{"us-or", "cinnamon-free", plain, ""},
		{"us-or", "free of corn syrup", with("light corn syrup"), "error absence-claim"},
		{"us-or", "no strawberries like ours", plain, ""},
		{"us-or", "no additives", with("citric acid"), "error purity-claim"},
		{"us-or", "nothing added", with("liquid pectin"), "error purity-claim"},
		{"us-or", "additive-free", plain, ""},
		{"us-or", "no preservatives", with("potassium sorbate"), "error purity-claim"},
		{"us-or", "no preservatives", with("liquid pectin"), "warning purity-claim"},
		{"us-or", "no preservatives", plain, ""},
		{"us-or", "all natural", with("sodium benzoate"), "note natural-claim, error purity-claim"},
		{"us-or", "no refined sugar", plain, "error purity-claim"},
		{"us-or", "no refined sugar", []string{"strawberries", "honey"}, ""},
		{"us-or", "sulfite-free", with("dried apricots"), "warning purity-claim"},
		{"us-or", "sulfite-free", plain, ""},
		{"us-or", "raw strawberry jam", plain, "error purity-claim"},
		{"us-or", "with raw honey", with("honey"), ""},
		{"us-or", "keeps for years", plain, "warning keeping-claim"},
		{"us-or", "keeps for 3 years", plain, "warning keeping-claim"},
		{"us-or", "non-GMO", plain, "warning certified-claim"},
		{"gb", "no pectin added", with("pectin"), "error absence-claim"},
		{"gb", "no additives", with("pectin"), "error purity-claim"},
		{"gb", "no preservatives", with("liquid pectin"), "warning purity-claim"},
		{"gb", "pure fruit", plain, "error purity-claim"},
		{"gb", "needs no fridge", plain, "warning keeping-claim"},
		{"de", "ohne Pektin", with("pectin"), "error absence-claim"},
		{"de", "pektinfrei", with("pectin"), "error absence-claim"},
		{"de", "ohne Pektin", plain, ""},
		{"de", "ohne Zusatzstoffe", with("Zitronensäure"), "error purity-claim"},
		{"de", "ohne Konservierungsstoffe", with("Gelierzucker 2:1"), "warning purity-claim"},
		{"de", "ohne Industriezucker", plain, "error purity-claim"},
		{"de", "kalt gerührt", plain, "error purity-claim"},
		{"de", "ohne Gentechnik", plain, "warning certified-claim"},
		{"de", "mit Liebe gerührt", plain, ""},
		{"us-or", "free from nuts", with("almonds"), "error free-from-claim"},
		{"us-or", "Zero nuts", with("walnuts"), "error free-from-claim"},
		{"us-or", "safe for nut allergies", with("marzipan"), "error free-from-claim"},
		{"us-or", "contains no milk", with("ghee"), "error free-from-claim"},
		{"us-or", "eggless", with("eggs"), "error free-from-claim"},
		{"us-or", "no sesame", with("tahini"), "error free-from-claim"},
		{"us-or", "free of the top 9 allergens", plain, "warning free-from-claim"},
		{"us-or", "allergy-friendly", plain, "warning free-from-claim"},
		{"us-or", "dairy free", plain, ""},
		{"us-or", "dairy free", with("house crunch"), "warning free-from-claim"},
		{"us-or", "less sweet, more strawberries, lovely with nuts", plain, ""},
		{"us-or", "keeps for ever", plain, "warning keeping-claim"},
		{"us-or", "store at room temperature", plain, "warning keeping-claim"},
		{"us-or", "serve at room temperature", plain, ""},
		{"gb", "free from milk", with("whey powder"), "error free-from-claim"},
		{"de", "frei von Nüssen", with("Haselnüsse"), "error free-from-claim"},
		{"de", "keinerlei Milch", with("Sahne"), "error free-from-claim"},
		{"de", "für Allergiker", plain, "warning free-from-claim"},
		{"de", "haltbar bis 2030", plain, "warning keeping-claim"},
		{"fr", "exempt de lait", with("crème"), "error free-from-claim"},
		{"fr", "se conserve indéfiniment", plain, "warning keeping-claim"},
		{"fr", "sans pectine ajoutée", with("pectin"), "error absence-claim"},
		{"fr", "sans additif", with("citric acid"), "error purity-claim"},
		{"fr", "sans conservateur", plain, ""},
		{"fr", "sans cuisson", plain, "error purity-claim"},
		{"fr", "se conserve 3 ans", plain, "warning keeping-claim"},
	} {
		b := loadIn(env, c.place, strings.Replace(pot(c.in), "made = ", "label = { subtitle = \""+c.words+"\" }\nmade = ", 1)+boiled+"[[fill]]\njar = \"8 fl oz\"\ncount = 4\nnet = [\"280 g\"]\n")
		var got []string
		for _, d := range b.Findings {
			if d.Path == "label.subtitle" && strings.HasSuffix(d.Code, "-claim") {
				got = append(got, d.Severity.String()+" "+d.Code)
			}
		}
		if s := strings.Join(got, ", "); s != c.want {
			t.Errorf("%s, %q with %v: %q, want %q", c.place, c.words, c.in, s, c.want)
		}
	}
}

// Words of keeping on food that keeps cold are an error: a low-sugar jam that was
// not processed.
func TestKeepingWordsOnColdFood(t *testing.T) {
	env := builtin(t)
	b := loadIn(env, "us-or", "story = \"Shelf stable, no refrigeration needed.\"\n"+pot([]string{"strawberries", "sugar"})+"[process]\nmethod = \"none\"\n[[fill]]\njar = \"8 fl oz\"\ncount = 4\nnet = [\"280 g\"]\n")
	for _, d := range b.Findings {
		if d.Code == "keeping-claim" && d.Severity.String() == "error" && strings.Contains(d.Message, "keeps cold") {
			return
		}
	}
	t.Errorf("%v", b.Findings)
}
