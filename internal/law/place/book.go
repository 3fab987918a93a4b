package place

import (
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"sort"
	"strings"
	"sync"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/templates"
)

// Book holds the rules of every place.
type Book struct {
	laws  Laws
	files fs.FS
	names []string // ids of the places, sorted
	words map[string]*Phrases
	read  sync.Map // id -> reading; a place is read when it is asked for
}

// reading is one place as read, or why it can't be.
type reading struct {
	rules rules
	err   error
}

// StatementType is one kind of statement a set may name, with the phrases it cannot do
// without in every language of the set.
type StatementType struct {
	Name    string
	Phrases []string
}

// Law is what the code of one body of law knows to do with a set: sets are
// checked against it.
type Law struct {
	Statements  []StatementType
	Particulars []string // what a programme's `required` may name
}

// Laws are the bodies of law we hold.
type Laws struct{ US, EU Law }

// Load opens the built-in sets and phrases. An error is a fault of the build. A
// set and the languages it speaks are read when it is asked for: there are many
// places, and a maker sells in one.
func Load(laws Laws) (*Book, error) { return load(laws, templates.FS, templates.FS) }

func load(laws Laws, sets, phrases fs.FS) (*Book, error) {
	words, err := openPhrases(phrases)
	if err != nil {
		return nil, err
	}
	files, err := fs.Glob(sets, "places/*.toml")
	if err != nil {
		return nil, err
	}
	b := &Book{laws: laws, files: sets, words: words}
	for _, n := range files {
		b.names = append(b.names, strings.TrimSuffix(path.Base(n), ".toml"))
	}
	sort.Strings(b.names)
	return b, nil
}

// set gives the rules of one place; ok is false when there is no such place.
// An error is a fault in the set's file.
func (b *Book) set(id string) (r rules, ok bool, err error) {
	id = strings.ToLower(strings.TrimSpace(id))
	if !slices.Contains(b.names, id) {
		return rules{}, false, nil
	}
	if got, ok := b.read.Load(id); ok {
		return got.(reading).rules, true, got.(reading).err
	}
	r, err = b.compile(id)
	b.read.Store(id, reading{r, err})
	return r, true, err
}

// compile reads a set and lays it over the one it extends.
func (b *Book) compile(id string) (rules, error) {
	r, err := b.raw(id)
	if err != nil {
		return rules{}, err
	}
	if r.Extends != "" {
		from, err := b.raw(r.Extends)
		if err != nil || from.Extends != "" {
			return rules{}, fmt.Errorf("set %s extends %q, which is no set standing on its own", id, r.Extends)
		}
		r = r.base(from)
	}
	if r.Products, err = likened(r.Products); err != nil {
		return rules{}, fmt.Errorf("set %s: %w", id, err)
	}
	if r, err = r.claiming(); err != nil {
		return rules{}, err
	}
	for _, lang := range r.Languages {
		if err := b.words[lang].fault(); err != nil {
			return rules{}, err
		}
	}
	law := b.laws.US
	if r.EU != nil {
		law = b.laws.EU
	}
	return r, r.check(law, b.words)
}

func (b *Book) raw(id string) (r rules, err error) {
	n := "places/" + id + ".toml"
	data, err := fs.ReadFile(b.files, n)
	if err != nil {
		return rules{}, err
	}
	if err := decode(n, data, &r); err != nil {
		return rules{}, err
	}
	if r.ID != id {
		return rules{}, fmt.Errorf("%s: id is %q", n, r.ID)
	}
	return r, nil
}

// Languages lists the languages there are words of.
func (b *Book) Languages() []string { return slices.Sorted(maps.Keys(b.words)) }

// Place gives the rules of a place as they stand on a day. An unknown place is
// an error finding on kitchen.toml's `place`; a place outside its dates, or not
// looked up for over a year, a warning.
func (b *Book) Place(id string, on unit.Date) (*Set, diag.List) {
	var l diag.List
	if id == "" {
		id = "us"
		l.Notef("place-not-given", "", "place", "no place is given, so the federal rules of the United States are used").
			Hinted(`write place = "us-or" (your state), "eu" or "gb" in kitchen.toml; jarmark places lists them`)
	}
	r, ok, err := b.set(id)
	if err != nil {
		l.Errorf("broken-rules", "", "place", "the rules of %q cannot be read: %v", id, err).Hinted("this is a fault of the program: please report it")
		return nil, l
	}
	if !ok {
		l.Errorf("unknown-place", "", "place", "no rules for the place %q", id).Hinted(b.near(id))
		return nil, l
	}
	if !Within(on, r.ValidFrom, r.ValidTo) {
		l.Warnf("rules-not-in-force", "", "place", "the rules of %s are for %s to %s, and this is %s", r.Name, Open(r.ValidFrom), Open(r.ValidTo), on).
			Hinted("look the rules up before you print")
	}
	stale(&l, r, on)
	return &Set{rules: r, On: on, Words: b.words}, l
}

// stale warns when the rules were last looked up over a year ago.
func stale(l *diag.List, r rules, on unit.Date) {
	if d, err := day(r.CheckedOn); err == nil && !d.IsZero() && d.AddMonths(12).Before(on) {
		l.Warnf("rules-not-checked", "", "place", "the rules of %s were last looked up on %s, over a year before", r.Name, d.Words(r.EU == nil)).
			Hinted("such rules change nearly every year: ask the agency")
	}
}

func Open(d string) string {
	if d == "" {
		return "now on"
	}
	return d
}

// Summary is one line of the list of places.
type Summary struct {
	ID, Name   string
	Languages  []string
	Programmes []string
	Confidence string // of the home-kitchen statement: primary, secondary, memory; empty = none
	CheckedOn  string
}

// List gives every place in order of its id.
func (b *Book) List() []Summary {
	var out []Summary
	for _, id := range b.names {
		r, _, err := b.set(id)
		if err != nil {
			continue // Place says what is wrong with it
		}
		s := Summary{ID: id, Name: r.Name, Languages: r.Languages, CheckedOn: r.CheckedOn}
		for i, p := range r.Programmes {
			s.Programmes = append(s.Programmes, p.ID)
			if i == 0 {
				s.Confidence = p.Confidence
			}
		}
		out = append(out, s)
	}
	return out
}
