package unit

import "testing"

// Amounts as makers write them. Sizes: US customary units, NIST Handbook 44
// Appendix C; 15 and 5 ml spoons, common practice in Germany and France.
func TestSpokenAmounts(t *testing.T) {
	for _, c := range []struct {
		in                string
		dim               Dimension
		ml, g, count      float64
		piece, part, form string
	}{
		{in: "a pinch", dim: ByCount, count: 1, piece: "pinch"},
		{in: "an orange", dim: ByCount, count: 1, piece: "orange"},
		{in: "half a lemon", dim: ByCount, count: 0.5, piece: "lemon"},
		{in: "eine Prise", dim: ByCount, count: 1, piece: "Prise"},
		{in: "a dozen", dim: ByCount, count: 12},
		{in: "2 dozen", dim: ByCount, count: 24},
		{in: "1 1/2 dozen lemons", dim: ByCount, count: 18, piece: "lemons"},
		{in: "3 Dutzend", dim: ByCount, count: 36},
		{in: "two dozen plums", dim: ByCount, count: 24, piece: "plums"},
		{in: "zest of 2 lemons", dim: ByCount, count: 2, piece: "lemons", part: "zest"},
		{in: "finely grated zest of 1 orange", dim: ByCount, count: 1, piece: "orange", part: "zest"},
		{in: "juice of 3 limes", dim: ByCount, count: 3, piece: "limes", part: "juice"},
		{in: "juice of a lemon", dim: ByCount, count: 1, piece: "lemon", part: "juice"},
		{in: "Saft von 2 Zitronen", dim: ByCount, count: 2, piece: "Zitronen", part: "juice"},
		{in: "jus de 2 citrons", dim: ByCount, count: 2, piece: "citrons", part: "juice"},
		{in: "juice of 3", dim: ByCount, count: 3, part: "juice"},
		{in: "1 (3 oz) pouch", dim: ByMass, g: 85.048569375},
		{in: "2 (1.75-oz) boxes", dim: ByMass, g: 99.2233309375},
		{in: "1 (750 ml) bottle", dim: ByVolume, ml: 750},
		{in: "a 3 oz pouch", dim: ByMass, g: 85.048569375, form: ""},
		{in: "3 x 250 g", dim: ByMass, g: 750},
		{in: "3 cups packed", dim: ByVolume, ml: 709.7647095, form: "packed"},
		{in: "3 packed cups", dim: ByVolume, ml: 709.7647095, form: "packed"},
		{in: "4 cups, finely chopped", dim: ByVolume, ml: 946.352946, form: "finely chopped"},
		{in: "1 cup (packed)", dim: ByVolume, ml: 236.5882365, form: "packed"},
		{in: "2 lb (about 900 g)", dim: ByMass, g: 907.18474},
		{in: "about 2 cups", dim: ByVolume, ml: 473.176473},
		{in: "1 level tsp", dim: ByVolume, ml: 4.92892159375, form: "level"},
		{in: "½", dim: ByCount, count: 0.5},
		{in: "1/2 tsp", dim: ByVolume, ml: 2.464460796875},
		{in: "1 1/2 cups", dim: ByVolume, ml: 354.88235475},
		{in: "2 EL", dim: ByVolume, ml: 30},
		{in: "1 TL", dim: ByVolume, ml: 5},
		{in: "2 c. à soupe", dim: ByVolume, ml: 30},
		{in: "1 cuillère à café", dim: ByVolume, ml: 5},
		{in: "zest and juice of 2 lemons", dim: ByCount, count: -1},
		{in: "2 heaping tbsp", dim: ByCount, count: -1},
		{in: "1 scant cup", dim: ByCount, count: -1},
	} {
		q, err := ParseQuantity(c.in)
		if c.count < 0 {
			if pe, ok := err.(*ParseError); !ok || pe.Hint == "" {
				t.Errorf("%q: %+v, %v; want to be asked", c.in, q, err)
			}
			continue
		}
		if err != nil {
			t.Errorf("%q: %v, %+v", c.in, err, err)
			continue
		}
		off := func(a, b float64) bool { return a-b > 1e-6 || b-a > 1e-6 }
		if q.Dim != c.dim || off(q.Volume.ML(), c.ml) || off(q.Mass.Grams(), c.g) || off(q.Count, c.count) || q.Piece != c.piece || q.Part != c.part || q.Form != c.form {
			t.Errorf("%q: %+v", c.in, q)
		}
	}
}
