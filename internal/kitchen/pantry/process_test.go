package pantry

import (
	"testing"

	"jarmark/internal/kit/unit"
)

const foot = unit.Foot

// USDA Complete Guide, Guide 7: three columns, 0 to 1,000 ft, 1,001 to 6,000 ft, above
// 6,000 ft; jams 5, 10, 15 minutes in half-pints or pints at 1/4 in of headspace, and
// chutney 10, 15, 20 at 1/2 in.
func TestMinutesByAltitude(t *testing.T) {
	p := Default()
	for key, want := range map[string][3]int{"jam": {5, 10, 15}, "chutney": {10, 15, 20}} {
		x, ok := p.ProcessTime(key)
		for alt, minutes := range map[unit.Length]int{0: want[0], 1000 * foot: want[0], 1000*foot + 1: want[1], 6000 * foot: want[1], 6000*foot + 1: want[2], 9000 * foot: want[2]} {
			if got := x.At(alt); !ok || got != minutes {
				t.Errorf("%s at %.1f ft: %d min, want %d", key, float64(alt)/float64(foot), got, minutes)
			}
		}
	}
	if x, ok := p.ProcessTime("no such thing"); ok || x.Minutes[0] != 0 {
		t.Errorf("%+v", x)
	}
}

// The headspace of the table and of each tested recipe, with our own reading of "about":
// an eighth of an inch less, a quarter more.
func TestHeadspaceOfEachProcess(t *testing.T) {
	inch := unit.Inch
	for key, want := range map[string]unit.Length{"jam": inch / 4, "chutney": inch / 2} {
		x, _ := Default().ProcessTime(key)
		if x.Headspace != want || x.LeastHead != want-inch/8 || x.MostHead != want+inch/4 {
			t.Errorf("%s: %v, %v to %v mm", key, x.Headspace.MM(), x.LeastHead.MM(), x.MostHead.MM())
		}
	}
	for _, x := range Default().recipes {
		if p := x.Process; p.Headspace <= 0 || p.LeastHead != p.Headspace-inch/8 || p.MostHead != p.Headspace+inch/4 || p.MostJar() == 0 || p.Minutes[0] <= 0 || p.Minutes[2] < p.Minutes[0] {
			t.Errorf("%s: %+v", x.ID, p)
		}
	}
}

// USDA Guide 1: empty jars boil 10 minutes to 1,000 ft, and a minute more for each
// thousand feet above.
func TestSterilisingByAltitude(t *testing.T) {
	for ft, want := range map[unit.Length]int{0: 10, 1000: 10, 1001: 11, 2000: 11, 2001: 12, 5000: 14, 6500: 16, 8000: 17} {
		if got := Default().SteriliseMinutes(ft * foot); got != want {
			t.Errorf("%d ft: %d min, want %d", ft, got, want)
		}
	}
}

// USDA's jelly points, 220 °F at sea level to 205 at 8,000 ft: reached at the tabled
// degree and one below (a kitchen thermometer), not reached two below where the table
// and 8 °F above boiling water agree.
func TestJellyPointByAltitude(t *testing.T) {
	celsius := func(f float64) float64 { return (f - 32) / 1.8 }
	for ft, f := range map[unit.Length]float64{0: 220, 1000: 218, 2000: 216, 3000: 214, 4000: 212, 5000: 211, 6000: 209, 7000: 207, 8000: 205} {
		for off, want := range map[float64]bool{5: true, 0: true, -0.99: true, -1.25: false, -2: false} {
			if got := Default().Finished(celsius(f+off), ft*foot); got != want {
				t.Errorf("%g °F at %d ft: %v", f+off, ft, got)
			}
		}
	}
	// At 4,750 ft the table, between its rows, asks more than 8 °F above boiling water.
	at := 4750 * foot
	if water := BoilingPoint(at); !Default().Finished(water+8/1.8-thermometerC+0.001, at) || Default().Finished(water+8/1.8-thermometerC-0.15, at) {
		t.Errorf("water boils at %.2f °C there", water)
	}
}

// What needs no acid of its own, by key before kind (acid-traces.csv).
func TestTraces(t *testing.T) {
	for _, x := range []struct{ key, kind, want string }{{"sugar_white", "water", "sugar in crystals"}, {"water", "", ""}, {"", "water", "water"}, {"citric_acid", "", "acid"}, {"", "syrup", "syrup and honey"}, {"no such thing", "none", ""}, {"", "", ""}} {
		if got := Default().Trace(x.key, x.kind); got.Group != x.want {
			t.Errorf("%q %q: %q, want %q", x.key, x.kind, got.Group, x.want)
		}
	}
	if x := Default().Trace("sugar_white", ""); !x.Any {
		t.Errorf("%+v", x)
	}
	if x := Default().Trace("", "honey"); x.Any || x.Percent != 100 {
		t.Errorf("%+v", x)
	}
}

// A word is one of a pattern in one or in many, and never by its first letter alone; "*"
// stands for any beginning or ending, and nothing is like nothing.
func TestLikeAPattern(t *testing.T) {
	for _, x := range []struct {
		word, pattern string
		want          bool
	}{
		{"pumpkin", "pumpkin", true}, {"pumpkins", "pumpkin", true}, {"plum", "pumpkin", false}, {"pumpkin", "pumpkins", false}, {"", "pumpkin", false}, {"pumpkin", "", false}, {"", "", false}, {"", "*", false},
		{"kürbismark", "kürbis*", true}, {"kürbis", "kürbis*", true}, {"speisekürbis", "kürbis*", false}, {"speisekürbis", "*kürbis", true}, {"kürbismark", "*kürbis", false}, {"speisekürbismark", "*kürbis*", true}, {"plum", "*kürbis*", false},
	} {
		if got := like(x.word, x.pattern); got != x.want {
			t.Errorf("%q like %q: %v", x.word, x.pattern, got)
		}
	}
	for _, x := range []struct {
		words, pattern string
		want           int
	}{{"a b c", "b c", 1}, {"a b c", "a", 0}, {"a b c", "c d", -1}, {"a b", "a b c", -1}, {"c", "c", 0}} {
		if got := find(spelled(x.words), patterns([]string{x.pattern})[0]); got != x.want {
			t.Errorf("%q in %q: %d", x.pattern, x.words, got)
		}
	}
	if find([]string{"a"}, nil) != -1 {
		t.Error("a pattern of nothing is found")
	}
}
