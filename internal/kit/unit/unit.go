// Package unit holds the measures of the trade as exact integers, so that a
// declared weight never drifts: lengths in nanometres, masses in nanograms,
// volumes in femtolitres. It parses and prints them, and knows nothing of jam.
//
// Conversion factors: NIST Handbook 44, Appendix C (1 in = 25.4 mm and
// 1 lb = 453.59237 g by definition, 1 gal = 231 cu in), all exact.
package unit

// Length is a distance in nanometres.
type Length int64

// Exact lengths. A PostScript point (1/72 in) is 352 777.7… nm; use Points.
const (
	Nanometre  Length = 1
	Micrometre Length = 1_000
	Millimetre Length = 1_000_000
	Centimetre Length = 10_000_000
	Inch       Length = 25_400_000
	Foot       Length = 304_800_000
	Metre      Length = 1_000_000_000
)

// MM builds a length from millimetres, rounded to the nearest nanometre.
func MM(v float64) Length { return Length(round(v * float64(Millimetre))) }

// Points builds a length from PostScript points (72 to the inch).
func Points(pt float64) Length { return Length(round(pt * float64(Inch) / 72)) }

// MM gives the length in millimetres.
func (l Length) MM() float64 { return float64(l) / float64(Millimetre) }

// Points gives the length in PostScript points (72 to the inch).
func (l Length) Points() float64 { return float64(l) * 72 / float64(Inch) }

// Mass is a mass in nanograms.
type Mass int64

// Exact masses (avoirdupois for pound and ounce).
const (
	Nanogram Mass = 1
	Gram     Mass = 1_000_000_000
	Kilogram Mass = 1_000_000_000_000
	Pound    Mass = 453_592_370_000
	Ounce    Mass = 28_349_523_125
)

// Grams builds a mass from grams, rounded to the nearest nanogram.
func Grams(g float64) Mass { return Mass(round(g * float64(Gram))) }

// Grams gives the mass in grams.
func (m Mass) Grams() float64 { return float64(m) / float64(Gram) }

// Ounces gives the mass in avoirdupois ounces.
func (m Mass) Ounces() float64 { return float64(m) / float64(Ounce) }

// Volume is a volume in femtolitres.
type Volume int64

// Exact volumes; cup, fluid ounce and spoons are the US measures.
const (
	Femtolitre Volume = 1
	Millilitre Volume = 1_000_000_000_000
	Litre      Volume = 1_000_000_000_000_000
	FluidOunce Volume = 29_573_529_562_500
	Cup        Volume = 236_588_236_500_000
	Pint       Volume = 473_176_473_000_000
	Quart      Volume = 946_352_946_000_000
	Tablespoon Volume = 14_786_764_781_250
	Teaspoon   Volume = 4_928_921_593_750
)

// ML builds a volume from millilitres, rounded to the nearest femtolitre.
func ML(v float64) Volume { return Volume(round(v * float64(Millilitre))) }

// ML gives the volume in millilitres.
func (v Volume) ML() float64 { return float64(v) / float64(Millilitre) }

func round(v float64) float64 {
	if v < 0 {
		return float64(int64(v - 0.5))
	}
	return float64(int64(v + 0.5))
}

// Dimension says what a Quantity measures.
type Dimension int

// The dimensions a maker may write an amount in.
const (
	None Dimension = iota
	ByMass
	ByVolume
	ByCount
)

// Quantity is one amount as the maker wrote it: a weight ("1.8 kg"), a kitchen
// measure ("4 cups", "2 tbsp") or a count of pieces ("3 lemons", "2").
type Quantity struct {
	Text   string // as written
	Dim    Dimension
	Mass   Mass    // when Dim == ByMass
	Volume Volume  // when Dim == ByVolume
	Count  float64 // when Dim == ByCount
	Piece  string  // the word after a count: "lemons", "large"; may be empty
	Part   string  // "zest" or "juice" of what is counted; "" = all of it
	Form   string  // how the measure was filled: "packed", "finely chopped"
}

// Money is an amount in minor units (cents, pence) of a currency.
type Money struct {
	Minor    int64
	Currency string // ISO 4217: "USD", "EUR", "GBP"
}

// Date is a civil day without a clock or a zone. The zero Date is "not given".
type Date struct {
	Year  int
	Month int // 1-12
	Day   int // 1-31
}

// IsZero reports whether the date was not given.
func (d Date) IsZero() bool { return d == Date{} }
