package weigh

import (
	"testing"

	"jarmark/internal/kit/unit"
)

// Directive 76/211/EEC Annex I, 2.4, with the results of German FPackV s. 9
// and the gov.uk packaged goods guidance: T1 = Q - TNE, T2 = Q - 2 TNE.
func TestTNE(t *testing.T) {
	tests := []struct{ q, tne, t1, t2 float64 }{
		{113, 5.1, 107.9, 102.8}, {125, 5.7, 119.3, 113.6}, {227, 9.0, 218.0, 209.0},
		{340, 10.2, 329.8, 319.6}, {370, 11.1, 358.9, 347.8}, {454, 13.7, 440.3, 426.6},
		{500, 15.0, 485.0, 470.0},
		// boundaries: both neighbouring rows give the same
		{50, 4.5, 45.5, 41}, {100, 4.5, 95.5, 91}, {200, 9.0, 191, 182}, {300, 9.0, 291, 282}, {1000, 15, 985, 970},
	}
	for _, c := range tests {
		q := unit.Grams(c.q)
		tne, ok := TNE(q)
		t1, ok1 := EU.T1(q)
		t2, ok2 := EU.T2(q)
		if !ok || !ok1 || !ok2 || tne != unit.Grams(c.tne) || t1 != unit.Grams(c.t1) || t2 != unit.Grams(c.t2) {
			t.Errorf("%g g: TNE %s T1 %s T2 %s, want %g %g %g", c.q, tne.InGrams(2), t1.InGrams(2), t2.InGrams(2), c.tne, c.t1, c.t2)
		}
	}
}

// SI 2006/659 reaches to 25 kg, the Directive to 10 kg (gov.uk guidance).
func TestScope(t *testing.T) {
	for g, want := range map[float64]float64{2000: 30, 5000: 75, 10_000: 150, 12_000: 150, 15_000: 150, 15_500: 155, 20_000: 200, 25_000: 250} {
		if tne, ok := TNE(unit.Grams(g)); !ok || tne != unit.Grams(want) {
			t.Errorf("%g g: %s, want %g g", g, tne.InGrams(1), want)
		}
	}
	_, eu := EU.T1(12 * unit.Kilogram)
	_, gb := GB.T1(12 * unit.Kilogram)
	_, small := GB.T1(4 * unit.Gram)
	_, large := GB.T2(26 * unit.Kilogram)
	if tne, ok := TNE(25*unit.Kilogram + 1); ok {
		t.Errorf("above 25 kg: %s", tne.InGrams(1))
	}
	if eu || !gb || small || large {
		t.Errorf("12 kg eu %v gb %v, 4 g %v, 26 kg %v", eu, gb, small, large)
	}
}

// German FPackV s. 9(4): the doubled percentage is itself rounded up.
func TestGermanDoubling(t *testing.T) {
	for q, want := range map[float64]float64{454: 426.7, 125: 113.7, 500: 470, 340: 319.6} {
		if t2, ok := Germany.T2(unit.Grams(q)); !ok || t2 != unit.Grams(want) {
			t.Errorf("%g g: T2 %s, want %g g", q, t2.InGrams(2), want)
		}
	}
	for _, g := range []float64{4.9, 10_001} { // s. 9 too reaches from 5 g to 10 kg
		if _, ok := Germany.T2(unit.Grams(g)); ok {
			t.Errorf("%g g has a T2", g)
		}
	}
}

// The three rules, each broken alone: 227 g, T1 218.0, T2 209.0.
func TestPackersRules(t *testing.T) {
	lots := func(low ...float64) Sample {
		s := Sample{}
		for range 50 - len(low) {
			s.Net = append(s.Net, 229*unit.Gram)
		}
		for _, g := range low {
			s.Net = append(s.Net, unit.Grams(g))
		}
		return s
	}
	tests := []struct {
		name  string
		p     Packers
		s     Sample
		rules [3]bool
	}{
		{"good", GB, lots(), [3]bool{true, true, true}},
		{"one of fifty below T1 is 2 %", GB, lots(217.9), [3]bool{true, true, true}},
		{"2 % is still lawful in Germany", Germany, lots(217.9), [3]bool{true, true, true}},
		{"two of fifty is 4 %", GB, lots(217.9, 217.9), [3]bool{true, false, true}},
		{"at T1 is not below it", GB, lots(218, 218, 218), [3]bool{true, true, true}},
		{"below T2", GB, lots(208.9), [3]bool{true, true, false}},
		{"average", GB, Sample{Net: []unit.Mass{226 * unit.Gram, 227 * unit.Gram}}, [3]bool{false, true, true}},
	}
	for _, c := range tests {
		r, l := c.p.Check(227*unit.Gram, c.s)
		if l.HasErrors() {
			t.Fatalf("%s: %v", c.name, l)
		}
		for i, want := range c.rules {
			if r.Checks[i].Pass != want {
				t.Errorf("%s: rule %d is %v\n%s", c.name, i+1, r.Checks[i].Pass, r)
			}
		}
	}
	// 2.5 % of 40 packs is one; 2 % of 40 is none (FPackV s. 9(3)).
	forty := Sample{Net: lots(217.9).Net[10:]}
	if r, _ := GB.Check(227*unit.Gram, forty); !r.Checks[1].Pass {
		t.Errorf("2.5 %%: one of forty fails\n%s", r)
	}
	if r, _ := Germany.Check(227*unit.Gram, forty); r.Checks[1].Pass {
		t.Errorf("2 %%: one of forty passes\n%s", r)
	}
}

// The packers' rules as the sets of places give them; that they do is checked
// where the sets are read.
var (
	EU      = Packers{System: "eu", PerMille: 20, Largest: 10 * unit.Kilogram}
	GB      = Packers{System: "gb", PerMille: 25, Largest: 25 * unit.Kilogram}
	Germany = Packers{System: "de", PerMille: 20, DoubleRounded: true, Largest: 10 * unit.Kilogram}
)
