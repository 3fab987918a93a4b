package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// Sizes by state, from the same record: 10-, 11- and 12-point, and 1/16 inch on
// the lower-case o.
func TestStatementSizes(t *testing.T) {
	points := map[float64]string{10: "AL CT DC DE FL GA IN KY MD MS NH OH OK RI VT WV", 11: "MI MT WA", 12: "CA UT"}
	for pt, list := range points {
		for _, state := range strings.Fields(list) {
			if p := rulesOf(t, "us-"+strings.ToLower(state)).Programmes[0]; p.MinPoints != int(pt) {
				t.Errorf("%s: %d points, want %v", state, p.MinPoints, pt)
			}
		}
	}
	for _, state := range []string{"or", "ny", "nv"} {
		if p := rulesOf(t, "us-"+state).Programmes[0]; unit.Length(p.MinLetter) != unit.Inch/16 || p.Letter != "o" {
			t.Errorf("%s: %d nm on %q", state, p.MinLetter, p.Letter)
		}
	}
	for _, state := range []string{"ca", "or", "ut", "va", "mt"} {
		if rulesOf(t, "us-"+state).Programmes[0].Placement != "panel" {
			t.Errorf("%s: not on the main panel", state)
		}
	}
}

func strawberry(t testing.TB) *cook.Result {
	return pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 5000}, part{"sugar", 5000})
}

// Every state declares a whole, printable label for a full kitchen, and its
// statement appears as the law has it.
func TestEveryStateDeclares(t *testing.T) {
	b, _ := book()
	for _, sum := range b.List() {
		if !strings.HasPrefix(sum.ID, "us") {
			continue
		}
		s := rulesOf(t, sum.ID)
		programmes := append([]string{""}, sum.Programmes...)
		for _, pr := range programmes {
			r := strawberry(t)
			r.Kitchen.Programme = pr
			c, l := Declare(r, jar8(10*unit.Ounce), s, draft.Options{})
			if l.HasErrors() {
				t.Errorf("%s %s: %v", sum.ID, pr, l)
			}
			for _, k := range []label.Kind{label.Identity, label.Net, label.Ingredients, label.Maker, label.Storage, label.Date, label.Lot} {
				if _, ok := c.Find(k); !ok {
					t.Errorf("%s: no %s", sum.ID, k)
				}
			}
			// No "none" beside words that say there may be some.
			says := strings.Contains(strings.ToLower(text(c, label.Statement)), "allergen")
			if _, none := c.Find(label.Allergens); none == says || c.NoAllergens == says {
				t.Errorf("%s %s: %q beside %q", sum.ID, pr, text(c, label.Allergens), text(c, label.Statement))
			}
			if pr == "" {
				continue
			}
			for _, p := range s.Programmes {
				if b, ok := c.Find(label.Statement); p.ID == pr && p.Statement != "" && (!ok || b.Text() != p.Statement || !b.Exact || !b.Required || b.Verified != p.Confidence) {
					t.Errorf("%s %s: %+v", sum.ID, pr, b)
				}
			}
		}
	}
}

// A memory row never passes as verified; a secondary one warns; a primary one
// shows source and date.
func TestTrust(t *testing.T) {
	for id, want := range map[string]struct {
		code     string
		severity diag.Severity
	}{"us-tn": {"statement-secondary", diag.Warning}, "us-fl": {"statement-secondary", diag.Warning}, "us-or": {"statement-source", diag.Note},
		"us-mo": {"statement-meaning", diag.Warning}, "us-me": {"no-statement", diag.Warning}, "us-ny": {"statement-recommended", diag.Note}} {
		c, l := declare(t, strawberry(t), id, draft.Options{})
		if d, ok := found(l, want.code); !ok || d.Severity != want.severity || d.Cite == "" {
			t.Errorf("%s: want %s, got %v", id, want.code, l)
		}
		if b, ok := c.Find(label.Statement); ok && id == "us-tn" && b.Verified != "secondary" {
			t.Errorf("%s: verified %q", id, b.Verified)
		}
	}
	b, _ := book()
	for _, sum := range b.List() {
		id := sum.ID
		for _, p := range rulesOf(t, id).Programmes {
			if p.CheckedOn == "" || p.Source == "" {
				t.Errorf("%s %s: no source or date", id, p.ID)
			}
		}
	}
}

// Each required group is filled by any one of its members.
func TestParticulars(t *testing.T) {
	r := strawberry(t)
	r.Kitchen.Permit, r.Kitchen.Address = "", nil
	_, l := declare(t, r, "us-mn", draft.Options{})
	d, ok := found(l, "particular-missing")
	if !ok || d.Severity != diag.Error || !strings.Contains(d.Hint, "permit in kitchen.toml or address in kitchen.toml") {
		t.Errorf("Minnesota, neither number nor address: %v", l)
	}
	r.Kitchen.Permit = "4711"
	c, l := declare(t, r, "us-mn", draft.Options{})
	if _, ok := found(l, "particular-missing"); ok || l.HasErrors() || !strings.Contains(text(c, label.Maker), "4711") {
		t.Errorf("Minnesota, number: %v", l)
	}
	if b, ok := c.Find(label.Date); !ok || b.Text() != "Best if used by Jun 14, 2027" {
		t.Errorf("date %q", b.Text())
	}
	made := false
	for _, b := range c.Blocks {
		made = made || b.ID == "made" && b.Text() == "Made Jun 14, 2026" && b.Required
	}
	if !made {
		t.Error("Minnesota wants the day of making")
	}
	r.Kitchen.County = ""
	_, l = declare(t, r, "us-ca", draft.Options{})
	if d, ok := found(l, "particular-missing"); !ok || d.Path != "county" {
		t.Errorf("California, county: %v", l)
	}
}

func TestJamConditions(t *testing.T) {
	for id, want := range map[string]string{"us-dc": "forbids canning", "us-wi": "pH", "us-ri": "baked goods only"} {
		_, l := declare(t, strawberry(t), id, draft.Options{})
		if d, ok := found(l, "jam-conditions"); !ok || d.Severity != diag.Warning || !strings.Contains(d.Message, want) {
			t.Errorf("%s: %v", id, l)
		}
	}
	_, l := declare(t, strawberry(t), "us-or", draft.Options{})
	if _, ok := found(l, "jam-conditions"); ok {
		t.Error("Oregon sets no condition")
	}
}

// OAR 603-025-0320(1)(c)(F), 603-025-0325(2)(i), copies of Oct and Dec 2024.
func TestOregon(t *testing.T) {
	r := pot(t, batch.Jam, "Fig jam", measured(66), part{"figs", 500}, part{"sugar", 500})
	r.Kitchen.Pets = "cat"
	c, l := declare(t, r, "us-or", draft.Options{})
	if d, ok := found(l, "fruit-ph"); !ok || d.Path != "ingredient[0]" {
		t.Errorf("figs: %v", l)
	}
	seen := false
	for _, b := range c.Blocks {
		seen = seen || b.ID == "pets" && strings.HasPrefix(b.Text(), "Pets were present") && strings.Contains(b.Text(), "cat")
	}
	if !seen {
		t.Error("no pets line")
	}
	if _, l = declare(t, strawberry(t), "us-or", draft.Options{}); codeOf(l, "fruit-ph") != "" || codeOf(l, "pets") == "" {
		t.Errorf("strawberries, no pets: %v", l)
	}
}

// Georgia, New Hampshire and Utah have two programmes each.
func TestProgrammes(t *testing.T) {
	r := strawberry(t)
	c, l := declare(t, r, "us-nh", draft.Options{})
	if _, ok := found(l, "choose-programme"); !ok || !strings.Contains(text(c, label.Statement), "exempt") {
		t.Errorf("no choice: %v", l)
	}
	r.Kitchen.Programme = "licensed"
	c, l = declare(t, r, "us-nh", draft.Options{})
	if _, ok := found(l, "choose-programme"); ok || !strings.Contains(text(c, label.Statement), "residential food production area licensed") {
		t.Errorf("licensed: %q %v", text(c, label.Statement), l)
	}
	r.Kitchen.Programme = "bakery"
	if _, l = declare(t, r, "us-nh", draft.Options{}); codeOf(l, "unknown-programme") == "" {
		t.Errorf("unknown programme: %v", l)
	}
	// Delaware's 10 points bind the whole label.
	c, _ = declare(t, r, "us-de", draft.Options{})
	if b, _ := c.Find(label.Ingredients); b.Min.On != label.PointSize || b.Min.Length < unit.Points(10) {
		t.Errorf("Delaware: %+v", b.Min)
	}
}

func codeOf(l diag.List, code string) string {
	d, _ := found(l, code)
	return d.Code
}

// On gifts the statement never vanishes unnoticed.
func TestGift(t *testing.T) {
	r := strawberry(t)
	r.Kitchen.County, r.Kitchen.Permit = "", ""
	c, l := declare(t, r, "us-ca", draft.Options{Gift: true})
	if _, ok := c.Find(label.Statement); ok || l.HasErrors() {
		t.Errorf("gift: %v", l)
	}
	if _, ok := found(l, "gift-no-statement"); !ok {
		t.Errorf("the statement vanished unnoticed: %v", l)
	}
}

// The words of Georgia's new act are in force from 1 Jul 2025.
func TestProgrammeBeforeItsDay(t *testing.T) {
	b, _ := book()
	early, _ := b.Place("us-ga", unit.Date{Year: 2025, Month: 6, Day: 30})
	r := strawberry(t)
	r.Kitchen.Programme = "hb-398"
	if _, l := Declare(r, jar8(10*unit.Ounce), early, draft.Options{}); codeOf(l, "rules-not-in-force") == "" {
		t.Errorf("before its day: %v", l)
	}
	if _, l := declare(t, r, "us-ga", draft.Options{}); codeOf(l, "rules-not-in-force") != "" {
		t.Errorf("in force: %v", l)
	}
}

// In the United States a label in a language we do not hold is in English, with
// a warning (the rules ask for English: 21 CFR 101.15(c)(1)).
func TestLanguageOfTheUnitedStates(t *testing.T) {
	r := strawberry(t)
	r.Kitchen.Language = "it"
	_, l := declare(t, r, "us", draft.Options{})
	if d, ok := found(l, "language"); !ok || d.Severity != diag.Warning {
		t.Errorf("%v", l)
	}
}

// A jar given away names its maker, and neither street nor telephone nor
// number: it lies on other people's tables.
func TestGiftKeepsTheAddress(t *testing.T) {
	for _, place := range []string{"us-or", "us-ca", "us"} {
		r := strawberry(t)
		r.Kitchen.Phone, r.Kitchen.Permit, r.Kitchen.Email = "+1 555 0114", "HK-1", "jam@thornfield.example"
		c, l := declare(t, r, place, draft.Options{Gift: true})
		all := ""
		for _, b := range c.Blocks {
			all += b.Text() + "\n"
		}
		for _, private := range append([]string{"555", "HK-1", "jam@"}, r.Kitchen.Address...) {
			if strings.Contains(all, private) {
				t.Errorf("%s: a gift says %q:\n%s", place, private, all)
			}
		}
		if !strings.Contains(all, r.Kitchen.Name) || l.HasErrors() {
			t.Errorf("%s: %v\n%s", place, l, all)
		}
	}
}

// How a sign must look, as far as a law says: Minn. Stat. 28A.152 subd. 1
// ("clearly legible"), AS 17.20.332(d) ("prominently"). None that was read gives
// its letters a size, so no sign says one.
func TestSignSaysHowItMustLook(t *testing.T) {
	for state, want := range map[string]string{"us-mn": "; it must be clearly legible", "us-ak": "; it must be prominently displayed", "us-nd": "--kind sign prints it"} {
		_, l := declare(t, strawberry(t), state, draft.Options{})
		if d, ok := found(l, "stall-sign"); !ok || !strings.HasSuffix(d.Hint, want) {
			t.Errorf("%s: %q", state, d.Hint)
		}
	}
}
