package us

import (
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"

	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// Panel areas and heights: 21 CFR 101.1(b), 101.7(i); cylinder d × h in inches.
func TestPanel(t *testing.T) {
	const pi = 3.14159265358979
	for _, x := range []struct {
		d, h, area float64
		least      unit.Length
		zone       label.Zone
	}{
		{1.75, 2.0, 4.40, unit.Inch / 16, label.Panel}, // the 30 % zone is waived, 101.7(f)
		{2.75, 3.75, 12.96, unit.Inch / 8, label.Bottom},
		{3.2, 5.0, 20.11, unit.Inch / 8, label.Bottom},
		{3.6, 6.8, 30.76, unit.Inch * 3 / 16, label.Bottom},
	} {
		j := pantry.Jar{Panel: unit.Length(x.h * float64(unit.Inch)), Circumference: unit.Length(x.d * pi * float64(unit.Inch))}
		if got := draft.PanelArea(j) / 645.16; got < x.area-0.01 || got > x.area+0.01 {
			t.Errorf("%v x %v: area %.3f, want %v", x.d, x.h, got, x.area)
		}
		r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 500}, part{"sugar", 500})
		c, _ := Declare(r, cook.JarPlan{Jar: j, Declared: 4 * unit.Ounce}, rulesOf(t, "us"), draft.Options{})
		b, ok := c.Find(label.Net)
		if !ok || b.Min != (label.Height{On: label.AnyCase, Length: x.least}) || b.Zone != x.zone || !b.Clear || !b.Required {
			t.Errorf("%v x %v: %+v, want %d in zone %d", x.d, x.h, b, x.least, x.zone)
		}
	}
	for _, x := range []struct {
		in2  float64
		want unit.Length
	}{{5, unit.Inch / 16}, {5.01, unit.Inch / 8}, {25, unit.Inch / 8}, {100, unit.Inch * 3 / 16}, {400, unit.Inch / 4}, {401, unit.Inch / 2}} {
		if got := rulesOf(t, "us").Net.Height(x.in2); got != x.want {
			t.Errorf("%v in²: %d, want %d", x.in2, got, x.want)
		}
	}
}

// A label never promises what no scale has seen.
func TestNetNeedsAScale(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 500}, part{"sugar", 500})
	jar := jar8(0)
	jar.Weighed, jar.Fill = nil, 302*unit.Gram
	c, l := Declare(r, jar, rulesOf(t, "us"), draft.Options{})
	if d, ok := found(l, "net-not-weighed"); !ok || d.Severity != diag.Error || d.Path != "fill[0]" {
		t.Errorf("not weighed: %v", l)
	}
	if _, ok := c.Find(label.Net); ok {
		t.Error("a computed weight is printed")
	}
	_, l = Declare(r, jar, rulesOf(t, "us"), draft.Options{Gift: true})
	if d, _ := found(l, "net-not-weighed"); d.Severity != diag.Note || l.HasErrors() {
		t.Errorf("gift: %v", l)
	}
	jar.Weighed = []unit.Mass{290 * unit.Gram, 285500 * unit.Gram / 1000, 288 * unit.Gram}
	c, l = Declare(r, jar, rulesOf(t, "us"), draft.Options{})
	if _, ok := found(l, "net-from-weights"); !ok || text(c, label.Net) != "Net Wt 10 oz (285 g)" {
		t.Errorf("from weights: %q %v", text(c, label.Net), l)
	}
}

// No tolerance for the average (NIST packaging FAQ citing HB 133 2023 ch. 1).
func TestNetAgainstTheScale(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 500}, part{"sugar", 500})
	jar := jar8(10 * unit.Ounce)
	jar.Weighed = []unit.Mass{281 * unit.Gram, 284 * unit.Gram, 283 * unit.Gram}
	_, l := Declare(r, jar, rulesOf(t, "us"), draft.Options{})
	if d, ok := found(l, "net-over-average"); !ok || d.Severity != diag.Error || !strings.Contains(d.Message, "jar 1 (281 g)") {
		t.Errorf("average below: %v", l)
	}
	jar.Weighed = []unit.Mass{290 * unit.Gram, 280 * unit.Gram, 290 * unit.Gram}
	_, l = Declare(r, jar, rulesOf(t, "us"), draft.Options{})
	if d, ok := found(l, "net-jars-short"); !ok || d.Severity != diag.Warning || !strings.Contains(d.Message, "jar 2 (280 g)") || l.HasErrors() {
		t.Errorf("one short: %v", l)
	}
	jar.Declared, jar.DeclText, jar.Weighed = 0, "8 fl oz", nil
	_, l = Declare(r, jar, rulesOf(t, "us"), draft.Options{})
	if _, ok := found(l, "net-by-weight"); !ok {
		t.Errorf("a volume passes: %v", l)
	}
}

// 21 CFR 101.7(m)(1): "A declaration of 1 1/2 pounds weight shall be expressed
// as "Net Wt. 24 oz (1 lb 8 oz),""; 15 U.S.C. 1453(a)(3)(A)(i) asks the pounds.
func TestNetFormFromOneToFourPounds(t *testing.T) {
	r := pot(t, batch.Jam, "Strawberry jam", measured(66), part{"strawberries", 5000}, part{"sugar", 5500})
	for form, want := range map[string]string{"": "Net Wt 24 oz (1 lb 8 oz) 680 g", "dual": "Net Wt 24 oz (1 lb 8 oz) 680 g", "pounds": "Net Wt 1 lb 8 oz (680 g)"} {
		r.Kitchen.NetForm = form
		c, l := Declare(r, jar8(24*unit.Ounce), rulesOf(t, "us"), draft.Options{})
		if got := text(c, label.Net); got != want || (codeOf(l, "net-form") != "") != (form == "pounds") {
			t.Errorf("form %q: %q, want %q, %v", form, got, want, l)
		}
	}
	// (m)(2): three-fourths pound is "Net Wt. 12 oz"; our own metric beside it.
	if c, _ := Declare(r, jar8(12*unit.Ounce), rulesOf(t, "us"), draft.Options{}); text(c, label.Net) != "Net Wt 12 oz (340 g)" {
		t.Errorf("12 oz: %q", text(c, label.Net))
	}
}
