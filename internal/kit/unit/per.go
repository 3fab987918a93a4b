package unit

import (
	"fmt"
	"math/bits"
)

// PerMass are the amounts that unit prices are reckoned on, by their word.
var PerMass = map[string]Mass{"oz": Ounce, "lb": Pound, "100 g": 100 * Gram, "kg": Kilogram}

// Per is the unit price: price × per / content, half up, in minor units. false
// where there is none, or it does not fit.
func (m Money) Per(content, per int64) (Money, bool) {
	if content <= 0 || per <= 0 || m.Minor <= 0 {
		return m, false
	}
	hi, lo := bits.Mul64(uint64(m.Minor), uint64(per))
	lo, carry := bits.Add64(lo, uint64(content)/2, 0)
	if hi += carry; hi >= uint64(content) {
		return m, false
	}
	q, _ := bits.Div64(hi, lo, uint64(content))
	return Money{Minor: int64(q), Currency: m.Currency}, q > 0 && q < 1<<62
}

// Pence writes tenths of a penny: "83.3p".
func Pence(tenths int64) string { return fmt.Sprintf("%d.%dp", tenths/10, tenths%10) }
