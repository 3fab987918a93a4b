package cook

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// declaredCodes computes the demo in jars of 8 fl oz with a declaration.
func declaredCodes(t *testing.T, declared, net string) (string, JarPlan) {
	t.Helper()
	b := demo(t)
	q, err := unit.ParseQuantity(declared)
	if err != nil {
		t.Fatal(err)
	}
	f := batch.Fill{Path: "fill[0]", Jar: "us8", Count: -1, Sealed: -1, Declared: q}
	if net != "" {
		m, err := unit.ParseMass(net)
		if err != nil {
			t.Fatal(err)
		}
		f.Net = []unit.Mass{m, m}
	}
	b.Fills = []batch.Fill{f}
	r, l := Compute(b, &batch.Kitchen{Units: unit.US, Supplies: batch.Supplies{Tags: -1, Boxes: -1, Ribbon: -1}}, pantry.Default())
	var got []string
	for _, d := range l {
		if strings.HasPrefix(d.Code, "declared-") {
			got = append(got, d.Code)
		}
	}
	return strings.Join(got, " "), r.Jars[0]
}

// A declaration just this side and just that side of each share of what the jar
// holds (302 g computed; own thresholds of 3 %, 40 % and 10 %, no source), and
// a weighed jar's, which the scale knows better.
func TestDeclaredSharesFromBothSides(t *testing.T) {
	_, j := declaredCodes(t, "9 oz", "")
	fill := j.Fill.Grams()
	for _, c := range []struct {
		share float64
		code  string
	}{{1.029, ""}, {1.031, "declared-over-fill"}, {0.601, ""}, {0.599, "declared-under-fill"}} {
		text := unit.Grams(fill * c.share).Format("metric")
		q := unit.Grams(fill * c.share)
		b := demo(t)
		b.Fills = []batch.Fill{{Path: "fill[0]", Jar: "us8", Count: -1, Sealed: -1, Declared: unit.Quantity{Dim: unit.ByMass, Mass: q, Text: text}}}
		_, l := compute(t, b)
		for _, code := range []string{"declared-over-fill", "declared-under-fill"} {
			if has(l, code) != (c.code == code) {
				t.Errorf("%.3f of the fill: %s %v", c.share, code, has(l, code))
			}
		}
	}
	for net, want := range map[string]string{"8.88 oz": "", "8.9 oz": "declared-fluid-ounces", "16 oz": "declared-fluid-ounces"} { // 8 / 8.889 = 0.9
		if got, _ := declaredCodes(t, "8 oz", net); got != want {
			t.Errorf("8 oz on jars of %s: %q, want %q", net, got, want)
		}
	}
	for declared, want := range map[string]string{"5 oz": "", "7.9 oz": "", "14 oz": ""} {
		if got, _ := declaredCodes(t, declared, "15.1 oz"); got != want {
			t.Errorf("%s on weighed jars: %q", declared, got)
		}
	}
	if got, j := declaredCodes(t, "8 fl oz", ""); got != "" || j.Declared != 0 || j.DeclVolume != 8*unit.FluidOunce || j.DeclText != "8 fl oz" {
		t.Errorf("by volume: %q %+v", got, j.DeclVolume)
	}
	if _, j := declaredCodes(t, "9 oz", ""); j.Declared != 9*unit.Ounce || j.DeclVolume != 0 {
		t.Errorf("by weight: %v, %v", j.Declared, j.DeclVolume)
	}
}

// What else a kitchen handles, in the maker's words: a kind settles its group.
func TestStatedKindsSettleTheirGroup(t *testing.T) {
	for words, want := range map[string]string{"tree nuts, almonds": "nuts almond", "tree nut (almond)": "almond", "milk, stardust": "milk"} {
		a := Stated([]string{words}, "also_handles")
		var got []string
		for _, f := range a.Found {
			got = append(got, f.ID)
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: %v, want %s", words, got, want)
		}
	}
	if a := Stated([]string{"stardust"}, "also_handles"); !slices.Contains(a.Words, OwnWord{"stardust", "also_handles"}) || a.None() {
		t.Errorf("%+v", a)
	}
}

// Of the parts of a mix only vegetables and fruit of little acid sour it less
// (pumpkin 4.90 to 5.50, bananas 4.5 to 5.2: FDA, Approximate pH of Foods);
// plainly acid ones and what is no produce do not.
func TestLowPart(t *testing.T) {
	c := &calc{p: pantry.Default()}
	for parts, want := range map[string]bool{"apples, plums": false, "apples, pumpkin": true, "pumpkin": true, "apples, bananas": true, "apples, butter": false, "stardust": false, "": false} {
		var ln Line
		for _, name := range strings.Split(parts, ", ") {
			ln.Contains = append(ln.Contains, pantry.Part{Name: name})
		}
		if got := c.lowPart(ln); got != want {
			t.Errorf("a mix of %s: low %v", parts, got)
		}
	}
}
