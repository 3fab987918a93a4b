package cook

import (
	"maps"
	"slices"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/pantry"
)

// supplies adds up what the jars need. Whether the cupboard has it is the
// packing list's to say, which knows who gets what.
func (c *calc) supplies() {
	r, s := c.r, &c.r.Supplies
	n, gifts := r.Count(), 0
	for _, g := range c.b.Gifts {
		gifts = min(gifts+min(max(g.Jars, 0), mostJars), mostJars)
	}
	holds := c.k.Supplies.PerBox()
	s.Lids, s.Labels, s.Tags, s.Boxes = n, n, gifts, (n+holds-1)/holds
	c.unknownSupplies("lids", c.k.Supplies.Lids, finishNames(c.p), "write the neck finish, such as 70-450 CT or 63 lug")
	c.unknownSupplies("jars", c.k.Supplies.Jars, jarNames(c.p), "jarmark jars lists them")
}

// unknownSupplies tells of things in the cupboard that no jar takes: a slip in
// the name would hide a shortage.
func (c *calc) unknownSupplies(what string, have map[string]int, known []string, hint string) {
	for _, name := range slices.Sorted(maps.Keys(have)) {
		if slices.Contains(known, name) {
			continue
		}
		told := c.l.Warnf("unknown-supply", c.kitchenFile(), "supplies."+what, "no jar takes %s called %q", what, name).Hinted(hint)
		if near, ok := diag.DidYouMean(name, known); ok {
			told.Hinted("did you mean " + near + "?")
		}
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
