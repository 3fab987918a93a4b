package cook

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/pantry"
)

// The allergens of a row stand in two tables: the columns of ingredients.csv and
// the vocabulary its name is read by. A name that is known alone names no more
// and no less than its row; one that may hold more may leave the row to say it.
func TestRowsAgreeWithTheVocabulary(t *testing.T) {
	v := allergen.Default()
	for _, row := range pantry.Default().Ingredients() {
		us, eu := listed(v, row.USAllergen, false), listed(v, row.EUAllergen, true)
		r := v.Read(row.Name)
		settled, isSettled := v.Settled(row.Key)
		var named []string
		for _, h := range r.Hits {
			named = append(named, h.ID)
		}
		named = append(named, settled...)
		for _, id := range named {
			s, ok := v.Substance(id)
			if !ok || s.Group() {
				continue
			}
			if s.US != "" && !slices.Contains(us, key(v, id, false)) && !usual(r, id) {
				t.Errorf("%s: %q names %s, us_allergen is %q", row.Key, row.Name, id, row.USAllergen)
			}
			if len(s.Annex2) > 0 && id != "sulphites" && !slices.Contains(eu, key(v, id, true)) && !usual(r, id) {
				t.Errorf("%s: %q names %s, eu_allergen is %q", row.Key, row.Name, id, row.EUAllergen)
			}
		}
		if !r.Known && !isSettled {
			continue
		}
		for _, column := range []string{row.USAllergen, row.EUAllergen} {
			for _, h := range v.Read(column).Hits {
				s, _ := v.Substance(h.ID)
				if !s.Group() && !slices.ContainsFunc(named, func(id string) bool { return key(v, id, true) == key(v, h.ID, true) }) {
					t.Errorf("%s: the row says %q, its name %q says %v", row.Key, column, row.Name, named)
				}
			}
		}
	}
}

// usual reports an allergen that is only usual in such a food.
func usual(r allergen.Reading, id string) bool {
	return slices.ContainsFunc(r.Hits, func(h allergen.Hit) bool { return h.ID == id && h.Usual })
}

// key is what a list prints of a substance, so that the columns' "walnut" and
// the vocabulary's kinds of it compare by the list they stand for.
func key(v *allergen.Vocabulary, id string, eu bool) string {
	s, _ := v.Substance(id)
	if eu && len(s.Annex2) > 0 {
		return strings.Join(s.Annex2, "+")
	}
	return s.ID
}

func listed(v *allergen.Vocabulary, column string, eu bool) (out []string) {
	for _, h := range v.Read(column).Hits {
		out = append(out, key(v, h.ID, eu))
	}
	return out
}
