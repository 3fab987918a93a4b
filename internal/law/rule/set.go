package rule

import (
	"fmt"
	"maps"
	"reflect"
	"slices"

	"jarmark/internal/kit/unit"
)

// Origin says where the values of a table come from and how far to trust them.
type Origin struct {
	Source     string `toml:"source"`
	Confidence string `toml:"confidence"` // primary, secondary, memory
}

// Set is the rules of one place on one day.
type Set struct {
	rules
	On    unit.Date // the day the rules are read on
	words map[string]*Phrases
}

// rules is a set file. Pointers and lists a file leaves out come from the set
// it extends, whole tables at a time.
type rules struct {
	ID        string   `toml:"id"`
	Name      string   `toml:"name"`
	Extends   string   `toml:"extends"`
	ValidFrom string   `toml:"valid_from"`
	ValidTo   string   `toml:"valid_to"`
	CheckedOn string   `toml:"checked_on"`
	Languages []string `toml:"languages"` // the first is the default
	Currency  string   `toml:"currency"`
	Units     string   `toml:"units"`    // "us" or "metric"
	Imperial  bool     `toml:"imperial"` // the imperial pint is at home there
	Also      []string `toml:"also"`     // other names people write for it
	Kinds     []string `toml:"kinds"`
	Note      string   `toml:"note"`

	Net         *netTable        `toml:"net"`
	Panel       *panelTable      `toml:"panel"`
	Ingredients *ingredientTable `toml:"ingredients"`
	Allergens   *allergenTable   `toml:"allergens"`
	Storage     *storageTable    `toml:"storage"`
	Dates       *dateTable       `toml:"dates"`
	Standard    *standardTable   `toml:"standard"`
	Nutrition   *nutritionTable  `toml:"nutrition"`
	Wordings    []wordingRule    `toml:"wording"`
	Namings     []namingRule     `toml:"naming"`
	Price       *priceTable      `toml:"price"`
	Programmes  []Programme      `toml:"programme"`
	EU          *euTable         `toml:"eu"`
	Products    []product        `toml:"product"` // row by row: see overlay
	Additives   *additiveTable   `toml:"additives"`
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
	ValidFrom   string     `toml:"valid_from"`
	ValidTo     string     `toml:"valid_to"`
	CheckedOn   string     `toml:"checked_on"`
	Note        string     `toml:"note"`
	Origin
}

// base fills what a set leaves out from the set it extends.
func (r rules) base(from rules) rules {
	to, src := reflect.ValueOf(&r).Elem(), reflect.ValueOf(from)
	for i := range to.NumField() {
		switch to.Type().Field(i).Name {
		case "Extends", "ValidFrom", "ValidTo", "CheckedOn", "Note", "Programmes", "Also":
		case "Products":
			r.Products = overlay(from.Products, r.Products)
		default:
			if to.Field(i).IsZero() {
				to.Field(i).Set(src.Field(i))
			}
		}
	}
	return r
}

// check reports what a set file lacks.
func (r rules) check(law Law, words map[string]*Phrases) error {
	if len(r.Languages) == 0 || len(r.Kinds) == 0 || r.Name == "" {
		return fmt.Errorf("set %s: name, languages and kinds must not be empty", r.ID)
	}
	if len(r.Currency) != 3 || r.Units != unit.US && r.Units != unit.Metric {
		return fmt.Errorf("set %s: currency must be three letters, and units %q or %q", r.ID, unit.US, unit.Metric)
	}
	if err := marks(reflect.ValueOf(r)); err != nil {
		return fmt.Errorf("set %s: %w", r.ID, err)
	}
	for _, name := range r.Kinds {
		if err := r.checkKind(law, name, words); err != nil {
			return fmt.Errorf("set %s: %w", r.ID, err)
		}
	}
	for _, a := range r.Additives.rows() {
		for _, lang := range r.Languages {
			if !words[lang].Has("eu.additive.name."+a.ID) || !words[lang].Has("eu.additive."+a.Category) {
				return fmt.Errorf("set %s: languages/%s.toml lacks the words of additive %s", r.ID, lang, a.ID)
			}
		}
	}
	return r.checkTables(law, words)
}

// checkKind reports a kind of statement the law does not know, or words a
// language lacks for it.
func (r rules) checkKind(law Law, name string, words map[string]*Phrases) error {
	at := slices.IndexFunc(law.Kinds, func(k Kind) bool { return k.Name == name })
	if at < 0 {
		return fmt.Errorf("no statement kind %q", name)
	}
	for _, lang := range r.Languages {
		if words[lang] == nil {
			return fmt.Errorf("no languages/%s.toml", lang)
		}
		for _, key := range law.Kinds[at].Phrases {
			if !words[lang].Has(key) {
				return fmt.Errorf("languages/%s.toml lacks %q, which %s needs", lang, key, name)
			}
		}
	}
	return nil
}

// marks reports a date that is none, and a confidence that is none, anywhere in
// a set or a file of quotations: keys that mean the same are read alike.
func marks(v reflect.Value) error {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			return marks(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			if err := marks(v.Index(i)); err != nil {
				return err
			}
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if err := mark(v.Type().Field(i), v.Field(i)); err != nil {
				return err
			}
		}
	}
	return nil
}

// mark checks one key and what is below it.
func mark(key reflect.StructField, v reflect.Value) error {
	switch tag := key.Tag.Get("toml"); {
	case has([]string{"valid_from", "valid_to", "checked_on", "from", "to", "read"}, tag):
		if _, err := day(v.String()); err != nil {
			return fmt.Errorf("%s: %w", tag, err)
		}
	case tag == "confidence" && v.String() != "":
		return known(v.String())
	}
	return marks(v)
}

func (r rules) checkTables(law Law, words map[string]*Phrases) error {
	for _, p := range r.Products {
		if err := p.check(r.Languages); err != nil {
			return fmt.Errorf("set %s: %w", r.ID, err)
		}
	}
	if r.Price != nil && perMass[r.Price.Per] == 0 {
		return fmt.Errorf("set %s: price.per: %q is no unit", r.ID, r.Price.Per)
	}
	if r.EU != nil {
		return r.EU.check()
	}
	if r.Net == nil || r.Panel == nil || r.Ingredients == nil || r.Allergens == nil || r.Storage == nil ||
		r.Dates == nil || r.Standard == nil || r.Nutrition == nil || r.Price == nil {
		return fmt.Errorf("set %s: a table is missing", r.ID)
	}
	for _, err := range []error{r.checkNumbers(), r.checkWords(), r.checkStorage(words)} {
		if err != nil {
			return fmt.Errorf("set %s: %w", r.ID, err)
		}
	}
	for _, p := range r.Programmes {
		if err := p.check(law.Particulars); err != nil {
			return fmt.Errorf("set %s, programme %s: %w", r.ID, p.ID, err)
		}
	}
	return nil
}

// checkNumbers keeps later stages from dividing by nothing or reading past a
// row.
func (r rules) checkNumbers() error {
	if len(r.Net.Heights) == 0 || r.Panel.Letter <= 0 {
		return fmt.Errorf("net.heights and panel.min_letter_nm must be given")
	}
	for i, row := range r.Net.Heights {
		if len(row) != 2 || row[1] <= 0 || (row[0] == 0) != (i == len(r.Net.Heights)-1) {
			return fmt.Errorf("net.heights: rows are [in², nm], the last for all larger panels")
		}
	}
	for _, p := range r.Products {
		for _, ratio := range p.Ratios {
			if ratio.Fruit <= 0 || ratio.Sweet <= 0 {
				return fmt.Errorf("product %s: a ratio is two positive numbers", p.ID)
			}
		}
	}
	return nil
}

// checkStorage asks for the words of every keeping class in every language.
func (r rules) checkStorage(words map[string]*Phrases) error {
	keys := slices.Collect(maps.Values(r.Storage.Fixed))
	for _, class := range []string{"shelf", "shelf-short", "refrigerated", "freezer", "refrigerator-jam"} {
		keys = append(keys, r.Storage.Words[class])
	}
	for _, lang := range r.Languages {
		for _, key := range keys {
			if !words[lang].Has(key) {
				return fmt.Errorf("storage: languages/%s.toml has no phrase %q", lang, key)
			}
		}
	}
	return nil
}

// day reads a date of a set file; "" is the zero date.
func day(s string) (unit.Date, error) {
	if s == "" {
		return unit.Date{}, nil
	}
	return unit.ParseDate(s)
}

// within reports whether a day lies inside two written dates, both included;
// an empty end is open.
func within(on unit.Date, from, to string) bool {
	a, _ := day(from)
	b, _ := day(to)
	return (a.IsZero() || !on.Before(a)) && (b.IsZero() || !b.Before(on))
}
