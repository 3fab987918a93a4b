package pantry

// Boil is one row of boil.csv: where a kind of spread is taken to finish when
// nobody measured, by the °Brix of its syrup or by what it loses, and how far
// published yields lie around that.
type Boil struct {
	Product  string  // of batch; "" = any
	Method   string  // "long boil", "added pectin"; "" = however it is cooked
	Name     string  // as findings say it
	Brix     float64 // 0 = by loss
	Loss     float64 // % of what went in; beside a °Brix the most that boils away
	Minutes  float64 // usual time at a simmer, at which that is lost; beside a °Brix both count. 0 = time does not move it
	Shift    float64 // published yields over computed ones
	Factor   float64 // the range reaches from its middle by as much as this is above one, to both sides
	Coverage float64 // % of published yields not seen before that lay in the range
	Recipes  int     // how many those were
	Source   string
}

func (p *Pantry) loadBoil() error {
	t := readTable(p.from, "boil")
	t.each(func(r row) {
		b := Boil{Product: r.text("kind"), Method: r.text("method"), Name: r.need("name"), Brix: r.number("brix", 0), Loss: r.number("loss_pct", 0), Minutes: r.number("minutes", 0),
			Shift: r.number("shift", 0), Factor: r.number("factor", 0), Coverage: r.number("coverage_pct", 0), Recipes: int(r.number("recipes", 0)), Source: r.need("source")}
		if b.Brix+b.Loss <= 0 && b.Method != "no cook" || b.Brix < 0 || b.Brix > 85 || b.Loss < 0 || b.Loss > 75 {
			r.fail("brix", "a finish in °Brix to 85, or a loss in % to 75")
		}
		if b.Minutes < 0 || b.Minutes > 240 || b.Minutes > 0 && b.Loss <= 0 {
			r.fail("minutes", "the usual minutes, to 240, beside a loss")
		}
		if b.Shift < 0.8 || b.Shift > 1.25 || b.Factor <= 1 || b.Factor > 1.5 || b.Coverage <= 0 || b.Coverage >= 100 || b.Recipes < 1 {
			r.fail("factor", "a shift near one, a factor above one, a coverage in % and the number of recipes")
		}
		p.boils = append(p.boils, b)
	})
	return t.err
}

// Boil gives the first row that fits a kind and a method.
func (p *Pantry) Boil(kind, method string) (Boil, bool) {
	for _, b := range p.boils {
		if (b.Product == "" || b.Product == kind) && (b.Method == "" || b.Method == method) {
			return b, true
		}
	}
	return Boil{}, false
}
