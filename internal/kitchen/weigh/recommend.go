package weigh

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Advice is the highest declaration the weights support.
type Advice struct {
	Declared unit.Mass // what the printed words owe
	Text     string    // "11.9 oz (337 g)", "340 g"; no prefix
	Report   Report    // the official tests of that declaration
	Rule     string    // the in-house rule that set it
	Cite     string
}

// ladder is one system's way of printing and limiting a declaration: steps of
// printable size, and the most one jar may be short (ok false = no allowance).
type ladder struct {
	cite  string
	at    func(k int) unit.Mass
	below func(m unit.Mass) int // highest k with at(k) <= m
	short func(label unit.Mass) (unit.Mass, bool)
	text  func(k int) string
	check func(label unit.Mass, s Sample) (Report, diag.List)
}

// RecommendUS gives the highest ounce declaration, in tenths of an ounce with
// the metric figure rounded down, under a rule stricter than the handbook:
// the mean is at least the label and no jar is short by more than the MAV.
func RecommendUS(s Sample) (Advice, diag.List) {
	return recommend(s, ladder{
		cite:  citeInHouse,
		at:    func(k int) unit.Mass { return unit.Mass(k) * unit.Ounce / 10 },
		below: func(m unit.Mass) int { return int(m * 10 / unit.Ounce) },
		short: MAV, text: ounceText, check: US,
	})
}

// Recommend gives the highest whole-gram declaration under the packers' rules
// made stricter: the mean is at least the label and no jar is below T1.
func (p Packers) Recommend(s Sample) (Advice, diag.List) {
	return recommend(s, ladder{
		cite:  citeStrict,
		at:    func(k int) unit.Mass { return unit.Mass(k) * unit.Gram },
		below: func(m unit.Mass) int { return int(m / unit.Gram) },
		short: func(q unit.Mass) (unit.Mass, bool) {
			t1, ok := p.T1(q)
			return q - t1, ok
		},
		text: func(k int) string { return strconv.Itoa(k) + "\u00a0g" }, check: p.Check,
	})
}

func recommend(s Sample, d ladder) (Advice, diag.List) {
	st, l, ok := s.measure()
	if !ok {
		return Advice{}, l
	}
	k := highest(st, d)
	if k <= 0 {
		l.Errorf("weight-too-small", s.File, s.Path, "a net weight of %s is too small to declare", st.min.InGrams(1)).
			Hinted("check the weights and the tare")
		return Advice{}, l
	}
	label := d.at(k)
	r, l := d.check(label, s)
	a := Advice{Declared: label, Text: d.text(k), Report: r, Cite: d.cite,
		Rule: "mean at least the label, no jar short by more than the allowance for one jar"}
	if _, tabled := d.short(label); !tabled {
		a.Rule = "no jar below the label, since no allowance is tabled for this size"
	}
	return a, l
}

// highest walks down from the mean until the lightest jar is near enough. The
// lightest jar itself always ends the walk.
func highest(st stats, d ladder) int {
	k := d.below(st.mean)
	for floor := d.below(st.min); k > floor; k-- {
		if short, ok := d.short(d.at(k)); ok && st.min >= d.at(k)-short {
			break
		}
	}
	return k
}

// ounceText prints tenths of an ounce as the pair a US label carries, its
// numbers held to their units (15 U.S.C. 1453(a)).
func ounceText(k int) string {
	return together.Replace(unit.NetWords(unit.Mass(k)*unit.Ounce/10, false))
}

var together = strings.NewReplacer(" oz", "\u00a0oz", " lb", "\u00a0lb", " g", "\u00a0g", " kg", "\u00a0kg")
