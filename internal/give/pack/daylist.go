package pack

import (
	"strconv"
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// dayParts is what a market day wants beside the jars: prices for the cards,
// change, what else to carry, and room for the takings. One page then holds the
// whole day.
func (p *Plan) dayParts(s Stop) []table.Part {
	say := p.in.Say
	prices := table.Part{Title: say("Prices of the day"), Compact: true, Not: table.OnSheet, Columns: []string{say("jam"), say("net"), say("price"), say("unit price")}}
	all := []unit.Money(nil)
	for _, c := range p.Cards() {
		if c.Price.Minor > 0 {
			all = append(all, c.Price)
			prices.Rows = append(prices.Rows, table.Row{What: c.Name + ", " + c.Lot, Figures: []string{c.Net, p.in.Money([]unit.Money{c.Price}), c.Unit}})
		} else {
			prices.Rows = append(prices.Rows, table.Row{What: c.Name + ", " + c.Lot, Figures: []string{c.Net, say("no price"), ""}})
		}
	}
	carry := table.Part{Title: say("To carry besides"), Compact: true, Not: table.OnSheet}
	put := func(amount, what, note string) {
		carry.Rows = append(carry.Rows, table.Row{Tick: true, Amount: amount, What: what, Note: note})
	}
	put(strconv.Itoa(len(prices.Rows)), say("price cards"), "")
	put("1", say("allergen sheet"), "jarmark pack --stall")
	if p.permit != "" {
		put("1", say("permit or registration"), p.permit)
	}
	put("", say("bags, cloth, pen, this page"), "")
	if p.float.Minor > 0 {
		put("", say("change to begin with: %s", p.in.Money([]unit.Money{p.float})), "")
	} else {
		put("", say("change to begin with"), "")
	}
	if pieces, sum := change(all, p.in); pieces != "" {
		carry.Rows = append(carry.Rows, table.Row{Type: table.Aside, What: say("ten buyers who each pay one jar with %s get back %s: %s in all", p.in.Money([]unit.Money{{Minor: paidWith, Currency: sum.Currency}}), pieces, p.in.Money([]unit.Money{sum}))})
	}
	evening := table.Part{Title: say("In the evening"), Compact: true, Not: table.OnSheet | table.OnText | table.OnScreen}
	evening.Rows = append(evening.Rows, table.Row{Type: table.Write, What: say("Counted in the box, less the change; cards; sum. If all is sold: %s", p.in.Money(s.Value)), Lines: 1})
	return []table.Part{prices, carry, evening}
}

// coins are the notes and coins that change is given in, largest first, in
// minor units (US: 31 U.S.C. 5112 and 5115; euro: Regulation (EC) No 974/98 and
// its coins; both from memory).
var coins = map[string][]int64{
	"USD": {1000, 500, 100, 25, 10, 5, 1}, "EUR": {1000, 500, 200, 100, 50, 20, 10, 5, 2, 1}, "GBP": {1000, 500, 200, 100, 50, 20, 10, 5, 2, 1},
}

// paidWith is the note most buyers bring, a twenty (common practice, no source).
const paidWith = 2000

// change is what ten buyers ask back who each pay one jar, of every price in
// turn, with a twenty: "10 × $10.00, 20 × $1.00", and its sum.
func change(prices []unit.Money, w table.Words) (pieces string, sum unit.Money) {
	if len(prices) == 0 || coins[prices[0].Currency] == nil {
		return "", sum
	}
	sum.Currency = prices[0].Currency
	count := map[int64]int{}
	for i := range 10 {
		m := prices[i%len(prices)]
		back := (paidWith - m.Minor%paidWith) % paidWith
		sum.Minor += back
		for _, c := range coins[m.Currency] {
			count[c] += int(back / c)
			back %= c
		}
	}
	var out []string
	for _, c := range coins[prices[0].Currency] {
		if n := count[c]; n > 0 {
			out = append(out, strconv.Itoa(n)+" × "+w.Money([]unit.Money{{Minor: c, Currency: prices[0].Currency}}))
		}
	}
	return strings.Join(out, ", "), sum
}
