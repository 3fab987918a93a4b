package notes

import (
	"regexp"
	"strings"

	"jarmark/internal/kit/unit"
)

// amount is what stands before the food: one amount, or several to choose from.
type amount struct {
	text    string
	choices []string
	say     string // how a short form was read
	doubt   string // what two amounts of one line do not agree in
	vague   bool   // "a splash", "a few": no size
	part    string // "juice", "zest" of a fruit
	gross   bool   // the weight of whole pieces
	beside  string // the same in brackets before the food
}

var (
	aboutForm  = pattern(`(?i)^(?:about|abt\.?|approx\.?|approximately|around|roughly|ca\.?|c\.|circa|etwa|ungefähr|ungef\.|environ|exactly|only|nur|seulement|bloß|lediglich) |^[~≈] ?`)
	bareVague  = pattern(`(?i)^(pinch|dash|splash|knob|handful|squeeze|sprinkle|glug|drizzle|bunch|prise|schuss)(?:es)? (?:of |d'|de )?`)
	bareOne    = pattern(`(?i)^(pieces?|sprigs?|sticks?|slices?|lumps?|strips?|thumbs?|cloves?|leaf|pods?|bulbs?|stalks?|cups?|pints?|quarts?|pounds?|lb|kilo|teaspoons?|tablespoons?|sachets?|packets?|bottles?) (?:of|d'|de) `)
	inchLong   = pattern(`(?i)^(\d{1,3})(?: x)? (?:` + num + `)[- ]?(?:inch(?:es)?|in\.|")(?: long)? `)
	inchPiece  = pattern(`(?i)^(` + num + `)[- ]?(inch(?:es)?|in\.|"|cm|mm|zentimeter)(?: \([^()]*\))? (?:\p{L}+ )?(pieces?|knobs?|thumbs?|chunks?|stücke?|morceaux?) (?:of |de |d')?`)
	lengthOf   = pattern(`(?i)^(` + num + `)[- ]?(cm|inch(?:es)?|in\.|") (?:of |de |d'|frische[rn]? |fresh )?([\p{L}][\p{L} ]+?)((?: \(|, )[^\d]*)?$`)
	plainPiece = pattern(`(?i)^(` + num + `) (?:stücke?|stk\.?|st\.|gestr\.?|gestrichene?r?|level|pcs?\.?) `)
	eachAlone  = pattern(`(?i)^(` + num + `) each(?:es)? (\p{L}+(?: \p{L}+)?(?:,.*| \([^()]*\))?)$`)
	timesOne   = pattern(`^(\d{1,2}) ?x (\p{L})`) // 1x vanilla pod
	cupWeighed = pattern(`(?i)^` + num + ` ?(?:tasses?|tassen|verres?|becher) ?\((?:env\. |ca\. )?(` + num + ` ?` + sizeUnit + `)\) `)
	lumpOf     = pattern(`(?i)^(?:knobs?|pieces?|slices?|blocks?|lumps?|stück) (?:of )?`)
	sizeWord   = pattern(`(?i)^(\d{1,3} \(?)(one|two|three|four|five|six|eight|ten|twelve|sixteen)[- ](ounce|pound|oz)`)
	rangeHead  = pattern(`(?i)^(` + num + `) ?(?:-|to|or|bis|à|ou|oder) ?(` + num + `)(?:[ -]|$|[a-z])`)
	numHead    = pattern(`^` + num)
	plusForm   = pattern(`(?i)^(?:\+|plus|and|&|und|et) ?(` + num + `) `)
	ofForm     = pattern(`(?i)^(?:of (?:the )?|de |d'|du |des |von |vom )`)
	timeWord   = pattern(`(?i)^(?:min|mins|minutes?|minuten|hours?|hrs?|h|stunden?|std\.?|heures?|seconds?|days?|weeks?|months?|people|servings?|degrees?|deg|°|f|brix|%|percent|inch(?:es)?|in|ft|feet|mm|cm)\b|^[°%:/]`)
)

// amount reads the amount at the head of a text; rest is the food.
func (g *grammar) amount(s string) (a amount, rest string, ok bool) {
	s, near := nigh(aboutForm.ReplaceAllString(strings.TrimSpace(s), ""))
	s, a.say = g.level(bare(s))
	a.say = joined(near, a.say)
	s = bareOne.ReplaceAllString(s, "1 $1 of ")
	s, a.vague = spelled(bareVague.ReplaceAllString(s, "1 $1 "))
	s = inchLong.ReplaceAllString(g.apart(s), "$1 ")
	s = saidTwice(canNumber.ReplaceAllString(s, "${1} $2"))
	s = plainPiece.ReplaceAllString(s, "$1 ")
	s = cupWeighed.ReplaceAllString(s, "$1 ") // a cup of no fixed size, weighed by the printer
	s = g.holderFirst(timesOne.ReplaceAllString(s, "$1 $2"))
	if m := eachAlone.FindStringSubmatch(s); m != nil { // 2 eaches Oranges
		s = m[1] + " " + m[2]
	}
	s = unit.InDozens(s)
	if m := sizeWord.FindStringSubmatch(s); m != nil {
		n, _ := spelled(strings.ToLower(m[2]) + " " + m[3])
		s = m[1] + n + s[len(m[0]):]
	}
	if m := inchPiece.FindStringSubmatch(s); m != nil {
		a.text = m[1] + " inch " + strings.ToLower(m[3])
		if low := strings.ToLower(m[2]); low == "cm" || low == "mm" || low == "zentimeter" {
			a.text, a.say = "1 piece", joined(a.say, "a piece of "+m[1]+" "+strings.Replace(low, "zentimeter", "cm", 1))
		}
		return a, food(s[len(m[0]):]), valid(a.text)
	}
	if m := lengthOf.FindStringSubmatch(s); m != nil {
		if row, ok := g.row(m[3]); ok {
			if piece, ok := g.p.Measure("inch", row); ok && piece.Ask != "" { // 2 cm of ginger root
				a.text, a.say = "1 piece", joined(a.say, "a piece of "+m[1]+" "+m[2])
				return a, m[3] + m[4], true
			}
			if row.PieceG > 0 { // 7.5 cm cinnamon stick
				a.text, a.say = "1", joined(a.say, "one of "+m[1]+" "+m[2])
				if v, _ := number(m[1]); v < 2 && m[2] != "cm" || v < 5 && m[2] == "cm" {
					a.doubt = "a piece of " + m[1] + " " + m[2] + ", or a whole one? Check amount"
				}
				return a, m[3] + m[4], true
			}
		}
	}
	if a.vague {
		word, after, _ := strings.Cut(s, " ")
		a.text = word
		return a, ofForm.ReplaceAllString(after, ""), after != ""
	}
	if a, rest, ok := g.orAmount(s); ok {
		return a, rest, true
	}
	if a, rest, ok := pack(s); ok {
		return a, food(rest), true
	}
	if low, high, after, ok := twoNumbers(s); ok {
		return g.either1(low, high, after)
	}
	if m := rangeHead.FindStringSubmatch(s); m != nil && !mixed(m[1], m[2], s) {
		some, rest, ok := g.ranged(s, m[1], m[2])
		some.say = joined(a.say, some.say)
		return some, rest, ok
	}
	one, rest, ok := g.single(s)
	one.say = joined(a.say, one.say)
	return one, rest, ok
}

// either1 reads the measure behind two numbers to choose from.
func (g *grammar) either1(low, high, s string) (a amount, rest string, ok bool) {
	w, rest, ok := g.measure(s)
	a.choices = []string{strings.TrimSpace(low + " " + w.unit), strings.TrimSpace(high + " " + w.unit)}
	return a, food(rest), ok && valid(a.choices...)
}

// ranged reads "6-7 cups": both amounts, to choose from.
func (g *grammar) ranged(s, low, high string) (a amount, rest string, ok bool) {
	after := s[len(low):]
	words, rest, ok := g.measure(strings.TrimLeft(after, " ")[indexAfter(after, high):])
	if !ok {
		return a, s, false
	}
	if word, more, _ := strings.Cut(rest, " "); words.unit == "" && unit.InDozens(high+" "+word) != high+" "+word {
		low, high, rest = unit.InDozens(low+" "+word), unit.InDozens(high+" "+word), more
	}
	a.choices = []string{strings.TrimSpace(low + " " + words.unit), strings.TrimSpace(high + " " + words.unit)}
	a.say = joined(a.say, words.say)
	rest, a.doubt = saidAgain(a.choices[0], strings.TrimSpace(rest))
	return a, food(rest), valid(a.choices...)
}

// single reads one number with its unit, and what is added to it: "1 cup plus
// 2 tbsp", "2 lb 3 oz".
func (g *grammar) single(s string) (a amount, rest string, ok bool) {
	n := numHead.FindString(s)
	if n == "" {
		return a, s, false
	}
	words, rest, ok := g.measure(s[len(n):])
	if !ok {
		return a, s, false
	}
	a.text, a.say = strings.TrimSpace(n+" "+words.unit), words.say
	for range 2 {
		m := plusForm.FindStringSubmatch(rest)
		if m == nil || !words.measured {
			break
		}
		more, after, ok := g.measure(rest[len(m[0])-1:])
		if !ok || !more.measured {
			break
		}
		a.text += " + " + m[1] + " " + more.unit
		rest = after
	}
	if !words.measured || !valid(a.text+" 1 "+words.unit) {
		return a.again(rest)
	}
	if m := numHead.FindString(rest); m != "" { // 2 lb 3 oz
		more, after, ok := g.measure(rest[len(m):])
		switch comma := strings.Contains(s[:len(s)-len(rest)], ", "); {
		case strings.EqualFold(more.unit, words.unit) && m == n && !comma: // 7 1/2 cups 7 1/2 cups sugar
			a.say, rest = joined(a.say, a.text+" stands there twice, and is read once"), after
			return a.again(rest)
		case strings.EqualFold(more.unit, words.unit): // 4 cups, 7 cups sugar
			return a, s, false
		case !ok || !more.measured || !valid(m+" "+more.unit):
		case metricUnit.MatchString(words.unit) != metricUnit.MatchString(more.unit): // 7 lb 3178 g: the same twice
			a.doubt, rest = disagree(a.text, m+" "+more.unit), after
			return a, food(rest), valid(a.text)
		case valid(a.text+" "+m+" "+more.unit) && compound([]string{words.unit, m, more.unit}):
			a.text, rest = a.text+" "+m+" "+more.unit, after
		}
	}
	return a.again(rest)
}

// indexAfter is where a text goes on after a part of it, leading spaces off.
func indexAfter(s, part string) int {
	s = strings.TrimLeft(s, " ")
	if i := strings.Index(s, part); i >= 0 {
		return i + len(part)
	}
	return len(s)
}

// mixed reports that "2-1/2" is one number.
func mixed(a, b, s string) bool {
	return strings.Contains(b, "/") && !strings.ContainsAny(a, " /") && !strings.Contains(b, " ") &&
		regexp.MustCompile(`^`+regexp.QuoteMeta(a)+` ?- ?\d`).MatchString(s)
}

func valid(texts ...string) bool {
	for _, t := range texts {
		if _, err := unit.ParseQuantity(t); err != nil {
			return false
		}
	}
	return true
}

// food drops what joins amount and food.
func food(s string) string {
	s = strings.TrimSpace(strings.TrimLeft(s, " .:"))
	return strings.TrimSpace(ofForm.ReplaceAllString(wordsFirst.ReplaceAllString(s, "$1"), ""))
}

// wordsFirst are words in brackets between a measure and "of": "1,5 l (ein Korb) of".
var wordsFirst = pattern(`(?i)^\([^()\d]{1,30}\) (of |de |d'|von )`)

// spelled turns a number in words at the head into digits; vague is an amount
// without size.
func spelled(s string) (out string, vague bool) {
	low := strings.ToLower(s)
	for _, w := range []string{"some ", "a few ", "few ", "several ", "ein paar ", "einige ", "un peu de ", "a couple of ", "a little ", "a bit of ", "quelques ", "etwas "} {
		if strings.HasPrefix(low, w) {
			return "some " + s[len(w):], true
		}
	}
	for _, w := range numberWords {
		if w.number == "" || !strings.HasPrefix(low, w.say+" ") || len(low) != len(s) {
			continue
		}
		rest := s[len(w.say)+1:]
		if w.number == "1" && strings.IndexAny(rest, "0123456789") == 0 {
			return "1 x " + rest, false
		}
		return w.number + " " + rest, false
	}
	return s, false
}

// words after a number: its unit as the batch file writes it.
type measureWords struct {
	unit, say string
	measured  bool // a weight or volume
}

// measure reads the unit after a number: the longest words that are one, else a
// piece, a size or nothing.
func (g *grammar) measure(s string) (w measureWords, rest string, ok bool) {
	s = strings.TrimLeft(s, " -")
	if s == "" || timeWord.MatchString(s) {
		return w, s, false
	}
	words := strings.Fields(s)
	if u, short := alsoUnit(words[0]); short {
		w = measureWords{unit: u, measured: true}
		if said := strings.TrimRight(words[0], ",."); len(said) == 1 && u != "cup" || strings.HasPrefix(said, "gr") && len(said) < 4 {
			w.say = said + " is read as " + u
		}
		return w, strings.Join(words[1:], " "), true
	}
	for n := min(4, len(words)); n > 0; n-- {
		head := strings.TrimRight(strings.Join(words[:n], " "), ",")
		if strings.ContainsAny(head, "0123456789") && !compound(words[:n]) {
			continue // "7 1/2 cups 7 1/2 cups", "5 pints. 1/2 tsp": no sum
		}
		q, err := unit.ParseQuantity("1 " + head)
		if err == nil && (q.Dim == unit.ByMass || q.Dim == unit.ByVolume) && q.Form == "" && !strings.ContainsAny(head, "(),") {
			return measureWords{unit: strings.TrimSuffix(head, "."), measured: true}, strings.Join(words[n:], " "), true
		}
	}
	first := strings.ToLower(strings.Trim(words[0], ".,"))
	if second := strings.ToLower(strings.Trim(words[min(1, len(words)-1)], ".,")); sizes[first] && pieces[second] && len(words) > 2 { // 1 kleine Prise Salz
		return measureWords{unit: held(second)}, strings.Join(words[2:], " "), true
	}
	if _, known := g.row(first); known && (strings.HasSuffix(words[0], ",") || g.formOnly(strings.Join(words[1:], " "))) {
		return w, s, true // "6 cloves (crushed)": the spice, and no part of a bulb
	}
	switch {
	case pieces[first] && len(words) > 1 && g.pieceNamed(words):
		return w, s, true
	case pieces[first] && len(words) > 1:
		return measureWords{unit: held(first)}, strings.Join(words[1:], " "), true
	case len(words) > 1 && g.tabled(first, words[1:]):
		return measureWords{unit: first}, strings.Join(words[1:], " "), true
	case sizes[first] && len(words) > 1:
		return measureWords{unit: held(first)}, strings.Join(words[1:], " "), true
	}
	return w, s, true
}

// tabled reports a word of the table of measures before a food ("1 jigger
// rum"), unless with it the food is another one ("nut butter").
func (g *grammar) tabled(word string, rest []string) bool {
	if !g.p.MeasureWord(word) || jarTalk.MatchString(word) {
		return false
	}
	_, whole := g.row(word + " " + strings.Join(rest, " "))
	return !whole
}

var ofStem = pattern(`(?i)^(?:stangen?|schoten?|zweige?|rinde|bâtons?|branches?|brins?)$`)

// pieceNamed reports a piece that with its food is a food of its own: "Stange Zimt"
// is no ground cinnamon.
func (g *grammar) pieceNamed(words []string) bool {
	bare := strings.Trim(words[1], ",.()")
	whole, named := g.row(words[0] + " " + bare)
	food, known := g.row(bare)
	return ofStem.MatchString(words[0]) && named && known && whole.Key != food.Key
}
