package us

import (
	"testing"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/draft"
)

// 21 CFR 150.160(c): 47 parts of Group I fruit to 55 of sweetener; 150.140(d) of
// jelly: 45 to 55 (FDA, read 26 Nov 2026). By weight: what was measured in cups and
// only just meets it is told to be weighed, on either side, and never an error.
func TestCupsNearTheRatio(t *testing.T) {
	for name, c := range map[string]struct {
		fruit, sugar             float64
		cupsOfFruit, cupsOfSugar bool
		want                     string
	}{
		"weighed, just enough":         {4700, 5500, false, false, "standard-met"},
		"weighed, just too little":     {4690, 5500, false, false, "standard-not-met"},
		"cups of fruit, just enough":   {4710, 5500, true, false, "standard-unsure"},
		"cups of fruit, a tenth over":  {5220, 5500, true, false, "standard-unsure"},
		"cups of fruit, well over":     {5230, 5500, true, false, "standard-met"},
		"cups of sugar, just enough":   {4710, 5500, false, true, "standard-unsure"},
		"cups of sugar, well over":     {4850, 5500, false, true, "standard-met"},
		"cups of both, between":        {5300, 5500, true, true, "standard-unsure"},
		"cups of both, well over":      {5400, 5500, true, true, "standard-met"},
		"cups of fruit, just short":    {4600, 5500, true, false, "standard-unsure"},
		"cups of fruit, much too few":  {3000, 5500, true, false, "standard-unsure"},
		"cups of sugar, much too much": {3000, 5500, false, true, "standard-unsure"},
	} {
		r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", c.fruit}, part{"sugar", c.sugar})
		r.Lines[0].Estimated, r.Lines[1].Estimated = c.cupsOfFruit, c.cupsOfSugar
		_, l := declare(t, r, "us", draft.Options{})
		for _, code := range []string{"standard-met", "standard-unsure", "standard-not-met"} {
			if (codeOf(l, code) != "") != (code == c.want) {
				t.Errorf("%s: %s, want %s: %v", name, code, c.want, l)
			}
		}
	}
}
