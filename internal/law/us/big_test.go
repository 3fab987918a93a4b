package us

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// Ten thousand ingredients, more than any pot holds, are all listed.
func TestManyIngredients(t *testing.T) {
	r := pot(t, batch.Jelly, "Strawberry jelly", measured(66), part{"strawberries", 500}, part{"sugar", 500})
	for i := range 10_000 {
		ln := r.Lines[0]
		ln.Name, ln.Paths = fmt.Sprint("berry ", i), []string{fmt.Sprintf("ingredient[%d]", i+2)}
		r.Batch.Ingredients = append(r.Batch.Ingredients, batch.Ingredient{Path: ln.Paths[0]})
		r.Lines = append(r.Lines, ln)
	}
	c, _ := Declare(r, jar8(10*unit.Ounce), rulesOf(t, "us-or"), draft.Options{})
	if got := text(c, label.Ingredients); !strings.Contains(got, "berry 0") || !strings.Contains(got, "berry 9999") {
		t.Errorf("%d letters", len(got))
	}
}
