package eu

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// in is one ingredient of a test batch.
type in struct {
	key, name string
	g         float64
	kind      string // pantry kind
	class     string // EU fruit class
	allergen  string // Annex II word of the table
	parts     []pantry.Part
	own       []string           // maker's allergen words
	row       *pantry.Ingredient // the whole row of the table; nil = made from the above
}

func fruitIn(key, name string, g float64, class string) in {
	return in{key: key, name: name, g: g, kind: "fruit", class: class}
}

// cooked builds a result from ingredients, a measured yield and a reading.
func cooked(kind batch.ProductType, name string, yield, brix float64, list ...in) *cook.Result {
	b := &batch.Batch{Name: name, Product: kind, Made: unit.Date{Year: 2026, Month: 11, Day: 25}}
	r := &cook.Result{Batch: b, Kitchen: &batch.Kitchen{Name: "Thornfield Lane Preserves", Address: []string{"14 Thornfield Lane", "Millbrook"}},
		Yield: cook.Amount{Mass: unit.Grams(yield), How: cook.Measured}, Lot: "TL-1125",
		BestBefore: unit.Date{Year: 2027, Month: 11, Day: 25}, Keeping: cook.Keeping{Class: cook.Shelf, OpenedDays: 28}}
	if brix > 0 {
		r.Brix = cook.Reading{Value: brix, How: cook.Measured}
	}
	for i, x := range list {
		path := fmt.Sprintf("ingredient[%d]", i)
		b.Ingredients = append(b.Ingredients, batch.Ingredient{Path: path, Name: x.name})
		r.Lines = append(r.Lines, cook.Line{Paths: []string{path}, Name: x.name, Key: x.key, Mass: unit.Grams(x.g), Contains: x.parts,
			Allergens: x.own, IsFruit: x.kind == "fruit", IsWater: x.kind == "water", IsSweet: x.kind == "sweetener",
			Row: pantry.Ingredient{Key: x.key, Name: x.name, Class: x.kind, FruitClassEU: x.class, EUAllergen: x.allergen, Words: wordsOf(x.key)}})
		if ln := &r.Lines[len(r.Lines)-1]; x.row != nil {
			ln.Row, ln.IsFruit = *x.row, x.row.FruitClassEU != "" || x.row.Class == "fruit"
		}
		r.Input += unit.Grams(x.g)
	}
	return r
}

// wordsOf gives the names of a row of the table.
func wordsOf(key string) map[string]pantry.Names {
	for _, g := range pantry.Default().Ingredients() {
		if g.Key == key {
			return g.Words
		}
	}
	return nil
}

// batchA1 is the strawberry batch of worked example A1, J1.
func batchA1(brix float64) *cook.Result {
	return cooked(batch.Jam, "Strawberry jam", 3200, brix,
		fruitIn("strawberry", "strawberries", 2000, "general"),
		in{key: "sugar_white", name: "sugar", g: 1900, kind: "sweetener"},
		in{key: "lemon_juice", name: "lemon juice", g: 60, kind: "acid"},
		in{key: "pectin_powder", name: "pectin", g: 20, kind: "gelling"},
		in{key: "water", name: "water", g: 300, kind: "water"})
}

// cylinder is a jar of a straight wall, d x h in mm, holding a declared mass.
func cylinder(d, h, declared float64) cook.JarPlan {
	return cook.JarPlan{FillPath: "fill[0]", Declared: unit.Grams(declared), Count: 1,
		Jar: pantry.Jar{Circumference: unit.MM(d * 3.141592653589793), Panel: unit.MM(h)}}
}

func textOf(c *pass, k label.Kind) string {
	for _, b := range c.C.Blocks {
		if b.Kind == k {
			return strings.ReplaceAll(b.Text(), nbsp, " ")
		}
	}
	return ""
}

// marked shows runs with ** around the emphasised ones.
func marked(runs []label.Run) string {
	s := ""
	for _, r := range runs {
		if r.Bold {
			s += "**" + r.Text + "**"
		} else {
			s += r.Text
		}
	}
	return strings.ReplaceAll(s, nbsp, " ")
}

func codes(l diag.List) string {
	var out []string
	for _, d := range l {
		out = append(out, d.Severity.String()+":"+d.Code)
	}
	return strings.Join(out, " ")
}
