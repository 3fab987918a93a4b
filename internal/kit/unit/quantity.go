package unit

import (
	"math/big"
	"regexp"
	"strings"
	"unicode"
)

// The largest amounts of one kitchen batch; more is a slip of the keyboard.
const (
	MaxMass   = 1000 * Kilogram
	MaxVolume = 1000 * Litre
	MaxCount  = 100_000
)

const unitHint = "write a weight (1.8 kg, 2 lb 3 oz), a kitchen measure (4 cups, 2 tbsp, 250 ml) or a count (3 lemons)"

// part is one number with the words after it: "2 lb" of "2 lb 3 oz".
type part struct {
	n     *big.Rat
	words string
}

// ParseQuantity reads an amount as a maker writes it: "1.8 kg", "2 lb 3 oz",
// "1 1/2 cups", "5½ cups", "3 lemons", "2", "a pinch", "3 cups packed",
// "1 (3 oz) pouch", "juice of 3 limes". Errors are *ParseError.
func ParseQuantity(s string) (Quantity, error) {
	text, err := clean(s)
	if err != nil {
		return Quantity{}, err
	}
	said, err := listen(text)
	if err != nil {
		return Quantity{}, err
	}
	q, err := measured(said.text, Quantity{Text: strings.TrimSpace(s), Part: said.part, Form: said.form})
	if err != nil || said.packs == "" {
		return q, err
	}
	return times(q, said.packs)
}

// times multiplies one pack by their number.
func times(q Quantity, packs string) (Quantity, error) {
	n, rest, err := scanNumber(packs)
	if err != nil || rest != "" || n.Sign() <= 0 {
		return Quantity{}, fail("write the number of packs and the size of one, like 2 (3 oz) pouches", "%s is not a number of packs", quote(packs))
	}
	size := int64(q.Mass)
	if q.Dim == ByVolume {
		size = int64(q.Volume)
	}
	return bounded(q, new(big.Rat).Mul(n, new(big.Rat).SetInt64(size)))
}

// pointed is an amount whose point may part thousands, as in German: nobody
// weighs a pot to the milligram.
var pointed = regexp.MustCompile(`^([1-9]\d{0,2})\.(\d{3}) ?(g|ml)\b`)

// measured reads number and unit, one or several.
func measured(s string, q Quantity) (Quantity, error) {
	if m := pointed.FindStringSubmatch(s); m != nil {
		return Quantity{}, fail("write "+m[1]+m[2]+" "+m[3]+", or "+m[1]+"."+strings.TrimRight(m[2], "0")+" "+m[3], "%s may mean thousands or a decimal point", quote(s))
	}
	parts, err := split(s)
	if err != nil {
		return Quantity{}, err
	}
	if _, isUnit := measures[unitWord(parts[0].words)]; !isUnit && len(parts) == 1 {
		return countOf(q, parts[0])
	}
	sum := new(big.Rat)
	for _, p := range parts {
		m, err := lookup(p.words, s)
		if err != nil {
			return Quantity{}, err
		}
		if q.Dim != None && q.Dim != m.dim {
			return Quantity{}, fail("write two ingredients, or one measure", "%s mixes weight and volume", quote(s))
		}
		if q.Dim != None && metric(p.words) != metric(parts[0].words) {
			return Quantity{}, fail("write one of the two", "%s mixes metric and other measures: is it one amount said twice?", quote(s))
		}
		q.Dim = m.dim
		sum.Add(sum, new(big.Rat).Mul(p.n, new(big.Rat).SetInt64(m.per)))
	}
	return bounded(q, sum)
}

// metric reports grams, litres and what is made of them.
func metric(words string) bool {
	m := measures[unitWord(words)]
	return m.dim == ByMass && m.per%int64(Gram/1000) == 0 || m.dim == ByVolume && m.per%int64(Millilitre) == 0
}

// split cuts "2 lb 3 oz" into its parts; there is at least one.
func split(s string) (parts []part, err error) {
	rest, err := clean(s)
	if err != nil {
		return nil, err
	}
	for rest != "" {
		var p part
		p.n, rest, err = scanNumber(rest)
		if err != nil {
			return nil, err
		}
		end := strings.IndexFunc(rest, func(r rune) bool { return unicode.IsDigit(r) || r == '+' })
		if end < 0 {
			end = len(rest)
		}
		p.words, rest = joinless(rest[:end]), strings.TrimSpace(strings.TrimPrefix(rest[end:], "+"))
		parts = append(parts, p)
		if len(parts) > 4 {
			return nil, fail(unitHint, "%s has too many parts", quote(s))
		}
	}
	return parts, nil
}

// joinless drops the word that joins two parts: "1 cup and 2 tbsp".
func joinless(words string) string {
	w := strings.TrimSpace(words)
	for _, j := range []string{" and", " plus", " &", ","} {
		w = strings.TrimSpace(strings.TrimSuffix(w, j))
	}
	return w
}

func lookup(words, s string) (measure, error) {
	w := unitWord(words)
	if m, ok := measures[w]; ok {
		return m, nil
	}
	if w == "" {
		return measure{}, fail(unitHint, "%s has a number without a unit", quote(s))
	}
	if unit, extra, ok := leadingUnit(w); ok {
		return measure{}, fail("keep the amount to number and unit ("+unit+"); what it is goes into name, how it is cut into form",
			"%s has %s after the unit", quote(s), quote(extra))
	}
	return measure{}, unknownUnit(w, words, s)
}

func leadingUnit(w string) (unit, extra string, ok bool) {
	first, extra, more := strings.Cut(w, " ")
	if !more {
		first, extra, more = strings.Cut(w, ",")
	}
	first = strings.TrimSuffix(first, ",")
	_, known := measures[first]
	return first, strings.TrimSpace(extra), known && more
}

// unknownUnit tells of a unit w, written as words in the text s.
func unknownUnit(w, words, s string) error {
	is := func(near string) error {
		instead := ""
		if strings.Count(s, words) == 1 {
			instead = strings.Replace(s, words, near, 1)
		}
		return meant(instead, "did you mean "+near+"?", "%s is not a unit", quote(w))
	}
	if near, ok := nearUnit(w, measureNames); ok {
		return is(near)
	}
	switch w {
	case "gr", "gm", "gms", "grs":
		return is("g")
	case "t", "tb", "ts":
		return fail("write tbsp or tsp", "%s may mean tablespoons or teaspoons", quote(w))
	}
	return fail(unitHint, "%s is not a unit", quote(w))
}

// countOf reads pieces: "3 lemons", "1 large egg", "2".
func countOf(q Quantity, p part) (Quantity, error) {
	w := p.words
	if err := pieceName(w, q.Text); err != nil {
		return Quantity{}, err
	}
	n, _ := p.n.Float64()
	q.Dim, q.Count, q.Piece = ByCount, n, w
	switch {
	case n <= 0:
		return Quantity{}, fail("leave the ingredient out, or write how much there was", "%s is nothing", quote(q.Text))
	case n > MaxCount:
		return Quantity{}, fail("check the number", "%s is more than %d pieces", quote(q.Text), MaxCount)
	}
	return q, nil
}

// pieceName refuses words that are no piece: unit slips and trailing signs.
func pieceName(w, s string) error {
	if w == "" {
		return nil
	}
	if _, _, ok := leadingUnit(unitWord(w)); ok {
		_, err := lookup(w, s)
		return err
	}
	first, _, _ := strings.Cut(unitWord(w), " ")
	if len([]rune(w)) < 3 {
		return unknownUnit(unitWord(w), w, s)
	}
	if _, ok := nearUnit(first, measureNames); ok {
		return unknownUnit(first, first, s)
	}
	for _, r := range w {
		if !unicode.IsLetter(r) && !unicode.IsMark(r) && !strings.ContainsRune(" -'’", r) {
			return fail(unitHint, "%s has %q after the number", quote(s), string(r))
		}
	}
	return nil
}

// bounded rounds once, at the end, and refuses nothing and too much.
func bounded(q Quantity, sum *big.Rat) (Quantity, error) {
	n, ok := scaled(sum, 1)
	limit, most := int64(MaxMass), "1000 kg"
	if q.Dim == ByVolume {
		limit, most = int64(MaxVolume), "1000 l"
	}
	switch {
	case !ok || n > limit:
		return Quantity{}, fail("check the number and the unit", "%s is more than %s", quote(q.Text), most)
	case n <= 0:
		return Quantity{}, fail("leave it out, or write how much there was", "%s is nothing", quote(q.Text))
	}
	if q.Dim == ByVolume {
		q.Volume = Volume(n)
	} else {
		q.Mass = Mass(n)
	}
	return q, nil
}

// ParseMass reads a weight: "10.2 oz", "289 g", "1 lb 2 oz".
func ParseMass(s string) (Mass, error) {
	q, err := ParseQuantity(s)
	if err != nil {
		return 0, err
	}
	const hint = "write a weight, like 10.2 oz, 1 lb 2 oz or 289 g"
	switch q.Dim {
	case ByMass:
		return q.Mass, nil
	case ByVolume:
		return 0, fail(hint, "%s is a volume, not a weight", quote(s))
	}
	return 0, notCounted(q, s, hint)
}

// ParseVolume reads a volume: "8 fl oz", "250 ml", "1 1/2 cups".
func ParseVolume(s string) (Volume, error) {
	q, err := ParseQuantity(s)
	if err != nil {
		return 0, err
	}
	const hint = "write a volume, like 8 fl oz or 250 ml"
	switch q.Dim {
	case ByVolume:
		return q.Volume, nil
	case ByMass:
		return 0, fail(hint, "%s is a weight, not a volume", quote(s))
	}
	return 0, notCounted(q, s, hint)
}

func notCounted(q Quantity, s, hint string) error {
	if q.Piece == "" {
		return fail(hint, "%s has no unit", quote(s))
	}
	return fail(hint, "%s is a count, not a measure", quote(s))
}
