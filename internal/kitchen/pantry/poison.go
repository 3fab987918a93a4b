package pantry

// Poison is one row of poisonous.csv: what hurts whoever eats it, or may.
type Poison struct {
	ID     string
	Errs   bool // no label is made; otherwise it is a warning
	Reason string
	Hint   string
	Source string
	phrases
}

func (p *Pantry) loadPoisons() error {
	t := readTable(p.from, "poisonous")
	t.each(func(r row) {
		level := r.need("level")
		if level != "error" && level != "warning" {
			r.fail("level", "neither error nor warning")
		}
		x := Poison{ID: r.need("id"), Errs: level == "error", Reason: r.need("reason"), Hint: r.need("hint"), Source: r.need("source")}
		x.phrases = r.phrases(t.between("level", "but_not"))
		p.poisons = append(p.poisons, x)
	})
	return t.err
}

// Poison finds the row any of the texts the maker wrote of an ingredient names,
// in English, German or French.
func (p *Pantry) Poison(texts ...string) (Poison, bool) {
	return named(p.poisons, texts)
}
