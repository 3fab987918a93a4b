package cook

import (
	"cmp"
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
	fills := c.b.Fills
	if len(fills) == 0 {
		fills = []batch.Fill{{Jar: usualJar(c.k.Units), Count: -1, Sealed: -1}}
	}
	density := c.r.HotDensity()
	c.r.headspace = c.headspace(batch.Fill{})
	for i, f := range fills {
		if j, ok := c.jar(i, f, density); ok {
			c.r.Jars = append(c.r.Jars, j)
		}
	}
	c.estimate(fills)
	c.checkCounts()
}

func (c *calc) jar(i int, f batch.Fill, density float64) (JarPlan, bool) {
	where := f.Path
	if where == "" && len(c.b.Fills) > 0 {
		where = path("fill", i, "")
	}
	j, ok := c.p.Jar(f.Jar)
	if !ok {
		c.errorf("unknown-jar", where+".jar", "no jar is called %q", f.Jar).
			Hinted("write one of " + c.jarKeys() + ", a size such as \"8 fl oz\", or add your own [[jar]] to the kitchen file")
		return JarPlan{}, false
	}
	plan := JarPlan{
		FillPath: where, Jar: j, How: Given, Count: f.Count, Sealed: f.Sealed, Checked: f.Sealed >= 0,
		Fill: grams(j.FillVolume(c.headspace(f)).ML() * density), Weighed: f.Net, Part: max(f.PartJar, 0), Price: f.Price,
	}
	if plan.Fill <= 0 && c.r.Yield.Mass > 0 {
		c.errorf("no-room-in-jar", where, "the headspace leaves no room in a %s jar", j.Key).Hinted("check headspace, brimful and mouth")
	}
	c.declared(&plan, f)
	c.counted(&plan)
	return plan, true
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
	if f.Declared.Dim == unit.ByVolume {
		j.DeclVolume = f.Declared.Volume
	}
	if f.Declared.Dim != unit.ByMass || f.Declared.Mass <= 0 {
		return
	}
	j.Declared = f.Declared.Mass
	if j.Fill <= 0 || c.incomplete {
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
func (c *calc) estimate(fills []batch.Fill) {
	rest := math.Max(0, c.r.Yield.Mass.Grams()-c.r.held())
	parts := c.portions(rest)
	left := 0.0
	last := -1
	for i := range c.r.Jars {
		j := &c.r.Jars[i]
		if j.How != Estimated {
			continue
		}
		left += parts[i]
		j.Count = 0
		if g := j.each(); g > 0 {
			j.Count = int(math.Min(math.Floor(left/g+0.01), mostJars)) // a jar 1 % short is a full jar
			left = math.Max(0, left-float64(j.Count)*g)
		}
		j.Sealed, j.Checked = j.Count, false
		last = i
	}
	if last >= 0 && left > 0.05*c.r.Jars[last].each() && c.r.Jars[last].Count < mostJars {
		c.r.Jars[last].Part = grams(left)
	}
}

// portions gives the grams each uncounted size gets first.
func (c *calc) portions(rest float64) []float64 {
	out := make([]float64, len(c.r.Jars))
	share, sum, first := make([]float64, len(out)), 0.0, -1
	for i, j := range c.r.Jars {
		if j.How != Estimated {
			continue
		}
		if first < 0 {
			first = i
		}
		if s := c.shareOf(j.FillPath); s > 0 {
			share[i] = s
			sum += s
		}
	}
	if first < 0 {
		return out
	}
	if sum == 0 {
		out[first] = rest
		return out
	}
	c.spread(out, share, sum, rest)
	return out
}

// spread splits the pot by shares; sizes without one take what is left over.
func (c *calc) spread(out, share []float64, sum, rest float64) {
	scale := 1.0
	open := -1
	for i, j := range c.r.Jars {
		if j.How == Estimated && share[i] == 0 && open < 0 {
			open = i
		}
	}
	if sum > 1 || open < 0 {
		scale = 1 / sum
	}
	for i := range out {
		out[i] = rest * share[i] * scale
	}
	if open >= 0 {
		out[open] = rest * math.Max(0, 1-sum*scale)
	}
}

func (c *calc) shareOf(where string) float64 {
	for i, f := range c.b.Fills {
		p := cmp.Or(f.Path, path("fill", i, ""))
		if p == where && f.Share > 0 && f.Share < 1e6 {
			return f.Share
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
