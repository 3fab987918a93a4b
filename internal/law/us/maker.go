package us

import (
	"strings"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// maker adds name and place of business: street, city, state, ZIP, and what
// the state asks beside them.
func maker(p *pass) {
	const cite = "21 CFR 101.5"
	if p.O.Gift {
		p.giver()
		return
	}
	name := strings.TrimSpace(p.K.Name)
	if c := strings.TrimSpace(p.K.Corporate); c != "" {
		name = c // a corporation only by its actual name, 101.5(b)
	}
	if name == "" {
		p.Duty("no-maker", p.KitchenFile(), "name", "the label needs the name of the maker").Hinted("write name in kitchen.toml").Cited(cite)
	}
	if len(p.K.Address) == 0 {
		p.noAddress(cite)
	}
	var rest []string
	for _, line := range append([]string{}, p.K.Address...) {
		if line = strings.TrimSpace(line); line != "" {
			rest = append(rest, line)
		}
	}
	rest = append(rest, p.numbers()...)
	if name == "" && len(rest) == 0 {
		return
	}
	runs := p.Say.Runs("us.maker", "name", draft.PlainStars(name))
	if len(rest) > 0 {
		runs = append(runs, label.Run{Text: ", " + strings.Join(rest, ", ")})
	}
	p.add(label.Block{Kind: label.Maker, Runs: runs, Zone: label.Info, With: []label.Kind{label.Ingredients},
		Required: true, Cite: cite, Verified: "primary", Path: "name"})
}

// giver names who made a jar that is given away, and neither street nor
// telephone: a gift lies on other people's tables, and 21 CFR 101.5 is about
// food that is sold.
func (p *pass) giver() {
	if name := strings.TrimSpace(p.K.Name); name != "" {
		p.add(label.Block{Kind: label.Maker, Runs: p.Say.Runs("us.maker", "name", draft.PlainStars(name)), Zone: label.Info, Path: "name"})
	}
}

// noAddress is an error for the federal label; where the state takes a number
// in its place the maker chose that, and a warning names the difference.
func (p *pass) noAddress(cite string) {
	if p.prog != nil && p.numberForAddress() && !p.O.Gift {
		if !permitted(p) {
			return // the state's own finding asks for one of both
		}
		p.L.Warnf("no-address", p.KitchenFile(), "address", "%s takes your number instead of an address; the federal rule asks for street, city, state and ZIP", p.Set.Name).
			Hinted("ask the agency whether the number alone is enough where you sell").Cited(cite + "; " + p.prog.Law)
		return
	}
	p.Duty("no-address", p.KitchenFile(), "address", "the label needs the place of business: street, city, state and ZIP").Hinted("write address in kitchen.toml").Cited(cite)
}

func (p *pass) numberForAddress() bool {
	for _, group := range p.prog.Required {
		address, number := false, false
		for _, token := range group {
			x, _ := particularNamed(token)
			address, number = address || x.Key == "address", number || x.Key == "permit"
		}
		if address && number {
			return true
		}
	}
	for _, token := range tokens(p.prog) {
		if x, _ := particularNamed(token); x.Key == "address" {
			return false
		}
	}
	return p.shows("permit")
}

// stateWebsite is the address a state has its makers print: the one the agency
// gave this maker, else the one a page about the law names.
func (p *pass) stateWebsite() string {
	if w := strings.TrimSpace(p.K.StateWebsite); w != "" {
		return w
	}
	if p.prog == nil {
		return ""
	}
	return p.prog.Website
}

func tokens(pr *place.Programme) (out []string) {
	for _, group := range pr.Required {
		out = append(out, group...)
	}
	return out
}

// numbers words permit, county, telephone and e-mail where the state has a
// place for them.
func (p *pass) numbers() (out []string) {
	if p.K.Permit != "" && p.shows("permit") {
		out = append(out, p.Say.Say("us.permit", "number", p.K.Permit))
	}
	if p.K.County != "" && p.shows("county") {
		out = append(out, p.Say.Say("us.county", "county", p.K.County))
	}
	if p.K.Phone != "" && p.shows("phone") {
		out = append(out, p.Say.Say("us.phone", "phone", p.K.Phone))
	}
	if w := p.stateWebsite(); w != "" && p.shows("state_website") {
		out = append(out, w)
	}
	if p.K.Email != "" && p.shows("email") && (p.K.Phone == "" || len(p.K.Address) == 0) {
		out = append(out, p.K.Email)
	}
	return out
}
