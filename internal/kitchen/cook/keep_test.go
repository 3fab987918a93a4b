package cook

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// Keeping facts and their sources: process minutes and sterile jars USDA Guide
// 1 and AIB 539 via NCHFP; pH 4.6 USDA Guide 1; a year sealed NCHFP; a month
// opened NCHFP wording; 2-3 days unsealed MSU Extension.
func TestKeeping(t *testing.T) {
	tests := []struct {
		name   string
		set    func(b *batch.Batch)
		class  Class
		months int
		days   int
		opened int
		code   string
	}{
		{"full sugar, acid, processed", func(b *batch.Batch) {}, Shelf, 12, 0, 30, ""},
		{"5 min, sterile jars", func(b *batch.Batch) { b.Process.Minutes = f(5) }, Shelf, 12, 0, 30, ""},
		{"5 min, jars not sterile", func(b *batch.Batch) { no := false; b.Process.Minutes = f(5); b.Process.Sterilised = &no }, Cold, 0, 30, 30, "jars-not-sterile"},
		{"5 min, nothing said", func(b *batch.Batch) { b.Process.Minutes = f(5); b.Process.Sterilised = nil }, Cold, 0, 30, 30, "jars-not-sterile"},
		{"5 min at 2000 ft", func(b *batch.Batch) { b.Process.Minutes = f(5); b.Process.Altitude = 2000 * unit.Foot }, Cold, 0, 30, 30, "process-too-short"},
		{"10 min at 2000 ft", func(b *batch.Batch) { b.Process.Altitude = 2000 * unit.Foot }, Shelf, 12, 0, 30, ""},
		{"10 min at 7000 ft", func(b *batch.Batch) { b.Process.Altitude = 7000 * unit.Foot }, Cold, 0, 30, 30, "process-too-short"},
		{"minutes not said", func(b *batch.Batch) { b.Process.Minutes = nil }, Cold, 0, 30, 30, "minutes-not-said"},
		{"altitude not said", func(b *batch.Batch) { b.Process.Altitude, b.Process.AltitudeOK = 0, false }, Shelf, 12, 0, 30, "altitude-not-said"},
		{"not processed", func(b *batch.Batch) { b.Process.Method = "none" }, Cold, 0, 30, 30, "not-processed"},
		{"nothing recorded", func(b *batch.Batch) { b.Process = batch.Process{} }, Cold, 0, 30, 30, "process-not-said"},
		{"paraffin", func(b *batch.Batch) { b.Process.Method = "paraffin" }, Cold, 0, 30, 30, "unsafe-method"},
		{"inversion", func(b *batch.Batch) { b.Process.Method = "inversion" }, Cold, 0, 30, 30, "unsafe-method"},
		{"open kettle", func(b *batch.Batch) { b.Process.Method = "open kettle" }, Cold, 0, 30, 30, "unsafe-method"},
		{"freezer", func(b *batch.Batch) { b.Process.Method = "freezer" }, Freezer, 12, 0, 21, ""},
		{"refrigerator", func(b *batch.Batch) { b.Process.Method = "refrigerator" }, Refrigerator, 0, 21, 21, ""},
		{"bananas in the refrigerator", func(b *batch.Batch) { b.Ingredients[0].Name = "bananas"; b.Process.Method = "refrigerator" }, Refrigerator, 0, 7, 7, "never-shelf"},
		{"bananas in the freezer", func(b *batch.Batch) { b.Ingredients[0].Name = "bananas"; b.Process.Method = "freezer" }, Freezer, 12, 0, 7, "never-shelf"},
		{"freezer jam, no process", func(b *batch.Batch) { b.Cook.Method = "freezer"; b.Process = batch.Process{} }, Freezer, 12, 0, 21, ""},
		{"uncooked, processed", func(b *batch.Batch) { b.Cook.Method = "no cook" }, Refrigerator, 0, 21, 21, "uncooked-processed"},
		{"measured 62 °Brix", func(b *batch.Batch) { b.Cook.Brix = f(62) }, ShelfShort, 6, 0, 14, ""},
		{"measured 52 °Brix", func(b *batch.Batch) { b.Cook.Brix = f(52) }, Cold, 0, 14, 14, "reduced-sugar"},
		{"measured 52 °Brix, pH 3.4, 15 min", func(b *batch.Batch) { b.Cook.Brix, b.Cook.PH, b.Process.Minutes = f(52), f(3.4), f(15) }, ShelfShort, 6, 0, 14, ""},
		{"measured 52 °Brix, pH 3.4, 10 min", func(b *batch.Batch) { b.Cook.Brix, b.Cook.PH = f(52), f(3.4) }, Cold, 0, 14, 14, "process-too-short"},
		{"pH 4.8", func(b *batch.Batch) { b.Cook.PH = f(4.8) }, Cold, 0, 7, 7, "low-acid"},
		{"pH 4.6", func(b *batch.Batch) { b.Cook.PH = f(4.6) }, ShelfShort, 6, 0, 14, "ph-near-limit"},
		{"pH 4.3", func(b *batch.Batch) { b.Cook.PH = f(4.3) }, ShelfShort, 6, 0, 14, "ph-near-limit"},
		{"impossible pH", func(b *batch.Batch) { b.Cook.PH = f(44) }, Shelf, 12, 0, 30, "bad-ph"},
		{"figs and lemon juice", func(b *batch.Batch) { b.Ingredients[0].Name = "figs" }, Cold, 0, 7, 7, "low-acid"},
		{"figs, pH 4.2", func(b *batch.Batch) { b.Ingredients[0].Name = "figs"; b.Cook.PH = f(4.2) }, Shelf, 12, 0, 30, "ph-not-dated"},
		{"figs, a recipe that is in no table", func(b *batch.Batch) { b.Ingredients[0].Name, b.Recipe = "figs", "a state extension's fig jam" }, Cold, 0, 7, 7, "recipe-not-tested"},
		{"mango", func(b *batch.Batch) { b.Ingredients[0].Name = "mangoes" }, Cold, 0, 7, 7, "low-acid"},
		{"banana", func(b *batch.Batch) { b.Ingredients[0].Name = "bananas" }, Cold, 0, 7, 7, "never-shelf"},
		{"white peach", func(b *batch.Batch) { b.Ingredients[0].Name = "white peaches" }, Cold, 0, 7, 7, "never-shelf"},
		{"elderberry", func(b *batch.Batch) { b.Ingredients[0].Name = "elderberries" }, Cold, 0, 7, 7, "low-acid"},
		{"tomato", func(b *batch.Batch) { b.Ingredients[0].Name = "tomatoes" }, Cold, 0, 7, 7, "low-acid"},
		{"garlic", func(b *batch.Batch) { b.Ingredients = append(b.Ingredients, ing(t, "garlic", "20 g", "")) }, Cold, 0, 7, 7, "low-acid"},
		{"bell pepper", func(b *batch.Batch) { b.Ingredients = append(b.Ingredients, ing(t, "bell peppers", "200 g", "")) }, Cold, 0, 7, 7, "low-acid"},
		{"apricot with lemon juice", func(b *batch.Batch) { b.Ingredients[0].Name = "apricots" }, Shelf, 12, 0, 30, ""},
		{"apricot alone", func(b *batch.Batch) { b.Ingredients[0].Name = "apricots"; b.Ingredients = b.Ingredients[:3] }, Cold, 0, 7, 7, "low-acid"},
		{"unknown fruit", func(b *batch.Batch) { b.Ingredients[0].Name = "wumpa fruit"; b.Ingredients[0].Solids = 10 }, Cold, 0, 7, 7, "acid-unknown"},
		{"butter in it", func(b *batch.Batch) { b.Ingredients = append(b.Ingredients, ing(t, "butter", "20 g", "")) }, Cold, 0, 7, 7, "never-shelf"},
		{"a knob of butter", func(b *batch.Batch) { b.Ingredients = append(b.Ingredients, ing(t, "butter", "1/2 tsp", "")) }, Shelf, 12, 0, 30, ""},
		{"spread with full sugar", func(b *batch.Batch) { b.Product = batch.Spread; b.Cook.Brix = f(66) }, Shelf, 12, 0, 30, ""},
		{"weighed pot at 66 °Brix", func(b *batch.Batch) { b.Cook.FinishedPot = 3320 * unit.Gram }, Shelf, 12, 0, 30, ""},
		{"weighed pot at 62 °Brix", func(b *batch.Batch) { b.Cook.FinishedPot = 3540 * unit.Gram }, ShelfShort, 6, 0, 14, ""},
		{"chutney", func(b *batch.Batch) { b.Product = batch.Chutney }, Cold, 0, 14, 14, "untested-chutney"},
		{"chutney, a bulletin is no recipe", func(b *batch.Batch) { b.Product, b.Recipe = batch.Chutney, "USDA AIB 539 rev. 2009" }, Cold, 0, 14, 14, "recipe-not-tested"},
		{"fruit butter", func(b *batch.Batch) { b.Product = batch.Butter }, ShelfShort, 6, 0, 14, ""},
		{"little sugar, unmeasured", func(b *batch.Batch) { b.Ingredients[2] = ing(t, "sugar", "400 g", "") }, Cold, 0, 14, 14, "reduced-sugar"},
		{"honey", func(b *batch.Batch) { b.Ingredients = append(b.Ingredients, ing(t, "honey", "50 g", "")) }, Shelf, 12, 0, 30, "honey-infants"},
	}
	for _, c := range tests {
		t.Run(c.name, func(t *testing.T) {
			b := demo(t)
			c.set(b)
			r, l := compute(t, b)
			k := r.Keeping
			if k.Class != c.class || k.SealedMonths != c.months || k.SealedDays != c.days || k.OpenedDays != c.opened {
				t.Errorf("%s, %d months %d days, opened %d days; want %s, %d, %d, %d\n%v", k.Class, k.SealedMonths, k.SealedDays, k.OpenedDays, c.class, c.months, c.days, c.opened, k.Reasons)
			}
			if c.code != "" && !has(l, c.code) {
				t.Errorf("no finding %s in %v", c.code, l)
			}
			if k.UnsealedDays > 3 && c.class != Freezer && c.class != Refrigerator || k.UnsealedDays <= 0 {
				t.Errorf("unsealed jars keep %d days", k.UnsealedDays)
			}
			for _, why := range append(k.Reasons, k.Times...) {
				if why.Fact == "" || why.Source == "" || why.How == "" {
					t.Errorf("a reason without text or source: %+v", why)
				}
			}
			if c.class == Shelf && c.code == "" && len(l) > 1 { // the yield estimate alone
				t.Errorf("findings on a good batch: %v", l)
			}
		})
	}
}

// NCHFP: only the tested lemon curd recipe, which keeps 3-4 months.
func TestCurd(t *testing.T) {
	curd := func() *batch.Batch {
		b := demo(t)
		b.Product = batch.Curd
		b.Process.Minutes = f(15)
		b.Ingredients = []batch.Ingredient{ing(t, "superfine sugar", "530 g", ""), ing(t, "bottled lemon juice", "1 cup", ""),
			ing(t, "unsalted butter", "3/4 cup", ""), ing(t, "egg yolks", "7", ""), ing(t, "eggs", "4", "")}
		return b
	}
	r, l := compute(t, curd())
	if r.Keeping.Class != Cold || r.Keeping.SealedDays != 7 || !has(l, "never-shelf") {
		t.Errorf("own curd: %+v", r.Keeping)
	}
	b := curd()
	b.Recipe, b.Unchanged = "nchfp-lemon-curd", true
	r, l = compute(t, b)
	if r.Keeping.Class != Cold || r.Keeping.SealedMonths != 3 || has(l, "never-shelf") {
		t.Errorf("tested curd: %+v %v", r.Keeping, l)
	}
	if r.MainFruit != "lemon_juice_bottled" {
		t.Errorf("main fruit %q", r.MainFruit)
	}
	b.Process.Method = "none"
	if r, _ = compute(t, b); r.Keeping.SealedMonths != 0 {
		t.Errorf("tested curd that was not processed: %+v", r.Keeping)
	}
}

// Published full-sugar recipes must come out as shelf jams when processed as
// their sources say.
func TestPublishedShelfRecipes(t *testing.T) {
	recipes := readCSV(t, "recipes.csv")
	for _, id := range []string{"Y01", "Y02", "Y03", "Y04", "Y05", "Y06", "Y07", "Y09", "Y10", "Y11", "Y12"} {
		b := published(t, id, recipes)
		b.Process = demo(t).Process
		if r, l := compute(t, b); r.Keeping.Class != Shelf {
			t.Errorf("%s: %s: %v %v", id, r.Keeping.Class, r.Keeping.Reasons, l)
		}
	}
}

func TestBestBefore(t *testing.T) {
	b := demo(t)
	r, _ := compute(t, b)
	if r.BestBefore.String() != "2027-06-14" || r.Keeping.BestBeforeHow != Estimated {
		t.Errorf("best before %s (%s)", r.BestBefore, r.Keeping.BestBeforeHow)
	}
	b.BestBefore = unit.Date{Year: 2028, Month: 1, Day: 1}
	r, l := compute(t, b)
	if !has(l, "best-before-late") || r.BestBefore != b.BestBefore || r.Keeping.BestBeforeHow != Given {
		t.Errorf("two years: %v", l)
	}
	b.BestBefore = unit.Date{Year: 2027, Month: 1, Day: 1}
	if _, l = compute(t, b); has(l, "best-before-late") {
		t.Errorf("half a year is too late: %v", l)
	}
	b.BestBefore, b.Made = unit.Date{}, unit.Date{}
	if r, _ = compute(t, b); !r.BestBefore.IsZero() || r.Lot != "" {
		t.Errorf("no date: %s %s", r.BestBefore, r.Lot)
	}
}

// An uncooked freezer spread loses no water; acid that was added is not denied.
// Michigan State University Extension 1997: freezer jams are not cooked.
func TestFreezerSpreadIsNotBoiled(t *testing.T) {
	b := demo(t)
	b.Cook, b.Process = batch.Cook{}, batch.Process{Method: "freezer"}
	r, _ := compute(t, b)
	if r.Yield.Mass != r.Input || r.Evaporated != 0 {
		t.Errorf("%v of %v are left", r.Yield.Mass, r.Input)
	}
	b.Cook.Minutes = f(10)
	if r, _ = compute(t, b); r.Evaporated <= 0 {
		t.Error("a cooked one loses none")
	}
}

// FAO Agricultural Services Bulletin on fruit processing, 8.6: saturated
// sucrose, 67.89 %, has a water activity of 0.848; Norrish gives 0.843 there, within its 0.01.
// What keeping rests on shows it.
func TestWaterActivityIsShown(t *testing.T) {
	b := demo(t)
	b.Cook.Brix = f(67.89)
	r, _ := compute(t, b)
	if got := r.Keeping.Reasons[0]; !strings.Contains(got.Fact, "water activity about 0.84") || !strings.Contains(got.Source, "Norrish") {
		t.Errorf("%+v", got)
	}
}

// A pot whose mix is not known has none to show.
func TestNoWaterActivityOfHalfARecipe(t *testing.T) {
	b := demo(t)
	b.Ingredients = []batch.Ingredient{ing(t, "plums", "3 furlongs", ""), ing(t, "sugar", "1 kg", "")}
	r, _ := Compute(b, nil, pantry.Default())
	if got := r.Keeping.Reasons[0].Fact; strings.Contains(got, "water activity") {
		t.Error(got)
	}
}

// Every way that batch files may name as unsafe has its reason and source.
func TestUnsafeMethodsAreRead(t *testing.T) {
	for _, x := range pantry.Default().UnsafeMethods() {
		text := "name = \"Plum jam\"\nkind = \"jam\"\nmade = 2026-06-14\n[[ingredient]]\nname = \"plums\"\namount = \"1 kg\"\n[process]\nmethod = \"" + x.Method + "\"\n"
		b, l := batch.Parse("b.toml", []byte(text), nil)
		if l.HasErrors() || b.Process.Method != x.Method {
			t.Errorf("%s: %v", x.Method, l)
		}
	}
}
