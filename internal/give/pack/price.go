package pack

import (
	"math/big"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// UnitPrice is a price for comparing: Tenths of a cent (penny) per Per.
type UnitPrice struct {
	Tenths   int64
	Currency string
	Per      string // "oz", "kg"
}

// PriceOf gives the price per ounce (us) or per kilogram (metric) of a net
// content; false without a price or a content. Half a tenth rounds up.
// Per kilogram: Directive 98/6/EC Art 2(b).
func PriceOf(price unit.Money, net unit.Mass, units string) (UnitPrice, bool) {
	if price.Minor <= 0 || net <= 0 {
		return UnitPrice{}, false
	}
	per, word := unit.Kilogram, "kg"
	if units == unit.US {
		per, word = unit.Ounce, "oz"
	}
	n := new(big.Int).Mul(big.NewInt(price.Minor), big.NewInt(int64(per)))
	n.Mul(n, big.NewInt(20)).Add(n, big.NewInt(int64(net)))
	n.Div(n, new(big.Int).Mul(big.NewInt(2), big.NewInt(int64(net))))
	if !n.IsInt64() {
		return UnitPrice{}, false
	}
	return UnitPrice{Tenths: n.Int64(), Currency: price.Currency, Per: word}, true
}

// cents are the signs of small coins.
var cents = map[string]string{"USD": "¢", "CAD": "¢", "AUD": "¢", "NZD": "¢", "GBP": "p"}

// In gives "90¢ per oz", "87.5¢ per oz", "$1.13 per oz", "7,50 € je kg": in
// English below one unit to the tenth of a cent, else to the cent (common
// practice, no source).
func (u UnitPrice) In(w table.Words) string {
	m := unit.Money{Minor: (u.Tenths + 5) / 10, Currency: u.Currency}
	text := w.Money([]unit.Money{m})
	if sign := cents[u.Currency]; sign != "" && u.Tenths < 1000 && !w.Knows("decimal") {
		text = unit.Decimals(u.Tenths, 10) + sign
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
			if u, ok := PriceOf(l.Price, st.Declared, p.Units); ok {
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
	PerUnit UnitPrice  // cost per oz or kg of its content
	Price   unit.Money // asked; zero when not said
	Margin  unit.Money // price less cost
}
