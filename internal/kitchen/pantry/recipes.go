package pantry

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// TestedRecipe is one row of tested-recipes.csv: a published recipe whose
// process was tested. Only these count as "tested"; whatever else a maker
// writes as recipe is a private note.
type TestedRecipe struct {
	ID, Publisher, Title, Page string
	Products                   []string
	Main, Also                 []RecipePart
	Process                    // jar sizes, minutes, headspace and source
	HowRead                    string
}

// RecipePart is one ingredient of a tested recipe: any of its pantry keys, and
// grams, which give the proportions.
type RecipePart struct {
	Keys  []string
	Grams float64
}

// Cite names the recipe as a maker may write it: "NCHFP, Fig jam".
func (t TestedRecipe) Cite() string { return t.Publisher + ", " + t.Title }

func (p *Pantry) loadRecipes() error {
	t := readTable(p.from, "tested-recipes")
	t.each(func(r row) {
		x := TestedRecipe{ID: r.need("id"), Publisher: r.need("publisher"), Title: r.need("title"), Page: r.need("page"), Products: r.list("kinds"),
			Main: r.recipeParts("main"), Also: r.recipeParts("also"), HowRead: r.need("how_read")}
		x.Process = Process{Key: x.ID, Product: x.Title, Jar: r.need("jar"), Source: r.need("source")}
		x.Process.read(r)
		if len(x.Products) == 0 || len(x.Main) == 0 {
			r.fail("main", "a recipe needs kinds and main ingredients")
		}
		p.recipes = append(p.recipes, x)
	})
	return t.err
}

// recipeParts reads "fig_fresh 2245|lemon_juice/lemon_juice_bottled 61".
func (r row) recipeParts(col string) (out []RecipePart) {
	for _, s := range r.list(col) {
		keys, grams, _ := strings.Cut(s, " ")
		g, err := strconv.ParseFloat(strings.TrimSpace(grams), 64)
		if err != nil || !(g > 0) {
			r.fail(col, fmt.Sprintf("%q has no grams", s))
			continue
		}
		out = append(out, RecipePart{strings.Split(keys, "/"), g})
	}
	return out
}

// TestedRecipes lists all rows.
func (p *Pantry) TestedRecipes() []TestedRecipe { return append([]TestedRecipe(nil), p.recipes...) }

// TestedRecipe finds a row by its id or by "publisher, title", in any case.
func (p *Pantry) TestedRecipe(words string) (TestedRecipe, bool) {
	want := fold(words)
	for _, x := range p.recipes {
		if want != "" && (want == fold(x.ID) || want == fold(x.Cite())) {
			return x, true
		}
	}
	return TestedRecipe{}, false
}

// SuggestRecipes gives up to three ids that share most words with the maker's.
func (p *Pantry) SuggestRecipes(words string) []string {
	want := wordSet(fold(words))
	var all []near
	for i, x := range p.recipes {
		shared := 0
		for w := range wordSet(fold(x.ID + " " + x.Cite())) {
			if want[w] && len(w) > 2 && !recipeWords[w] {
				shared++
			}
		}
		if shared > 0 {
			all = append(all, near{d: -shared, i: i, name: x.ID})
		}
	}
	return nearest(all)
}

// recipeWords say nothing of which recipe is meant.
var recipeWords = wordSet("the and with from added pectin liquid powdered recipe tested no jam jelly home canning complete guide to")

// jarSizes are the sizes process tables speak of, in the most a jar may hold
// to count as one: 12 oz counts as a pint, 24 oz as a quart (Kansas State
// University, You Asked It, 19 May 2022). A metric jar is a little larger.
var jarSizes = []struct {
	word string
	most unit.Volume
}{{"quart", 1010 * unit.Millilitre}, {"half-pint or pint", 520 * unit.Millilitre}, {"half-pint", 260 * unit.Millilitre}}

// MostJar is the largest jar the process was tested for.
func (x Process) MostJar() unit.Volume {
	for _, s := range jarSizes {
		if strings.Contains(x.Jar, s.word) {
			return s.most
		}
	}
	return 0
}
