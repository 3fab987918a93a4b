package draft

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

// What only a filled jar can know is still to come in a plan, owed by what is for sale,
// and a note on a present, planned or not.
func TestWhatAPlanAwaits(t *testing.T) {
	for _, x := range []struct {
		planned, gift bool
		severity      string
		message, hint string
	}{{true, false, "note", "to come", toComeHint}, {false, false, "error", "missing", "hint"}, {true, true, "note", "missing", "hint"}, {false, true, "note", "missing", "hint"}} {
		d := begun(t, "us-or", func(_ *cook.Result, j *cook.JarPlan) {
			if j.Count, j.Sealed = 6, 5; x.planned {
				j.Sealed, j.How = -1, cook.Estimated
			}
		})
		if d.Jar.Planned() != x.planned {
			t.Fatalf("%+v is planned: %v", d.Jar, d.Jar.Planned())
		}
		d.O.Gift, d.L = x.gift, nil
		d.Awaits("code", "file", "path", "to come", "missing", "hint", "cite")
		if f := d.L[0]; f.Severity.String() != x.severity || f.Message != x.message || f.Hint != x.hint || f.Cite != "cite" || len(d.L) != 1 {
			t.Errorf("%+v: %+v", x, f)
		}
	}
}

// Annex II(12): sulphited by its row or, where no row knows it, by its words; a packet
// that was read, and a name that denies it, settle the matter.
func TestSulphitedByRowAndWords(t *testing.T) {
	for name, x := range map[string]struct {
		ln   cook.Line
		read bool
		want bool
	}{
		"row":        {cook.Line{Name: "dried apricots", Key: "apricot_dried", Row: pantry.Ingredient{SulphiteCheck: true}}, false, true},
		"row, read":  {cook.Line{Name: "dried apricots", Key: "apricot_dried", Row: pantry.Ingredient{SulphiteCheck: true}}, true, false},
		"another":    {cook.Line{Name: "dried papaya", Key: "x"}, false, false},
		"own words":  {cook.Line{Name: "dried papaya"}, false, true},
		"denied":     {cook.Line{Name: "unsulphured dried papaya"}, false, false},
		"its unless": {cook.Line{Name: "freeze dried papaya"}, false, false},
		"plain":      {cook.Line{Name: "papaya"}, false, false},
		"as written": {cook.Line{Name: "dried papaya", Written: []string{"unsulphured dried papaya"}}, false, false},
	} {
		x.ln.Paths = []string{"ingredient[0]"}
		d := begun(t, "gb", func(r *cook.Result, _ *cook.JarPlan) {
			in := batch.Ingredient{Path: "ingredient[0]"}
			if x.read {
				in.Contains = []pantry.Part{{Name: "apricots"}}
			}
			r.Batch.Ingredients = []batch.Ingredient{in}
		})
		if got := d.Sulphited(x.ln); got != x.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// A glance sees whether a text has the letters words begin with; words that begin with
// others may be anywhere.
func TestGlance(t *testing.T) {
	for _, x := range []struct {
		plain, words string
		want         bool
	}{{" no sugar ", "sugar free", true}, {" no salt ", "sugar free", false}, {" x ", "0 sugar", true}, {" x ", "äpfel", true}, {" zoo ", "zoo", true}, {" z ", "zoo", false}, {" aa ", "a", true}, {" x ", "", true}} {
		if got := glance(x.plain, x.words); got != x.want {
			t.Errorf("%q in %q: %v", x.words, x.plain, got)
		}
	}
}

// A claim of nutrition is told where it stands, and once a text; what an ingredient is
// called ("unsweetened chocolate") claims nothing.
func TestClaimsAreToldWhereTheyStand(t *testing.T) {
	for text, want := range map[string]bool{"low sugar": true, "with love": false, "": false} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: text}}
		})
		d.L, d.Set.Wordings = nil, nil
		d.Wordings()
		_, claimed := told(d.L, "nutrition-claim")
		if claimed != want || want && d.L[0].Path != "gift[0].message" {
			t.Errorf("%q: %v", text, d.L)
		}
	}
}

// "Raw" is untrue of what was boiled, "fresh" of what keeps cold: by the batch's own
// process and keeping, where the rule asks for them.
func TestWhatMakesAWordUntrue(t *testing.T) {
	for _, x := range []struct {
		beside, method string
		class          cook.Class
		want           string
	}{
		{"cold", "", cook.Cold, "food that keeps cold"}, {"cold", "", cook.Shelf, ""}, {"cold", "", cook.ShelfShort, ""}, {"heat", "boiling water", cook.Shelf, "food that was boiled"}, {"heat", "steam", cook.Shelf, "food that was boiled"}, {"heat", "freezer", cook.Shelf, ""}, {"heat", "none", cook.Cold, ""}, {"cold", "boiling water", cook.Shelf, ""},
	} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Process.Method, r.Keeping.Class = x.method, x.class
		})
		if got := d.besides(place.WordingRule{Beside: []string{x.beside}}); got != x.want {
			t.Errorf("%+v: %q", x, got)
		}
	}
}

// A juice goes by its fruit's names too, in every language; a part of a fruit by the
// fruit's.
func TestJuiceIsOfItsFruit(t *testing.T) {
	row, _ := pantry.Default().Ingredient("lemon juice")
	got := namesOf(cook.Line{Name: "lemon juice", Key: row.Key, Row: row})
	for _, want := range []string{"lemon juice", "zitronen", "zitrone", "citron", "lemon"} {
		if !slices.Contains(got, want) {
			t.Errorf("%q is none of %v", want, got)
		}
	}
	if got = namesOf(cook.Line{Name: "sugar", Key: "sugar_white"}); slices.Contains(got, "zitronen") || len(got) == 0 || strings.Join(got, "") != strings.Repeat("sugar", len(got)) {
		t.Errorf("%v", got)
	}
	if got = namesOf(cook.Line{Name: "lemon peel"}); !slices.Contains(got, "lemon") {
		t.Errorf("peel: %v", got)
	}
}

// Things denied together are each denied: "no nuts, milk or celery".
func TestThingsDeniedTogether(t *testing.T) {
	for text, want := range map[string]bool{"no pectin or celery": true, "no salt, celery": true, "celery": false, "no pectin": false} {
		d := begun(t, "us-or", func(r *cook.Result, _ *cook.JarPlan) {
			r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", Message: text}}
			r.Lines = []cook.Line{{Name: "celery"}}
		})
		d.Set.Nutrition, d.L = nil, nil
		d.Set.Wordings = []place.WordingRule{{ID: "w", Of: []string{"salt", "pectin", "celery"}, Words: []string{"no {x}"}, In: []string{"story"}, Level: "error", Text: "but {ingredient}"}}
		if d.Wordings(); (len(d.L) == 1) != want {
			t.Errorf("%q: %v", text, d.L)
		}
	}
}

// ISO/IEC 18004: 152 bytes are the most a code of version 8 holds at level M; one more is
// told. What the kitchen handles beyond the list is named as the maker names it.
func TestLongestCode(t *testing.T) {
	for n, want := range map[int]bool{152: false, 153: true} {
		d := begun(t, "us-or", nil)
		d.O.Payload, d.L = strings.Repeat("x", n), nil
		d.Extras()
		if _, got := told(d.L, "qr-long"); got != want {
			t.Errorf("%d bytes: %v", n, got)
		}
	}
	d := begun(t, "us-or", nil)
	d.K.AlsoHandles = []string{"pine nuts"}
	if got := d.Handles(aList, "x"); !slices.Equal(got, []string{"pine nuts"}) {
		t.Errorf("%v", got)
	}
}
