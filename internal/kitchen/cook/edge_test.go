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

// Lots as the contract words them: year and day of the year, then the first
// letters of up to four words, of a single word two; what says only the kind,
// small words and all from "with" on are left out.
func TestLots(t *testing.T) {
	for name, want := range map[string]string{
		"Strawberry & rhubarb jam": "L26165-SR", "Apricot jam": "L26165-AP", "Apricot jam with almonds": "L26165-AP", "X jam": "L26165-X", "Jam": "L26165",
		"One two three four five": "L26165-OTTF", "Crème de Cassis": "L26165-CDC", "Grandma's plum": "L26165-GP", "With almonds": "L26165-AL", "": "L26165",
		"The batch of our own plum jelly": "L26165-OP", "日本": "L26165",
	} {
		if got := Lot(&batch.Batch{Name: name, Made: unit.Date{Year: 2026, Month: 6, Day: 14}}); got != want {
			t.Errorf("%q: %s, want %s", name, got, want)
		}
	}
	for _, kind := range []string{"jam", "jams", "jelly", "preserve", "preserves", "marmalade", "butter", "curd", "chutney", "relish", "conserve", "spread", "syrup"} {
		if got := Lot(&batch.Batch{Name: "Plum " + kind, Made: unit.Date{Year: 2009, Month: 1, Day: 1}}); got != "L09001-PL" {
			t.Errorf("plum %s: %s", kind, got)
		}
	}
	if got := Lot(&batch.Batch{Name: "Plum", Lot: " A 1 "}) + Lot(&batch.Batch{Name: "Plum"}); got != "A 1" {
		t.Errorf("own lot, and none without a date: %q", got)
	}
}

// A date the facts just support, a day more, a day less, and one before the day
// it was made, which the reader of the file tells.
func TestBestBeforeFromBothSides(t *testing.T) {
	b := demo(t)
	r, _ := compute(t, b)
	for days, late := range map[int]bool{0: false, 1: true, -1: false, -4000: false} {
		b.BestBefore = r.BestBefore.AddDays(days)
		got, l := compute(t, b)
		if has(l, "best-before-late") != late || got.BestBefore != b.BestBefore || got.Keeping.BestBeforeHow != Given {
			t.Errorf("%d days more: late %v, %s", days, has(l, "best-before-late"), got.BestBefore)
		}
	}
	if r.Keeping.BestBeforeHow != Estimated || !r.BestBefore.Before(b.Made.AddMonths(13)) || r.BestBefore.Before(b.Made.AddMonths(11)) {
		t.Errorf("a year: %s", r.BestBefore)
	}
}

// One jar on the scale is a weighed jar.
func TestOneWeighedJar(t *testing.T) {
	b := demo(t)
	q, _ := unit.ParseQuantity("5 oz")
	b.Fills = []batch.Fill{{Path: "fill[0]", Jar: "us8", Count: -1, Sealed: -1, Declared: q, Net: []unit.Mass{300 * unit.Gram}}}
	if r, l := compute(t, b); has(l, "declared-under-fill") || r.Jars[0].Content() != 300*unit.Gram {
		t.Errorf("%v", l)
	}
}
