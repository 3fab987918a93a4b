// Package pantry holds the reference tables: ingredients, jars, finishes, and
// the physics tables of sugar syrup, each row with its source. A maker's own
// jars and ingredients are laid over the built-in ones; measured beats tabled.
package pantry

import "jarmark/internal/kit/unit"

// Ingredient is one row of ingredients.csv. Fractions are g per 100 g of the
// edible part; a negative value means "unknown" (never zero by accident).
type Ingredient struct {
	Key           string   // "strawberry"
	Name          string   // common or usual name, as a label lists it: "strawberries"
	Aliases       []string // other words for the same food: "garden strawberries"; a label lists Name
	Kin           []string // other foods, figured as this one and listed by their own name: "Niagara grapes" of Concord grapes
	Class         string   // "fruit", "sugar", "acid", "pectin", "dairy", "egg", "nut", "spice", …
	WaterG        float64  // g per 100 g
	SolubleG      float64  // soluble solids, g per 100 g
	OtherSolidsG  float64  // insoluble solids, g per 100 g
	SugarsG       float64
	CupG          float64 // g per US cup in CupForm
	CupForm       string
	Cup2G         float64
	Cup2Form      string
	TbspG, TspG   float64
	PieceG        float64
	PieceForm     string
	USAllergen    string  // "milk", "tree nut (almond)"; empty = none
	EUAllergen    string  // Annex II name: "milk", "nuts (almond)"
	SulphiteCheck bool    // commonly sulphited: read the packet
	USGroup       string  // 21 CFR 150.160: "I", "II", "combination only", "none", ""
	CFR150Factor  float64 // 21 CFR 150.140(b)(1) factor; 0 = none
	FruitClassEU  string  // 2001/113/EC fruit class: "general", "currant", "ginger", …; "" = not a fruit
	PHLow, PHHigh float64 // 0 = unknown
	RefusePct     float64 // of the weight as bought: pits, peel, core
	Refuse        string  // "Pits and stems"
	Contains      []Part  // compound ingredients: parts in descending order
	Compound      string  // what a bought packet usually holds; "" = a single ingredient
	CarbG, FibreG float64
	ProteinG      float64
	FatG          float64
	PHSource      string           // FDA table or handbook; "M" = from memory, unverified
	Note          string           // what to know of the row; may be empty
	Words         map[string]Names // by language, see [Ingredient.Names]
	Source        string
	Memory        bool     // value from memory, unverified: show it as such
	Own           bool     // from the maker's kitchen file
	Allergens     []string // the maker's own words; nil = not said, empty = there are none
	AsKin         bool     // found by one of Kin: the name is that food's, the rest this row's
}

// Part is one component of a compound ingredient.
type Part struct {
	Name       string
	Percent    float64 // of the compound; 0 = unknown
	USAllergen string
	EUAllergen string
	Allergens  []string // the maker's own words; nil = not said, empty = there are none
}

// Jar is one row of jars.csv or the maker's own jar.
type Jar struct {
	Key           string // "us8"
	Description   string // "8 fl oz (half-pint), regular mouth"
	NamedBy       string // "fill" or "brimful"
	Nominal       unit.Volume
	Brimful       unit.Volume // middle of the table's range, or measured
	BrimfulMost   unit.Volume // upper end of the range; 0 = Brimful
	Mouth         unit.Length // inside diameter
	Height        unit.Length
	Diameter      unit.Length
	Circumference unit.Length
	Panel         unit.Length // height of the straight side
	Face          unit.Length // width of one flat side of a square or six-sided jar; 0 = round
	Foot          unit.Length // circumference at the foot of the side of a tapered jar; 0 = as above
	TareMass      unit.Mass   // empty jar with lid; 0 = unknown
	Lid           string      // neck finish: "70-450 CT", "63 mm lug"
	Measured      bool        // the maker measured what it holds
	Taped         bool        // the maker measured its side, around and up, as far as it is known
	Source        string
}
