package us

import (
	"fmt"
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
	p.Net, _, _ = strings.Cut(unit.NetWords(m, false), " (")
	p.addNet("us.net", unit.NetWords(m, p.netDual(m)))
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
		if unit.Owed(p.Jar.Declared) <= 0 {
			p.L.Errorf("net-too-small", file, path, "a net weight of %s is too small to print", p.Jar.Declared.Format(unit.Metric)).Hinted("check the unit")
			return 0, false
		}
		return p.Jar.Declared, true
	}
	if p.Jar.DeclText != "" {
		p.Duty("net-by-weight", file, path, "%s is sold by weight, and %q is none", calledWhat(p.B), p.Jar.DeclText).
			Hinted("weigh a filled jar less the empty one and declare ounces or grams").Cited(citeNet)
	}
	if least, i := lightest(p.Jar.Weighed); i >= 0 && unit.Owed(least) > 0 {
		p.L.Notef("net-from-weights", file, path, "no net weight is declared, so the lightest of %d weighed jars sets it: %s", len(p.Jar.Weighed), unit.NetWords(least, false)).
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
	need, file, path := unit.Owed(m), p.BatchFile(), p.Jar.FillPath
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
func grams(m unit.Mass) string { return unit.Decimals(int64(m)/int64(unit.Gram/10), 10) + " g" }

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
