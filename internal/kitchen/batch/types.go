// Package batch turns the maker's TOML (kitchen.toml and one batch file) into
// typed values. It knows words, units and ranges, not law or physics.
package batch

import (
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// Kitchen is kitchen.toml.
type Kitchen struct {
	File         *source.File // nil when there is none
	Name         string       // maker's or business name
	Address      []string     // street line(s), then "City, ST ZIP" or the local form
	ShowAddress  bool         // on the public record page (never by default)
	Phone, Email string
	Website      string
	Corporate    string      // actual corporate name, printed instead of Name (21 CFR 101.5(b))
	StateWebsite string      // web address the agency gave the maker to print
	Permit       string      // permit, licence or registration number
	County       string      // county or municipality, where a state wants it
	Place        place.Place // where it is sold
	PlaceUnknown bool        // a place was written that there are no rules for: none may be judged by
	Programme    string      // which of a place's programmes ("exempt", "licensed", …)
	SaleMode     string      // "prepacked" (default) or "ppds"
	SmallAmounts float64     // percent below which US lists may say "contains … or less of": 2, 1.5, 1, 0.5; 0 = list all in order
	OwnYields    bool        // weighed pots of past batches move the yields to expect; true unless switched off
	NetForm      string      // US net weight of 1 to 4 lb: "dual" (24 oz (1 lb 8 oz)) or "pounds"; empty = the place's
	Language     string      // "en", "de", "fr"; default from place
	Second       string      // a second language of the label; empty = one alone
	RecordURL    string      // base of the public record pages; empty = none
	Currency     string      // ISO 4217
	Units        string      // "us" or "metric": how amounts are shown
	AlsoHandles  []string    // other allergens the kitchen handles (cross-contact)
	Altitude     unit.Length
	AltitudeOK   bool   // altitude was given
	Pets         string // species, where a state asks
	Jars         []pantry.Jar
	Ingredients  []pantry.Ingredient
	Printer      Printer
	Supplies     Supplies
	Costs        Costs
	Picture      Picture
	Type         Typefaces
}

// US reports whether the kitchen sells under United States law, which it does
// until it says otherwise. A nil kitchen counts as none said.
func (k *Kitchen) US() bool { return k == nil || k.Place.US() }

// Printer is the measured correction of one printer.
type Printer struct {
	OffsetX, OffsetY unit.Length // added to every position; right and down
	ScaleX, ScaleY   float64     // 1 = true size
}

// Supplies is what lies in the cupboard; -1 = not said.
type Supplies struct {
	Lids   map[string]int // by neck finish
	Jars   map[string]int // by jar key
	Labels map[string]int // labels left, by sheet id
	Tags   int
	Boxes  int
	Ribbon unit.Length
	// BoxHolds is how many jars one box takes; 0 = not said, see PerBox.
	BoxHolds int
	// PartSheets: cells already used on the open sheet, by sheet id.
	PartSheets map[string]int
}

// Costs is what things cost beside the ingredients; no currency = not said.
type Costs struct {
	Jars                         map[string]unit.Money // by jar key
	Lid, Label, Hour, Fee, Float unit.Money
}

// ProductType is what sort of preserve the batch is.
type ProductType string

// The kinds a maker may write.
const (
	Jam       ProductType = "jam"
	Preserve  ProductType = "preserve"
	Jelly     ProductType = "jelly"
	Marmalade ProductType = "marmalade"
	Butter    ProductType = "butter" // fruit butter
	Curd      ProductType = "curd"
	Chutney   ProductType = "chutney"
	Relish    ProductType = "relish"
	Conserve  ProductType = "conserve"
	Spread    ProductType = "spread"
	Syrup     ProductType = "syrup"
)

// Batch is one cooking session.
type Batch struct {
	File        *source.File
	Name        string // what the maker calls it: "Strawberry & rhubarb jam"
	Product     ProductType
	Made        unit.Date
	BestBefore  unit.Date // given by the maker; zero = computed
	UseBy       bool      // the date is a use-by date, chosen by the maker
	Lot         string    // given lot; empty = derived
	Recipe      string    // the published, tested recipe that was followed, as tested-recipes.csv names it; else a private note
	Unchanged   bool      // the maker says that nothing of it was changed
	Ingredients []Ingredient
	Cook        Cook
	Process     Process
	Fills       []Fill
	Gifts       []Gift
	Hours       float64 // of work; 0 = not said
	Markets     []Market
	Label       Label
	Story       string // public words for the record page
	Origin      string // where the food says it comes from: "Kent", "Österreich"; empty = says nothing
	FruitOrigin string // where its fruit comes from, when that is elsewhere
	Serve       string // serving idea, public: "lovely with warm scones"
	Notes       string // private, never published
	Photos      []Photo
}

// Ingredient is one [[ingredient]] table.
type Ingredient struct {
	Path      string // "ingredient[0]"
	Name      string
	Amount    unit.Quantity
	Lot       string // lot or date on its packet; may be empty
	Form      string // "crushed", "chopped", "whole"; may be empty
	Contains  []pantry.Part
	Allergens []string // the maker's own allergen words, added to the table's; nil = not said, empty = there are none
	Solids    float64  // soluble solids %, measured; negative = not given
	Skip      bool     // removed before the finish (a spice bag, peel): not eaten, still named
	Cost      unit.Money
}

// Cook is the [cook] table. Nil pointers are "not given".
type Cook struct {
	Method      string // "long boil", "added pectin", ""
	Minutes     *float64
	SetTest     string   // "thermometer", "cold plate", "sheet", "refractometer"
	TempC       *float64 // temperature at the end of the boil, °C
	Brix        *float64 // refractometer reading, %
	BrixTempC   *float64 // temperature of the reading, °C; nil = 20 or compensated
	PH          *float64
	PHDate      unit.Date // day of the pH reading; zero = not said
	PHMeter     string    // meter and how it was calibrated; empty = not said
	FinishedPot unit.Mass // weighed finished jam, net of PotTare; 0 = not weighed
	Skimmed     unit.Mass
}

// Process is the [process] table.
type Process struct {
	Method     string // "boiling water", "steam", "none", "refrigerator", "freezer", "", or one of unsafe-methods.csv
	Minutes    *float64
	Altitude   unit.Length // above sea level; falls back to the kitchen's
	AltitudeOK bool        // altitude was given somewhere
	Headspace  unit.Length // 0 = default 1/4 in
	Sterilised *bool       // jars boiled first
}

// Fill is one [[fill]] table: one jar size.
type Fill struct {
	Path      string
	Jar       string // key or words: "us8", "8 fl oz"
	Count     int    // -1 = not counted yet (a plan)
	Sealed    int    // -1 = not checked yet
	Share     float64
	Headspace unit.Length // 0 = Process.Headspace
	Net       []unit.Mass // measured net weights, tare already taken off
	Declared  unit.Quantity
	Sheet     string    // id of this size's label sheet; empty = the label table's
	PartJar   unit.Mass // content of a last partial jar, 0 = none
	Price     unit.Money
}

// Gift is one [[gift]] table.
type Gift struct {
	Path     string
	To, From string
	Message  string
	Jars     int
	Jar      string // jar size; empty = any
	Occasion string // "winter", "harvest", "birthday", "wedding", "thanks"
	Design   string
}

// Market is one [[market]] table.
type Market struct {
	Path     string
	Event    string
	Date     unit.Date
	Jars     int
	Jar      string
	Price    unit.Money
	Fee      unit.Money // of the stall
	CameHome int        // -1 = not said
}

// Label is the [label] table.
type Label struct {
	Title    string // overrides the split of Name
	Subtitle string
	Parts    map[string]string // words of a name as its maker parts them at soft hyphens; two words, where a line ends between them
	Design   string
	Sheet    string
	Piece    string
	Colours  []string // "#b3202a", or a fruit's name
	InkSaver bool
	Serials  bool
	Season   string // handwritten line: "winter 2026"
	Stamp    string // the maker's own words in a seal
	Words    string // the maker's own words among the facts
	Size     string // "80 x 50 mm" for cut-your-own imposition
}
