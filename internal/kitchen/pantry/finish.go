package pantry

// Boil is one row of boil.csv: where a kind of spread is taken to finish when
// nobody measured, by the °Brix of its syrup or by what it loses.
type Boil struct {
	Kind   string  // of batch; "" = any
	Method string  // "long boil", "added pectin"; "" = however it is cooked
	Name   string  // as findings say it
	Brix   float64 // 0 = by loss
	Loss   float64 // % of what went in
	Source string
}

func (p *Pantry) loadBoil() error {
	t := readTable("boil")
	t.each(func(r row) {
		b := Boil{Kind: r.text("kind"), Method: r.text("method"), Name: r.need("name"), Brix: r.number("brix", 0), Loss: r.number("loss_pct", 0), Source: r.need("source")}
		if (b.Brix > 0) == (b.Loss > 0) || b.Brix < 0 || b.Brix > 85 || b.Loss < 0 || b.Loss > 50 {
			r.fail("brix", "a finish in °Brix or a loss in %, not both")
		}
		p.boils = append(p.boils, b)
	})
	return t.err
}

// Boil gives the first row that fits a kind and a method.
func (p *Pantry) Boil(kind, method string) (Boil, bool) {
	for _, b := range p.boils {
		if (b.Kind == "" || b.Kind == kind) && (b.Method == "" || b.Method == method) {
			return b, true
		}
	}
	return Boil{}, false
}
