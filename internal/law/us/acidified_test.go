package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
)

// 21 CFR 114.3(b): low-acid foods to which acids are added are acidified foods,
// "peppers, tropical fruits" among them; jams, jellies and preserves, small amounts
// of low-acid food and what is sold from the refrigerator are none. Virginia
// Cooperative Extension, FST-64NP (2012): of jams only those of a standard of
// identity; "Jellies made from low-acid ingredients such as pepper jelly" are.
func TestAcidifiedFoodIsAskedAbout(t *testing.T) {
	sour := []part{{"strawberries", 1000}, {"sugar", 1000}, {"lemon juice", 40}}
	for _, x := range []struct {
		name string
		kind batch.ProductType
		list []part
		want bool
	}{
		{"Pepper jelly", batch.Jelly, []part{{"red bell peppers", 500}, {"jalapeños", 100}, {"cider vinegar", 500}, {"sugar", 1200}}, true},
		{"Apple chutney", batch.Chutney, []part{{"apples", 2000}, {"onions", 500}, {"cider vinegar", 600}, {"sugar", 800}}, true},
		{"Apple chutney, an onion", batch.Chutney, []part{{"apples", 2000}, {"onions", 380}, {"cider vinegar", 600}, {"sugar", 820}}, false},
		{"Mango jam", batch.Jam, []part{{"mangoes", 1000}, {"lime juice", 100}, {"sugar", 900}}, true},
		{"Fig jam", batch.Jam, []part{{"figs", 1000}, {"lemon juice", 100}, {"sugar", 1000}}, false},
		{"Strawberry jam", batch.Jam, sour, false},
		{"Strawberry jalapeño jam", batch.Jam, append([]part{{"jalapeños", 60}}, sour...), false},
		{"Strawberry pepper jam", batch.Jam, append([]part{{"jalapeños", 300}}, sour...), true},
		{"Plum chutney", batch.Chutney, []part{{"plums", 2000}, {"cider vinegar", 600}, {"sugar", 800}}, false},
	} {
		for class, keeps := range map[cook.Class]bool{cook.Shelf: true, cook.ShelfShort: true, cook.Cold: false, cook.Freezer: false} {
			r := pot(t, x.kind, x.name, measured(66), x.list...)
			r.Keeping.Class = class
			_, l := declare(t, r, "us-oh", draft.Options{})
			d, ok := found(l, "acidified-food")
			if ok != (x.want && keeps) || ok && (d.Severity != diag.Warning || !strings.HasPrefix(d.Path, "ingredient[") || !strings.Contains(d.Cite, "114.3(b)")) {
				t.Errorf("%s, %s: %v %+v", x.name, class, ok, d)
			}
			if _, l := declare(t, r, "us-oh", draft.Options{Gift: true}); len(codesOf(l, "acidified-food")) > 0 {
				t.Errorf("%s, %s: a gift is not sold", x.name, class)
			}
		}
	}
}

// California's list, Michigan's and Mississippi's take jam only as 21 CFR 150 has
// it (quotations of standard_only); other states have not said so.
func TestJamOfTheStandardsAlone(t *testing.T) {
	list := func(more ...part) []part {
		return append([]part{{"strawberries", 1000}, {"sugar", 1000}, {"lemon juice", 40}}, more...)
	}
	for _, x := range []struct {
		name string
		kind batch.ProductType
		list []part
		want string
	}{
		{"Strawberry jam", batch.Jam, list(), ""}, {"Strawberry jalapeño jam", batch.Jam, list(part{"jalapeños", 60}), "does not list jalape"},
		{"Strawberry rum jam", batch.Jam, list(part{"rum", 60}), "no place for rum"}, {"Orange marmalade", batch.Marmalade, []part{{"oranges", 1000}, {"sugar", 1500}}, ""},
		{"Strawberry chutney", batch.Chutney, list(part{"cider vinegar", 300}), ""}, {"Dandelion jelly", batch.Jelly, []part{{"dandelion petals", 100}, {"lemon juice", 60}, {"water", 900}, {"sugar", 1000}}, "none covers this"},
	} {
		for place, only := range map[string]bool{"us-ca": true, "us-mi": true, "us-ms": true, "us-oh": false, "us-tx": false} {
			_, l := declare(t, pot(t, x.kind, x.name, measured(66), x.list...), place, draft.Options{})
			got := strings.Join(codesOf(l, "jam-conditions"), " ")
			if (got != "") != (only && x.want != "") || got != "" && !strings.Contains(got, x.want) {
				t.Errorf("%s, %s: %q, want %q", x.name, place, got, x.want)
			}
		}
	}
}

// codesOf gives what is said under a code.
func codesOf(l diag.List, code string) (out []string) {
	for _, d := range l {
		if d.Code == code {
			out = append(out, d.Message)
		}
	}
	return out
}
