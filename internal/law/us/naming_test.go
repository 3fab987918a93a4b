package us

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
)

// jar is a strawberry and rhubarb jam with lines of its own.
func jar(t *testing.T, lines string) []string {
	t.Helper()
	src := "name = \"Strawberry rhubarb jam\"\nkind = \"jam\"\nmade = 2026-09-05\n[[ingredient]]\nname = \"strawberries\"\namount = \"1 kg\"\n[[ingredient]]\nname = \"rhubarb\"\namount = \"500 g\"\n" +
		"[[ingredient]]\nname = \"sugar\"\namount = \"1 kg\"\n[[ingredient]]\nname = \"vanilla bean\"\namount = \"4 g\"\n[cook]\nbrix = 62\n"
	if name, rest, ok := strings.Cut(lines, "\n"); ok && strings.HasPrefix(name, "name") {
		src, lines = strings.Replace(src, "name = \"Strawberry rhubarb jam\"", name, 1), rest
	}
	b, l := batch.Parse("jam.toml", []byte(src+lines), nil)
	if l.HasErrors() {
		t.Fatal(lines, l)
	}
	r, _ := cook.Compute(b, &batch.Kitchen{}, pantry.Default())
	_, l = declare(t, r, "us", draft.Options{})
	var out []string
	for _, d := range l {
		switch d.Code {
		case "says-absent-ingredient", "share-claim", "safety-claim", "keeping-claim", "free-from-claim", "nutrition-claim":
			out = append(out, d.Code+" "+d.Path)
		}
	}
	return out
}

// What a label calls the food is in the jar (21 U.S.C. 343(a)(1): a label that is
// false in any particular): every food of the name, the title and the line under
// it. Names that say a likeness, an absence, a person or a kind of preserve say none.
func TestNamesSayWhatIsInTheJar(t *testing.T) {
	const absent = "says-absent-ingredient "
	for lines, want := range map[string]string{
		"name = \"Strawberry raspberry jam\"\n":                      absent + "name",
		"name = \"Strawberry & basil jam\"\n":                        absent + "name",
		"name = \"Rosemary strawberry jam\"\n":                       absent + "name",
		"[label]\ntitle = \"Raspberry\"":                             absent + "label.title",
		"[label]\nsubtitle = \"& basil\"":                            absent + "label.subtitle",
		"[label]\nsubtitle = \"honey sweetened\"":                    absent + "label.subtitle",
		"[label]\nsubtitle = \"sweetened with honey\"":               absent + "label.subtitle",
		"[label]\nsubtitle = \"strawberry-ginger\"":                  absent + "label.subtitle",
		"name = \"Strawberry rhubarb jam\"\n":                        "",
		"name = \"Rosemary's strawberry jam\"\n":                     "",
		"name = \"Peach flavored strawberry jam\"\n":                 "",
		"name = \"Strawberry vanilla butter\"\n":                     "",
		"[label]\nsubtitle = \"& rhubarb\"":                          "",
		"[label]\nsubtitle = \"no basil\"":                           "",
		"[label]\nsubtitle = \"lovely with cheese and honey\"":       "",
		"[label]\ntitle = \"Berry & vanilla\"":                       "",
		"[label]\nsubtitle = \"summer in a jar\"":                    "",
		"[label]\nwords = \"try it on oatmeal with walnuts\"":        "",
		"[label]\nsubtitle = \"grown beside the honey-yellow barn\"": absent + "label.subtitle", // asked about, not forbidden
	} {
		if got := strings.Join(jar(t, lines), ", "); got != want {
			t.Errorf("%s: %q, want %q", lines, got, want)
		}
	}
}

// Figures in words are the recipe's: 1,000 g of 2,504 g are 40 % strawberries and
// 60 % fruit; five things are listed here as four.
func TestSharesInWords(t *testing.T) {
	for words, want := range map[string]string{
		"40% strawberries": "", "39.9 percent strawberries": "", "60 % fruit": "", "70% strawberries": "share-claim label.words", "75 % fruit": "share-claim label.words",
		"just 4 ingredients": "", "only four ingredients": "", "only three ingredients": "share-claim label.words", "4 simple ingredients": "",
		"20 % off on Saturday": "", "20 % rhubarb": "", "35 percent rhubarb": "share-claim label.words", "12 jars of it": "",
	} {
		if got := strings.Join(jar(t, "[label]\nwords = \""+words+"\""), ", "); got != want {
			t.Errorf("%q: %q, want %q", words, got, want)
		}
	}
}

// What is bought of several parts counts as one, or as its parts.
func TestCountsOfIngredients(t *testing.T) {
	pectin := "\"\n[[ingredient]]\nname = \"powdered pectin\"\namount = \"10 g\"\ncontains = [\"dextrose\", \"citric acid\", \"fruit pectin\"]"
	for words, want := range map[string]bool{"five ingredients": false, "seven ingredients": false, "six ingredients": true, "4 ingredients": true} {
		if got := jar(t, "[label]\nwords = \""+words+pectin); (len(got) == 1 && strings.HasPrefix(got[0], "share-claim")) != want {
			t.Errorf("%q: %v", words, got)
		}
	}
}

// Ways of promising that a maker finds anew: what the jar may need, what nobody
// can see in it, and whom it suits. The words are our own.
func TestPromisesOfOtherWords(t *testing.T) {
	for words, want := range map[string]string{
		"never needs a fridge": "keeping-claim", "eat within two years of opening": "keeping-claim", "keeps for ages": "keeping-claim", "jahrelang haltbar": "keeping-claim",
		"botulism free": "safety-claim", "100% safe": "safety-claim", "kid safe": "safety-claim", "safe to eat": "safety-claim",
		"suitable for vegans": "", "free from the 14 allergens": "free-from-claim", "big 9 free": "free-from-claim", "for diabetics": "nutrition-claim", "diet jam": "nutrition-claim", "half the sugar": "nutrition-claim",
		"sterile jars, boiled first": "", "not safe for children under one": "", "serve within minutes of opening the oven": "",
	} {
		got := strings.Join(jar(t, "[label]\nwords = \""+words+"\""), ", ")
		if want == "" && got != "" || want != "" && !strings.HasPrefix(got, want+" label.words") {
			t.Errorf("%q: %q, want %q", words, got, want)
		}
	}
	if got := jar(t, "[label]\nwords = \"suitable for vegans\"\n[[ingredient]]\nname = \"butter\"\namount = \"5 g\""); len(got) != 1 || !strings.HasPrefix(got[0], "free-from-claim") {
		t.Errorf("butter for vegans: %v", got)
	}
}
