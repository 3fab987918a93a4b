package pantry

// Spread is one row of yield-spread.csv: how far published yields lie around
// the computed one.
type Spread struct {
	Kind, Method string  // as in boil.csv; "" = any
	Shift        float64 // printed yields over computed ones
	Factor       float64 // the range is from shift/factor to shift times factor
	Coverage     float64 // % of printed yields that lie in the range, at least
	Recipes      int     // how many recipes it rests on
	Source       string
}

func (p *Pantry) loadSpreads() error {
	t := readTable("yield-spread")
	t.each(func(r row) {
		s := Spread{Kind: r.text("kind"), Method: r.text("method"), Shift: r.number("shift", 0), Factor: r.number("factor", 0),
			Coverage: r.number("coverage_pct", 0), Recipes: int(r.number("recipes", 0)), Source: r.need("source")}
		if s.Shift < 0.8 || s.Shift > 1.25 || s.Factor <= 1 || s.Factor > 1.5 || s.Coverage <= 0 || s.Coverage >= 100 || s.Recipes < 1 {
			r.fail("factor", "a shift near one, a factor above one, a coverage in % and the number of recipes")
		}
		p.spreads = append(p.spreads, s)
	})
	return t.err
}

// Spread gives the first row that fits a kind and a method.
func (p *Pantry) Spread(kind, method string) (Spread, bool) {
	for _, s := range p.spreads {
		if (s.Kind == "" || s.Kind == kind) && (s.Method == "" || s.Method == method) {
			return s, true
		}
	}
	return Spread{}, false
}
