package rule

import (
	"fmt"
	"testing"
	"time"

	"jarmark/internal/batch"
	"jarmark/internal/unit"
)

// Fifty thousand ingredients, more than any pot holds, must not hang.
func TestManyIngredients(t *testing.T) {
	r := pot(t, batch.Jelly, "Strawberry jelly", measured(66), part{"strawberries", 500}, part{"sugar", 500})
	for i := range 50_000 {
		ln := r.Lines[0]
		ln.Name, ln.Paths = fmt.Sprint("berry ", i), []string{fmt.Sprintf("ingredient[%d]", i+2)}
		r.Batch.Ingredients = append(r.Batch.Ingredients, batch.Ingredient{Path: ln.Paths[0]})
		r.Lines = append(r.Lines, ln)
	}
	start := time.Now()
	c, _ := Declare(r, jar8(10*unit.Ounce), place(t, "us-or"), Options{})
	if took := time.Since(start); took > 5*time.Second || c == nil {
		t.Errorf("took %v", took)
	}
}
