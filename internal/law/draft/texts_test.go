package draft

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// giftSays is a draft with a message on a gift and rules of our own invention.
func giftSays(t *testing.T, message string, lines []cook.Line, rules ...place.WordingRule) *Draft {
	t.Helper()
	d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
		r.Batch.Gifts, r.Lines = []batch.Gift{{Path: "gift[0]", Message: message}}, lines
	})
	d.Set.Nutrition, d.Set.Wordings, d.L = nil, rules, nil
	return d
}

func messages(l diag.List) (out []string) {
	for _, f := range l {
		out = append(out, f.Severity.String()+" "+f.Message)
	}
	return out
}

// Every text of the maker's that anybody reads is looked through, once, and is known by
// the place it stands at.
func TestTextsOfTheMaker(t *testing.T) {
	d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
		r.Batch = &batch.Batch{File: &source.File{Name: "b.toml"}, Name: "N", Story: "S", Serve: "V", Origin: "O", FruitOrigin: "F", Label: batch.Label{Title: "T", Subtitle: "U", Season: "W", Stamp: "X", Words: "Y"},
			Markets: []batch.Market{{Path: "market[0]", Event: "E"}}, Gifts: []batch.Gift{{Path: "gift[0]", Message: "M", Occasion: "C"}}, Photos: []batch.Photo{{Path: "photo[0]", Alt: "A"}}}
		r.Lines = []cook.Line{{Name: "L", Paths: []string{"ingredient[0]", "ingredient[2]"}, Contains: parts("P")}, {Name: "nowhere"}}
	})
	var got []string
	for _, o := range d.ownTexts() {
		got = append(got, o.file+" "+o.path+" "+o.as+" "+o.text)
	}
	slices.Sort(got)
	want := []string{"b.toml fruit_origin story F", "b.toml gift[0].message story M", "b.toml gift[0].occasion story C", "b.toml ingredient[0] ingredient L", "b.toml ingredient[0] ingredient P", "b.toml label.season story W",
		"b.toml label.stamp story X", "b.toml label.subtitle name U", "b.toml label.title name T", "b.toml label.words story Y", "b.toml market[0].event story E", "b.toml name name N", "b.toml origin story O", "b.toml photo[0].alt story A",
		"b.toml serve story V", "b.toml story story S", "kitchen.toml name brand Thornfield Lane"}
	if !slices.Equal(got, want) {
		t.Errorf("%q", got)
	}
}

// A finding is told once a text, whichever name of an ingredient is denied; what is
// denied second, third and behind an "or" is found.
func TestToldOnceAndFoundLate(t *testing.T) {
	in := []string{"story"}
	butter := []cook.Line{{Name: "salted butter"}}
	for name, x := range map[string]struct {
		text  string
		lines []cook.Line
		rule  place.WordingRule
		want  []string
	}{
		"two names":      {"no salted butter, no butter", butter, place.WordingRule{ID: "w", Words: []string{"no {x}"}, In: in, Level: "error", Text: "but {ingredient}"}, []string{`error "no salted butter" but salted butter`}},
		"named only":     {"much butter", butter, place.WordingRule{ID: "w", Words: []string{"no {x}"}, In: in, Level: "error", Text: "but {ingredient}"}, nil},
		"behind or":      {"no fuss or butter", butter, place.WordingRule{ID: "w", Words: []string{"no {x}"}, In: in, Level: "error", Text: "but {ingredient}"}, []string{`error "no butter" but salted butter`}},
		"the second one": {"joy and no pains", nil, place.WordingRule{ID: "w", Of: []string{"joy", "pains"}, Forms: []string{"no {x}"}, In: in, Level: "note", Text: "said"}, []string{`note "no pains" said`}},
		"one form":       {"no pains", nil, place.WordingRule{ID: "w", Of: []string{"pains"}, Forms: []string{"no {x}"}, In: in, Level: "note", Text: "said"}, []string{`note "no pains" said`}},
	} {
		d := giftSays(t, x.text, x.lines, x.rule)
		if d.Wordings(); !slices.Equal(messages(d.L), x.want) {
			t.Errorf("%s: %q", name, messages(d.L))
		}
	}
	o := ownText{text: "without milk or nuts", apart: []string{"without nuts"}}
	if got := o.says([]string{"without nuts"}, nil); got != "without nuts" {
		t.Errorf("of one thing apart: %q", got)
	}
}

// A food that a text says is in the jar must be in the pot; a phrase that means
// something else announces none, and only the texts of the rule are looked at.
func TestFoodThatIsNotInThePot(t *testing.T) {
	rule := place.WordingRule{ID: "h", Holds: true, Words: []string{"laced with", "made with"}, Unless: []string{"made with love and"}, In: []string{"story"}, Level: "error", Text: "is in no line"}
	honey, _ := pantry.Default().Ingredient("honey")
	for name, x := range map[string]struct {
		text string
		in   string
		line cook.Line
		want []string
	}{
		"held":           {"made with honey", "story", cook.Line{Name: "honey", Key: honey.Key, Row: honey}, nil},
		"not held":       {"made with our honey", "story", cook.Line{Name: "plums"}, []string{`error "made with our honey" is in no line`}},
		"something else": {"made with love and honey", "story", cook.Line{Name: "plums"}, nil},
		"no food":        {"made with care", "story", cook.Line{Name: "plums"}, nil},
		"not announced":  {"a honey of a jam", "story", cook.Line{Name: "plums"}, nil},
		"elsewhere":      {"made with honey", "brand", cook.Line{Name: "plums"}, nil},
		"both ways":      {"laced with honey, made with honey", "story", cook.Line{Name: "plums"}, []string{`error "laced with honey" is in no line`}},
	} {
		rule.In = []string{x.in}
		d := giftSays(t, x.text, []cook.Line{x.line}, rule)
		if d.Wordings(); !slices.Equal(messages(d.L), x.want) {
			t.Errorf("%s: %q", name, messages(d.L))
		}
	}
	// The row is the same whatever the maker calls it; "of" is no word of a food.
	p := &Draft{R: &cook.Result{Lines: []cook.Line{{Name: "gold", Key: "honey"}, {Name: "sprigs of mint"}}}}
	if !p.inThePot(pantry.Ingredient{Key: "honey", Name: "honey"}) || p.inThePot(pantry.Ingredient{Key: "x", Name: "cream of tartar"}) {
		t.Error("the row or a word of three letters and more")
	}
}

// An allergen denied by its name is untrue where it is in the jar, and more than can be
// shown where the kitchen handles it (the rule's own level and words).
func TestAllergenDeniedByName(t *testing.T) {
	rules := []place.WordingRule{{ID: "f", Of: []string{"celery"}, Forms: []string{"{x} free"}, In: []string{"brand"}, Level: "note", Text: "x"},
		{ID: "n", Named: true, In: []string{"story"}, May: []string{"handled"}, Level: "warning", Text: "holds {ingredient}", Maybe: "beside {ingredient}"}}
	for name, x := range map[string]struct {
		text, holds, handles string
		want                 []string
	}{
		"held":        {"almond free", "almonds", "", []string{`error "almond free" holds almonds`}},
		"handled":     {"almond free", "", "almonds", []string{`warning "almond free" beside almonds`}},
		"neither":     {"almond free", "", "", nil},
		"another row": {"celery free", "celery", "", nil},
		"not denied":  {"almond rich", "almonds", "", nil},
	} {
		d := giftSays(t, x.text, nil, rules...)
		if x.holds != "" {
			d.Allergy.Found = cook.Stated([]string{x.holds}, "").Found
		}
		if x.handles != "" {
			d.K.AlsoHandles = []string{x.handles}
		}
		if d.Wordings(); !slices.Equal(messages(d.L), x.want) {
			t.Errorf("%s: %q", name, messages(d.L))
		}
	}
}

// What an ingredient is: by its key, and alcohol by its kind; an own one has no key.
func TestBesidesByKeyAndKind(t *testing.T) {
	for _, x := range []struct {
		line   cook.Line
		beside string
		want   string
	}{
		{cook.Line{Name: "plums", Key: "plum"}, "plum", "plums"}, {cook.Line{Name: "plums", Key: "plum"}, "fig", ""}, {cook.Line{Name: "dust"}, "", ""},
		{cook.Line{Name: "gin", Row: pantry.Ingredient{Class: "alcohol"}}, "alcohol", "gin"}, {cook.Line{Name: "gin", Row: pantry.Ingredient{Class: "alcohol"}}, "plum", ""}, {cook.Line{Name: "plums"}, "alcohol", ""},
	} {
		d := giftSays(t, "", []cook.Line{x.line})
		if got := d.besides(place.WordingRule{Beside: []string{x.beside}}); got != x.want {
			t.Errorf("%s beside %q: %q", x.line.Name, x.beside, got)
		}
	}
}

// What proves nothing is told: an ingredient nothing is known of, a word that says
// "none", a slip of the pen; another word is printed, and told as a warning.
func TestWordsThatProveNothing(t *testing.T) {
	for word, want := range map[string]struct {
		severity diag.Severity
		hint     string
	}{"none": {diag.Error, "[]"}, "almnods": {diag.Error, "almonds"}, "moon dust": {diag.Warning, "one of the law's"}} {
		d := begun(t, "us-or", nil)
		d.K.AlsoHandles, d.L = []string{word}, nil
		d.Handles(aList, "x")
		if len(d.L) != 1 || d.L[0].Code != "unknown-allergen" || d.L[0].Path != "also_handles" || d.L[0].Severity != want.severity || !strings.Contains(d.L[0].Hint, want.hint) {
			t.Errorf("%s: %+v", word, d.L)
		}
	}
	d := begun(t, "us-or", nil)
	d.L, d.Allergy = nil, cook.Allergy{Unknown: []cook.Unproven{{Name: "crunch", Path: "ingredient[1]"}}, Found: []cook.Found{found("pine_nut", "pine nuts", true)}}
	d.Evidence(func(allergen.Substance) ([]string, bool) { return nil, false }, "x")
	if s, ok := told(d.L, "allergens-unknown"); !ok || s != diag.Error || d.L[0].Path != "ingredient[1]" {
		t.Errorf("%v", d.L)
	}
	if len(d.C.AllergenNames) > 0 {
		t.Errorf("a label names %v, which its law does not", d.C.AllergenNames)
	}
}

// A draft of a recipe alone, without batch and kitchen, is whole; a block goes by its
// kind unless it has a name; a language without the words says nothing of sulphites.
func TestDraftOfNothing(t *testing.T) {
	b, err := book()
	if err != nil {
		t.Fatal(err)
	}
	s, _ := b.Place("us-or", unit.Date{Year: 2026, Month: 11, Day: 25})
	d := NewDraft(&cook.Result{}, cook.JarPlan{}, s, Options{})
	if d.B == nil || d.K == nil || d.BatchFile() != "" || d.KitchenFile() != "kitchen.toml" {
		t.Errorf("%+v", d)
	}
	d.Add(label.Block{Kind: label.Brand})
	d.Add(label.Block{Kind: label.Brand, ID: "other"})
	if d.C.Blocks[0].ID != string(label.Brand) || d.C.Blocks[1].ID != "other" {
		t.Errorf("%+v", d.C.Blocks)
	}
	mute := *s
	mute.Languages, mute.Words = []string{"xx"}, map[string]*place.Phrases{"xx": {}}
	if d.Set = &mute; d.Sulphited(cook.Line{Name: "dried papaya"}) || d.saysOf("dried papaya", "sulphited.words", "sulphited.unless") {
		t.Error("a language that has no such words")
	}
}

// The rules run in the order the set names them, those it names and no other; a set may
// name each with the phrases it needs.
func TestStepsOfASet(t *testing.T) {
	d := begun(t, "us-or", nil)
	var ran []string
	steps := []Step[string]{}
	for _, n := range []string{"a", "b", "c"} {
		steps = append(steps, NewStep(n, "", []string{"of " + n}, func(s string) { ran = append(ran, n+s) }))
	}
	d.Set.Kinds = []string{"c", "a"}
	d.L.Notef("x", "", "", "y")
	if c, l := Take(d, steps, "!"); !slices.Equal(ran, []string{"c!", "a!"}) || c != d.C || len(l) != len(d.L) {
		t.Errorf("%v", ran)
	}
	types := StatementTypes(steps)
	if len(types) != 3 || types[1].Name != "b" || !slices.Equal(types[1].Phrases, []string{"of b"}) {
		t.Errorf("%v", types)
	}
	for want, paths := range map[string][]string{"ingredient": nil, "ingredient[2]": {"ingredient[2]", "ingredient[3]"}} {
		if got := LinePath(cook.Line{Paths: paths}); got != want {
			t.Errorf("%v: %s", paths, got)
		}
	}
}
