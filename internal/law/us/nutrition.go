package us

const citeClaim = "21 U.S.C. 343(q)(5)(D), (E); 21 CFR 101.9(j)(1), (18)"

// nutrition notes the exemption and reports claims that lose it, on the label
// or on the page its code opens.
func nutrition(p *pass) {
	p.L.Notef("nutrition-exempt", p.KitchenFile(), "place", "%s", p.Set.Nutrition.Note).Cited(citeClaim)
	p.Wordings()
	p.namings()
}
