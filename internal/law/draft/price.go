package draft

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/law/label"
)

// What the step asks of a set.
const PriceDoc = "price and unit price of a shelf card"

var PricePhrases = []string{"price.per"}

// Price adds the price of a jar and its unit price, for shelf cards.
func (p *Draft) Price() {
	m, path := p.jarPrice()
	if m.Minor <= 0 {
		return
	}
	p.Add(label.Block{Kind: label.Price, Runs: []label.Run{{Text: p.priceText(m)}}, Path: path})
	per, content, unitOf := p.per(), int64(p.NetMass), int64(unit.PerMass[p.per()])
	if p.NetVolume > 0 {
		per, content, unitOf = "fl oz", int64(p.NetVolume), int64(unit.FluidOunce)
		if p.Set.Units == "metric" { // "one litre", Directive 98/6/EC Art 2(b)
			per, unitOf = "l", int64(unit.Litre)
		}
	}
	if each, ok := m.Per(content, unitOf); ok {
		text := p.priceText(each)
		if tenths, ok := m.Per(content, 10*unitOf); ok && p.Set.Price != nil && p.Set.Price.Tenths && tenths.Minor < 1000 {
			text = unit.Pence(tenths.Minor)
		}
		p.Add(label.Block{ID: string(label.UnitPrice), Kind: label.UnitPrice, Path: path,
			Runs: []label.Run{{Text: p.Say.Say("price.per", "price", text, "unit", per)}}})
	}
}

// per is the amount unit prices are reckoned on; the kilogram where a set does
// not say (Directive 98/6/EC Art 2(b)).
func (p *Draft) per() string {
	if p.Set.Price == nil {
		return "kg"
	}
	return p.Set.Price.Per
}

// jarPrice is what a jar costs at the market that comes next and says so, else
// the jar's own price, else that of the last market that sold it.
func (p *Draft) jarPrice() (price unit.Money, path string) {
	var open, last *batch.Market
	for i := range p.B.Markets {
		m := &p.B.Markets[i]
		if m.Price.Minor <= 0 || m.Jar != "" && !strings.EqualFold(m.Jar, p.Jar.Jar.Key) {
			continue
		}
		if last == nil || last.Date.Before(m.Date) {
			last = m
		}
		coming := m.CameHome < 0 && !m.Date.Before(p.O.Today)
		if coming && (open == nil || m.Date.Before(open.Date)) {
			open = m
		}
	}
	switch {
	case open != nil:
		return open.Price, open.Path
	case p.Jar.Price.Minor > 0:
		return p.Jar.Price, p.Jar.FillPath
	case last != nil:
		return last.Price, last.Path
	}
	return unit.Money{}, ""
}

// priceText is a price as the language writes it: "€6.50", "6,50 €".
func (p *Draft) priceText(m unit.Money) string {
	if !p.Say.Has("price.sum") {
		return stallPrice(m)
	}
	return p.Say.Say("price.sum", "n", m.Number(p.Say.Say("price.decimal"), ""), "sign", m.Sign())
}

// stallPrice is a price as an English stall writes it: "$9", "$9.50", "90¢".
func stallPrice(m unit.Money) string {
	if m.Currency == "USD" && m.Minor < 100 {
		return fmt.Sprintf("%d¢", m.Minor)
	}
	s := m.String()
	return strings.TrimSuffix(s, ".00")
}
