package cook

import (
	"math"

	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/pantry"
)

// How fast a pot at home loses water. Heat decides it: 2257 kJ boil away 1 kg.
// A gas ring of 1.75 kW gave the water in a pan 0.85 kW cold and about half of
// that at the boil (protonsforbreakfast.wordpress.com, 16 Dec 2012), 0.7 kg an
// hour; an electric hob boiled 1.9 litres an hour off 11 litres
// (beer.trevorbentley.com, 11 Sep 2017); 3 kW, the largest ring of a home
// stove, at three quarters, boil off 3.6 kg. All read 27 Nov 2026.
const (
	// simmerAway is the part of a simmering pot that leaves in an hour: 1 kg of
	// 3.5 kg, 0.65 kW. Eight recipes with a printed yield and time gave the same
	// by least squares, 0.29 (testdata/published/yields-unseen.txt, and Y14), and
	// one that says how far it boils down 0.3 to 0.5 (a quarter in 35 to 60
	// minutes, recipe 662859).
	simmerAway = 0.30
	// boilAway is what a rolling boil takes at most, in grams a minute.
	boilAway = 60
	// warmUp is what leaves before the boil and while it is stirred, skimmed and
	// ladled, as a part of the pot: the 8 % of pectin jams, which boil a minute.
	warmUp = 0.08
	// thickest is the share of solids beyond which nothing is boiled that is
	// stirred and ladled: the thickest published chutney comes to 65 %.
	thickest = 0.65
)

// simmered moves the loss of a row, which it has at its usual time, to the
// minutes the maker wrote.
func (c *calc) simmered(m mix, b pantry.Boil) float64 {
	t := c.b.Cook.Minutes
	if t == nil || b.Minutes <= 0 || m.in <= 0 {
		return b.Loss / 100
	}
	left := (1 - b.Loss/100) * math.Exp(-simmerAway*(*t-b.Minutes)/60)
	left = math.Max(left, c.boiledIn(m)/m.in)
	left = math.Max(left, (m.soluble+m.insoluble)/thickest/m.in)
	return 1 - math.Min(1, left)
}

// thickened is the loss of a pot that is simmered "until thick, about an hour":
// the mean of what the hour and what the thickness says. Of 30 chutneys whose
// printed yields can be, the time alone comes within 12 % of 9, the thickness
// alone of 5, their mean of 12, each time with its one constant from the other
// 29 (testdata/published/yields-*.txt and Y14).
func (c *calc) thickened(m mix, b pantry.Boil, timed float64) float64 {
	if m.in <= 0 {
		return timed
	}
	left := math.Sqrt((1 - timed) * m.at(b.Brix) / m.in)
	return 1 - math.Max(math.Min(1-warmUp, left), c.boiledIn(m)/m.in)
}

// boiledIn is the least a pot can weigh after the minutes the maker boiled it:
// what a recipe's finish would take off more is not gone yet.
func (c *calc) boiledIn(m mix) float64 {
	t := c.b.Cook.Minutes
	if t == nil {
		return 0
	}
	return m.in*(1-warmUp) - boilAway**t
}

// notYetBoiled is boiledIn of what is boiled once. Peel and pulp are cooked soft
// first, for as long again or longer, and makers note the boil that follows.
func (c *calc) notYetBoiled(m mix) float64 {
	if k := c.b.Product; k == batch.Marmalade || k == batch.Butter {
		return 0
	}
	return c.boiledIn(m)
}
