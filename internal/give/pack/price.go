package pack

import (
	"fmt"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
)

// UnitPrice is a price for comparing, per Per. Tenths of the coin are given
// where the place asks for them.
type UnitPrice struct {
	Price  unit.Money
	Tenths int64
	Per    string // "oz", "kg", "100 g", "fl oz"
}

// PriceOf gives the unit price of what a jar holds, by the rule of the place its
// shelf card follows; false without a price or a content. Per kilogram where no
// rule says (Directive 98/6/EC Art 2(b)).
func PriceOf(price unit.Money, net unit.Mass, volume unit.Volume, at place.Place) (UnitPrice, bool) {
	u := UnitPrice{Per: at.Per}
	if u.Per == "" && at.US() {
		u.Per = "oz"
	}
	if unit.PerMass[u.Per] == 0 {
		u.Per = "kg"
	}
	content, per := int64(net), int64(unit.PerMass[u.Per])
	if volume > 0 {
		u.Per, content, per = "fl oz", int64(volume), int64(unit.FluidOunce)
	}
	var ok bool
	if u.Price, ok = price.Per(content, per); !ok {
		return UnitPrice{}, false
	}
	if t, fits := price.Per(content, 10*per); fits && at.Tenths && t.Minor < 1000 {
		u.Tenths = t.Minor
	}
	return u, true
}

// In gives "90¢ per oz", "83.3p per 100 g", "$1.13 per oz", "7,50 € je kg".
func (u UnitPrice) In(w table.Words) string {
	text := w.Money([]unit.Money{u.Price})
	switch {
	case u.Tenths > 0:
		text = unit.Pence(u.Tenths)
	case u.Price.Currency == "USD" && u.Price.Minor < 100:
		text = fmt.Sprintf("%d¢", u.Price.Minor)
	}
	return w.Say("%s per %s", text, u.Per)
}

// Card is one price card of a stall.
type Card struct {
	Name, Lot, JarText, Net string
	Price                   unit.Money
	Unit                    string // "90¢ per oz"; empty without a declared net content
	Count                   int
}

// Cards gives one price card for each product, size and price the plan takes
// to markets, in the order of the stalls.
func (p *Plan) Cards() []Card {
	var out []Card
	at := map[Card]int{}
	for _, s := range p.Stops {
		if s.Type != Market {
			continue
		}
		for _, l := range s.Lines {
			st := p.Stock[l.stock]
			c := Card{Name: l.Name, Lot: l.Lot, JarText: l.JarText, Net: st.DeclText, Price: l.Price}
			if u, ok := PriceOf(l.Price, st.Declared, st.Fluid, st.at); ok {
				c.Unit = u.In(p.in)
			}
			if i, seen := at[c]; seen {
				out[i].Count += l.Count
				continue
			}
			at[c] = len(out)
			c.Count = l.Count
			out = append(out, c)
		}
	}
	return out
}

// Costs is what the ingredients of one batch cost. Jars, lids, labels, fuel
// and work are not in it.
type Costs struct {
	Total    unit.Money
	Unpriced []string // ingredients without a cost; water is free
	Sizes    []SizeCost
}

// SizeCost is the cost of one jar of a size.
type SizeCost struct {
	JarText string
	JarKey  string
	Cost    unit.Money // ingredients in one jar
	Price   unit.Money // asked; zero when not said
	Margin  unit.Money // price less cost
}
