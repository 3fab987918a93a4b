package cook

import (
	"fmt"
	"math"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// mostJars is the most of one size in one batch; more is a slip of the pen.
const mostJars = 10_000

// jars plans what the pot fills.
func (c *calc) jars() {
	fills := c.fills
	if len(fills) == 0 {
		fills = []batch.Fill{{Jar: usualJar(c.k.Units), Count: -1, Sealed: -1}}
	}
	density := c.r.HotDensity()
	c.r.headspace = c.headspace(batch.Fill{})
	for _, f := range fills {
		c.jar(f, density)
	}
	c.estimate()
	c.checkCounts()
}

// jar plans one size; one that nobody knows is told and left out.
func (c *calc) jar(f batch.Fill, density float64) {
	j, ok := c.p.Jar(f.Jar)
	if !ok {
		c.errorf("unknown-jar", f.Path+".jar", "no jar is called %q", f.Jar).
			Hinted("write one of " + c.jarKeys() + ", a size such as \"8 fl oz\", or add your own [[jar]] to the kitchen file")
		return
	}
	plan := JarPlan{
		FillPath: f.Path, Jar: j, How: Given, Count: f.Count, Sealed: f.Sealed, Checked: f.Sealed >= 0,
		Fill: grams(j.FillVolume(c.headspace(f)).ML() * density), Weighed: f.Net, Part: positive(f.PartJar), Price: f.Price,
	}
	if plan.Fill == 0 {
		c.errorf("no-room-in-jar", f.Path, "the headspace leaves no room in a %s jar", j.Key).Hinted("check headspace, brimful and mouth")
	}
	c.declared(&plan, f)
	c.counted(&plan)
	c.r.Jars = append(c.r.Jars, plan)
}

// counted checks the counts of one jar size.
func (c *calc) counted(j *JarPlan) {
	if j.Count > mostJars {
		c.errorf("too-many-jars", j.FillPath+".count", "%d jars of one size can't come from one batch; %d are taken", j.Count, mostJars).Hinted("check the count")
		j.Count = mostJars
	}
	if j.Count < 0 {
		j.How = Estimated
		return
	}
	if j.Sealed > j.Count {
		c.errorf("sealed-over-count", j.FillPath+".sealed", "%d sealed jars are more than the %d filled", j.Sealed, j.Count).Hinted("check both counts")
	}
	if j.Sealed < 0 {
		j.Sealed = j.Count
	}
	j.Sealed = min(j.Sealed, j.Count)
}

// mostJarKeys is how many keys of jars a hint lists: all that are built in, and
// some of the maker's own, which come first.
const mostJarKeys = 40

func (c *calc) jarKeys() string {
	var keys []string
	for _, j := range c.p.Jars() {
		keys = append(keys, j.Key)
	}
	if len(keys) > mostJarKeys {
		keys = append(keys[:mostJarKeys], "…")
	}
	return strings.Join(keys, ", ")
}

// declared takes over the declared net content and looks whether it can be;
// what the law makes of it is not decided here.
func (c *calc) declared(j *JarPlan, f batch.Fill) {
	j.DeclText = f.Declared.Text
	j.DeclVolume, j.Declared = f.Declared.Volume, f.Declared.Mass
	if j.Declared == 0 || j.Fill == 0 || c.incomplete {
		return
	}
	where, share := j.FillPath+".declared", j.Declared.Grams()/j.each()
	weighed, most := len(f.Net) > 0, c.brim(j.Jar)
	switch {
	case !weighed && most > 0 && j.Declared > most:
		c.errorf("declared-over-brim", where, "%s declared is more than a jar of %s can hold, filled to the brim: %s", j.DeclText, j.Jar.Description, c.say(most)).
			Hinted("check the jar and the weight: the net weight is without jar and lid; a jar of your own can be measured, see [[jar]] in kitchen.toml").Cited(citeBrim)
	case fluidOunces(f.Declared, j.Jar) && share < 0.9:
		c.warnf("declared-fluid-ounces", where, "is %s fluid ounces? that is the size of the jar; by weight it holds %s", j.DeclText, c.say(grams(j.each()))).
			Hinted("the net weight of jam is by weight: weigh full jars less the empty jar, and declare the least").Cited("21 CFR 101.7(a)")
	case !weighed && share > 1.03:
		c.warnf("declared-over-fill", where, "%s declared is more than the %s a jar of %s is computed to hold under its headspace", j.DeclText, c.say(j.Fill), j.Jar.Description).
			Hinted("weigh several full jars and declare the least of them")
	case !weighed && share < 0.6:
		c.notef("declared-under-fill", where, "%s declared is far less than the %s a jar of %s is computed to hold", j.DeclText, c.say(j.Fill), j.Jar.Description).
			Hinted("check the jar size and the unit")
	}
}

const citeBrim = "volume to the brim, upper end of the table (from memory, 5 % allowed for) or as measured, times the density of the cold jam"

// densestBrix is more than any jam holds: a density that was not measured must
// not forbid a weight.
const densestBrix = 78

// brim is more than a jar can hold of this food, filled to the brim and cold.
func (c *calc) brim(j pantry.Jar) unit.Mass {
	brix := c.r.Brix.Value
	if c.r.Brix.How != Measured {
		brix = max(brix, densestBrix)
	}
	return grams(j.MostVolume().ML() * pantry.Density(brix, 20) / 1000)
}

// fluidOunces reports a weight in ounces that is the very number of fluid
// ounces the jar is called by.
func fluidOunces(d unit.Quantity, j pantry.Jar) bool {
	off := d.Mass.Ounces() - float64(j.Nominal)/float64(unit.FluidOunce)
	return strings.Contains(strings.ToLower(d.Text), "o") && math.Abs(off) < 0.05
}

// say prints a weight in the kitchen's units.
func (c *calc) say(m unit.Mass) string { return m.Format(c.k.Units) }

// Content gives what one jar holds: the mean of weighed jars, else the computed
// fill.
func (j JarPlan) Content() unit.Mass { return grams(j.each()) }

func (j JarPlan) each() float64 {
	sum, n := 0.0, 0.0
	for _, m := range j.Weighed {
		if m > 0 {
			sum, n = sum+m.Grams(), n+1
		}
	}
	if n > 0 {
		return sum / n
	}
	return j.Fill.Grams()
}

// held is what the counted jars hold, in grams.
func (r *Result) held() (g float64) {
	for _, j := range r.Jars {
		if j.How == Given {
			g += float64(j.Count)*j.each() + j.Part.Grams()
		}
	}
	return g
}

// estimate counts jars nobody has counted. With shares each size takes its
// part of the pot; without, sizes are filled in the order written, and what
// does not fill a jar goes to the next size. The last rest is a partial jar.
func (c *calc) estimate() {
	parts := c.portions(positive(c.r.Yield.Mass.Grams() - c.r.held()))
	left := 0.0
	var last *JarPlan
	for i := range c.r.Jars {
		j := &c.r.Jars[i]
		if j.How != Estimated {
			continue
		}
		left += parts[i]
		j.Count = 0
		if g := j.each(); g != 0 {
			j.Count = int(math.Min(math.Floor(left/g+0.01), mostJars)) // a jar 1 % short is a full jar
			left = positive(left - float64(j.Count)*g)
		}
		j.Sealed, j.Checked = j.Count, false
		last = j
	}
	if last != nil && left > 0.05*last.each() && last.Count < mostJars {
		last.Part = grams(left)
	}
}

// portions splits the pot over the sizes nobody counted: those with a share get
// it, the first without one what is left over.
func (c *calc) portions(pot float64) []float64 {
	out := make([]float64, len(c.r.Jars))
	sum, open := 0.0, -1
	for i, j := range c.r.Jars {
		if j.How != Estimated {
			continue
		}
		out[i] = c.shareOf(j.FillPath)
		sum += out[i]
		if out[i] == 0 && open < 0 {
			open = i
		}
	}
	whole := sum
	if open >= 0 {
		whole = max(1, sum) // shares of more than the pot leave nothing over
		out[open] = whole - sum
	}
	for i := range out {
		out[i] *= pot / whole
	}
	return out
}

// shareOf is the share of a size; more than a million, or no number, is none.
func (c *calc) shareOf(where string) float64 {
	for _, f := range c.fills {
		if f.Path == where && f.Share < 1e6 {
			return positive(f.Share)
		}
	}
	return 0
}

// checkCounts compares counted jars with what the pot can hold. Too few jars
// are only known when all sizes are counted.
func (c *calc) checkCounts() {
	r, all, where := c.r, true, ""
	for _, j := range r.Jars {
		if j.How == Given && where == "" {
			where = j.FillPath + ".count"
		}
		all = all && j.How == Given
	}
	held, pot := r.held(), r.Yield.Mass.Grams()
	if c.incomplete || where == "" || pot <= 0 || held <= 0 {
		return
	}
	if off := held/pot - 1; off > 0.25 || off < -0.25 && all {
		c.warnf("counts-off", where, "the counted jars hold %s, %s the %s the pot is %s to give",
			c.say(grams(held)), against(off), c.say(r.Yield.Mass), came(r.Yield.How)).
			Hinted("check counts, jar size and ingredients, or weigh the finished pot")
	}
}

// against words a difference: "30 % more than", "12 times".
func against(off float64) string {
	switch {
	case off >= 1:
		return fmt.Sprintf("%.0f times", off+1)
	case off > 0:
		return fmt.Sprintf("%.0f %% more than", 100*off)
	}
	return fmt.Sprintf("%.0f %% less than", -100*off)
}

func came(h How) string {
	if h == Measured {
		return "weighed"
	}
	return "computed"
}
