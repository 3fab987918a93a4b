package eu

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/weigh"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// net adds the nominal quantity in metric units, figures of the height the
// quantity asks, in one field of view with the name.
func (c *pass) net() {
	if c.liquid() && c.Jar.DeclVolume >= unit.Millilitre {
		c.netVolume()
		return
	}
	m := c.nominal()
	if m == 0 {
		return
	}
	c.NetMass, c.Net = m, mass(m, c.dec)
	c.addNet(m)
}

// liquid foods are sold by volume (Art 23(1)(a)): which kinds pour is the table's.
func (c *pass) liquid() bool { return draft.Has(c.law.Liquid, string(c.B.Product)) }

// netVolume adds the declared volume in whole millilitres; one worked out from
// weights is never printed. The heights of figures are the same for grams and
// millilitres (Directive 76/211/EEC Annex I no. 3.1).
func (c *pass) netVolume() {
	v := c.Jar.DeclVolume / unit.Millilitre * unit.Millilitre
	if full := c.Jar.Jar.Brimful; full > 0 && v > full {
		c.Duty("net-over-jar", c.BatchFile(), c.Jar.FillPath, "the label promises %s, and the jar holds %s to the brim", volume(v, c.dec), volume(full, c.dec)).
			Hinted("check the jar size and the unit").Cited(citeNet)
	}
	c.NetVolume, c.Net = v, volume(v, c.dec)
	c.addNet(unit.Grams(v.ML()))
}

// addNet adds the text of the net quantity; m chooses the height of its figures.
func (c *pass) addNet(m unit.Mass) {
	c.add(label.Block{Kind: label.Net, Exact: true, With: []label.Kind{label.Identity}, Cite: citeNet,
		Runs: []label.Run{{Text: c.Net}}, Path: c.Jar.FillPath,
		Min: label.Height{On: label.Digit, Length: c.law.DigitHeight(m)}})
}

// byVolume asks for a volume where a liquid's weight is declared.
func (c *pass) byVolume() {
	if c.liquid() && c.Jar.DeclText != "" {
		c.L.Warnf("net-by-measure", c.BatchFile(), c.Jar.FillPath, "what pours is sold by volume, and %q is none", c.Jar.DeclText).
			Hinted(`fill an empty jar with water up to where the food stands, measure that water, and declare it: declared = "250 ml"; a syrup too thick to pour is sold by weight`).
			Cited("Regulation (EU) No 1169/2011 Art 23(1)(a)")
	}
}

// nominal is the declared quantity in whole grams, or what the weighed jars
// support; a computed content is never declared for sale. 0 = there is none.
func (c *pass) nominal() unit.Mass {
	if m := c.Jar.Declared / unit.Gram * unit.Gram; m > 0 {
		c.byVolume()
		c.unpromised(m)
		return m
	}
	if len(c.Jar.Weighed) > 0 {
		a, l := c.pack.Recommend(c.sample())
		c.L = append(c.L, l...)
		if a.Declared != 0 {
			c.L.Notef("net-from-weights", c.BatchFile(), c.Jar.FillPath, "no net quantity is declared; the weighed jars support %s", a.Text).
				Hinted("declare it, or a smaller one").Cited(a.Cite)
			return a.Declared
		}
	}
	if c.Jar.DeclVolume > 0 {
		c.missing("net-by-weight", label.Net, c.Jar.FillPath, strconv.Quote(c.Jar.DeclText)+" is a volume, and what is not liquid is sold by weight").
			Hinted("weigh a filled jar less the empty one and declare grams").Cited("Regulation (EU) No 1169/2011 Art 23(1)")
		return 0
	}
	c.pending("no-net", label.Net, c.Jar.FillPath, draft.NetToCome, "no net quantity is declared and no jar was weighed",
		"weigh some filled jars less the empty jar; the computed content is only an estimate", citeNet)
	if !c.O.Gift {
		return 0
	}
	return c.Jar.Fill / (10 * unit.Gram) * (10 * unit.Gram)
}

// unpromised reports a declared quantity that the weighed jars do not bear out, by
// the packers' rules (Directive 76/211/EEC Annex I no. 1, legislation.gov.uk, read
// 28 Nov 2026): "the actual contents shall not be less, on average, than the nominal
// quantity", the share of jars short by more than the tolerance "sufficiently
// small", none short by twice as much. What the sample cannot show of the whole
// batch is weigh's to say.
func (c *pass) unpromised(m unit.Mass) {
	if len(c.Jar.Weighed) == 0 {
		return
	}
	r, _ := c.pack.Check(m, c.sample())
	if r.N == 0 {
		return
	}
	file, path := c.BatchFile(), c.Jar.FillPath
	switch {
	case r.Mean < m:
		c.Duty("net-over-average", file, path, "the label promises %s, and %d weighed jars average %s; short: %s", m.InGrams(0), r.N, r.Mean.InGrams(1), c.lighterThan(m)).
			Hinted("declare less, or fill more; jarmark weigh shows the highest weight you may declare").Cited(citeNet + " no. 1.1")
	case r.Min < r.T2:
		c.L.Warnf("net-jars-short", file, path, "no jar may hold less than %s, twice the tolerance below the %s promised: %s", r.T2.InGrams(1), m.InGrams(0), c.lighterThan(r.T2)).
			Hinted("fill these jars up, keep them yourself, or declare less").Cited(citeNet + " no. 1.3")
	case r.Below*1000 > c.pack.PerMille*r.N:
		c.L.Warnf("net-jars-short", file, path, "only few jars may hold less than %s, the tolerance below the %s promised: %s", r.T1.InGrams(1), m.InGrams(0), c.lighterThan(r.T1)).
			Hinted("jarmark weigh shows the highest weight you may declare").Cited(citeNet + " no. 1.2")
	}
}

func (c *pass) sample() weigh.Sample {
	return weigh.Sample{Net: c.Jar.Weighed, Lot: max(c.Jar.Count, len(c.Jar.Weighed)), File: c.BatchFile(), Path: c.Jar.FillPath + ".net"}
}

// lighterThan names the weighed jars below a weight.
func (c *pass) lighterThan(m unit.Mass) string {
	var out []string
	for i, w := range c.Jar.Weighed {
		if w < m {
			out = append(out, fmt.Sprintf("jar %d (%s)", i+1, w.InGrams(1)))
		}
	}
	if n := len(out); n > 6 {
		out = append(out[:6], fmt.Sprintf("and %d more", n-6))
	}
	return strings.Join(out, ", ")
}
