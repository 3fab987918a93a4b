package cook

import (
	"slices"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// A food holds what its parts hold (21 U.S.C. 343(w)(1); Regulation (EU)
// 1169/2011 Annex VII E): the parts' own words, their names, brackets within
// them, and honey, each with the place it comes from.
func TestPartsCarryTheirAllergens(t *testing.T) {
	filling := ing(t, "house filling", "100 g", "")
	filling.Contains = []pantry.Part{{Name: "peanut butter"}, {Name: "glaze (cream, clover honey)"}, {Name: "crumble", USAllergen: "wheat"}, {Name: "secret dust"}}
	r := &Result{Lines: []Line{{Name: "house filling", Contains: filling.Contains, Paths: []string{"ingredient[0]"}, Written: []string{"house filling"}}}, Batch: &batch.Batch{}}
	a := r.Allergy()
	from := map[string]string{}
	for _, f := range a.Found {
		from[f.ID] = f.From[0].Fact
	}
	for id, want := range map[string]string{"peanut": "house filling › peanut butter", "milk": "house filling › glaze › cream", "wheat": "house filling › crumble"} {
		if from[id] != want {
			t.Errorf("%s comes from %q, want %q", id, from[id], want)
		}
	}
	if len(a.Honey) == 0 || a.Honey[0].Path != "ingredient[0]" {
		t.Errorf("honey: %+v", a.Honey)
	}
	if a.None() || !slices.Contains(a.Unknown, Unproven{"house filling › secret dust", "ingredient[0]"}) {
		t.Errorf("unknown: %+v", a.Unknown)
	}
}
