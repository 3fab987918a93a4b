package us

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

const citeNet = "21 CFR 101.7; 15 U.S.C. 1453(a)"

// net adds the net quantity: declared by the maker, else what the lightest
// weighed jar supports. A computed content is never printed as if weighed.
func net(p *pass) {
	if row, ok := p.row(); ok && row.Measure == "fluid" {
		p.netFluid(row)
		return
	}
	m, ok := p.declared()
	if !ok {
		return
	}
	p.NetMass = m
	p.unpromised(m)
	p.Net, _, _ = strings.Cut(netWords(m, false), " (")
	p.addNet("us.net", netWords(m, p.netDual(m)))
}

func (p *pass) addNet(key, words string) {
	height, zone := p.netHeight()
	p.add(label.Block{Kind: label.Net, Runs: []label.Run{{Text: p.Say.Say(key, "net", words), Bold: true}},
		Min: height, Zone: zone, Clear: true, Required: true, Exact: true, Cite: citeNet, Verified: p.Set.Net.Confidence, Path: p.Jar.FillPath})
}

// netDual reports whether ounces stand beside the pounds: the set's form,
// unless the maker chose. The pounds alone satisfy the statute and not the
// text of the regulation.
func (p *pass) netDual(m unit.Mass) bool {
	dual := p.Set.Net.Form == "dual" && p.K.NetForm != "pounds" || p.K.NetForm == "dual"
	if !dual && m >= unit.Pound && m < 4*unit.Pound {
		p.L.Notef("net-form", p.KitchenFile(), "net_form", "the net weight is in pounds alone; the regulation still asks for ounces, with the pounds in parentheses").
			Hinted("net_form = \"dual\" satisfies both").Cited("21 CFR 101.7(j)(1), (m)(1); 15 U.S.C. 1453(a)(3)(A)(i)")
	}
	return dual
}

// declared finds the weight to print.
func (p *pass) declared() (unit.Mass, bool) {
	file, path := p.BatchFile(), p.Jar.FillPath
	if p.Jar.Declared > 0 {
		if owed(p.Jar.Declared) <= 0 {
			p.L.Errorf("net-too-small", file, path, "a net weight of %s is too small to print", p.Jar.Declared.Format(unit.Metric)).Hinted("check the unit")
			return 0, false
		}
		return p.Jar.Declared, true
	}
	if p.Jar.DeclText != "" {
		p.Duty("net-by-weight", file, path, "%s is sold by weight, and %q is none", calledWhat(p.B), p.Jar.DeclText).
			Hinted("weigh a filled jar less the empty one and declare ounces or grams").Cited(citeNet)
	}
	if least, i := lightest(p.Jar.Weighed); i >= 0 && owed(least) > 0 {
		p.L.Notef("net-from-weights", file, path, "no net weight is declared, so the lightest of %d weighed jars sets it: %s", len(p.Jar.Weighed), netWords(least, false)).
			Hinted("jarmark weigh shows the highest weight you may declare").Cited(citeNet)
		return least, true
	}
	p.Awaits("net-not-weighed", file, path, draft.NetToCome, "no net weight is declared and no jar was weighed",
		"weigh 3 or more filled jars less the empty jar and write net = [...] here, or declare what you know", citeNet)
	return 0, false
}

// lightest gives the least positive weight and its place, -1 without one.
func lightest(weights []unit.Mass) (unit.Mass, int) {
	at := -1
	for i, w := range weights {
		if w > 0 && (at < 0 || w < weights[at]) {
			at = i
		}
	}
	if at < 0 {
		return 0, -1
	}
	return weights[at], at
}

// unpromised reports a label that promises more than the jars hold. There is no
// tolerance for the average (NIST Handbook 133); the statistics are weigh's.
func (p *pass) unpromised(m unit.Mass) {
	need, file, path := owed(m), p.BatchFile(), p.Jar.FillPath
	var sum unit.Mass
	var short []string
	for i, w := range p.Jar.Weighed {
		sum += w
		if w < need {
			short = append(short, fmt.Sprintf("jar %d (%s)", i+1, grams(w)))
		}
	}
	n := unit.Mass(len(p.Jar.Weighed))
	switch {
	case n == 0:
		p.L.Notef("net-not-checked", file, path, "the declared net weight was not checked on a scale").
			Hinted("weigh some filled jars less the empty jar and write net = [...]").Cited("NIST Handbook 133")
	case sum < need*n:
		p.Duty("net-over-average", file, path, "the label promises %s, and %d weighed jars average %s; short: %s", grams(need), n, grams(sum/n), some(short)).
			Hinted("declare less, or fill more; jarmark weigh shows the highest weight you may declare").Cited("NIST Handbook 133 ch. 2; " + citeNet)
	case len(short) > 0:
		p.L.Warnf("net-jars-short", file, path, "the average is right, and these jars hold less than the %s promised: %s", grams(need), some(short)).
			Hinted("jarmark weigh tells whether any is too short to sell").Cited("NIST Handbook 133 ch. 2")
	}
}

func some(list []string) string {
	if len(list) > 6 {
		return strings.Join(list[:6], ", ") + fmt.Sprintf(" and %d more", len(list)-6)
	}
	return strings.Join(list, ", ")
}

// grams prints a weight of a finding to a tenth of a gram.
func grams(m unit.Mass) string { return tenths(int64(m)/int64(unit.Gram/10)) + " g" }

// netHeight gives the least letter height for the jar's panel and the zone.
func (p *pass) netHeight() (label.Height, label.Zone) {
	const in2 = 645.16
	area := p.C.PanelArea
	if area <= 0 {
		area = 25 * in2
		p.L.Warnf("jar-not-measured", p.BatchFile(), p.Jar.FillPath, "the size of the jar is not known, so the letters are sized for a panel of 25 in²").
			Hinted("write circumference and straight height of the jar in kitchen.toml").Cited("21 CFR 101.1, 101.7(i)")
	}
	zone := label.Bottom
	if area <= float64(p.Set.Net.Waive)*in2 {
		zone = label.Panel
	}
	return label.Height{On: label.AnyCase, Length: p.Set.Net.Height(area / in2)}, zone
}

// netWords prints a weight in both systems, each rounded down so that neither
// overstates (HB 130 UPLR): "10 oz (283 g)", "1 lb 8 oz (680 g)"; dual, from
// 1 lb to below 4 lb, "24 oz (1 lb 8 oz) 680 g".
func netWords(m unit.Mass, dual bool) string {
	n, per := ounceUnits(m)
	metric := metricWords(m)
	pound := 16 * per
	switch {
	case n < pound:
		return decimals(n, per) + " oz (" + metric + ")"
	case dual && n < 4*pound:
		return decimals(n, per) + " oz (" + pounds(n, per) + ") " + metric
	}
	return pounds(n, per) + " (" + metric + ")"
}

// ounceUnits counts whole tenths of an ounce, or hundredths where the weight
// is exactly some (at most two decimals are allowed, 21 CFR 101.7(d)).
func ounceUnits(m unit.Mass) (n, per int64) {
	if n := wholeUnits(m, 100); n%10 != 0 && m-ouncesAt(n, 100) <= 1 {
		return n, 100
	}
	return wholeUnits(m, 10), 10
}

// wholeUnits counts whole n/per ounces. A tenth of an ounce is no whole number
// of nanograms, so a weight that is its rounded value counts as the tenth.
func wholeUnits(m unit.Mass, per int64) int64 {
	n := int64(m) * per / int64(unit.Ounce)
	if ouncesAt(n+1, per) == m {
		n++
	}
	return n
}

// ouncesAt is n/per ounces, rounded down to a nanogram.
func ouncesAt(n, per int64) unit.Mass { return unit.Mass(n * int64(unit.Ounce) / per) }

func pounds(n, per int64) string {
	lb, rest := n/(16*per), n%(16*per)
	if rest == 0 {
		return strconv.FormatInt(lb, 10) + " lb"
	}
	return strconv.FormatInt(lb, 10) + " lb " + decimals(rest, per) + " oz"
}

// decimals gives n/per in decimals without trailing zeros; per is a power of 10.
func decimals(n, per int64) string {
	s := strconv.FormatInt(n/per, 10)
	if rest := n % per; rest != 0 {
		s += "." + strings.TrimRight(strconv.FormatInt(per+rest, 10)[1:], "0")
	}
	return s
}

func tenths(n int64) string { return decimals(n, 10) }

// metricUnits gives the metric figure as n steps: three digits, rounded down.
func metricUnits(m unit.Mass) (n int64, step unit.Mass) {
	step = unit.Gram / 1000
	for m/step >= 1000 {
		step *= 10
	}
	return int64(m / step), step
}

// metricWords prints grams below 1 kg and kilograms from there.
func metricWords(m unit.Mass) string {
	n, step := metricUnits(m)
	whole := n * int64(step/(unit.Gram/1000)) // in mg
	if whole >= 1_000_000 {
		return decimals(whole, 1_000_000) + " kg"
	}
	return decimals(whole, 1000) + " g"
}

// owed is what a label printed for m promises: where the two figures differ the
// larger is enforced (NIST, HB 130 UPLR).
func owed(m unit.Mass) unit.Mass {
	n, per := ounceUnits(m)
	k, step := metricUnits(m)
	return max(ouncesAt(n, per), unit.Mass(k)*step)
}
