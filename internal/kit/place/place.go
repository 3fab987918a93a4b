// Package place holds what every stage may know of where jam is sold: plain
// facts, read from the rule set of the place. Nobody guesses them from an id.
package place

import "slices"

// Place is where jam is sold. The zero Place is one nobody named: the federal
// rules and measures of the United States hold there.
type Place struct {
	ID        string   // "us-or", "gb"; empty = not named
	Name      string   // "Oregon"
	Law       string   // US or EU: whose list of allergens, whose way to judge weights
	Currency  string   // ISO 4217
	Units     string   // unit.US or unit.Metric: how amounts are shown
	Imperial  bool     // the imperial pint is at home there
	Per       string   // what unit prices are reckoned on: "oz", "kg"
	Tenths    bool     // unit prices below one unit of the currency go to a tenth of the minor coin
	Languages []string // of labels; the first is the usual one
}

// The bodies of law we hold. Great Britain keeps the EU's as it stood.
const (
	US = "us"
	EU = "eu"
)

// US reports whether United States law holds.
func (p Place) US() bool { return p.Law != EU }

// Language is the asked language where the place knows it, else its first.
func (p Place) Language(asked string) string {
	if slices.Contains(p.Languages, asked) || len(p.Languages) == 0 {
		return asked
	}
	return p.Languages[0]
}

// Finder gives the place of an id in any letter case; hint says which place
// may be meant when there is none. ok is false then.
type Finder func(id string) (p Place, hint string, ok bool)
