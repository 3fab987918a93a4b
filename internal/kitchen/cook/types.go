// Package cook computes what the pot and the jars hold: masses, Brix, yield,
// jar plan, keeping class, lot and dates. It is physics and kitchen practice;
// it knows no country and words no statement. How true a yield is that nobody
// weighed: DEVELOPERS.md, with the published recipes it is held against.
package cook

import (
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// How says how a value was come by; output always shows it.
type How string

// Measured beats given, given beats estimated. Tabled stands in a table of
// ours with its source; Confirmed is the maker's word for an absence.
const (
	Measured  How = "measured"
	Given     How = "given"
	Estimated How = "estimated"
	Tabled    How = "tabled"
	Confirmed How = "confirmed"
	Named     How = "named" // by a word of the name itself
)

// Amount is a mass and how it was come by.
type Amount struct {
	Mass unit.Mass
	How  How
}

// Reading is a number and how it was come by (Brix in %, temperature in °C).
type Reading struct {
	Value float64
	How   How
}

// Line is one ingredient, resolved against the pantry and weighed. Lines stand
// in the order of the batch file; duplicates are merged into the first.
type Line struct {
	Paths      []string // "ingredient[0]"; several when merged
	Name       string   // as a label lists it
	Key        string   // pantry key; "" = the maker's own words
	Row        pantry.Ingredient
	Contains   []pantry.Part // of a compound ingredient, descending
	Mass       unit.Mass     // as added, before boil-off
	Percent    float64       // of all ingredients as added
	Soluble    unit.Mass
	Insoluble  unit.Mass
	Allergens  []string // the maker's own words beyond the pantry's
	Said       bool     // the maker gave the allergens of it, or said that there are none
	Written    []string // the maker's names for it, as written
	Forms      []string // how it was prepared, in the maker's words
	Prepared   string   // how the weight was found: "weighed", "4 cups × 232 g"
	Estimated  bool     // weight came from a household measure
	Cost       unit.Money
	IsFruit    bool
	IsSweet    bool // nutritive carbohydrate sweetener
	IsWater    bool
	Removed    bool    // lifted out before the finish: named, but no solids of it remain
	PercentFin float64 // of the finished yield
}

// JarPlan is one jar size of the batch.
type JarPlan struct {
	FillPath   string // "fill[0]"; "" when proposed by us
	Jar        pantry.Jar
	Count      int
	Low, High  int       // jars by the range of the yield; both Count where it is counted
	How        How       // Given (counted) or Estimated
	Sealed     int       // sealed jars; equals Count when not checked
	Checked    bool      // the maker checked the seals
	Fill       unit.Mass // computed content of one jar
	Weighed    []unit.Mass
	Declared   unit.Mass   // declared net content; 0 = not declared
	DeclVolume unit.Volume // declared by fluid measure; 0 = not
	DeclText   string      // the maker's own words for it: "10 oz"
	Part       unit.Mass   // content of a last partial jar; 0 = none
	Price      unit.Money
}

// Unsealed is how many counted jars did not seal.
func (j JarPlan) Unsealed() int { return j.Count - j.Sealed }

// Planned reports a jar size that is not filled yet: nothing counted, weighed
// or declared. A net weight can't be asked of it.
func (j JarPlan) Planned() bool {
	return j.How == Estimated && len(j.Weighed) == 0 && j.Declared == 0 && j.DeclText == ""
}

// Class is how a sealed jar keeps.
type Class string

// The keeping classes, least to most cautious.
const (
	Shelf        Class = "shelf"        // full sugar, acid, processed: cool and dark
	ShelfShort   Class = "shelf-short"  // processed, but reduced sugar: sooner
	Cold         Class = "refrigerated" // not processed, or low solids, or not acid
	Freezer      Class = "freezer"
	Refrigerator Class = "refrigerator-jam"
)

// Keeping is the storage guidance as facts; rule sets word it.
type Keeping struct {
	Class         Class
	SealedMonths  int // best within, from Made; 0 when measured in days
	SealedDays    int
	OpenedDays    int
	UnsealedDays  int
	Reasons       []Evidence // what the class rests on
	Times         []Evidence // what the months and days rest on
	BestBeforeHow How
}

// Supplies is what the batch needs from the cupboard.
type Supplies struct {
	Lids, Labels, Tags, Boxes int
}

// Result is everything known of one batch.
type Result struct {
	Batch      *batch.Batch
	Kitchen    *batch.Kitchen
	Lines      []Line // file order
	Input      unit.Mass
	Soluble    unit.Mass
	Insoluble  unit.Mass
	Yield      Amount
	Range      Range   // what the yield may come to
	Brix       Reading // soluble solids of the finished food, %
	Evaporated unit.Mass
	Skimmed    unit.Mass // foam, and what was lifted out before the finish (a spice bag, peel)
	YieldRule  string    // "weighed pot", "measured Brix", "long boil to 65 °Brix", "added pectin, 5 % loss"
	PHHigh     float64   // measured, or the highest of the fruit as tabled; 0 = unknown
	PHMeasured bool
	Jars       []JarPlan
	Keeping    Keeping
	Lot        string
	BestBefore unit.Date
	MainFruit  string // pantry key of the heaviest fruit; "" = none
	Supplies   Supplies

	pantry    *pantry.Pantry
	allergy   *Allergy    // of the whole recipe, once computed
	headspace unit.Length // of the batch, where a fill names none
	unweighed float64     // grams expected by the kind of batch alone, in the middle of the range
	spread    float64     // factor of the range
}

// ByWeight gives the lines in descending order of weight as added, ties in
// file order (21 CFR 101.4(a)(1); Regulation (EU) 1169/2011 Art 18(1)).
func (r *Result) ByWeight() []Line { return sortedByMass(r.Lines) }

// Count is the number of jars of all sizes; Sealed the number safe to keep.
func (r *Result) Count() (n int) {
	for _, j := range r.Jars {
		n += j.Count
	}
	return n
}

// Sealed is the number of sealed jars of all sizes.
func (r *Result) Sealed() (n int) {
	for _, j := range r.Jars {
		n += j.Sealed
	}
	return n
}
