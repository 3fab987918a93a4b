package pack

import (
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// Who must not eat shellfish must not eat molluscs either: the word means both
// in kitchens, though laws part them (common practice, no source; in doubt it
// is yes).
func TestShellfishAndMolluscs(t *testing.T) {
	v := allergen.Default()
	shell, ok := v.Substance("shellfish")
	soft, known := v.Substance("molluscs")
	if !ok || !known {
		t.Fatal("the table has no such groups")
	}
	if !clashes(shell, soft) || !clashes(soft, shell) {
		t.Error("molluscs pass as no shellfish")
	}
	if egg, ok := v.Substance("egg"); ok && (clashes(shell, egg) || clashes(egg, soft)) {
		t.Error("egg clashes with shellfish")
	}
}

// Two part-filled boxes go into one when it holds both, not when their weight
// or number is too much: 6 and 6 jars of 490 g are 5.88 kg.
func TestBoxesPutTogether(t *testing.T) {
	for holds, want := range map[int]int{12: 1, 11: 2} {
		for limit, weight := range map[unit.Mass]int{6 * unit.Kilogram: want, 5 * unit.Kilogram: 2} {
			b := builder{o: Options{MaxBox: limit}, plan: &Plan{}}
			open := []Box{{Jars: 6, Gross: 2940 * unit.Gram}, {Jars: 6, Gross: 2940 * unit.Gram}}
			if got := b.together(open, holds); len(got) != weight {
				t.Errorf("%d in a box, %.0f kg: %d boxes, want %d", holds, limit.Grams()/1000, len(got), weight)
			}
		}
	}
}

// A whole list says nothing of prices and change, even with a single market;
// nor does the list of a market that is over.
func TestOnlyAMarketDayHasPrices(t *testing.T) {
	r := plum(kitchen())
	r.Batch.Gifts, r.Batch.Markets = nil, r.Batch.Markets[:1]
	if p, _ := Build([]*cook.Result{r}, Options{}); strings.Contains(p.Text(), "Prices of the day") {
		t.Error(p.Text())
	}
	r = plum(kitchen())
	if p, _ := Build([]*cook.Result{r}, Options{Event: "Harvest fair"}); strings.Contains(p.Text(), "Prices of the day") {
		t.Error(p.Text())
	}
	r.Batch.Markets = nil
	r.Batch.Gifts = []batch.Gift{{Path: "gift[0]", To: "Ann", Jars: 1}}
	if p, _ := Build([]*cook.Result{r}, Options{Gifts: true}); strings.Contains(p.Text(), "Prices of the day") {
		t.Error(p.Text())
	}
}

// A row that names a lot there is and a size it has not is told of the size,
// not of the lot.
func TestLotWithoutTheSize(t *testing.T) {
	_, found := Build(both(), Options{List: []Entry{{To: "Ann", Jars: 1, Lot: "l26201-ap", Jar: "4 fl oz"}}})
	if !has(found, "jar-size", "Ann", "4 fl oz") || has(found, "unknown-lot") {
		t.Error(found)
	}
}
