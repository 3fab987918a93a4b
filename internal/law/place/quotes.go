package place

import (
	"cmp"
	"fmt"
	"io/fs"
	"reflect"
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// Quote is the sentence a value of a set was read in, beside the set in
// places/quotes/ID.toml.
type Quote struct {
	// Value names what was read: "TABLE.KEY" ("net.form"), "ROW.KEY" with the id
	// of a programme or product ("home-kitchen.statement"; several with bars between), or
	// "phrase:LANG:KEY" for a phrase of templates/languages, "phrase:LANG:KEY*" for
	// all whose keys begin so.
	Value string `toml:"value"`
	Text  string `toml:"text"`  // letter for letter as it stood there
	Where string `toml:"where"` // clause, and the copy or page it stood in
	Read  string `toml:"read"`  // day of reading
	Origin
}

// quoteFile is one places/quotes/ID.toml.
type quoteFile struct {
	Quotes []Quote `toml:"quote"`
}

// Quotes gives the quotations of a set and of the set it extends, the own
// first. A set without a file has none.
func (b *Book) Quotes(id string) ([]Quote, error) {
	r, ok, err := b.set(id)
	if err != nil || !ok {
		return nil, err
	}
	out, err := b.quotesOf(r.ID)
	if err != nil || r.Extends == "" {
		return out, err
	}
	from, err := b.quotesOf(r.Extends)
	return append(out, from...), err
}

func (b *Book) quotesOf(id string) ([]Quote, error) {
	name := "places/quotes/" + id + ".toml"
	data, err := fs.ReadFile(b.files, name)
	if err != nil {
		return nil, nil // no quotations beside this set
	}
	var f quoteFile
	if err := decode(name, data, &f); err != nil {
		return nil, err
	}
	for i, q := range f.Quotes {
		if err := q.check(); err != nil {
			return nil, fmt.Errorf("%s: quote %d (%s): %w", name, i+1, q.Value, err)
		}
	}
	return f.Quotes, nil
}

func (q Quote) check() error {
	if q.Value == "" || q.Text == "" || q.Where == "" || q.Read == "" || q.Confidence == "" {
		return fmt.Errorf("value, text, where, read and confidence must be given")
	}
	return marks(reflect.ValueOf(q))
}

// Of reports whether a quotation is about a row or table, by its id. One that
// several rows rest on names their values with bars between.
func (q Quote) Of(row string) bool {
	return slices.ContainsFunc(strings.Split(q.Value, "|"), func(v string) bool { return strings.HasPrefix(v, row+".") })
}

// Unread is a value nobody has read yet: it stands from memory.
type Unread struct {
	Place, Value, Text string
	Since              string // day it was last looked up
}

// Memory lists every value of every place that still stands from memory,
// oldest look first: tables, programmes and quotations, and parts of those that
// were read otherwise.
func (b *Book) Memory(on unit.Date) (out []Unread) {
	for _, id := range b.names {
		r, err := b.raw(id) // what a set inherits is its base's own line
		if err != nil {
			continue // Place says what is wrong with it
		}
		for _, part := range r.Memory {
			out = append(out, Unread{id, id, part, r.CheckedOn})
		}
		listed := map[string]bool{} // a row, or a part of one: rows of one id may say the same
		for _, v := range (&Set{rules: r, On: on}).Effective() {
			parts := v.Memory
			if v.Confidence == "memory" {
				parts = append([]string{v.Source}, parts...)
				listed[v.Row()] = true
			}
			for _, part := range parts {
				if !listed[v.Row()+part] {
					listed[v.Row()+part] = true
					out = append(out, Unread{id, v.Row(), part, cmp.Or(v.CheckedOn, r.CheckedOn)})
				}
			}
		}
		quotes, _ := b.quotesOf(id)
		for _, q := range quotes {
			parts := q.Memory
			if row, _, _ := strings.Cut(q.Value, "."); q.Confidence == "memory" && !listed[row] {
				parts = append([]string{q.Text}, parts...)
			}
			for _, part := range parts {
				out = append(out, Unread{id, q.Value, part, q.Read})
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Unread) int { return strings.Compare(a.Since, b.Since) })
	return out
}
