package job_test

import (
	"strings"
	"testing"
)

// What a maker's own words promise beside the law's: an authority behind the
// food, food for the very young, a food that is in the jar, another weight than
// the declared one (21 U.S.C. 343(a)(1), (e)(2); Regulation (EU) 1169/2011 Art 7,
// 23; Regulation (EU) 609/2013 Art 1(1)(b)). The words tried are our own, and
// none of them is in a list of the program as a whole.
func TestPromisesOfOwnWords(t *testing.T) {
	plain, honey := []string{"strawberries", "sugar", "lemon juice"}, []string{"strawberries", "honey"}
	rum := []string{"strawberries", "sugar", "dark rum", "vanilla bean"}
	for _, c := range []struct {
		code, level string
		in          []string
		words       []string
	}{
		{"authority-claim", "warning", plain, []string{"FDA approved", "made in a licensed kitchen", "Approved by the county", "inspected by our health department", "doctor recommended", "amtlich geprüft", "vom Gesundheitsamt genehmigt", "agréé par l’État", "a state-certified kitchen"}},
		{"authority-claim", "", plain, []string{"made in a home kitchen not inspected by the state", "an uninspected kitchen", "loved by doctors", "county fair, second prize", "kitchen of the inspector’s daughter"}},
		{"infant-claim", "warning", plain, []string{"baby friendly", "for babies and toddlers", "baby food", "safe for infants", "geeignet für Babys", "ab dem 6. Monat", "pour les bébés"}},
		{"infant-claim", "error", honey, []string{"for toddlers", "babyfreundlich", "convient aux nourrissons"}},
		{"infant-claim", "", plain, []string{"not for babies", "for Ida’s baby shower", "nicht für Säuglinge", "for our baby sister’s wedding"}},
		{"says-absent-ingredient", "warning", plain, []string{"with a splash of whiskey", "made with real butter", "with vanilla", "sweetened only with honey", "mit Rum", "verfeinert mit Vanille", "avec cannelle", "with local raspberries", "a touch of cardamom"}},
		{"says-absent-ingredient", "", plain, []string{"with love", "made with strawberries", "lovely with goat cheese", "serve with butter and toast", "with lemon", "made with cane sugar", "passt gut mit Käse", "with thanks to Ida", "for people with peanut allergy"}},
		{"says-absent-ingredient", "", rum, []string{"with rum", "with vanilla", "mit Rum", "with a hint of vanilla"}},
		{"quantity-in-text", "warning", plain, []string{"12 oz of summer", "a full pound: 1 lb", "net 500g", "20 fl oz", "1/2 kg", "16-oz jar"}},
		{"quantity-in-text", "", plain, []string{"280 g of summer", "9.9 oz", "8 fl oz", "2 days of picking", "batch 12", "since 1988", "100 %", "3 g", "l’été, 7 l"}[:7]},
		{"absence-claim", "error", plain, []string{"no lemon", "ohne Zitrone", "sans citron"}},
		{"free-from-claim", "warning", plain, []string{"free from the 14 allergens, free of the big nine", "safe for anyone with nut allergies", "für Kinder mit Nussallergie"}},
		{"certified-claim", "warning", plain, []string{"pesticide free", "never sprayed", "lab-tested", "ungespritzt", "sans pesticides", "no chemicals"}},
		{"purity-claim", "error", plain, []string{"real fruit, nothing else", "Früchte und sonst nichts", "des fruits, rien d’autre"}},
		{"keeping-claim", "warning", plain, []string{"best before 2030", "keep in the pantry once open", "good until next summer"}},
	} {
		for _, place := range []string{"us-or", "gb", "de"} {
			for _, words := range c.words {
				b := loadIn(builtin(t), place, "label = { subtitle = \""+words+"\" }\n"+pot(c.in)+"[process]\nmethod = \"boiling water\"\nminutes = 10\n[[fill]]\njar = \"8 fl oz\"\ncount = 4\nnet = [\"280 g\"]\ndeclared = \"280 g\"\n")
				got := ""
				for _, d := range b.Findings {
					if d.Path == "label.subtitle" && d.Code == c.code {
						got += d.Severity.String() + ","
					}
				}
				if strings.TrimSuffix(got, ",") != c.level {
					t.Errorf("%s, %q of %v: %s %q, want %q", place, words, c.in, c.code, got, c.level)
				}
			}
		}
	}
}
