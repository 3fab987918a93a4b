package cook

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// oneLine cooks a batch of one ingredient and gives its line and the findings
// about it.
func oneLine(t *testing.T, name, amount, form string) (Line, diag.List) {
	t.Helper()
	src := fmt.Sprintf("name = \"x jam\"\nkind = \"jam\"\nmade = 2026-11-01\n[[ingredient]]\nname = %q\namount = %q\nform = %q\n", name, amount, form)
	b, l := batch.Parse("b.toml", []byte(src), nil)
	if b == nil {
		t.Fatalf("%s: %+v", src, l)
	}
	r, found := Compute(b, &batch.Kitchen{}, pantry.Default())
	var about diag.List
	for _, d := range append(l, found...) {
		if strings.HasPrefix(d.Path, "ingredient[0]") {
			about = append(about, d)
		}
	}
	return r.Lines[0], about
}

// Kitchen amounts by weight: USDA SR28 portions (1 package (1.75 oz) of pectin
// 50 g, 1 cup of packed brown sugar 220 g, 1 jigger 42 g, 1 tsp of salt 6 g);
// pinch, knob, leaf and clove: common practice, no source.
func TestMeasuresMakersWrite(t *testing.T) {
	for _, c := range []struct {
		name, amount, key string
		g                 float64
	}{
		{"pectin", "6 tbsp", "pectin_powder", 49.8}, {"pectin", "1 box", "pectin_powder", 50}, {"pectin", "1 (1.75 oz) box", "pectin_powder", 49.6},
		{"liquid pectin", "1 pouch", "pectin_liquid", 85}, {"liquid pectin", "1 (3 oz) pouch", "pectin_liquid", 85}, {"liquid pectin", "2 (3 oz) pouches", "pectin_liquid", 170.1},
		{"figs", "4 cups", "fig_fresh", 680}, {"garlic", "6 cloves", "garlic", 18}, {"salt", "a pinch", "salt", 0.38}, {"salt", "1 Prise", "salt", 0.38},
		{"red wine", "1 bottle", "wine_red", 745.6}, {"bourbon", "1 shot", "whisky", 41.7}, {"brown sugar", "3 cups packed", "sugar_brown", 660}, {"brown sugar", "1 cup", "sugar_brown", 220},
		{"butter", "1 stick", "butter_unsalted", 113.5}, {"butter", "a knob", "butter_unsalted", 14.2}, {"cinnamon", "2 sticks", "cinnamon_stick", 8}, {"thyme", "3 sprigs", "thyme", 3},
		{"salt", "1/2 tsp", "salt", 3}, {"sugar", "1 1/2 cups", "sugar_white", 300}, {"sugar", "½ cup", "sugar_white", 100}, {"sugar", "2 EL", "sugar_white", 25.36},
		{"lemon zest", "zest of 2 lemons", "lemon_peel", 12}, {"lemons", "zest of 2", "lemon_peel", 12}, {"lime juice", "juice of 3 limes", "lime_juice", 132}, {"limes", "juice of 3", "lime_juice", 132},
		{"zest of 2 lemons", "2", "lemon_peel", 12}, {"gelatin", "4 sheets", "gelatin", 8}, {"gelatin", "2 envelopes", "gelatin", 14}, {"tea", "3 bags", "tea_leaves", 6}, {"beer", "1 can", "beer", 356},
		{"plums", "half a stone", "plum", 3175.15}, {"plums", "2 Pfund", "plum", 1000}, {"lemon juice", "2 dessertspoons", "lemon_juice", 20.69}, {"cinnamon", "1 Msp", "cinnamon", 0.33},
	} {
		ln, l := oneLine(t, c.name, c.amount, "")
		if ln.Key != c.key || math.Abs(ln.Mass.Grams()-c.g) > 0.06 {
			t.Errorf("%s of %s: %.2f g of %q, want %g of %s; %v", c.amount, c.name, ln.Mass.Grams(), ln.Key, c.g, c.key, l)
		}
	}
}

// What has no weight is asked about with what to write.
func TestMeasuresAskedAbout(t *testing.T) {
	for _, c := range []struct{ name, amount, hint string }{
		{"garlic", "1 head", "count the cloves"}, {"ginger", "1 inch", "teaspoons"}, {"mint", "1 bunch", "cups or spoons"}, {"coconut milk", "1 can", "printed on the can"},
		{"sugar", "1 bag", "printed on the packet"}, {"strawberries", "1 flat", "weigh the fruit"}, {"liquid pectin", "1 box", "pouch"}, {"applesauce", "1 jar", "printed on it"},
		{"sugar", "1 heaping cup", "level"}, {"lemons", "zest and juice of 2 lemons", "two ingredients"}, {"corn cobs", "12 cobs", "broth"},
		{"vinegar", "1 gill", "142 in Britain"}, {"strawberries", "1 livre", "454 in Canada"}, {"sugar", "2 teacups", "write millilitres"}, {"plums", "1 cwt", "weigh it"},
	} {
		ln, l := oneLine(t, c.name, c.amount, "")
		asked := false
		for _, d := range l {
			asked = asked || d.Severity == diag.Error && strings.Contains(d.Hint, c.hint)
		}
		if !asked || ln.Mass != 0 {
			t.Errorf("%s of %s: %.1f g, %v", c.amount, c.name, ln.Mass.Grams(), l)
		}
	}
}

// As bought: USDA SR28 refuse of sour cherries 10 %, pineapple 49 %, mango 29 %.
func TestAsBought(t *testing.T) {
	for _, c := range []struct {
		name, amount, form string
		g                  float64
		told               bool
	}{
		{"sour cherries", "1 kg", "", 1000, false}, {"sour cherries with pits", "1 kg", "", 900, true}, {"sour cherries", "1 kg", "as bought", 900, true},
		{"unpitted sour cherries", "1 kg", "", 900, true}, {"sour cherries", "1 kg", "unpitted", 900, true}, {"pitted sour cherries", "1 kg", "", 1000, false},
		{"whole pineapple", "2 kg", "", 1020, true}, {"pineapple", "2 kg", "whole", 1020, true}, {"pineapple", "2 kg", "chopped", 2000, false},
		{"mangoes, as purchased", "1 kg", "", 710, true}, {"whole strawberries", "1 kg", "", 1000, false}, {"whole almonds", "200 g", "", 200, false}, {"whole lemons", "1 kg", "", 1000, false}, {"whole grapefruit", "1 kg", "", 1000, false},
		{"Sauerkirschen mit Stein", "1 kg", "", 1000, false}, // German is the kitchen's word, see pantry.Speaking
	} {
		ln, l := oneLine(t, c.name, c.amount, c.form)
		told := false
		for _, d := range l {
			told = told || d.Code == "as-bought"
		}
		if math.Abs(ln.Mass.Grams()-c.g) > 0.01 || told != c.told {
			t.Errorf("%s of %s (%s): %.1f g, told %v, %s", c.amount, c.name, c.form, ln.Mass.Grams(), told, ln.Prepared)
		}
	}
	ln, l := oneLine(t, "raisins", "1 kg", "as bought")
	if ln.Mass.Grams() != 1000 || len(l) == 0 || l[0].Code != "refuse-unknown" {
		t.Errorf("raisins as bought: %.0f g, %v", ln.Mass.Grams(), l)
	}
}
