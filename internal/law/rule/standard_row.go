package rule

import (
	"slices"
	"strings"
)

// StandardRow is what a product row holds beside the common columns where the
// standard counts fruit as 21 CFR 150 does.
type StandardRow struct {
	// CountedBy says how the weight of fruit is found: "" as weighed, "juice" by
	// the solids of juice times the fruit's factor (150.140(d)(2)), "pulp" by
	// those of the pulp times the factor of Factors (150.110(d)(2)).
	CountedBy string           `toml:"counted_by"`
	Factors   map[string]int64 `toml:"factors"`      // × 10, by pantry key
	Unnamed   []string         `toml:"unless_named"` // fruit that counts only where the name says it
	NotStones []string         `toml:"no_stones"`    // fruit that counts without its pits, removed or not
	Dried     string           `toml:"dried"`        // phrase due where the fruit was dried
	Mixture   *mixtureRule     `toml:"mixture"`
	Shares    []shareRule      `toml:"shares"`
	Advice    bool             `toml:"advice"` // guidance, no standard: a shortfall warns
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

// called is the name a product goes by in findings.
func (p product) called() string {
	if len(p.Names) == 0 {
		return p.ID
	}
	return p.Names[0].Name
}

// ratioOf gives the ratio of a class, the general one for a class no row names.
func (p product) ratioOf(class string) (general ratioRule, ok bool) {
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

// productNamed picks the row for the word a name or a kind gives.
func productNamed(rows []product, word string) (product, bool) {
	at := slices.IndexFunc(rows, func(p product) bool { return word != "" && slices.Contains(p.Kinds, word) })
	if at < 0 {
		return product{}, false
	}
	return rows[at], true
}

// usProduct is the row of the batch: by the name it bears, else by its kind. A
// spread that is named jam is judged as jam (21 U.S.C. 343(g)).
func (p *pass) usProduct() (product, bool) {
	word := productWord(p.B.Name)
	if word == "" {
		word = string(p.B.Kind)
	}
	return productNamed(p.Set.Products, word)
}

// stones says what the maker's words tell of pits: "in", "out" or "" (nothing).
func (p *pass) stones(paths []string) string {
	said := ""
	for _, path := range paths {
		in := p.Made[path]
		if in == nil {
			continue
		}
		words := " " + strings.Join(strings.FieldsFunc(strings.ToLower(in.Name+" "+in.Form), notLetter), " ") + " "
		for _, w := range []string{" unpitted ", " unstoned ", " with pits ", " with stones ", " pits in ", " stones in "} {
			if strings.Contains(words, w) {
				return "in"
			}
		}
		for _, w := range []string{" pitted ", " stoned ", " destoned ", " without pits ", " without stones "} {
			if strings.Contains(words, w) {
				said = "out"
			}
		}
	}
	return said
}
