package eu

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/law/place"
)

// The phrases a European label must bear letter for letter have each a
// quotation in every language; those without one are named here with why.
func TestPrescribedPhrasesAreQuoted(t *testing.T) {
	b, err := testBook()
	if err != nil {
		t.Fatal(err)
	}
	quotes, err := b.Quotes("eu")
	if err != nil {
		t.Fatal(err)
	}
	unread := []string{ // still from memory or a trade sheet
		"fr:eu.jam.fruit", "fr:eu.jam.sugar",
	}
	for _, lang := range []string{"en", "de", "fr"} {
		for _, key := range []string{"eu.jam.fruit", "eu.jam.sugar", "eu.name.mixed", "eu.with-sweeteners", "eu.with-sugars-and-sweeteners", "eu.laxative"} {
			quoted := slices.ContainsFunc(quotes, func(q place.Quote) bool { return q.Value == "phrase:"+lang+":"+key && q.Confidence != "memory" })
			if quoted == slices.Contains(unread, lang+":"+key) {
				t.Errorf("%s %s: quoted %v", lang, key, quoted)
			}
		}
	}
}

// The figures of the quotations stand in the rows (Directive 2001/113/EC Annex I
// as amended; RD 863/2003 3.1, 3.2; WSI 2018/274; SR 2018/78; KonfV; Décret 85-872).
func TestQuotedFiguresStandInTheRows(t *testing.T) {
	for _, c := range []struct{ place, value, figures string }{
		{"eu", "jam.floors", "450 350 180 230 80"}, {"eu", "extra-jam.floors", "500 450 280 290 100"}, {"eu", "marmalade.floors", "200"}, {"eu", "chestnut.floors", "380"},
		{"eu", "jam.solids", "60"}, {"gb", "jam.floors", "250 150 160 60 350"}, {"gb", "jam.solids", "25 50"}, {"ni", "curd.solids", "65"}, {"ni", "curd.least", "40 6.5"},
		{"gb", "mincemeat.least", "300 200 25"}, {"ni", "mincemeat.least", "300 200 25"}, {"gb", "extra-jam.floors", "350 250 230 80 450"}, {"gb", "eu.largest_nominal_kg", "25"}, {"de", "jam.solids", "55"}, {"fr", "jam.solids", "55"}, {"fr", "chestnut.solids", "60"},
	} {
		b, _ := testBook()
		quotes, err := b.Quotes(c.place)
		if err != nil {
			t.Fatal(err)
		}
		at := slices.IndexFunc(quotes, func(q place.Quote) bool { return q.Value == c.value })
		text := ""
		for _, v := range rulesOf(t, c.place).Effective() {
			if v.Row()+"."+v.Key == c.value {
				text = v.Value
			}
		}
		for _, f := range strings.Fields(c.figures) {
			if at < 0 || !strings.Contains(quotes[at].Text, f) || !strings.Contains(text, f) {
				t.Errorf("%s %s: %s in quotation and row %q", c.place, c.value, f, text)
			}
		}
	}
}
