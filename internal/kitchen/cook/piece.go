package cook

import (
	"fmt"
	"strings"

	"jarmark/internal/kitchen/batch"
)

// oddPiece tells of a counted word that is neither a unit nor a piece of the
// ingredient: nothing is known of its weight, and it may be a slip.
func (c *calc) oddPiece(ln *Line, g batch.Ingredient) bool {
	piece := strings.ToLower(strings.TrimSpace(g.Amount.Piece))
	if _, measure := c.p.Measure(piece, ln.Row); measure || ln.Row.PieceG == 0 {
		return false // weighed or told by its table
	}
	ok, odd := c.p.Counts(ln.Row, piece, g.Name+" "+g.Form)
	if ok {
		return false
	}
	hint := fmt.Sprintf("write a weight (1.8 kg), cups or spoons, or only the number: one is taken as %s g%s", trim(ln.Row.PieceG), bracket(ln.Row.PieceForm))
	if odd == "dozen" {
		hint = "write the number: 12 for a dozen"
	}
	c.errorf("unknown-unit", g.Path+".amount", "in %q, %q is neither a unit nor a piece of %s", q(g.Amount), odd, ln.Name).Hinted(hint)
	return true
}
