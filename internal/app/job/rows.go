package job

import (
	"cmp"
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// SheetRows lists the sheets: id, labels a sheet, what for, title.
func (e *Env) SheetRows() (rows [][]string) {
	for _, s := range e.Sheets.List() {
		n := "any"
		if !s.Auto {
			n = fmt.Sprint(s.Cells())
		}
		rows = append(rows, []string{s.ID, n, strings.Join(s.Pieces, ", "), s.Title})
	}
	return rows
}

// DesignRows lists the designs: id, season, use, what it looks like.
func (e *Env) DesignRows() (rows [][]string) {
	for _, d := range e.Designs.List() {
		rows = append(rows, []string{d.ID, d.Season, strings.Join(d.Use, ", "), d.About})
	}
	return rows
}

// JarRows lists the jars, the maker's own first: key, description, fill
// volume, content at 65 °Brix, straight panel and circumference, source.
func (e *Env) JarRows(kitchen Doc) ([][]string, diag.List) {
	p := e.Pantry
	k, l := batch.ParseKitchen(cmp.Or(kitchen.Name, "kitchen.toml"), kitchen.Data, e.Book.Find)
	if k != nil {
		p = p.With(k.Ingredients, k.Jars)
		l = k.File.Locate(l)
	}
	var rows [][]string
	hot := pantry.Density(65, fillTemp)
	for _, j := range p.Jars() {
		rows = append(rows, []string{j.Key, j.Description, fmt.Sprintf("%.0f ml", j.FillVolume(quarterInch).ML()),
			fmt.Sprintf("%.0f g", j.FillVolume(quarterInch).ML()*hot/1000),
			fmt.Sprintf("%.0f x %.0f mm", j.Panel.MM(), j.Circumference.MM()), j.Source})
	}
	return rows, l
}

// RecipeRows lists the tested recipes: id, publisher, title, largest jars,
// minutes to 1000 ft, to 6000 ft and above, source and how it was read.
func (e *Env) RecipeRows() (rows [][]string) {
	for _, x := range e.Pantry.TestedRecipes() {
		rows = append(rows, []string{x.ID, x.Publisher, x.Title, x.Jar, fmt.Sprintf("%d, %d, %d", x.Minutes[0], x.Minutes[1], x.Minutes[2]), x.Source + "; " + x.HowRead})
	}
	return rows
}

// quarterInch is the headspace for jam (NCHFP; USDA AIB 539).
const quarterInch = unit.Inch / 4

// fillTemp is how hot jam is filled, in °C; cold it weighs the same.
const fillTemp = 88

// PlaceRows lists the rule sets: id, name, what its statement is, how checked.
func (e *Env) PlaceRows() (rows [][]string) {
	for _, s := range e.Book.List() {
		rows = append(rows, []string{s.ID, s.Name, strings.Join(s.Programmes, ", "), cmp.Or(s.Confidence, "-"), cmp.Or(s.CheckedOn, "-")})
	}
	return rows
}

// PlaceEffective lists every value of a rule set as it holds on a day.
func (e *Env) PlaceEffective(id string, on unit.Date) ([][]string, diag.List) {
	s, l := e.Book.Place(id, on)
	if s == nil {
		return nil, l
	}
	var rows [][]string
	for _, v := range s.Effective() {
		name := v.Key
		if v.Table != "" {
			name = v.Table + "." + v.Key
		}
		rows = append(rows, []string{name, v.Value, v.Source, cmp.Or(v.Confidence, "-")})
	}
	return rows, l
}

// QuoteRows lists the sentences the values of a place were read in: value,
// words, where, day, how verified.
func (e *Env) QuoteRows(id string, on unit.Date) (rows [][]string, l diag.List) {
	if s, found := e.Book.Place(id, on); s == nil {
		return nil, found
	}
	quotes, err := e.Book.Quotes(id)
	if err != nil {
		l.Errorf("broken-rules", "", "place", "the quotations of %q cannot be read: %v", id, err).Hinted("this is a fault of the program: please report it")
	}
	for _, q := range quotes {
		rows = append(rows, []string{q.Value, q.Text, q.Where, q.Read, q.Confidence})
	}
	return rows, l
}

// MemoryRows lists what still stands from memory, oldest look first.
func (e *Env) MemoryRows(on unit.Date) (rows [][]string) {
	for _, m := range e.Book.Memory(on) {
		rows = append(rows, []string{cmp.Or(m.Since, "-"), m.Place, m.Value, m.Text})
	}
	return rows
}
