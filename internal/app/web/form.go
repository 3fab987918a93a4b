package web

import (
	"fmt"
	"strings"
	"time"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// entry says how a value is entered and how it is written in TOML.
type entry string

// The ways to enter a value.
const (
	words  entry = "words"  // one line of text
	prose  entry = "prose"  // several lines
	day    entry = "day"    // a date
	count  entry = "count"  // a whole number
	number entry = "number" // any number
	yes    entry = "yes"    // true or absent
	choice entry = "choice" // one of a few words
	series entry = "series" // a list of texts, between commas
	lines  entry = "lines"  // a list of texts, one a line
	amount entry = "amount" // a price: a text that may stand as a number
	cards  entry = "cards"  // one of a few, with pictures
)

// option is one of a few values to choose from.
type option struct{ Value, Text, About, Picture string }

// field is one value of a table of the file.
type field struct {
	Key, Label  string
	As          entry
	Help        string // a sentence below the field
	Example     string
	From        string   // id of a list of suggestions
	Options     []option // of choice and cards
	More        bool     // shown on demand
	Needed      bool     // stays in the file when emptied, so that its place is kept
	Unlike      string   // words of a choice left empty
	optionsFrom string   // options that depend on the environment: "design"
}

// group is one table of the file, or the rows of a list of tables.
type group struct {
	Table  string // "" = top of the file
	Rows   bool
	Title  string
	Noun   string // of a row: "ingredient"
	None   string // said when there are no rows
	Fields []field
}

// section is one step of the form.
type section struct {
	ID, Title, Lead string
	Link, LinkText  string // something to open beside it; may be empty
	Groups          []group
}

// filledField is a field with its value and place.
type filledField struct {
	field
	Path, Value string
	Locked      bool // written in a way the form can't show
}

// filledRow is one table with its values.
type filledRow struct {
	Path         string
	Number, Last int
	Noun         string
	Fields, More []filledField
	Filled       string // what stands under "more", in short
}

type filledGroup struct {
	group
	Filled []filledRow
	Empty  filledRow // of rows: what a new one looks like
}

type filledSection struct {
	section
	Groups []filledGroup
}

// filledForm is the form of one file; Broken says the text can't be read.
type filledForm struct {
	Sections []filledSection
	Broken   *diag.Diagnostic
}

// fillForm puts the values of a text into the form.
func fillForm(name string, text string, sections []section) filledForm {
	f, l := source.Parse(name, []byte(text))
	if l.HasErrors() {
		d := f.Locate(l)[0]
		return filledForm{Broken: &d}
	}
	var values map[string]any
	source.Decode(f, &values) // into a map: takes everything
	var out filledForm
	for _, s := range sections {
		fs := filledSection{section: s}
		for _, g := range s.Groups {
			fs.Groups = append(fs.Groups, fillGroup(g, values))
		}
		out.Sections = append(out.Sections, fs)
	}
	return out
}

// newRow stands for the number of a row that is yet to be added.
const newRow = "[#]"

func fillGroup(g group, values map[string]any) filledGroup {
	out := filledGroup{group: g}
	if !g.Rows {
		table := values
		if g.Table != "" {
			table, _ = values[g.Table].(map[string]any)
		}
		out.Filled = []filledRow{fillRow(g, g.Table, table)}
		return out
	}
	rows := tables(values[g.Table])
	out.Empty = fillRow(g, g.Table+newRow, nil)
	for i, row := range rows {
		r := fillRow(g, source.At(g.Table, i), row)
		r.Number, r.Last = i+1, len(rows)
		out.Filled = append(out.Filled, r)
	}
	return out
}

func fillRow(g group, path string, table map[string]any) filledRow {
	r := filledRow{Path: path, Noun: g.Noun}
	for _, f := range g.Fields {
		at := f.Key
		if path != "" {
			at = path + "." + f.Key
		}
		value, ok := written(f.As, dig(table, f.Key))
		ff := filledField{field: f, Path: at, Value: value, Locked: !ok}
		if f.More {
			r.More = append(r.More, ff)
			r.Filled = shortly(r.Filled, ff)
		} else {
			r.Fields = append(r.Fields, ff)
		}
	}
	return r
}

// maxShort is how much of the folded fields is told, in bytes.
const maxShort = 60

// shortly adds a folded field to what is told of them.
func shortly(so string, f filledField) string {
	v := strings.Join(strings.Fields(f.Value), " ")
	if f.As == yes && v != "" {
		v = strings.ToLower(f.Label)
	}
	switch {
	case v == "":
		return so
	case so == "":
		return v
	case len(so)+len(v) > maxShort:
		return strings.TrimSuffix(so, " …") + " …"
	}
	return so + " · " + v
}

// dig follows a dotted key.
func dig(table map[string]any, key string) any {
	first, rest, deeper := strings.Cut(key, ".")
	if !deeper {
		return table[key]
	}
	sub, _ := table[first].(map[string]any)
	return dig(sub, rest)
}

// tables gives the rows of a list of tables, however written.
func tables(v any) (out []map[string]any) {
	switch v := v.(type) {
	case []map[string]any:
		return v
	case []any:
		for _, x := range v {
			m, _ := x.(map[string]any)
			out = append(out, m)
		}
	}
	return out
}

// written shows a TOML value as the maker enters it; ok is false when the form
// has no way to.
func written(as entry, v any) (s string, ok bool) {
	switch v := v.(type) {
	case nil:
		return "", true
	case string:
		return v, true
	case bool:
		if as != yes {
			return fmt.Sprint(v), as == choice
		}
		if v {
			return "true", true
		}
		return "", true
	case int64, float64:
		return fmt.Sprint(v), true
	case time.Time:
		return v.Format("2006-01-02"), true
	case []any:
		return listed(as, v)
	}
	return "", false
}

func listed(as entry, v []any) (string, bool) {
	var parts []string
	for _, x := range v {
		s, isText := x.(string)
		if !isText {
			return "", false
		}
		parts = append(parts, s)
	}
	switch as {
	case series:
		return strings.Join(parts, ", "), true
	case lines:
		return strings.Join(parts, "\n"), true
	}
	return "", len(parts) == 0
}

// calendar reports whether a browser's date field can show the value.
func (f filledField) calendar() bool {
	if f.As != day {
		return false
	}
	_, err := time.Parse("2006-01-02", f.Value)
	return f.Value == "" || err == nil
}

// keyboard is the keyboard a telephone should offer.
func (f filledField) keyboard() string {
	return map[entry]string{count: "numeric", number: "decimal", amount: "decimal"}[f.As]
}
