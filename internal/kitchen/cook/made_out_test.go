package cook

import (
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// A plan of no jars yet has none that failed to seal (common practice, no source).
func TestNoJarsYetAreNotUnsealed(t *testing.T) {
	b := demo(t)
	b.Fills = nil
	r, l := compute(t, b)
	if has(l, "none-sealed") || r.Keeping.Class != Shelf {
		t.Errorf("%s %v", r.Keeping.Class, r.Keeping.Reasons)
	}
	b.Fills = []batch.Fill{{Jar: "us8", Count: 3, Sealed: 0}}
	if r, l = compute(t, b); !has(l, "none-sealed") || r.Keeping.Class != Cold {
		t.Errorf("none sealed: %s", r.Keeping.Class)
	}
}

// A headspace is told where it stands: at the fill that has it, by its number
// where nobody gave it a place.
func TestHeadspaceIsToldAtItsFill(t *testing.T) {
	for _, given := range []string{"", "fill[7]"} {
		b := demo(t)
		b.Fills = []batch.Fill{{Jar: "us8", Count: 1, Sealed: -1}, {Jar: "us8", Count: 1, Sealed: -1, Path: given, Headspace: 2 * unit.Inch}}
		_, l := compute(t, b)
		want := "fill[1].headspace"
		if given != "" {
			want = given + ".headspace"
		}
		at := slices.IndexFunc(l, func(d diag.Diagnostic) bool { return d.Code == "headspace-off" })
		if at < 0 || l[at].Path != want {
			t.Errorf("%q: %v", given, l)
		}
	}
}

// Solids run from nothing to the whole of it; a hundred is sugar, more is none.
func TestSolidsFromBothSides(t *testing.T) {
	for solids, bad := range map[float64]bool{0: false, 0.5: false, 100: false, 100.1: true} {
		b := demo(t)
		g := ing(t, "plum syrup", "100 g", "")
		g.Solids, g.Path = solids, "ingredient[9]"
		b.Ingredients = append(b.Ingredients, g)
		r, l := compute(t, b)
		ln := r.Lines[slices.IndexFunc(r.Lines, func(l Line) bool { return l.Name == "plum syrup" })]
		if has(l, "bad-solids") != bad || !bad && ln.Soluble != unit.Grams(solids) || ln.Soluble+ln.Insoluble > ln.Mass {
			t.Errorf("%g %%: %v soluble, %v other; bad-solids %v", solids, ln.Soluble, ln.Insoluble, has(l, "bad-solids"))
		}
	}
}

// A thermometer is good to 5 °Brix of the mix's own: at 68 °Brix before any
// boiling, 65 of the jelly point is the maker's thermometer, 62 is not.
func TestThermometerAgainstTheMix(t *testing.T) {
	for _, x := range []struct {
		own, read, slack float64
		rejected         bool
	}{{69.9, 65, 5, false}, {70.1, 65, 5, true}, {65.9, 65, 0, true}, {65, 65, 0, false}} {
		c := calcOf(65, 1000, 500)
		m := mix{in: 1000, soluble: 10 * x.own}
		pot, ok := c.boiledTo(m, x.read, "cook.temperature", x.slack)
		if ok == x.rejected || ok && pot != m.in || c.rejected != x.rejected {
			t.Errorf("%+v: pot %g, %v", x, pot, ok)
		}
	}
	c := calcOf(65, 1000, 500)
	set := 104.5 // 8 °F above water's boiling point is the jelly point (USDA)
	c.b.Cook.TempC = &set
	b, _ := c.p.BrixAtBoilingPoint(set, 0)
	b = max(b, jamBrix)
	for own, want := range map[float64]bool{b + 4.9: true, b + 5.5: false} {
		if _, ok := c.thermometer(mix{in: 1000, soluble: 10 * own}); ok != want {
			t.Errorf("a mix of %.1f °Brix: %v", own, ok)
		}
	}
}

// A jar holds its volume times the density (Guide 1 headspace; 1 g/ml of water,
// more of syrup): a 100 ml jar of jam at 65 °Brix is some 130 g.
func TestFillMassIsVolumeTimesDensity(t *testing.T) {
	r, _ := compute(t, demo(t))
	p := pantry.Default()
	j, ok := p.Jar("us8")
	if !ok {
		t.Fatal("no jar")
	}
	g, ml := r.FillMass(j).Grams(), j.FillVolume(r.headspace).ML()
	if d := g / ml; d < 1.2 || d > 1.35 {
		t.Errorf("%.1f g in %.1f ml", g, ml)
	}
}

// The words of a habit say which way, and a hundredth is the least.
func TestHabitInWords(t *testing.T) {
	for ratio, want := range map[float64]string{1.06: "6 % above", 0.94: "6 % below", 1.004: "as computed", 0.996: "as computed", 1.0051: "1 % above"} {
		if got := (Habit{Pots: 3, Ratio: ratio}).Say(); !strings.Contains(got, want) {
			t.Errorf("%g: %s", ratio, got)
		}
	}
}

// Water up to a limit of the acid fruit is borne, more is not (own reading).
func TestThinFromBothSides(t *testing.T) {
	for _, x := range []struct {
		base, water float64
		thin        bool
	}{{0, 0, true}, {100, mostWater * 100, false}, {100, mostWater*100 + 0.01, true}, {0.5, 0, false}} {
		if got := (sourness{base: x.base, water: x.water}).thin(); got != x.thin {
			t.Errorf("%+v", x)
		}
	}
}

// A bought thing whose usual allergen is a group ("tree nuts") is named by its
// parts once they are written, and stays asked about until then.
func TestPartsSettleAGroup(t *testing.T) {
	b := demo(t)
	g := ing(t, "praline", "50 g", "")
	b.Ingredients = append(b.Ingredients, g)
	r, _ := compute(t, b)
	last := r.Lines[len(r.Lines)-1]
	before := r.LineAllergy(last)
	with := last
	with.Contains = []pantry.Part{{Name: "hazelnuts", Percent: 60}, {Name: "sugar", Percent: 40}}
	after := r.LineAllergy(with)
	named := func(a Allergy) (out []string) {
		for _, f := range a.Found {
			out = append(out, f.ID)
		}
		slices.Sort(out)
		return slices.Compact(out)
	}
	if len(before.Unknown) == 0 || len(after.Unknown) != 0 || !slices.Equal(named(after), []string{"hazelnut"}) {
		t.Errorf("before %v unknown %v; after %v unknown %v", named(before), before.Unknown, named(after), after.Unknown)
	}
}

// From 60 °Brix on sugar keeps a jar for a while, if somebody measured it or there
// is sugar enough to believe it; each is enough alone (NCHFP).
func TestSixtyBrixIsBelievedOn(t *testing.T) {
	for _, x := range []struct {
		brix, pot How
		sugar     float64
		want      bool
	}{{Measured, Estimated, 100, true}, {Estimated, Measured, 100, true}, {Estimated, Estimated, 500, true}, {Estimated, Estimated, 499, false}} {
		c := calcOf(61, 1000, x.sugar)
		c.r.Brix.How, c.r.Yield.How = x.brix, x.pot
		c.pot.pot, c.r.Lines[1].Soluble = 1000, grams(620)
		v := &verdict{class: Shelf}
		c.keepBySugar(v)
		if got := v.class == ShelfShort; got != x.want {
			t.Errorf("%+v: %s %v", x, v.class, v.reasons)
		}
	}
}

// More than 85 % is no jam (own reading): a pot that leaves so much is asked about.
func TestPotsOfNoJam(t *testing.T) {
	for solids, told := range map[float64]bool{850: false, 851: true} {
		c := calcOf(65, 1000, 500)
		c.b.Cook.FinishedPot = grams(1000)
		if _, ok := c.weighedPot(mix{in: 2000, soluble: solids}); !ok || has(c.l, "brix-implausible") != told {
			t.Errorf("%g g of solids in 1 kg: %v", solids, c.l)
		}
	}
}

// Only pots that were weighed teach, and only within what a kitchen can mean.
func TestLearnsFromWeighedPots(t *testing.T) {
	pot := func(how How, unweighed, got float64) *Result {
		return &Result{Yield: Amount{grams(got), how}, unweighed: unweighed}
	}
	good := []*Result{pot(Measured, 1000, 1060), pot(Measured, 1000, 1060), pot(Measured, 1000, 1060)}
	if h := Learn(good); h.Pots != 3 || h.Ratio < 1.059 || h.Ratio > 1.061 {
		t.Errorf("%+v", h)
	}
	for name, bad := range map[string]*Result{"none": nil, "not weighed": pot(Estimated, 1000, 1200), "nothing computed": pot(Measured, 0, 1200), "far above": pot(Measured, 1000, 1000*mostHabit+1), "far below": pot(Measured, 1000, 1000*leastHabit-1)} {
		if h := Learn(append(good[:3:3], bad)); h.Pots != 3 {
			t.Errorf("%s: %+v", name, h)
		}
	}
}

// A jar may hold a little more than its name, and no more than the process was
// tested for.
func TestRoomOfAJarFromBothSides(t *testing.T) {
	c := calcOf(65, 1000, 500)
	row, _ := c.p.ProcessTime("jam")
	most := row.MostJar()
	for brim, ok := range map[unit.Volume]bool{most * roomAbove / 100: true, most*roomAbove/100 + unit.Millilitre: false} {
		c.r.Jars = []JarPlan{{Jar: pantry.Jar{Nominal: most, Brimful: brim}}}
		if got := c.jarsFit(&verdict{class: Shelf}, row); got != ok {
			t.Errorf("a brim of %.0f ml: %v", brim.ML(), got)
		}
	}
	c.r.Jars = []JarPlan{{Jar: pantry.Jar{Nominal: most + unit.Millilitre, Brimful: most}}}
	if c.jarsFit(&verdict{class: Shelf}, row) {
		t.Error("a jar larger by its name")
	}
}
