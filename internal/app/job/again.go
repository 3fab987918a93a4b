package job

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/edit"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/scale"
)

// ofOnePot are the keys that tell of one pot and its jars: a copy to cook again
// begins without them, since what was measured then proves nothing now.
var ofOnePot = []string{"lot", "best_before", "use_by", "gift", "market", "cook.finished_pot", "cook.pot_tare", "cook.brix", "cook.brix_temperature", "cook.ph",
	"cook.ph_date", "cook.temperature", "cook.skimmed", "ingredient[].lot", "fill[].count", "fill[].sealed", "fill[].net", "fill[].gross", "fill[].tare",
	"fill[].declared", "fill[].part_jar"}

// CookAgain makes a plan of a record: the recipe, made on a day. Everything else
// of the text stays to the letter.
func CookAgain(text string, day unit.Date) (string, diag.List) {
	f, l := source.Parse("", []byte(text))
	if l.HasErrors() {
		return text, l
	}
	for _, key := range ofOnePot {
		table, rest, rows := strings.Cut(key, "[].")
		if !rows {
			text = without(text, key)
			continue
		}
		for i := 0; i < f.Rows(table); i++ {
			text = without(text, source.At(table, i)+"."+rest)
		}
	}
	return edit.Set(text, "made", day)
}

// without takes a key, a table or all rows of a table out of a text.
func without(text, path string) string {
	for {
		f, _ := source.Parse("", []byte(text))
		at := path
		if f.Rows(path) > 0 {
			at = source.At(path, 0)
		} else if _, there := f.Entry(path); !there {
			return text
		}
		now, l := edit.Delete(text, at)
		if l.HasErrors() || now == text {
			return text
		}
		text = now
	}
}

// ScaledBatch is a batch file for the jars wanted: the batch as it is written,
// to cook again on a day, with every amount scaled and the jars to fill.
func (e *Env) ScaledBatch(b *Batch, jars string, day unit.Date) ([]byte, diag.List) {
	want, found := scale.Parse(jars)
	if found.HasErrors() || b.Cooked == nil {
		return nil, found
	}
	p, l := scale.Scale(b.Cooked, want, b.Pantry)
	found = b.locate(append(found, l...))
	if p == nil || found.HasErrors() {
		return nil, found
	}
	text, l := CookAgain(string(b.Input.Batch.Data), day)
	found = append(found, l...)
	for i, g := range p.Batch.Ingredients {
		amount, ok := amountText(g.Amount, b.Cooked, g.Path, p.Factor, b.Kitchen.Units)
		if !ok {
			found.Errorf("amount-not-scaled", b.Input.Batch.Name, g.Path+".amount", "%s cannot be written %s times", g.Amount.Text, strconv.FormatFloat(p.Factor, 'f', 2, 64)).
				Hinted("give it a weight")
			continue
		}
		text, l = edit.Set(text, source.At("ingredient", i)+".amount", amount)
		found = append(found, l...)
	}
	text = without(text, "fill")
	for _, j := range p.Jars {
		row := []edit.Pair{{Key: "jar", Value: j.Jar.Key}}
		if len(p.Jars) > 1 {
			share := float64(j.Count) * j.Fill.Grams() / p.Yield.Grams()
			row = append(row, edit.Pair{Key: "share", Value: math.Round(share*1e4) / 1e4})
		}
		text, l = edit.AppendTable(text, "fill", row)
		found = append(found, l...)
	}
	if found = b.locate(found); found.HasErrors() {
		return nil, found
	}
	return []byte(text), found
}

// amountText writes a scaled amount as the maker measured it, where it reads
// back as the same within a hundredth; else by weight, where the weight of the
// ingredient alone is known.
func amountText(q unit.Quantity, r *cook.Result, path string, factor float64, units string) (string, bool) {
	var s string
	switch q.Dim {
	case unit.ByMass:
		return q.Mass.Exact(units), q.Mass > 0
	case unit.ByVolume:
		s = strings.TrimSpace(q.Volume.Exact(units) + " " + q.Form)
	default:
		s = strings.TrimSpace(strconv.FormatFloat(q.Count, 'f', 2, 64) + " " + q.Piece)
		if q.Part != "" {
			s = fmt.Sprintf("%s of %s", q.Part, s)
		}
	}
	if back, err := unit.ParseQuantity(s); err == nil && back.Dim == q.Dim && back.Piece == q.Piece && back.Part == q.Part && back.Form == q.Form &&
		near(back.Volume.ML(), q.Volume.ML()) && near(back.Count, q.Count) {
		return s, true
	}
	for _, l := range r.Lines {
		if len(l.Paths) == 1 && l.Paths[0] == path && l.Mass > 0 {
			return unit.Grams(l.Mass.Grams() * factor).Exact(units), true
		}
	}
	return "", false
}

func near(a, b float64) bool { return math.Abs(a-b) <= 0.01*math.Abs(b) }
