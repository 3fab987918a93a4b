package job_test

import (
	"strings"
	"testing"

	"jarmark/internal/app/job"
)

// A word promises the same on a label of any place: those who buy read German in
// Oregon and English in Bavaria (21 U.S.C. 343(a)(1); Regulation (EU) 1169/2011 Art
// 7(1)). The words tried are our own.
func TestAbsencesInEveryTongueAndPlace(t *testing.T) {
	env, places := builtin(t), []string{"us-or", "de", "gb", "fr"}
	if testing.Short() {
		places = places[:2]
	}
	nuts, flour, cream := []string{"strawberries", "sugar", "almonds"}, []string{"strawberries", "sugar", "wheat flour"}, []string{"strawberries", "sugar", "whole milk"}
	plain, pectin, rum := []string{"strawberries", "sugar"}, []string{"strawberries", "sugar", "pectin"}, []string{"strawberries", "sugar", "rum"}
	for _, c := range []struct {
		code, level string
		in          []string
		words       []string
	}{
		{"free-from-claim", "error", nuts, []string{"nut-free", "nussfrei", "Nussfreie Küche", "frei von Nüssen", "ohne Nuesse", "ohne Nüsse und Milch", "milch- und nussfrei", "sans noix", "sans fruits à coque", "sans gluten ni arachides", "sin frutos secos", "sin gluten ni nueces",
			"senza frutta a guscio", "senza glutine e noci", "zonder noten", "notenvrij", "uden nødder", "nøddefri", "utan nötter", "nötfri", "bez orzechów", "free from milk, egg or nuts", "nut, egg and milk free", "mandelfrei", "almond-free", "sans amandes", "sem nozes", "pähkinätön"}},
		{"gluten-claim", "error", flour, []string{"gluten free", "glutenfrei", "glutenfreie Marmelade", "Gluten-frei", "ohne Gluten", "sans gluten", "sans trace de gluten", "sin gluten", "sin TACC", "senza glutine", "sem glúten", "glutenvrij", "glutenfri", "utan gluten", "bez glutenu", "bezglutenowy", "bezlepková", "laktose- und glutenfrei"}},
		{"free-from-claim", "error", cream, []string{"dairy free", "laktosefrei", "laktosefreies Glück", "Milchfrei", "ohne Milch", "ohne Laktose", "sans lactose", "sans lait", "sin lactosa", "libre de lácteos", "senza lattosio", "sem lactose", "lactosevrij", "zonder melk", "laktosefri", "laktosfri", "bez laktozy", "vegan", "vegane", "végétalien", "vegano", "vegansk", "rein pflanzlich", "100 % vegetal"}},
		{"nutrition-claim", "", plain, []string{"no added sugar", "ohne Zuckerzusatz", "Ohne Zucker", "zuckerfrei", "zuckerarm", "sans sucre ajouté", "sans sucres ajoutés", "sin azúcar añadido", "sin azucar anadido", "sin azúcar", "senza zuccheri aggiunti", "sem adição de açúcar", "zonder toegevoegde suiker", "suikervrij", "uden tilsat sukker", "sukkerfri", "utan tillsatt socker", "bez cukru", "fettarm", "sin calorías", "riche en vitamines", "vitaminreich", "rico en vitaminas"}},
		{"organic-claim", "warning", plain, []string{"organic", "Bio", "biologique", "bio-logique? biologiques", "orgánico", "Organico", "ecológica", "biologico", "biológico", "biologisch", "ökologisch", "oekologisch", "økologisk", "ekologisk", "ekologiczny", "luomu"}},
		{"absence-claim", "error", pectin, []string{"no pectin", "ohne Pektin", "pektinfrei", "sans pectine", "sans pectine ajoutée", "sin pectina", "senza pectina", "zonder pectine", "uden pektin", "utan pektin", "bez pektyny", "no fuss or pectin"}},
		{"absence-claim", "error", rum, []string{"alcohol free", "alkoholfrei", "ohne Alkohol", "sans alcool", "sin alcohol", "senza alcol", "zonder alcohol", "uden alkohol", "bez alkoholu"}},
		{"purity-claim", "error", pectin, []string{"no additives", "ohne Zusatzstoffe", "sans additifs", "sin aditivos", "senza additivi", "zonder toevoegingen", "uden tilsætningsstoffer", "utan tillsatser"}},
		{"purity-claim", "error", plain, []string{"100 % fruit", "nur Früchte", "100 % fruits", "100 % fruta", "ohne Industriezucker", "sin azúcar refinado"}},
		{"certified-claim", "warning", plain, []string{"non-GMO", "ohne Gentechnik", "sans OGM", "sin transgénicos", "senza OGM"}},
		{"", "", plain, []string{"mit Liebe gerührt", "fait avec amour", "hecho con amor", "fatto in casa", "met liefde gemaakt", "lavet med kærlighed", "no nonsense", "sin prisa", "ohne Eile", "sans hâte", "Biene und Blüte", "senza fretta", "free as a bird", "for Ida, without whom no jam", "nuts about strawberries",
			"no waste and strawberries from our garden", "a touch of salt air", "zonder haast", "utan stress", "frische Ernte", "sold at no other stall"}},
	} {
		for _, place := range places {
			for _, words := range c.words {
				for where, key := range map[string]string{"label.subtitle": "label = { subtitle = %s }\n", "label.stamp": "label = { stamp = %s }\n", "story": "story = %s\n"} {
					if where != "label.subtitle" && place != "us-or" {
						continue
					}
					b := loadIn(env, place, strings.Replace(key, "%s", `"`+words+`"`, 1)+pot(c.in)+"[process]\nmethod = \"boiling water\"\nminutes = 10\n[[fill]]\njar = \"8 fl oz\"\ncount = 4\nnet = [\"280 g\"]\n")
					got := ""
					for _, d := range b.Findings {
						if d.Path == where && strings.HasSuffix(d.Code, "-claim") {
							got += d.Severity.String() + " " + d.Code + ","
						}
					}
					if c.code == "" && got != "" || !strings.Contains(got, c.level+" "+c.code) && c.level != "" || !strings.Contains(got, c.code) {
						t.Errorf("%s, %s %q with %v: %q, want %s %s", place, where, words, c.in, got, c.level, c.code)
					}
				}
			}
		}
	}
}

// Beside what the kitchen handles too, a name of one allergen is more than can be
// shown, and of another it is not spoken of.
func TestDenialsOfOneNut(t *testing.T) {
	env := builtin(t)
	for words, want := range map[string]string{"almond free": "warning", "mandelfrei": "warning", "ohne Mandeln": "warning", "sans amandes": "warning", "contains no almonds": "warning",
		"walnut free": "", "ohne Walnüsse": "", "with almond-free hands and no regrets": "warning"} {
		for _, place := range []string{"us-or", "de", "fr"} {
			b := loadWith(env, place, "also_handles = [\"almonds\"]\n", "story = \""+words+"\"\n"+pot([]string{"strawberries", "sugar"}))
			got := ""
			for _, d := range b.Findings {
				if d.Code == "free-from-claim" && d.Path == "story" {
					got = d.Severity.String()
				}
			}
			if got != want {
				t.Errorf("%s, %q: %q, want %q", place, words, got, want)
			}
		}
	}
}

// loadWith is loadIn with lines of the kitchen's besides.
func loadWith(env *job.Env, place, kitchen, batch string) *job.Batch {
	kitchen += strings.Replace(keepingKitchen, `place = "us"`, `place = "`+place+`"`, 1)
	if place == "de" || place == "fr" {
		kitchen = "language = \"" + place + "\"\n" + kitchen
	}
	return env.Load(job.Input{Batch: job.Doc{Name: "b.toml", Data: []byte(batch)}, Kitchen: job.Doc{Name: "kitchen.toml", Data: []byte(kitchen)}}, job.Choices{})
}
