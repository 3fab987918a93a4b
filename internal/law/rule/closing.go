package rule

// closing says whose word is last.
func closing(p *pass) {
	p.l.Notef("local-law", p.kitchenFile(), "place", "rules of the state, the county, the town and the market come on top of these").
		Hinted("before selling, ask the agency and note the day you asked; this is no legal advice")
	if len(p.b.Gifts) > 0 && !p.o.Gift && p.prog != nil {
		p.l.Notef("gift-or-sale", p.batchFile(), "gift", "these are labels for sale; jars given away may bear them too").
			Hinted("choose gift labels to leave the market statement off")
	}
}
