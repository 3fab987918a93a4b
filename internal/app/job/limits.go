package job

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kitchen/batch"
)

// One session in a home kitchen is far smaller. A file with more is a slip of a
// program: it is told so, and no stage after reading spends time on it.
const (
	maxIngredients = 1000
	maxFills       = 200
	maxGiven       = 10_000 // gifts, or markets
	maxFindings    = 600    // what a stage may say of one batch
)

// tooMuch reports lists longer than any cooking session's.
func tooMuch(b *batch.Batch) (l diag.List) {
	for _, c := range []struct {
		path   string
		n, max int
	}{
		{"ingredient", len(b.Ingredients), maxIngredients},
		{"fill", len(b.Fills), maxFills},
		{"gift", len(b.Gifts), maxGiven},
		{"market", len(b.Markets), maxGiven},
	} {
		if c.n > c.max {
			l.Errorf("too-many", b.File.Name, source.At(c.path, c.max), "%d times [[%s]] is more than the %d of one batch", c.n, c.path, c.max).
				Hinted("write one batch file for each cooking session")
		}
	}
	return l
}
