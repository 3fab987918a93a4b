package pantry

import (
	"errors"
	"io/fs"
	"math"
	"strings"
	"sync"

	"jarmark/internal/kit/unit"
	"jarmark/templates"
)

// Pantry is the tables in memory. It is never changed after it is built, so
// many batches may share one.
type Pantry struct {
	from        fs.FS        // the tables
	ingredients []Ingredient // built in
	measures    []Measure
	boils       []Boil
	languages   []string
	index       map[string]int    // folded words -> built-in ingredient
	kin         map[string]string // folded words -> the kin of a row they name
	juices      map[string]int    // fruit by what the kitchen's language calls its juice
	spoken      map[string]int    // the same in the kitchen's language, when it is not English
	own         []Ingredient      // the maker's own
	ownIndex    map[string]int
	jars        []Jar // the maker's own first
	finishes    []Finish
	boiling     []point // Brix -> boiling-point rise, °C
	temp        []tempRow
	process     []Process
	steril      []point // altitude in ft -> minutes to boil empty jars
	jelly       []point // altitude in ft -> °F of the jelly point
	recipes     []TestedRecipe
	never       []Never
	poisons     []Poison
	traces      []Trace
	unsafe      []UnsafeMethod
	kinds       []KindWord
	ambiguous   []Ambiguous
	another     []anotherFood
	phWords     []phWord
	short       map[string]string // makers' short words -> words of the table
}

// Finish is one row of finishes.csv: a neck and its inside diameter.
type Finish struct {
	Name   string // "70-450", "63 lug"
	Mouth  unit.Length
	Source string
	Memory bool
}

// Load reads the embedded tables; the error names every row that is wrong. A
// pantry is returned even then, with the rows that could be read.
func Load() (*Pantry, error) {
	p := &Pantry{from: templates.FS}
	err := errors.Join(p.loadIngredients(), p.loadAmbiguous(), p.loadAnother(), p.loadShort(), p.loadMeasures(), p.loadBoil(), p.loadFinishes(), p.loadJars(),
		p.loadBoiling(), p.loadTemps(), p.loadProcess(), p.loadAltitude(),
		p.loadRecipes(), p.loadNever(), p.loadPoisons(), p.loadTraces(), p.loadUnsafe(), p.loadPHWords(), p.loadKinds())
	p.index = indexed(p.ingredients)
	p.kin = byKin(p.ingredients, p.index)
	return p, err
}

var loaded = sync.OnceValue(func() *Pantry {
	p, _ := Load() // a test proves that the embedded rows have no fault
	return p
})

// Default gives the built-in tables, read once a process.
func Default() *Pantry { return loaded() }

// Ingredients lists all ingredients, the maker's own first.
func (p *Pantry) Ingredients() []Ingredient {
	out := append([]Ingredient(nil), p.own...)
	taken := map[string]bool{}
	for _, g := range p.own {
		if !g.AsKin {
			taken[g.Key] = true
		}
	}
	for _, g := range p.ingredients {
		if !taken[g.Key] {
			out = append(out, g)
		}
	}
	return out
}

// Jars lists all jars, the maker's own first.
func (p *Pantry) Jars() []Jar { return append([]Jar(nil), p.jars...) }

// Finishes lists the necks.
func (p *Pantry) Finishes() []Finish { return append([]Finish(nil), p.finishes...) }

// With lays the maker's own rows over the built-in ones: they come first and
// win, value by value. What an own row leaves unknown is taken from the
// built-in row of the same name, if there is one, so that a measured fruit
// keeps its allergens and cup weights. The receiver is not changed.
func (p *Pantry) With(ings []Ingredient, jars []Jar) *Pantry {
	if len(ings) == 0 && len(jars) == 0 {
		return p
	}
	q := *p
	q.own = nil
	for _, g := range ings {
		if base, ok := p.at(fold(g.Name)); ok {
			g = over(g, base)
		}
		g.Own = true
		if g.Key == "" {
			g.Key = strings.ReplaceAll(fold(g.Name), " ", "_")
		}
		q.own = append(q.own, g)
	}
	q.own = append(q.own, p.own...)
	q.ownIndex = indexed(q.own)
	q.jars = p.ownJars(jars)
	return &q
}

func (p *Pantry) ownJars(own []Jar) []Jar {
	var out []Jar
	taken := map[string]bool{}
	for _, j := range own {
		j.Measured = j.Brimful > 0 || j.Nominal > 0
		side := j.Panel > 0 || j.Circumference > 0 || j.Diameter > 0
		if f, ok := p.finish(j.Lid); ok && j.Mouth <= 0 {
			j.Mouth = f.Mouth
		}
		switch { // a round jar needs only one of the two
		case j.Circumference <= 0 && j.Diameter > 0:
			j.Circumference = unit.MM(math.Pi * j.Diameter.MM())
		case j.Diameter <= 0 && j.Circumference > 0:
			j.Diameter = unit.MM(j.Circumference.MM() / math.Pi)
		}
		panel, around := j.Panel, j.Circumference
		if base, ok := p.keyed(j.Key); ok {
			j = overJar(j, base)
			j.Key = base.Key
		}
		j.Taped = side && panel == j.Panel && around == j.Circumference
		out = append(out, j)
		taken[j.Key] = true
	}
	for _, j := range p.jars {
		if !taken[j.Key] {
			out = append(out, j)
		}
	}
	return out
}

// memory reports whether a source says that the value was not looked up.
func memory(source string) bool { return strings.Contains(source, "memory") }

func (p *Pantry) loadIngredients() error {
	t := readTable(p.from, "ingredients")
	p.languages = t.languages()
	t.each(func(r row) { p.ingredients = append(p.ingredients, readIngredient(r)) })
	return t.err
}

// readIngredient reads one row. A new ingredient is one row of
// templates/pantry/ingredients.csv and nothing else: name as a label lists it, other words
// in aliases (| between; see [readAliases]), kind, water and solids in g per 100 g, what kitchen
// weights are known, allergens, pH, its names in every language ([readNames]), and
// where each came from (source; "memory" in it marks the row as unverified).
func readIngredient(r row) Ingredient {
	const unknown = -1
	aliases, kin := readAliases(r)
	g := Ingredient{
		Key: r.need("key"), Name: r.need("name"), Aliases: aliases, Kin: kin, Class: r.need("kind"),
		WaterG: r.number("water_g", unknown), SolubleG: r.number("soluble_solids_g", unknown),
		OtherSolidsG: r.number("other_solids_g", unknown), SugarsG: r.number("total_sugars_g", unknown),
		CupG: r.number("cup_g", 0), CupForm: r.text("cup_form"),
		Cup2G: r.number("cup2_g", 0), Cup2Form: r.text("cup2_form"),
		TbspG: r.number("tbsp_g", 0), TspG: r.number("tsp_g", 0),
		PieceG: r.number("piece_g", 0), PieceForm: r.text("piece_form"),
		USAllergen: r.text("us_allergen"), EUAllergen: r.text("eu_allergen"),
		SulphiteCheck: r.text("sulphite_flag") != "",
		USGroup:       r.text("us_jam_group"), CFR150Factor: r.number("cfr150_factor", 0),
		FruitClassEU: r.text("eu_fruit_class"), Compound: r.text("compound"),
		PHLow: r.number("ph_low", 0), PHHigh: r.number("ph_high", 0), PHSource: r.text("ph_source"),
		CarbG: r.number("carbohydrate_g", unknown), FibreG: r.number("fibre_g", unknown),
		ProteinG: r.number("protein_g", unknown), FatG: r.number("fat_g", unknown),
		RefusePct: r.number("refuse_pct", 0), Refuse: r.text("refuse_what"), Source: r.need("source"), Note: r.text("note"),
	}
	g.Memory = memory(g.Source)
	g.Words = readNames(r, g.Name)
	// Nothing read of the food is told so, never guessed: the cook asks for its solids.
	unknowable := r.text("soluble_solids_method") == "unknown" && g.SolubleG < 0
	if !unknowable && (g.SolubleG < 0 || g.OtherSolidsG < 0) || g.SolubleG+g.OtherSolidsG > 101 {
		r.fail("soluble_solids_g", "solids missing or over 100")
	}
	return g
}
