package place

import (
	"jarmark/internal/kit/unit"
)

// allergenTable is where the list of major food allergens comes from; the list
// itself is a column of templates/pantry/allergens.csv.
type allergenTable struct {
	AsOf string `toml:"as_of"`
	Origin
}

// dateTable holds how dates are written.
type dateTable struct {
	Form string `toml:"form"` // "month-day-year"
	Origin
}

// panelTable holds what binds every required statement.
type panelTable struct {
	Letter   int64 `toml:"min_letter_nm"`    // least height, lower-case o (21 CFR 101.2(c))
	Identity int   `toml:"identity_percent"` // of the largest print, as the FDA reads 101.3(d)
	Origin
}

// ingredientTable holds how the list is worded.
type ingredientTable struct {
	TwoPercent    float64  `toml:"two_percent"` // 2, 1.5, 1 or 0.5; 0 = plain list
	Preservatives []string `toml:"preservatives"`
	Sulfites      []string `toml:"sulfites"` // words a maker may use
	Origin
}

// netTable holds how the net quantity is written and how tall.
type netTable struct {
	Form    string    `toml:"form"`    // "fpla": 1 lb 8 oz; "dual": 24 oz (1 lb 8 oz), below 4 lb
	Heights [][]int64 `toml:"heights"` // panel area up to in² (0 = above), least height in nm
	Waive   int       `toml:"zone_waived_up_to_in2"`
	Origin
}

func (t *netTable) Height(in2 float64) unit.Length {
	for _, row := range t.Heights {
		if row[0] == 0 || in2 <= float64(row[0])+1e-9 {
			return unit.Length(row[1])
		}
	}
	return 0
}

// nutritionTable holds the small maker's exemption and the words that forfeit
// it: forms with the nutrients that fill them, and words that stand alone.
type nutritionTable struct {
	Note          string   `toml:"exemption"`
	Nutrients     []string `toml:"nutrients"`
	Forms         []string `toml:"forms"`
	GoodNutrients []string `toml:"good_nutrients"`
	GoodForms     []string `toml:"good_forms"`
	Words         []string `toml:"words"`
	Unless        []string `toml:"unless"` // phrases in which a nutrient is another thing
	Less          []string `toml:"less"`   // claims of words/claims.toml that add to Nutrients, Forms and Words
	Rich          []string `toml:"rich"`   // and to GoodNutrients, GoodForms and Words
	Level         string   `toml:"level"`  // what a claim is told as
	Text          string   `toml:"text"`
	Hint          string   `toml:"hint"`
	Cite          string   `toml:"cite"`
	Origin
}

// priceTable says what a unit price is reckoned on.
type priceTable struct {
	Per    string `toml:"per"`    // "oz", "100 g", "kg"
	Tenths bool   `toml:"tenths"` // a unit price below one unit of the currency goes to a tenth of the minor coin
	Origin
}

// standardTable holds what the standards of 21 CFR 150 leave to us; the
// standards themselves are rows of [[product]].
type standardTable struct {
	BrixError float64 `toml:"brix_error"` // of a computed reading, ± %
	// CupError and SugarCupError are how much less fruit, and how much more
	// sweetener, a cup may hold than the table's, in thousandths.
	CupError      int64    `toml:"cup_error"`
	SugarCupError int64    `toml:"sugar_cup_error"`
	Sour          []string `toml:"sour_citrus"` // keys: the class "sour" of marmalade
	Doubtful      []string `toml:"whole_fruit"` // kinds a jelly's notes weigh instead of strained juice
	Alone         string   `toml:"never_alone"` // group of the table that counts only in a combination
	Listed        []string `toml:"jam_groups"`  // groups of the table a jam may be of
	Origin
}

// storageTable says which words each keeping class takes: a phrase key, and for
// the FDA's groups A and B the prescribed form.
type storageTable struct {
	Words map[string]string `toml:"words"` // class -> phrase key
	Fixed map[string]string `toml:"fixed"` // class -> phrase key of the guidance's own words
	Origin
}

// WordingRule governs words of a label. Where the batch holds what makes them
// untrue, Text is told as an error; where it may hold it (a packet whose list
// was not copied), Maybe as a warning; else Else at the row's level. In Words and
// Unless, {x} stands for the names of each thing in the batch.
type WordingRule struct {
	ID       string   `toml:"id"`
	Words    []string `toml:"words"`
	Claims   []string `toml:"claims"`   // claims of words/claims.toml whose words these are too
	Of       []string `toml:"of"`       // what Forms deny, each: "nuts"
	Named    bool     `toml:"named"`    // Forms deny any allergen of allergen-words.csv that no other row speaks of
	Holds    bool     `toml:"holds"`    // Words stand before a food that is said to be in the jar; told where no ingredient is it
	Names    bool     `toml:"names"`    // any food the text says is said to be in the jar, unless Words say it is only like it
	Unproven bool     `toml:"unproven"` // Words deny what nothing here can show; told where no other row knows it
	Only     bool     `toml:"only"`     // Words stand before a list of foods that is whole, Unless behind one: told where an ingredient is none of them
	Forms    []string `toml:"forms"`    // ways of denying it, {x} stands for it; a row without takes those of the row before
	In       []string `toml:"in"`       // "name" (what the food is called), "brand", "ingredient" (as the list has it), "story" (all else)
	Unless   []string `toml:"unless"`   // phrases in which the word means something else
	Beside   []string `toml:"beside"`   // "sweetener", "alcohol", "allergen", "heat", "cold", keys of the pantry, or ids and groups of allergens.csv
	Held     []string `toml:"held"`     // words of ingredients and their parts
	May      []string `toml:"may"`      // words of what packets hold as a rule; "sulphited" = what commonly is, "unproven" = of which nothing shows the allergens, "handled" = allergens the kitchen handles besides
	Maybe    string   `toml:"maybe"`
	Else     string   `toml:"else"`
	Level    string   `toml:"level"` // "error", "warning", "note"
	Text     string   `toml:"text"`
	Hint     string   `toml:"hint"`
	Cite     string   `toml:"cite"`
	Origin
	near *nearby
}

// namingRule governs what an ingredient may be called.
type namingRule struct {
	ID       string   `toml:"id"`
	Words    []string `toml:"words"`
	Unless   []string `toml:"unless"`    // phrases in which the word means something else
	Settled  []string `toml:"settled"`   // words anywhere in the name that settle it
	NameSays []string `toml:"name_says"` // words in the name of the food that settle it
	Level    string   `toml:"level"`
	Text     string   `toml:"text"`
	Hint     string   `toml:"hint"`
	Cite     string   `toml:"cite"`
	Origin
}
