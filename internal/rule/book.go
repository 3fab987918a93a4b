package rule

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"

	"jarmark/internal/diag"
	"jarmark/internal/unit"
)

//go:embed sets/*.toml
var setFiles embed.FS

// Book holds the rules of every place.
type Book struct {
	sets  map[string]rules
	words map[string]*Phrases
}

// Load reads the built-in sets and phrases. An error is a fault of the build.
func Load() (*Book, error) { return load(setFiles, phraseFiles) }

func load(sets, phrases fs.FS) (*Book, error) {
	words, err := loadPhrases(phrases)
	if err != nil {
		return nil, err
	}
	raw, err := readSets(sets)
	if err != nil {
		return nil, err
	}
	b := &Book{sets: map[string]rules{}, words: words}
	for id, r := range raw {
		if r.Extends != "" {
			from, ok := raw[r.Extends]
			if !ok || from.Extends != "" {
				return nil, fmt.Errorf("set %s extends %q, which is no set standing on its own", id, r.Extends)
			}
			r = r.base(from)
		}
		if err := r.check(words); err != nil {
			return nil, err
		}
		b.sets[id] = r
	}
	return b, nil
}

func readSets(files fs.FS) (map[string]rules, error) {
	names, err := fs.Glob(files, "sets/*.toml")
	if err != nil {
		return nil, err
	}
	out := map[string]rules{}
	for _, n := range names {
		data, err := fs.ReadFile(files, n)
		if err != nil {
			return nil, err
		}
		var r rules
		if err := decode(n, data, &r); err != nil {
			return nil, err
		}
		if r.ID != strings.TrimSuffix(path.Base(n), ".toml") {
			return nil, fmt.Errorf("%s: id is %q", n, r.ID)
		}
		out[r.ID] = r
	}
	return out, nil
}

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
	r, ok := b.sets[strings.ToLower(strings.TrimSpace(id))]
	if !ok {
		hint := "jarmark places lists them"
		if near, ok := diag.DidYouMean(id, b.ids()); ok {
			hint = "did you mean " + near + "? " + hint
		}
		l.Errorf("unknown-place", "", "place", "no rules for the place %q", id).Hinted(hint)
		return nil, l
	}
	if !within(on, r.ValidFrom, r.ValidTo) {
		l.Warnf("rules-not-in-force", "", "place", "the rules of %s are for %s to %s, and this is %s", r.Name, open(r.ValidFrom), open(r.ValidTo), on).
			Hinted("look the rules up before you print")
	}
	stale(&l, r, on)
	return &Set{rules: r, On: on, words: b.words}, l
}

// stale warns when the rules were last looked up over a year ago.
func stale(l *diag.List, r rules, on unit.Date) {
	if d, err := day(r.CheckedOn); err == nil && !d.IsZero() && d.AddMonths(12).Before(on) {
		l.Warnf("rules-not-checked", "", "place", "the rules of %s were last looked up on %s, over a year before", r.Name, d).
			Hinted("such rules change nearly every year: ask the agency")
	}
}

func open(d string) string {
	if d == "" {
		return "now on"
	}
	return d
}

func (b *Book) ids() []string {
	var out []string
	for id := range b.sets {
		out = append(out, id)
	}
	sort.Strings(out)
	return out
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
	for _, id := range b.ids() {
		r := b.sets[id]
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
