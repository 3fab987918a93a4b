package cook

import (
	"maps"
	"slices"

	"jarmark/internal/kit/unit"
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
	file := ""
	if c.k.File != nil {
		file = c.k.File.Name
	}
	c.l.Warnf("supplies-short", file, "supplies", format, args...).Hinted("buy more, or change what the kitchen file says is there")
}
