package place

import (
	"cmp"
	"reflect"
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// Origin says where the values of a table come from and how far to trust them.
type Origin struct {
	Source     string   `toml:"source"`
	Confidence string   `toml:"confidence"` // primary, secondary, memory
	Memory     []string `toml:"memory"`     // parts of it nobody has read yet, in words
}

// Set is the rules of one place on one day.
type Set struct {
	rules
	On    unit.Date // the day the rules are read on
	Words map[string]*Phrases
}

// rules is a set file. Pointers and lists a file leaves out come from the set
// it extends, whole tables at a time.
type rules struct {
	ID        string            `toml:"id"`
	Name      string            `toml:"name"`
	Names     map[string]string `toml:"names"` // by language, where it has another there
	Extends   string            `toml:"extends"`
	ValidFrom string            `toml:"valid_from"`
	ValidTo   string            `toml:"valid_to"`
	CheckedOn string            `toml:"checked_on"`
	Languages []string          `toml:"languages"` // the first is the default
	Currency  string            `toml:"currency"`
	Units     string            `toml:"units"`    // "us" or "metric"
	Imperial  bool              `toml:"imperial"` // the imperial pint is at home there
	Also      []string          `toml:"also"`     // other names people write for it
	Kinds     []string          `toml:"kinds"`
	Note      string            `toml:"note"`
	Memory    []string          `toml:"memory"` // what beside its tables nobody has read yet, such as words of a language

	Net         *netTable        `toml:"net"`
	Panel       *panelTable      `toml:"panel"`
	Ingredients *ingredientTable `toml:"ingredients"`
	Allergens   *allergenTable   `toml:"allergens"`
	Storage     *storageTable    `toml:"storage"`
	Dates       *dateTable       `toml:"dates"`
	Standard    *standardTable   `toml:"standard"`
	Nutrition   *nutritionTable  `toml:"nutrition"`
	Wordings    []WordingRule    `toml:"wording"`
	Namings     []namingRule     `toml:"naming"`
	Banned      []Banned         `toml:"banned"` // added to those of the set it extends
	Price       *priceTable      `toml:"price"`
	Programmes  []Programme      `toml:"programme"`
	EU          *European        `toml:"eu"`
	Products    []Product        `toml:"product"` // row by row: see overlay
	Additives   *AdditiveTable   `toml:"additives"`
}

// Programme is one scheme under which a state lets a home kitchen sell, and
// what it wants on the label.
type Programme struct {
	ID          string     `toml:"id"`
	Name        string     `toml:"name"`
	Law         string     `toml:"law"`
	Statement   string     `toml:"statement"`   // letter for letter
	Meaning     string     `toml:"meaning"`     // prescribed in sense only; the maker confirms the words
	Recommended string     `toml:"recommended"` // words an agency recommends, not compulsory
	Sign        string     `toml:"sign"`        // of a sign at the point of sale, letter for letter
	SignAbout   string     `toml:"sign_about"`  // what such a sign says, where its words are free or were not read
	SignRule    string     `toml:"sign_rule"`   // how the sign must look, as read; none read prescribes a size
	Website     string     `toml:"website"`     // address the state has makers print
	When        string     `toml:"when"`        // what narrows the statement, in words
	TypeRule    string     `toml:"type_rule"`   // as read
	MinPoints   int        `toml:"min_pt"`      // type size in points
	MinLetter   int64      `toml:"min_letter_nm"`
	Letter      string     `toml:"letter"` // the letter measured: "o"
	Scope       string     `toml:"scope"`  // "label": the size binds the whole label
	Bold        bool       `toml:"bold"`
	Caps        bool       `toml:"caps"`
	Contrast    bool       `toml:"contrast"`
	Fonts       []string   `toml:"fonts"`
	Placement   string     `toml:"placement"`      // "panel": principal display panel
	Required    [][]string `toml:"required"`       // each group: any one member suffices
	FruitPH     float64    `toml:"fruit_ph_below"` // natural pH of the fruit; 0 = no rule
	MaxPH       float64    `toml:"max_ph"`         // of the finished food; 0 = no rule
	Excludes    []string   `toml:"excludes"`       // kinds of ingredient the programme does not cover: "alcohol"
	ExcludeCite string     `toml:"excludes_cite"`
	Jam         string     `toml:"jam"` // "yes", "no", "conditions: …"
	// StandardOnly: home kitchens may make such food only as 21 CFR 150 has it.
	StandardOnly bool     `toml:"standard_only"`
	ValidFrom    string   `toml:"valid_from"`
	ValidTo      string   `toml:"valid_to"`
	CheckedOn    string   `toml:"checked_on"`
	Note         string   `toml:"note"`
	SalesCap     SalesCap `toml:"sales_cap"` // zero: none was read
	Origin
}

// SalesCap is the most a kitchen may take in a calendar year and still sell
// under a programme, in whole units of the place's currency. The sentence it
// was read in is a quotation, PROGRAMME.sales_cap.
type SalesCap struct {
	Amount int64  `toml:"amount"`
	Each   bool   `toml:"each_product"` // of each product, not of all together
	Moves  bool   `toml:"moves"`        // the law moves the sum with prices: this is the sum as enacted
	Cite   string `toml:"cite"`
	Read   string `toml:"read"` // day it was read
	// Confidence is that of its quotation: primary, secondary, memory.
	Confidence string `toml:"confidence"`
}

// SalesCap is the cap of the programme a kitchen names, else of the first that
// is in force; zero where none was read.
func (s *Set) SalesCap(programme string) SalesCap {
	var first *Programme
	for i := range s.Programmes {
		p := &s.Programmes[i]
		if want := strings.TrimSpace(programme); want != "" && strings.EqualFold(p.ID, want) {
			return p.SalesCap
		}
		if first == nil && Within(s.On, p.ValidFrom, p.ValidTo) {
			first = p
		}
	}
	if first == nil {
		return SalesCap{}
	}
	return first.SalesCap
}

// base fills what a set leaves out from the set it extends.
func (r rules) base(from rules) rules {
	to, src := reflect.ValueOf(&r).Elem(), reflect.ValueOf(from)
	for i := range to.NumField() {
		switch to.Type().Field(i).Name {
		case "Extends", "ValidFrom", "ValidTo", "CheckedOn", "Note", "Memory", "Programmes", "Also", "Names":
		case "Products":
			r.Products = overlay(from.Products, r.Products)
		case "Banned":
			r.Banned = slices.Concat(from.Banned, r.Banned)
		default:
			if to.Field(i).IsZero() {
				to.Field(i).Set(src.Field(i))
			}
		}
	}
	return r
}

// NameIn is the name of the place in a language.
func (s *Set) NameIn(lang string) string { return cmp.Or(s.Names[lang], s.Name) }

// day reads a date of a set file; "" is the zero date.
func day(s string) (unit.Date, error) {
	if s == "" {
		return unit.Date{}, nil
	}
	return unit.ParseDate(s)
}

// Within reports whether a day lies inside two written dates, both included;
// an empty end is open.
func Within(on unit.Date, from, to string) bool {
	a, _ := day(from)
	b, _ := day(to)
	return (a.IsZero() || !on.Before(a)) && (b.IsZero() || !b.Before(on))
}
