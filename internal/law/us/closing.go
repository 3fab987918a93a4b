package us

// closing says whose word is last.
func closing(p *pass) {
	p.L.Notef("local-law", p.KitchenFile(), "place", "rules of the state, the county, the town and the market come on top of these").
		Hinted("before selling, ask the agency and note the day you asked; this is no legal advice")
	if len(p.B.Gifts) > 0 && !p.O.Gift && p.prog != nil {
		p.L.Notef("gift-or-sale", p.BatchFile(), "gift", "these are labels for sale; jars given away may bear them too").
			Hinted("choose gift labels to leave the market statement off")
	}
}
