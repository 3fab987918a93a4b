package unit

import (
	"maps"
	"slices"
	"strings"

	"jarmark/internal/kit/words"
)

// measure is one unit word: what it measures, and its size in nanograms or
// femtolitres.
type measure struct {
	dim Dimension
	per int64
}

// Gallon is the US gallon of 231 cubic inches (NIST Handbook 44, Appendix C).
const Gallon Volume = 3_785_411_784_000_000

// measures lists the words for weights and kitchen measures, lower case,
// without points. The kitchen measures are the US ones.
var measures = listed(map[measure]string{
	{ByMass, int64(Gram)}:              "g|gram|grams|gramme|grammes",
	{ByMass, int64(Kilogram)}:          "kg|kgs|kilo|kilos|kilogram|kilograms|kilogramme|kilogrammes",
	{ByMass, int64(Gram) / 1000}:       "mg|milligram|milligrams",
	{ByMass, int64(Pound)}:             "lb|lbs|pound|pounds",
	{ByMass, 500 * int64(Gram)}:        "pfund",
	{ByMass, int64(Ounce)}:             "oz|ounce|ounces",
	{ByVolume, int64(Cup)}:             "cup|cups|c|us cup|us cups",
	{ByVolume, int64(Tablespoon)}:      "tbsp|tbsps|tbs|tablespoon|tablespoons",
	{ByVolume, int64(Teaspoon)}:        "tsp|tsps|teaspoon|teaspoons",
	{ByVolume, 15 * int64(Millilitre)}: "el|esslöffel|cuillère à soupe|cuillères à soupe|c à soupe|c à s|c à table|cuillère à table|cuillères à table",
	{ByVolume, 5 * int64(Millilitre)}:  "tl|teelöffel|cuillère à café|cuillères à café|c à café|c à c|c à thé|cuillère à thé|cuillères à thé",
	{ByVolume, int64(FluidOunce)}:      "fl oz|floz|fluid oz|fl ounce|fl ounces|fluid ounce|fluid ounces|us fl oz",
	{ByVolume, int64(Pint)}:            "pt|pts|pint|pints",
	{ByVolume, int64(Quart)}:           "qt|qts|quart|quarts",
	{ByVolume, int64(Gallon)}:          "gal|gals|gallon|gallons",
	{ByVolume, int64(Millilitre)}:      "ml|mls|millilitre|millilitres|milliliter|milliliters|cc",
	{ByVolume, 10 * int64(Millilitre)}: "cl|centilitre|centilitres|centiliter|centiliters",
	{ByVolume, int64(Litre) / 10}:      "dl|decilitre|decilitres|deciliter|deciliters",
	{ByVolume, int64(Litre)}:           "l|litre|litres|liter|liters",
})

// pieceWords look like a mistyped unit but count pieces.
var pieceWords = map[string]bool{
	"eggs": true, "egg": true, "pod": true, "pods": true, "can": true, "cans": true, "cap": true, "caps": true,
	"tin": true, "tins": true, "pit": true, "pits": true, "bag": true, "bags": true, "bar": true, "bars": true,
	"box": true, "tub": true, "tubs": true, "pot": true, "pots": true, "point": true, "points": true, "pin": true,
	"livre": true, "livres": true, "msp": true,
}

func listed(rows map[measure]string) map[string]measure {
	out := map[string]measure{}
	for m, names := range rows {
		for _, n := range strings.Split(names, "|") {
			out[n] = m
		}
	}
	return out
}

// unitWord brings a unit to its listed form: "Fl. Oz." -> "fl oz".
func unitWord(s string) string {
	return strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(s, ".", " "))), " ")
}

// nearUnit finds the unit a word was probably meant to be.
func nearUnit(word string, known []string) (string, bool) {
	word = unitWord(word)
	if len(word) < 3 || pieceWords[word] {
		return "", false
	}
	best := ""
	for _, k := range known {
		if len(k) < 3 || !words.Within(word, k, 1) {
			continue
		}
		if best == "" || len(k) == len(word) && len(best) != len(word) {
			best = k
		}
	}
	return best, best != ""
}

// measureNames are the words of measures in a fixed order.
var measureNames = func() []string {
	return slices.Sorted(maps.Keys(measures))
}()
