package pack

import (
	"jarmark/internal/give/table"
	"math/big"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// Cost spreads the ingredients' cost over the filled jars by their content; a
// last partial jar carries its share. Without any cost it gives nil and no
// finding.
func Cost(r *cook.Result) (*Costs, diag.List) {
	var found diag.List
	if r == nil || r.Batch == nil {
		return nil, nil
	}
	c := &Costs{}
	for _, l := range r.Lines {
		if l.Cost.Minor <= 0 {
			if !l.IsWater {
				c.Unpriced = append(c.Unpriced, l.Name)
			}
			continue
		}
		if c.Total.Currency != "" && l.Cost.Currency != c.Total.Currency {
			found.Errorf("mixed-currency", fileName(r), pathOfLine(l), "%s costs %s and the rest is in %s", l.Name, l.Cost, c.Total.Currency).
				Hinted("write all costs in one currency")
			return nil, found
		}
		c.Total = unit.Money{Minor: c.Total.Minor + l.Cost.Minor, Currency: l.Cost.Currency}
	}
	if c.Total.Minor == 0 {
		return nil, nil
	}
	if len(c.Unpriced) > 0 {
		found.Notef("no-cost", fileName(r), "", "the cost per jar leaves out %s", table.Join(c.Unpriced)).Hinted("add cost to the ingredient")
	}
	c.spread(r)
	return c, found
}

func pathOfLine(l cook.Line) string {
	if len(l.Paths) == 0 {
		return ""
	}
	return l.Paths[0] + ".cost"
}

func (c *Costs) spread(r *cook.Result) {
	total := new(big.Int)
	var all []pantry.Jar
	for _, j := range r.Jars {
		net, _ := netOf(j)
		n := min(max(j.Count, 0), maxJars)
		total.Add(total, new(big.Int).Mul(big.NewInt(int64(net)), big.NewInt(int64(n))))
		total.Add(total, big.NewInt(int64(max(0, j.Part))))
		all = append(all, j.Jar)
	}
	for _, j := range r.Jars {
		net, _ := netOf(j)
		if total.Sign() == 0 || net <= 0 || j.Count <= 0 {
			continue
		}
		one := c.share(net, total)
		s := SizeCost{JarText: jarText(j.Jar, all), JarKey: j.Jar.Key, Cost: one, Price: j.Price}
		if j.Price.Minor > 0 && j.Price.Currency == one.Currency {
			s.Margin = unit.Money{Minor: j.Price.Minor - one.Minor, Currency: one.Currency}
		}
		c.Sizes = append(c.Sizes, s)
	}
}

// share is the cost of net out of total, rounded to the coin, halves up.
func (c *Costs) share(net unit.Mass, total *big.Int) unit.Money {
	n := new(big.Int).Mul(big.NewInt(c.Total.Minor), big.NewInt(int64(net)))
	n.Lsh(n, 1).Add(n, total)
	n.Div(n, new(big.Int).Lsh(total, 1))
	return unit.Money{Minor: n.Int64(), Currency: c.Total.Currency}
}
