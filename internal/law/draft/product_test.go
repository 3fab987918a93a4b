package draft

import (
	"strings"
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/place"
)

func TestProductOf(t *testing.T) {
	rows := []place.Product{{ID: "jam", Types: []string{"jam"}}, {ID: "extra", Types: []string{"jam"}, ByName: true}}
	says := func(word string) func(place.Product) bool {
		return func(p place.Product) bool { return strings.HasPrefix(p.ID, word) }
	}
	for _, c := range []struct {
		kind batch.ProductType
		says string
		want string
	}{{batch.Jam, "no", "jam"}, {batch.Jam, "extra", "extra"}, {batch.Chutney, "extra", ""}} {
		if p, _ := ProductOf(rows, &batch.Batch{Product: c.kind}, says(c.says)); p.ID != c.want {
			t.Errorf("%+v: %s", c, p.ID)
		}
	}
}

func TestAmong(t *testing.T) {
	ln := cook.Line{Key: "apple_juice", Name: "apple juice", Row: pantry.Ingredient{Key: "apple_juice", Class: "juice"}}
	own := cook.Line{Name: "Maronenpüree"}
	for _, c := range []struct {
		list []string
		ln   cook.Line
		want bool
	}{{[]string{"juice"}, ln, true}, {[]string{"apple_juice"}, ln, true}, {[]string{"apple"}, ln, false}, {[]string{"Maronenpüree"}, own, true}, {[]string{""}, own, false}} {
		if Among(c.list, c.ln) != c.want {
			t.Errorf("%v %s", c.list, c.ln.Name)
		}
	}
}
