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

// What each state asks beside its words, on a day: C.R.S. 25-4-1614(3) after
// HB26-1033; A.R.S. 36-932(A); AS 17.20.332; the quotations stand in
// templates/places/quotes.
func TestStateParticulars(t *testing.T) {
	r := strawberry(t)
	c, l := declare(t, r, "us-co", draft.Options{})
	maker := text(c, label.Maker)
	for _, want := range []string{"4711", "Mill County", "example.gov/food", "555 0114"} {
		if !strings.Contains(maker, want) {
			t.Errorf("Colorado: %q lacks %q", maker, want)
		}
	}
	if l.HasErrors() {
		t.Error(l)
	}
	r.Kitchen.StateWebsite = ""
	if _, l = declare(t, r, "us-co", draft.Options{}); codeOf(l, "particular-missing") == "" {
		t.Errorf("no website, no finding: %v", l)
	}
	c, l = declare(t, r, "us-az", draft.Options{})
	if codeOf(l, "state-website") == "" || !strings.Contains(text(c, label.Maker), "azdhs.gov") {
		t.Errorf("Arizona prints an address nobody compared: %q %v", text(c, label.Maker), l)
	}
	r.Kitchen.Permit = ""
	if _, l = declare(t, r, "us-ak", draft.Options{}); l.HasErrors() {
		t.Errorf("Alaska wants the license number of those who have one: %v", l)
	}
	r.Kitchen.Corporate = "Thornfield Lane Preserves, Inc."
	if c, _ = declare(t, r, "us", draft.Options{}); !strings.HasPrefix(text(c, label.Maker), "Made by Thornfield Lane Preserves, Inc.") {
		t.Errorf("101.5(b), the actual corporate name: %q", text(c, label.Maker))
	}
}

// A state that takes a number and asks for no address leaves that to the
// federal rule: a warning, no error.
func TestNumberInsteadOfAddress(t *testing.T) {
	for id, want := range map[string]diag.Severity{"us-co": diag.Warning, "us-wa": diag.Warning, "us-tn": diag.Error, "us": diag.Error} {
		r := strawberry(t)
		r.Kitchen.Address = nil
		_, l := declare(t, r, id, draft.Options{})
		if d, ok := found(l, "no-address"); !ok || d.Severity != want {
			t.Errorf("%s: %+v", id, d)
		}
	}
}

// A.R.S. 36-931(1)(b) and Tennessee's bill of 2025 leave foods with alcohol out.
func TestAlcoholIsNotCovered(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 5000}, part{"sugar", 5000}, part{"rum", 50})
	for id, want := range map[string]bool{"us-tn": true, "us-az": true, "us-or": false} {
		_, l := declare(t, r, id, draft.Options{})
		d, ok := found(l, "not-covered")
		if ok != want || ok && (d.Severity != diag.Error || d.Path != "ingredient[2]" || d.Cite == "") {
			t.Errorf("%s: %+v", id, d)
		}
	}
	if _, l := declare(t, strawberry(t), "us-tn", draft.Options{}); codeOf(l, "not-covered") != "" {
		t.Error("no alcohol, and a finding")
	}
}

// Minnesota and Wisconsin take home-canned fruit up to pH 4.6.
func TestFinishedPH(t *testing.T) {
	for _, x := range []struct {
		high     float64
		measured bool
		want     string
		severity diag.Severity
	}{{4.7, true, "finished-ph", diag.Error}, {4.7, false, "finished-ph", diag.Warning}, {4.6, true, "", 0}, {3.4, false, "", 0}} {
		r := strawberry(t)
		r.PHHigh, r.PHMeasured = x.high, x.measured
		_, l := declare(t, r, "us-wi", draft.Options{})
		if d, ok := found(l, "finished-ph"); ok != (x.want != "") || ok && d.Severity != x.severity {
			t.Errorf("%+v: %+v", x, d)
		}
	}
}

// The sign's own words are told letter for letter (410 ILCS 625/4(b)(10)).
func TestSignWords(t *testing.T) {
	_, l := declare(t, strawberry(t), "us-il", draft.Options{})
	const want = "This product was produced in a home kitchen not inspected by a health department that may also process common food allergens."
	if d, ok := found(l, "stall-sign"); !ok || !strings.Contains(d.Message, `"`+want+`"`) {
		t.Errorf("%+v", d)
	}
}

// Idaho's words of 2026 are not in force a year before; Georgia then had one
// programme and no choice to make.
func TestWordsOfTheDay(t *testing.T) {
	b, _ := book()
	r := strawberry(t)
	for _, x := range []struct {
		id, code string
		on       unit.Date
	}{{"us-id", "rules-not-in-force", unit.Date{Year: 2025, Month: 7, Day: 1}}, {"us-id", "", labelDay},
		{"us-ga", "", unit.Date{Year: 2025, Month: 6, Day: 30}}, {"us-ga", "choose-programme", labelDay}, {"us-nv", "rules-not-in-force", unit.Date{Year: 2025, Month: 6, Day: 30}}} {
		s, _ := b.Place(x.id, x.on)
		_, l := Declare(r, cook.JarPlan{Declared: 10 * unit.Ounce}, s, draft.Options{})
		for _, code := range []string{"rules-not-in-force", "choose-programme"} {
			if got := codeOf(l, code) != ""; got != (code == x.code) {
				t.Errorf("%s on %s: %s %v", x.id, x.on, code, got)
			}
		}
	}
}
