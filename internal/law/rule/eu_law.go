package rule

import (
	"fmt"
	"slices"
	"sort"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/weigh"
)

// euTable is the [eu] table of a rule set: what Regulation (EU) 1169/2011,
// Directive 76/211/EEC and Directive 2001/113/EC (or a country's own text)
// ask, as numbers and words. A value from memory is named in Unverified.
//
// To add a country: a set file with its own [eu] table, or extends = "eu".
type euTable struct {
	Origin
	Country        string       `toml:"country"`     // "eu", "gb", "ni", "ie": selects nothing by itself
	XHeight        int          `toml:"x_height_um"` // Art 13(2), µm
	XHeightSmall   int          `toml:"x_height_small_um"`
	SmallBelow     int          `toml:"small_below_cm2"` // Art 13(3)
	NoListBelow    int          `toml:"no_list_below_cm2"`
	NoNutrition    int          `toml:"no_nutrition_below_cm2"`
	Digits         []euDigits   `toml:"digits"`
	WaterOmit      int          `toml:"water_omit_percent"`
	EMark          bool         `toml:"e_mark"`
	DateForm       string       `toml:"date_form"` // "day" or "month"
	Prepacked      []string     `toml:"prepacked"` // particulars required
	PPDS           []string     `toml:"ppds"`      // packed for direct sale; empty = no such mode
	JamKinds       []string     `toml:"jam_kinds"`
	CurdSolids     int          `toml:"curd_solids_percent"`       // 0 = no rule
	ReducedFrom    int          `toml:"reduced_sugar_solids_from"` // 0 = claim rules instead
	ReducedTo      int          `toml:"reduced_sugar_solids_to"`
	Citrus         []string     `toml:"citrus"`
	Peel           []string     `toml:"peel"`    // citrus peel, not counted beside other fruit
	Souring        []string     `toml:"souring"` // citrus taken for juice and peel, when less than a tenth of the fruit
	NeverMixed     []string     `toml:"extra_jam_never_mixed"`
	Additives      []euAdd      `toml:"additive"`
	Annex2         []euAnnex2   `toml:"annex2"`
	Jam            []euJam      `toml:"jam"`
	Nutrition      string       `toml:"nutrition_exemption"` // phrase of the note
	NutritionCite  string       `toml:"nutrition_cite"`
	SugarStatement string       `toml:"sugar_cite"`
	Address        string       `toml:"address"` // whose address: "a UK address"
	National       []euNational `toml:"national"`
	Rule2          int          `toml:"rule2_per_mille"`    // packers' rule 2
	T2Rounded      bool         `toml:"t2_rounds_doubled"`  // FPackV s. 9(4)
	LargestKg      int          `toml:"largest_nominal_kg"` // of the average system
	Unverified     []string     `toml:"unverified"`
}

// euAdd names an additive by words of an ingredient or part, its category
// (Annex VII Part C) and its specific name, both as phrase keys.
type euAdd struct {
	Words    []string `toml:"words"`
	Category string   `toml:"category"`
	Name     string   `toml:"name"`
}

// euAnnex2 is one Annex II substance: the phrase key of its name, and the
// words by which a maker or a table may call it.
type euAnnex2 struct {
	ID    string   `toml:"id"`
	Words []string `toml:"words"`
}

// euJam is the jam rules from a day on: minimum fruit in g per 1000 g by class
// (jam, extra jam), soluble solids, and which statements are asked.
type euJam struct {
	From       string    `toml:"from"`
	Minima     []euLeast `toml:"minimum"`
	Solids     int       `toml:"solids_percent"`
	Sugar      bool      `toml:"sugar_statement"`
	Marmalade  string    `toml:"marmalade"` // phrase key of the product name
	Citrus     int       `toml:"marmalade_fruit"`
	More       bool      `toml:"-"` // from a national row
	SolidsCite string    `toml:"-"`
	Also       []string  `toml:"-"` // words that may stand for "jam"
	Cite       string    `toml:"cite"`
}

// euLeast is the least fruit of one class in g per 1000 g finished product.
type euLeast struct {
	Class      string `toml:"class"`
	Jam        int    `toml:"jam"`
	Extra      int    `toml:"extra"`
	Confidence string `toml:"confidence"`
}

// euDigits is the least digit height up to a nominal quantity; 0 g = above all.
type euDigits struct {
	UpTo   int `toml:"up_to_g"`
	Height int `toml:"height_um"`
}

// euNational is what one country's law changes in the common table, by the id
// of its set. Zero values change nothing.
type euNational struct {
	Place     string   `toml:"place"`
	Solids    int      `toml:"solids_percent"`
	More      bool     `toml:"solids_more"`       // more than that, not just as much
	JamAlso   []string `toml:"jam_also"`          // words that may stand for the name "jam"
	JamFrom   string   `toml:"jam_also_from"`     // from this day on
	T2Rounded bool     `toml:"t2_rounds_doubled"` // FPackV s. 9(4)
	Address   string   `toml:"address"`
	Cite      string   `toml:"cite"`
}

// in gives the table as a country's law changes it.
func (t euTable) in(place string) *euTable {
	for _, n := range t.National {
		if n.Place != place {
			continue
		}
		t.Jam = append([]euJam(nil), t.Jam...)
		for i := range t.Jam {
			if n.Solids > 0 {
				t.Jam[i].Solids, t.Jam[i].More, t.Jam[i].SolidsCite = n.Solids, n.More, n.Cite
			}
			if t.Jam[i].From >= n.JamFrom {
				t.Jam[i].Also = n.JamAlso
			}
		}
		t.T2Rounded = t.T2Rounded || n.T2Rounded
		if n.Address != "" {
			t.Address = n.Address
		}
	}
	return &t
}

// check reports what a set file got wrong; it is a fault of the build, so the
// loader returns it as an error.
func (t *euTable) check() error {
	switch {
	case t.XHeight <= 0 || t.XHeightSmall <= 0 || t.SmallBelow <= 0:
		return fmt.Errorf("eu: letter heights are missing")
	case len(t.Digits) == 0 || t.Digits[len(t.Digits)-1].UpTo != 0:
		return fmt.Errorf("eu: digits must end with a row for all larger packs")
	case t.DateForm != "day" && t.DateForm != "month":
		return fmt.Errorf("eu: date_form %q is neither day nor month", t.DateForm)
	case len(t.Annex2) == 0 || len(t.Jam) == 0 || len(t.Prepacked) == 0:
		return fmt.Errorf("eu: annex2, jam and prepacked must not be empty")
	}
	for _, j := range t.Jam {
		if _, err := unit.ParseDate(j.From); err != nil {
			return fmt.Errorf("eu: jam rules from %q: not a date", j.From)
		}
		if row := j.class("general"); row.Jam <= 0 || j.Solids <= 0 || j.Marmalade == "" {
			return fmt.Errorf("eu: jam rules from %s are not complete", j.From)
		}
	}
	for _, n := range t.National {
		if _, err := day(n.JamFrom); err != nil {
			return fmt.Errorf("eu: national row of %s: %w", n.Place, err)
		}
	}
	return nil
}

// jamOn gives the jam rules in force on a day, the earliest before all.
func (t *euTable) jamOn(day unit.Date) euJam {
	rows := append([]euJam(nil), t.Jam...)
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].From < rows[j].From })
	pick := rows[0]
	for _, r := range rows {
		if from, err := unit.ParseDate(r.From); err == nil && !day.Before(from) {
			pick = r
		}
	}
	return pick
}

// digitHeight is the least height of the figures of the net quantity
// (Directive 76/211/EEC; FPackV s. 38(2)).
func (t *euTable) digitHeight(nominal unit.Mass) unit.Length {
	for _, row := range t.Digits {
		if row.UpTo == 0 || nominal <= unit.Mass(row.UpTo)*unit.Gram {
			return unit.Length(row.Height) * unit.Micrometre
		}
	}
	return 0
}

// xHeight is the least x-height for a largest surface in mm².
func (t *euTable) xHeight(mm2 float64) unit.Length {
	if mm2 > 0 && mm2 < float64(t.SmallBelow)*100 {
		return unit.Length(t.XHeightSmall) * unit.Micrometre
	}
	return unit.Length(t.XHeight) * unit.Micrometre
}

// inJamRules reports whether the jam rules govern a kind of preserve.
func (t *euTable) inJamRules(k batch.Kind) bool { return slices.Contains(t.JamKinds, string(k)) }

// packers gives the packers' rules of the set.
func (t *euTable) packers() weigh.Packers {
	return weigh.Packers{System: t.Country, PerMille: t.Rule2, DoubleRounded: t.T2Rounded,
		Largest: unit.Mass(t.LargestKg) * unit.Kilogram}
}
