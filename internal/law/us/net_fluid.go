package us

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/law/place"
)

// netFluid declares what is sold by fluid measure: relish (21 CFR 101.7(r)),
// syrup, a liquid (101.7(a)). A volume computed from weights is never printed.
func (p *pass) netFluid(row place.Product) {
	file, path, v := p.BatchFile(), p.Jar.FillPath, p.Jar.DeclVolume
	const hint = `fill an empty jar with water up to where the food stands, measure that water, and declare it: declared = "8 fl oz"`
	switch {
	case v > 0 && v < unit.FluidOunce/10:
		p.L.Errorf("net-too-small", file, path, "a net content of %s is too small to print", p.Jar.DeclText).Hinted("check the unit")
		return
	case v <= 0 && p.Jar.DeclText != "":
		p.Duty("net-by-measure", file, path, "%s is sold by fluid measure, and %q is none", row.Called(), p.Jar.DeclText).Hinted(hint).Cited(row.Cite)
		return
	case v <= 0:
		p.Awaits("net-not-measured", file, path, "a plan: the net content is still to come",
			"no net content is declared, and "+row.Called()+" is sold by fluid measure", hint, row.Cite)
		return
	case p.Jar.Jar.Brimful > 0 && v > p.Jar.Jar.Brimful:
		p.Duty("net-over-jar", file, path, "the label promises %s, and the jar holds %s to the brim", p.Jar.DeclText, fluidWords(p.Jar.Jar.Brimful)).Hinted("check the jar size and the unit").Cited(row.Cite)
	default:
		p.L.Notef("net-not-checked", file, path, "the declared net content was not checked with a measure").Hinted(hint).Cited("NIST Handbook 133")
	}
	p.NetVolume = v
	p.Net, _, _ = strings.Cut(fluidWords(v), " (")
	p.addNet("us.net-fluid", fluidWords(v))
}

// fluidWords prints a volume in both systems, rounded down: "8 fl oz (236 mL)";
// from a pint to below a gallon with the largest whole units in parentheses:
// "32 fl oz (1 qt) 946 mL" (21 CFR 101.7(j)(1), (m)(3), (4)); from a gallon on
// in those alone (101.7(k)).
func fluidWords(v unit.Volume) string {
	n := int64(v) * 10 / int64(unit.FluidOunce) // tenths of a fluid ounce
	metric := v.MetricNet()
	switch {
	case n < 160:
		return unit.Decimals(n, 10) + " fl oz (" + metric + ")"
	case n < 1280:
		return unit.Decimals(n, 10) + " fl oz (" + wholeMeasures(n) + ") " + metric
	}
	return wholeMeasures(n) + " (" + metric + ")"
}

// wholeMeasures writes tenths of a fluid ounce in gallons, quarts, pints and
// ounces, the largest first.
func wholeMeasures(n int64) string {
	var out []string
	for _, m := range []struct {
		per  int64
		name string
	}{{1280, " gal"}, {320, " qt"}, {160, " pt"}} {
		if k := n / m.per; k > 0 {
			out = append(out, strconv.FormatInt(k, 10)+m.name)
			n -= k * m.per
		}
	}
	if n > 0 || len(out) == 0 {
		out = append(out, unit.Decimals(n, 10)+" oz")
	}
	return strings.Join(out, " ")
}
