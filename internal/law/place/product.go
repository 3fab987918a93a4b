package place

import (
	"cmp"
	"fmt"
	"reflect"
	"slices"

	"jarmark/internal/kit/unit"
)

// Product is one legal product: what may bear its name, and what the label
// then says. Sets write them as [[product]] rows; a set that extends another
// adds rows, or names one by its id and writes only what its law changes.
type Product struct {
	ID       string        `toml:"id"`
	Like     string        `toml:"like"`     // another row, for all this one does not write
	Types    []string      `toml:"kinds"`    // batch kinds the row governs; empty = any whose name says it
	ByName   bool          `toml:"by_name"`  // only when the maker's name says it ("extra jam", "mincemeat")
	Wish     string        `toml:"wish"`     // words of which one asks for it, parted by bars: "extra"
	Names    []ProductName `toml:"names"`    // lawful names; the first of a language is printed
	Counts   []string      `toml:"counts"`   // kinds of ingredient that count as its fruit
	Strained bool          `toml:"strained"` // juice or extract counts, and whole fruit in the notes proves no quantity of it
	Alone    []string      `toml:"alone"`    // what counts only where no other fruit is
	Aside    []string      `toml:"aside"`    // what does not count beside other fruit
	Souring  []string      `toml:"souring"`  // what does not count beside other fruit, below a tenth of it
	Only     []string      `toml:"only"`     // the fruit may be of these alone: keys, or words of a maker's own
	Allows   []string      `toml:"allows"`   // kinds, keys and words of what may be added; empty = no list
	Doubtful []string      `toml:"doubtful"`
	Numbers  []string      `toml:"additives"`     // E numbers of the additives it may hold; empty = not judged
	Lean     []string      `toml:"additives_low"` // those for products low in sugar alone
	Little   *littleRule   `toml:"little"`        // what may be added in small amounts
	Bound    []BoundRule   `toml:"bound"`         // what may be added only beside certain fruit
	Besides  []BoundRule   `toml:"only_beside"`   // what is allowed beside certain fruit and nowhere else
	Unmixed  []string      `toml:"never_mixed"`
	Floors   []Floor       `toml:"floors"`
	Ratios   []RatioRule   `toml:"ratios"`
	Least    []LeastRule   `toml:"least"`
	Solids   *SolidsRule   `toml:"solids"`
	Due      []DueRule     `toml:"statements"` // prescribed statements: "fruit", "sugar"
	Measure  string        `toml:"measure"`    // "weight" (default) or "fluid"
	Cite     string        `toml:"cite"`
	StandardRow
	Origin
}

// ProductName is a lawful name in one language. From AloneFrom fruits on it
// needs none of them beside it ("citrus marmalade" from three); 0 = never.
type ProductName struct {
	Lang      string `toml:"lang"`
	Name      string `toml:"name"`
	From      string `toml:"from"`
	To        string `toml:"to"`
	AloneFrom int    `toml:"alone_from"`
}

// Floor is the least fruit of one class from a day on, in g per 1000 g of
// finished product. The general row stands for any class not named.
type Floor struct {
	Class      string `toml:"class"`
	Grams      int    `toml:"g"`
	From       string `toml:"from"`
	To         string `toml:"to"`
	Confidence string `toml:"confidence"`
}

// RatioRule is parts of fruit to parts of sweetener solids for a class.
type RatioRule struct {
	Class string `toml:"class"`
	Fruit int64  `toml:"fruit"`
	Sweet int64  `toml:"sweet"`
}

// LeastRule is the least of a constituent in g per 1000 g of finished product:
// "fat", "egg yolk solids", "endocarp", or kinds and keys of ingredients.
type LeastRule struct {
	What  string   `toml:"what"`
	Grams float64  `toml:"g"`
	Of    []string `toml:"of"` // kinds and keys added up; empty = a constituent
	Cite  string   `toml:"cite"`
}

// SolidsRule is the soluble dry matter by refractometer at 20 °C in %.
type SolidsRule struct {
	Least       float64 `toml:"least"`
	More        bool    `toml:"more"`      // more than that, not just as much
	Sweetened   bool    `toml:"sweetened"` // sweeteners exempt
	Reduced     bool    `toml:"reduced"`   // a lawful claim of reduced sugars exempts
	ReducedFrom float64 `toml:"reduced_from"`
	ReducedTo   float64 `toml:"reduced_to"` // the range a reduced-sugar product keeps; 0 = none
	Cite        string  `toml:"cite"`
}

// littleRule names what may be added up to a share of the batch.
type littleRule struct {
	Of      []string `toml:"of"`
	Percent float64  `toml:"percent"`
	Why     string   `toml:"why"`
}

// BoundRule names what may be added only where the fruit is of a list.
type BoundRule struct {
	Of     []string `toml:"of"`
	Words  []string `toml:"words"` // of a name no table has
	Beside []string `toml:"beside"`
}

// DueRule is a statement a product owes between two days.
type DueRule struct {
	ID   string `toml:"id"`
	From string `toml:"from"`
	To   string `toml:"to"`
}

// overlay lays rows over those of the set extended: a row of the same id keeps
// what it does not write.
func overlay(base, own []Product) []Product {
	out := slices.Clone(base)
	for _, p := range own {
		at := slices.IndexFunc(out, func(q Product) bool { return q.ID == p.ID })
		if at < 0 {
			out = append(out, p)
			continue
		}
		out[at] = p.filled(out[at])
	}
	return out
}

// filled gives the row with what it does not write taken from another. A row
// that is like another never takes that it is chosen by name.
func (p Product) filled(from Product) Product {
	to, src := reflect.ValueOf(&p).Elem(), reflect.ValueOf(from)
	for i := range to.NumField() {
		if to.Field(i).IsZero() {
			to.Field(i).Set(src.Field(i))
		}
	}
	// A row may say what of it stands from memory, and rest on the other's source.
	p.Source, p.Confidence = cmp.Or(p.Source, from.Source), cmp.Or(p.Confidence, from.Confidence)
	return p
}

// likened fills every row that is like another, in the order of the file.
func likened(rows []Product) ([]Product, error) {
	out := slices.Clone(rows)
	for i, p := range out {
		if p.Like == "" {
			continue
		}
		at := slices.IndexFunc(out[:i], func(q Product) bool { return q.ID == p.Like })
		if at < 0 {
			return nil, fmt.Errorf("product %s is like %q, which is no row before it", p.ID, p.Like)
		}
		out[i] = p.filled(out[at])
	}
	return out, nil
}

// check reports what a row lacks; a fault of the build.
func (p Product) check(langs []string) error {
	bad := func(format string, args ...any) error {
		return fmt.Errorf("product %s: %s", p.ID, fmt.Sprintf(format, args...))
	}
	switch {
	case p.ID == "" || p.Cite == "":
		return bad("id and cite must be given")
	case p.Measure != "" && p.Measure != "weight" && p.Measure != "fluid":
		return bad("measure %q is neither weight nor fluid", p.Measure)
	case len(p.Types) == 0 && !p.ByName:
		return bad("a row without kinds must be by_name")
	case p.owesEver("fruit") && len(p.Counts) == 0:
		return bad("a fruit statement needs to know what counts")
	}
	for _, lang := range langs {
		if !slices.ContainsFunc(p.Names, func(n ProductName) bool { return n.Lang == lang }) {
			return bad("no name in %q", lang)
		}
	}
	if slices.ContainsFunc(p.Floors, func(f Floor) bool { return f.Grams <= 0 }) {
		return bad("a floor is not above 0")
	}
	return nil
}

func (p Product) owesEver(id string) bool {
	return slices.ContainsFunc(p.Due, func(d DueRule) bool { return d.ID == id })
}

// Owes reports whether a statement is due on a day.
func (p Product) Owes(id string, on unit.Date) bool {
	return slices.ContainsFunc(p.Due, func(d DueRule) bool { return d.ID == id && Within(on, d.From, d.To) })
}

// NamesOn gives the lawful names of a language on a day, the printed one first.
func (p Product) NamesOn(lang string, on unit.Date) (out []ProductName) {
	for _, n := range p.Names {
		if n.Lang == lang && Within(on, n.From, n.To) {
			out = append(out, n)
		}
	}
	return out
}

// FloorOn gives the floor of a class on a day, the general one for a class no
// row names; ok is false where the product has none.
func (p Product) FloorOn(class string, on unit.Date) (general Floor, ok bool) {
	for _, f := range p.Floors {
		switch {
		case !Within(on, f.From, f.To):
		case f.Class == class:
			return f, true
		case f.Class == "general":
			general, ok = f, true
		}
	}
	return general, ok
}

// Governs reports whether a row is for a kind of batch.
func (p Product) Governs(kind string) bool {
	return len(p.Types) == 0 || slices.Contains(p.Types, kind)
}
