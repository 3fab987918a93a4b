package rule

// marmalade compares a marmalade, which has no standard of identity, with what
// the FDA told makers: 30 parts of peel and juice to 70 of sweetener, 25 to 75
// for sour citrus.
func (p *pass) marmalade() {
	if productWord(p.b.Name) != "marmalade" && p.b.Kind != "marmalade" {
		return
	}
	t := p.set.Standard
	var fruit, sweet int64
	sour := true
	for _, ln := range p.r.Lines {
		switch {
		case ln.IsSweet:
			sweet += int64(ln.Mass / 1000)
		case ln.IsFruit || has(t.SourCitrus, ln.Row.Key) || ln.Row.Kind == "juice":
			fruit += int64(ln.Mass / 1000)
			sour = sour && has(t.SourCitrus, ln.Row.Key)
		}
	}
	r := t.Marmalade
	if sour {
		r = t.MarmaladeS
	}
	if fruit > 0 && less(fruit, r[1], sweet, r[0]) {
		p.l.Warnf("marmalade-fruit", p.batchFile(), "name", "the FDA asks for %d parts of peel and juice to %d of sweetener in marmalade; here %s meet %s", r[0], r[1], kilos(fruit), kilos(sweet)).
			Hinted("use more fruit, or a name that says spread").Cited("FDA answers to industry (archived 29 Oct 2004), guidance")
	}
}
