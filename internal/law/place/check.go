package place

import (
	"fmt"
	"maps"
	"reflect"
	"slices"

	"jarmark/internal/kit/unit"
)

// check reports what a programme's data lacks.
func (p Programme) check(particulars []string) error {
	if err := known(p.Confidence); err != nil {
		return err
	}
	if p.Letter != "" && p.Letter != "o" || p.Placement != "" && p.Placement != "panel" || p.Scope != "" && p.Scope != "label" {
		return fmt.Errorf("letter, placement or scope is not known")
	}
	if c := p.SalesCap; c != (SalesCap{}) && (c.Amount <= 0 || c.Cite == "" || c.Read == "" || c.Confidence == "") {
		return fmt.Errorf("sales_cap: amount, cite, read and confidence must be given")
	}
	for _, group := range p.Required {
		for _, token := range group {
			if particulars != nil && !slices.Contains(particulars, token) {
				return fmt.Errorf("no particular %q", token)
			}
		}
	}
	return nil
}

// known reports a confidence that is none.
func known(confidence string) error {
	switch confidence {
	case "primary", "secondary", "memory":
		return nil
	}
	return fmt.Errorf("confidence %q is none of primary, secondary, memory", confidence)
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
	for _, a := range r.Additives.All() {
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
	if law.Statements == nil {
		return nil // nobody said what this law's code can do
	}
	at := slices.IndexFunc(law.Statements, func(k StatementType) bool { return k.Name == name })
	if at < 0 {
		return fmt.Errorf("no statement kind %q", name)
	}
	for _, lang := range r.Languages {
		if words[lang] == nil {
			return fmt.Errorf("no languages/%s.toml", lang)
		}
		for _, key := range law.Statements[at].Phrases {
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
	case slices.Contains([]string{"valid_from", "valid_to", "checked_on", "from", "to", "read"}, tag):
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
	if r.Price != nil && unit.PerMass[r.Price.Per] == 0 {
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

// checkWords reports rows that could never speak.
func (r rules) checkWords() error {
	if t := r.Nutrition; t != nil && (!levelKnown(t.Level) || t.Text == "" || t.Cite == "") {
		return fmt.Errorf("nutrition: level, text or cite is not known")
	}
	for _, w := range r.Wordings {
		if err := known(w.Confidence); err != nil || !levelKnown(w.Level) || len(w.Words)+len(w.Of) == 0 && !w.Named || len(w.In) == 0 || w.Text == "" || (len(w.May) > 0) != (w.Maybe != "") {
			return fmt.Errorf("wording %s: words, in, level, text or confidence is not known", w.ID)
		}
	}
	for _, b := range r.Banned {
		if err := b.check(); err != nil {
			return err
		}
	}
	for _, n := range r.Namings {
		if err := known(n.Confidence); err != nil || !levelKnown(n.Level) || len(n.Words) == 0 {
			return fmt.Errorf("naming %s: words, level or confidence is not known", n.ID)
		}
	}
	return nil
}

func levelKnown(s string) bool { return s == "error" || s == "warning" || s == "note" }
