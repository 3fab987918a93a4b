package cook

import (
	"maps"
	"slices"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// ribbonEach is the ribbon of one gift jar: own default, no source.
const ribbonEach = 600 * unit.Millimetre

// supplies adds up what the jars need and compares it with the cupboard.
func (c *calc) supplies() {
	r, s := c.r, &c.r.Supplies
	n, gifts := r.Count(), 0
	for _, g := range c.b.Gifts {
		if g.Jars > 0 {
			gifts = min(gifts+min(g.Jars, mostJars), mostJars)
		}
	}
	holds := c.k.Supplies.PerBox()
	s.Lids, s.Labels, s.Tags, s.Boxes = n, n, gifts, (n+holds-1)/holds
	s.Ribbon = unit.Length(gifts) * ribbonEach
	c.shortages()
}

// shortages compares need and cupboard. Lids and jars of counted batches are
// used already.
func (c *calc) shortages() {
	have, need := c.k.Supplies, c.r.Supplies
	c.unknownSupplies("lids", have.Lids, finishNames(c.p), "write the neck finish, such as 70-450 CT or 63 lug")
	c.unknownSupplies("jars", have.Jars, jarNames(c.p), "jarmark jars lists them")
	lids, jars := map[string]int{}, map[string]int{}
	for _, j := range c.r.Jars {
		if j.How == Estimated {
			lids[j.Jar.Lid] += j.Count
			jars[j.Jar.Key] += j.Count
		}
	}
	c.shortOf("lids", lids, have.Lids)
	c.shortOf("jars", jars, have.Jars)
	if n, ok := have.Labels[c.b.Label.Sheet]; ok {
		c.short("labels for "+c.b.Label.Sheet, need.Labels, n)
	}
	c.short("tags", need.Tags, have.Tags)
	c.short("boxes", need.Boxes, have.Boxes)
	if have.Ribbon >= 0 && need.Ribbon > have.Ribbon {
		c.lacking("the gift jars take %.1f m of ribbon, the cupboard has %.1f m", need.Ribbon.MM()/1000, have.Ribbon.MM()/1000)
	}
}

// unknownSupplies tells of things in the cupboard that no jar takes: a slip in
// the name would hide a shortage.
func (c *calc) unknownSupplies(what string, have map[string]int, known []string, hint string) {
	for _, name := range slices.Sorted(maps.Keys(have)) {
		if slices.Contains(known, name) {
			continue
		}
		if near, ok := diag.DidYouMean(name, known); ok {
			hint = "did you mean " + near + "?"
		}
		c.l.Warnf("unknown-supply", c.kitchenFile(), "supplies."+what, "no jar takes %s called %q", what, name).Hinted(hint)
	}
}

func finishNames(p *pantry.Pantry) (out []string) {
	for _, j := range p.Jars() {
		out = append(out, j.Lid)
	}
	for _, f := range p.Finishes() {
		out = append(out, f.Name)
	}
	return out
}

func jarNames(p *pantry.Pantry) (out []string) {
	for _, j := range p.Jars() {
		out = append(out, j.Key)
	}
	return out
}

func (c *calc) kitchenFile() string {
	if c.k.File != nil {
		return c.k.File.Name
	}
	return ""
}

// shortOf compares counts by name, in a fixed order.
func (c *calc) shortOf(what string, need, have map[string]int) {
	for _, name := range slices.Sorted(maps.Keys(need)) {
		if n, ok := have[name]; ok {
			c.short(name+" "+what, need[name], n)
		}
	}
}

// short warns when the cupboard has less than needed; below zero is unknown.
func (c *calc) short(what string, need, have int) {
	if have >= 0 && need > have {
		c.lacking("this batch takes %d %s, the cupboard has %d", need, what, have)
	}
}

func (c *calc) lacking(format string, args ...any) {
	c.l.Warnf("supplies-short", c.kitchenFile(), "supplies", format, args...).Hinted("buy more, or change what the kitchen file says is there")
}
