package cook

// Evidence is one fact that a printed statement rests on: an allergen named or
// said to be absent, a keeping time, a weight. Label, record, stall card, code
// and `check` show the same values.
type Evidence struct {
	Fact   string // in plain words: "measured 66 °Brix", "whey powder in pectin: milk"
	How    How    // how it was come by
	Path   string // TOML path of what the maker wrote; "" = a table of ours
	Source string // publisher and title, or "common practice, no source"
}
