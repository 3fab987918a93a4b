package place

import (
	"slices"
)

// StandardRow is what a product row holds beside the common columns where the
// standard counts fruit as 21 CFR 150 does.
type StandardRow struct {
	// CountedBy says how the weight of fruit is found: "" as weighed, "juice" by
	// the solids of juice times the fruit's factor (150.140(d)(2)), "pulp" by
	// those of the pulp times the factor of Factors (150.110(d)(2)).
	CountedBy string              `toml:"counted_by"`
	Factors   map[string]int64    `toml:"factors"`      // × 10, by pantry key
	Unnamed   []string            `toml:"unless_named"` // fruit that counts only where the name says it
	NotStones []string            `toml:"no_stones"`    // fruit that counts without its pits, removed or not
	Dried     string              `toml:"dried"`        // phrase due where the fruit was dried
	Synonyms  map[string][]string `toml:"also_named"`   // what else a name may call a fruit, by pantry key
	Mixture   *mixtureRule        `toml:"mixture"`
	Shares    []shareRule         `toml:"shares"`
	Advice    bool                `toml:"advice"` // guidance, no standard: a shortfall warns
}

// mixtureRule is how fruits may be combined.
type mixtureRule struct {
	Most      int              `toml:"most"`
	EachOneIn int64            `toml:"each_at_least_one_in"`
	OneIn     map[string]int64 `toml:"at_least_one_in"` // where a fruit, by key, may be less
	MostOneIn map[string]int64 `toml:"at_most_one_in"`  // and what never stands alone
}

// shareRule is the least of an ingredient that is used at all, as one part in
// so many of the fruit.
type shareRule struct {
	Of    []string `toml:"of"`
	OneIn int64    `toml:"at_least_one_in"`
	Cite  string   `toml:"cite"`
}

// Called is the name a product goes by in findings.
func (p Product) Called() string {
	if len(p.Names) == 0 {
		return p.ID
	}
	return p.Names[0].Name
}

// RatioOf gives the ratio of a class, the general one for a class no row names.
func (p Product) RatioOf(class string) (general RatioRule, ok bool) {
	for _, r := range p.Ratios {
		switch r.Class {
		case class:
			return r, true
		case "general":
			general, ok = r, true
		}
	}
	return general, ok
}

// ProductNamed picks the row for the word a name or a kind gives.
func ProductNamed(rows []Product, word string) (Product, bool) {
	at := slices.IndexFunc(rows, func(p Product) bool { return word != "" && slices.Contains(p.Types, word) })
	if at < 0 {
		return Product{}, false
	}
	return rows[at], true
}
