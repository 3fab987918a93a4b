package place

import (
	"cmp"
	"fmt"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/weigh"
)

// Additive is one food additive by its E number: words of a table or a maker,
// the category it is used as (Annex VII Part C of Regulation (EU) 1169/2011)
// and, as phrase keys of its id, its specific name and the words of a language.
type Additive struct {
	ID       string   `toml:"id"`
	E        string   `toml:"e"` // "440", "150a"
	Category string   `toml:"category"`
	Words    []string `toml:"words"`
	Polyol   bool     `toml:"polyol"`
	Warning  string   `toml:"warning"` // phrase key of words the label owes because of it
}

// AdditiveTable is the additives of a set with where they were read.
type AdditiveTable struct {
	Rows []Additive `toml:"row"`
	Origin
}

func (t *AdditiveTable) All() []Additive {
	if t == nil {
		return nil
	}
	return t.Rows
}

// European is the [eu] table of a rule set: what Regulation (EU) 1169/2011,
// Directive 76/211/EEC and Directive 2001/113/EC (or a country's own text)
// ask, as numbers and words. A value from memory is named in Unverified.
//
// To add a country: a set file with its own [eu] table, or extends = "eu".
type European struct {
	Origin
	Country        string     `toml:"country"`     // "eu", "gb", "ni", "ie": selects nothing by itself
	XHeight        int        `toml:"x_height_um"` // Art 13(2), µm
	XHeightSmall   int        `toml:"x_height_small_um"`
	SmallBelow     int        `toml:"small_below_cm2"` // Art 13(3)
	NoListBelow    int        `toml:"no_list_below_cm2"`
	NoNutrition    int        `toml:"no_nutrition_below_cm2"`
	Digits         []digits   `toml:"digits"`
	WaterOmit      int        `toml:"water_omit_percent"`
	CupError       int64      `toml:"cup_error"` // how much less fruit a cup may hold, in thousandths
	DateForm       string     `toml:"date_form"` // "day" or "month"
	Prepacked      []string   `toml:"prepacked"` // particulars required
	PPDS           []string   `toml:"ppds"`      // packed for direct sale; empty = no such mode
	Citrus         []string   `toml:"citrus"`
	Nutrition      string     `toml:"nutrition_exemption"` // phrase of the note
	NutritionCite  string     `toml:"nutrition_cite"`
	SugarStatement string     `toml:"sugar_cite"`
	SugarPhrase    string     `toml:"sugar_phrase"` // its words, where a country prescribes others; "" = jam.sugar
	Address        string     `toml:"address"`      // whose address: "a UK address"
	National       []national `toml:"national"`
	Rule2          int        `toml:"rule2_per_mille"`    // packers' rule 2
	T2Rounded      bool       `toml:"t2_rounds_doubled"`  // FPackV s. 9(4)
	Record         string     `toml:"weighing_record"`    // what the law asks of a record of weighing
	LargestKg      int        `toml:"largest_nominal_kg"` // of the average system
	Unverified     []string   `toml:"unverified"`
	Liquid         []string   `toml:"liquid"`        // kinds of preserve sold by volume, Art 23(1)(a)
	Compound       []string   `toml:"compound"`      // always made of several things: the list must say which
	Clear          int        `toml:"clear_percent"` // least height of what must be clearly visible, in percent of the common least
	Beside         []Beside   `toml:"beside"`
}

// digits is the least digit height up to a nominal quantity; 0 g = above all.
type digits struct {
	UpTo   int `toml:"up_to_g"`
	Height int `toml:"height_um"`
}

// national is what one country's law changes in the common table, by the id
// of its set. Zero values change nothing.
type national struct {
	Place     string   `toml:"place"`
	T2Rounded bool     `toml:"t2_rounds_doubled"` // FPackV s. 9(4)
	Record    string   `toml:"weighing_record"`
	Address   string   `toml:"address"`
	Sugar     string   `toml:"sugar_phrase"`
	Cite      string   `toml:"cite"`
	Beside    []Beside `toml:"beside"`
}

// Beside is what a country asks, or lets be, beside the label, told where the
// label says what it is about: a net quantity
// ("net"), a price ("price") or the fruit content ("fruit").
type Beside struct {
	About string `toml:"about"`
	Text  string `toml:"text"`
	Hint  string `toml:"hint"`
	Cite  string `toml:"cite"`
}

// In gives the table as a country's law changes it.
func (t European) In(place string) *European {
	for _, n := range t.National {
		if n.Place != place {
			continue
		}
		t.T2Rounded = t.T2Rounded || n.T2Rounded
		t.Beside = append(t.Beside, n.Beside...)
		if n.Address != "" {
			t.Address = n.Address
		}
		t.SugarPhrase = cmp.Or(n.Sugar, t.SugarPhrase)
		t.Record = cmp.Or(n.Record, t.Record)
	}
	return &t
}

// check reports what a set file got wrong; it is a fault of the build, so the
// loader returns it as an error.
func (t *European) check() error {
	switch {
	case t.XHeight <= 0 || t.XHeightSmall <= 0 || t.SmallBelow <= 0:
		return fmt.Errorf("eu: letter heights are missing")
	case len(t.Digits) == 0 || t.Digits[len(t.Digits)-1].UpTo != 0:
		return fmt.Errorf("eu: digits must end with a row for all larger packs")
	case t.DateForm != "day" && t.DateForm != "month":
		return fmt.Errorf("eu: date_form %q is neither day nor month", t.DateForm)
	case t.Clear < 100:
		return fmt.Errorf("eu: clear_percent is below 100")
	case len(t.Prepacked) == 0 || len(t.Citrus) == 0:
		return fmt.Errorf("eu: citrus and prepacked must not be empty")
	}
	return nil
}

// DigitHeight is the least height of the figures of the net quantity
// (Directive 76/211/EEC; FPackV s. 38(2)).
func (t *European) DigitHeight(nominal unit.Mass) unit.Length {
	for _, row := range t.Digits {
		if row.UpTo == 0 || nominal <= unit.Mass(row.UpTo)*unit.Gram {
			return unit.Length(row.Height) * unit.Micrometre
		}
	}
	return 0
}

// LetterHeight is the least x-height for a largest surface in mm².
func (t *European) LetterHeight(mm2 float64) unit.Length {
	if mm2 > 0 && mm2 < float64(t.SmallBelow)*100 {
		return unit.Length(t.XHeightSmall) * unit.Micrometre
	}
	return unit.Length(t.XHeight) * unit.Micrometre
}

// Packers gives the packers' rules of the set.
func (t *European) Packers() weigh.Packers {
	return weigh.Packers{System: t.Country, PerMille: t.Rule2, DoubleRounded: t.T2Rounded, Record: t.Record,
		Largest: unit.Mass(t.LargestKg) * unit.Kilogram}
}
