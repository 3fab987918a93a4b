package us

import (
	"strconv"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Days as a label words them, at each border; which words are common practice.
func TestSpanOfDays(t *testing.T) {
	p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	for days, key := range map[int]string{-1: "us.cautious", 0: "us.cautious", 1: "us.day", 2: "us.days", 7: "us.week", 14: "us.weeks", 21: "us.weeks", 27: "us.days", 28: "us.month", 30: "us.month", 31: "us.month", 32: "us.days", 59: "us.days", 60: "us.months", 90: "us.months"} {
		n := map[string]string{"us.days": itoa(days), "us.weeks": itoa(days / 7), "us.months": itoa(days / 30)}[key]
		if got, want := p.span(days), p.Say.Say(key, "n", n); got != want || got == "" {
			t.Errorf("%d days: %q, want %q", days, got, want)
		}
	}
}

func itoa(n int) string { return strconv.Itoa(n) }

// What a jar rests on is told in at most four facts and three sources, none twice.
func TestKeepingReasons(t *testing.T) {
	r := strawberry(t)
	r.Keeping.Class = cook.Cold
	for _, s := range []string{"a", "a", "b", "", "c", "d", "e"} {
		fact := "fact " + s
		if s == "" {
			fact = ""
		}
		r.Keeping.Reasons = append(r.Keeping.Reasons, cook.Evidence{Fact: fact, Source: s})
	}
	_, l := declare(t, r, "us", draft.Options{})
	d, ok := found(l, "keeping")
	if !ok || strings.Count(d.Message, "fact") != 4 || !strings.HasPrefix(d.Cite, "a; b; c; FDA") {
		t.Errorf("%q %q", d.Message, d.Cite)
	}
	r.Keeping.Reasons = nil
	_, l = declare(t, r, "us", draft.Options{})
	if d, _ := found(l, "keeping"); !strings.Contains(d.Message, "nothing shows") {
		t.Errorf("%q", d.Message)
	}
}

// A meaning the law prescribes is required on the label, in words that may be
// changed; words an agency only recommends are not required.
func TestMeaningIsRequired(t *testing.T) {
	p := newPass(strawberry(t), jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	p.sentence(&place.Programme{Statement: "Exact.", Meaning: "a home kitchen", Recommended: "Hello."})
	want := map[string][2]bool{"statement-1": {true, true}, "statement-2": {true, false}, "statement-3": {false, true}}
	for _, b := range p.C.Blocks {
		if got := [2]bool{b.Required, b.Exact}; got != want[b.ID] {
			t.Errorf("%s: required, exact %v", b.ID, got)
		}
		delete(want, b.ID)
	}
	if len(want) > 0 {
		t.Errorf("missing %v", want)
	}
}

// An e-mail address stands where the state asks for it and nothing else reaches
// the maker.
func TestEmailWhereAsked(t *testing.T) {
	for _, x := range []struct {
		required     string
		phone, email string
		address      bool
		shown        bool
	}{{"email", "", "jam@thornfield.example", true, true}, {"email", "555 0114", "jam@thornfield.example", true, false}, {"email", "555 0114", "jam@thornfield.example", false, true}, {"email", "", "", true, false}, {"phone", "", "jam@thornfield.example", true, false}} {
		r := strawberry(t)
		r.Kitchen.Phone, r.Kitchen.Email = x.phone, x.email
		if !x.address {
			r.Kitchen.Address = nil
		}
		p := newPass(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		p.prog = &place.Programme{Required: [][]string{{x.required}}}
		if got := strings.Contains(strings.Join(p.numbers(), " "), "jam@"); got != x.shown {
			t.Errorf("%+v: %v", x, p.numbers())
		}
	}
}

// What is lacking is named in the maker's words, with the file to write it in.
func TestWhatIsLacking(t *testing.T) {
	r := strawberry(t)
	r.Kitchen.Permit, r.Kitchen.Phone = "", ""
	p := newPass(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	pr := &place.Programme{Required: [][]string{{"permit_number", "phone"}, {"lot_number"}, {"address"}}, Origin: place.Origin{Confidence: "primary"}}
	p.R.Lot = ""
	p.particulars(pr)
	var said []string
	for _, d := range p.L {
		if d.Code == "particular-missing" {
			said = append(said, d.Message+" "+d.Hint)
		}
	}
	text := strings.Join(said, "\n")
	for _, want := range []string{"the permit number or phone on the label", "permit in kitchen.toml or phone in kitchen.toml", "the lot number on the label", "lot in the batch file"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q lacks %q", text, want)
		}
	}
	if len(said) != 2 {
		t.Errorf("%d findings: the address is the federal rule's to ask", len(said))
	}
	if x, ok := particularNamed("moonlight"); ok || x.Token != "" {
		t.Error("a particular nobody knows is known")
	}
	if p.prog = pr; !p.shows("permit") || p.shows("county") || !p.shows("phone") {
		t.Error("what the state asks for is not shown, or more is")
	}
}

// 150.110(b)(1), (d)(2): the pulp of prunes counts by its own factor, 7.0.
func TestPulpFactor(t *testing.T) {
	r := pot(t, batch.Butter, "Prune butter", measured(45), part{"prunes", 1000}, part{"sugar", 200})
	r.Lines[0].Soluble = 600 * unit.Gram
	p := newPass(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
	row, _ := p.row()
	if got, ok := p.counted(row, r.Lines[0]); !ok || got != 4_200_000_000 {
		t.Errorf("counts %d µg, want 600 g × 7.0", got)
	}
}

// The lightest jar sets the weight, the first of two alike; none has none.
func TestLightest(t *testing.T) {
	for _, x := range []struct {
		list []unit.Mass
		want unit.Mass
		at   int
	}{{nil, 0, -1}, {[]unit.Mass{0, -1}, 0, -1}, {[]unit.Mass{5, 3, 3, 0}, 3, 1}, {[]unit.Mass{3}, 3, 0}} {
		if got, at := lightest(x.list); got != x.want || at != x.at {
			t.Errorf("%v: %d at %d", x.list, got, at)
		}
	}
}

// Words between single spaces, whatever stands between them; figures are words.
func TestSpaced(t *testing.T) {
	for text, want := range map[string]string{"": "  ", "No -- Sugar!": " no sugar ", "100% fruit": " 100 fruit ", "9 a0": " 9 a0 ", "...": "  "} {
		if got := draft.Spaced(text); got != want && !(text == "" || text == "..." && strings.TrimSpace(got) == "") {
			t.Errorf("%q: %q", text, got)
		}
	}
}

// Apple counts beside other fruit to a half, never alone (150.160(b)(2)(ii)).
func TestMostOfTheFruit(t *testing.T) {
	for _, x := range []struct {
		apple float64
		fails bool
	}{{500, false}, {510, true}} {
		_, l := declare(t, pot(t, batch.Jam, "Apple blackberry jam", measured(66), part{"apples", x.apple}, part{"blackberries", 1000 - x.apple}, part{"sugar", 900}), "us", draft.Options{})
		d, ok := found(l, "standard-not-met")
		if told := ok && strings.Contains(d.Message, "at most 1/2"); told != x.fails {
			t.Errorf("%v g of apple: %s", x.apple, standing(l))
		}
	}
}

// A fruit of no group is fruit of jam only where the maker says so, or a factor.
func TestWhatIsFruit(t *testing.T) {
	for _, x := range []struct {
		row  pantry.Ingredient
		line bool
		want bool
	}{
		{pantry.Ingredient{Class: "fruit"}, true, false}, {pantry.Ingredient{Class: "fruit", USGroup: "I"}, true, true}, {pantry.Ingredient{Class: "fruit", Own: true}, true, true},
		{pantry.Ingredient{Class: "fruit", CFR150Factor: 7}, true, true}, {pantry.Ingredient{Class: "juice"}, false, true}, {pantry.Ingredient{Class: "dried fruit"}, false, true},
		{pantry.Ingredient{Class: "vegetable"}, false, true}, {pantry.Ingredient{}, true, true}, {pantry.Ingredient{}, false, false}, {pantry.Ingredient{Class: "acid"}, true, false}, {pantry.Ingredient{Class: "spice"}, true, true},
	} {
		if got := countsAsFruit(cook.Line{Row: x.row, IsFruit: x.line}); got != x.want {
			t.Errorf("%+v: %v", x.row, got)
		}
	}
}

// A fruit is found at a word's start, after a false start too, by what else it is
// called; the name asked for takes the maker's own word for the product.
func TestFruitInAName(t *testing.T) {
	row, _ := pantry.Default().Ingredient("plums")
	plum := cook.Line{Name: row.Name, Key: row.Key, Row: row}
	for name, want := range map[string]int{"Plum jam": 0, "Sugarplum plum jam": 10, "Sugarplum jam": -1, "": -1} {
		if got := fruitAt(name, plum); got != want {
			t.Errorf("%q: %d", name, got)
		}
	}
	if got := singularName(cook.Line{}); got != "" {
		t.Errorf("%q", got)
	}
	for name, want := range map[string]string{"Red Delight": "Plum Jam", "Red Delight jelly": "Plum Jelly"} {
		if got := suggested([]fruitShare{{Named: "plum"}}, name, ""); got != want {
			t.Errorf("%q: %q", name, got)
		}
	}
}

// A law read on a page about it says so in the finding; one read itself does not.
func TestExcludedSaysHowItWasRead(t *testing.T) {
	for confidence, page := range map[string]bool{"primary": false, "secondary": true} {
		r := pot(t, batch.Jam, "Peach jam", measured(66), part{"peaches", 1000}, part{"sugar", 900}, part{"rum", 20})
		p := newPass(r, jar8(10*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		p.excluded(&place.Programme{Excludes: []string{"alcohol"}, Origin: place.Origin{Confidence: confidence}})
		if len(p.L) != 1 || p.L[0].Severity != diag.Error || strings.Contains(p.L[0].Message, "page about the law") != page {
			t.Errorf("%s: %v", confidence, p.L)
		}
	}
}

// Less than a tenth of a fluid ounce can't be printed.
func TestSmallestFluidMeasure(t *testing.T) {
	for _, x := range []struct {
		v    unit.Volume
		code string
	}{{1, "net-too-small"}, {unit.FluidOunce/10 - 1, "net-too-small"}, {unit.FluidOunce / 10, ""}, {0, "net-not-measured"}} {
		jar := jar8(0)
		jar.DeclVolume, jar.Weighed, jar.DeclText = x.v, nil, ""
		r := pot(t, batch.Syrup, "Plum syrup", measured(50), part{"plums", 1000}, part{"sugar", 900})
		c, l := Declare(r, jar, rulesOf(t, "us"), draft.Options{})
		_, printed := c.Find(label.Net)
		if printed != (x.code == "") || x.code != "" && codeOf(l, x.code) == "" {
			t.Errorf("%v: printed %v, %v", x.v, printed, l)
		}
	}
}

// Pits and stems (USDA SR28, in whole per cent of the fruit) count only where
// the table knows some; solids no fruit can hold count as all of it.
func TestRefuseAndSweetener(t *testing.T) {
	for pct, want := range map[float64]int64{-1: 0, 0: 0, 0.4: 0, 0.5: 1_000, 9: 9_000, 100: 100_000} {
		var ln cook.Line
		ln.Row.RefusePct = pct
		if got := refuse(100_000, ln); got != want {
			t.Errorf("%v %%: %d, want %d", pct, got, want)
		}
	}
	for soluble, want := range map[unit.Mass]int64{0: 100, -1: 100, 1000: 1, 99_000: 99, 100_000: 100, 100_001: 100} {
		r := &cook.Result{Lines: []cook.Line{{IsSweet: true, Mass: 100_000, Soluble: soluble}, {Mass: 5000}}}
		if got, certain := sweetener(r); got != want || !certain {
			t.Errorf("%d of 100000: %d, %v", soluble, got, certain)
		}
	}
}

// What the maker calls an allergen and the law's list does not stands apart from
// "Contains", in a sentence of its own: after the names, or alone.
func TestBeyondTheList(t *testing.T) {
	for _, x := range []struct {
		words    []string
		text     string
		required bool
	}{{[]string{"celery"}, "Allergens: none of the nine major allergens in this recipe. Also contains: celery.", false}, {[]string{"milk", "celery"}, "Contains: Milk. Also contains: celery.", true}, {[]string{"milk"}, "Contains: Milk", true}} {
		r := strawberry(t)
		r.Lines[0].Allergens = x.words
		c, _ := declare(t, r, "us", draft.Options{})
		b, ok := c.Find(label.Allergens)
		if !ok || b.Required != x.required || b.Text() != x.text || strings.HasPrefix(b.Cite, "voluntary") == x.required {
			t.Errorf("%v: %q %+v", x.words, b.Text(), b)
		}
	}
}
