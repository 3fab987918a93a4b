package notes

import (
	"strings"
)

// A line of a table: cells parted by "|", amounts in two systems and the food.

// cells brings "7 lb | 3178 g / 112 oz | pears, cored |" to one amount and the
// food; what the amounts do not agree in is told.
func (g *grammar) cells(s string) (out, doubt string) {
	if strings.Count(s, "|") == 0 {
		return s, ""
	}
	var amounts, words []string
	number := ""
	for _, c := range strings.Split(s, "|") {
		switch c = strings.TrimSpace(c); {
		case c == "":
		case numHead.FindString(c) == c:
			number = c
		case number != "" && len(words) == 0 && valid(number+" "+c) && g.amountOnly(number+" "+c):
			amounts, number = append(amounts, number+" "+c), ""
		case g.amountOnly(c):
			amounts = append(amounts, c)
		default:
			words = append(words, c)
		}
	}
	switch {
	case len(words) != 1 || len(amounts) == 0 && number == "":
		return strings.ReplaceAll(s, "|", " "), ""
	case len(amounts) == 0:
		return number + " " + words[0], ""
	}
	first, _, _ := strings.Cut(amounts[0], " / ")
	for _, other := range amounts[1:] {
		other, _, _ = strings.Cut(other, " / ")
		if d := disagree(first, other); d != "" {
			doubt = d
		}
	}
	return first + " " + words[0], doubt
}

// columns parts amounts that stand apart by spaces alone, where others of the line
// stand by one: "1 kilo sugar    juice of 2 lemons".
func columns(s string) string {
	if !oneSpace.MatchString(s) {
		return s
	}
	return wideSpace.ReplaceAllString(s, "$1; $2")
}

var (
	oneSpace  = pattern(`\S \S`)
	wideSpace = pattern(`(?i)(\p{L}|\))(?: {3,}| *\t *)((?:approx\.? |about |ca\.? )?\d|juice|zest|saft|jus|le jus)`)
)

// amountOnly reports a number with a measure, or the same in two, and no more.
func (g *grammar) amountOnly(s string) bool {
	for _, one := range strings.Split(s, "/") {
		one = strings.TrimSpace(one)
		n := numHead.FindString(one)
		if n == "" {
			return false
		}
		w, rest, ok := g.measure(one[len(n):])
		if !ok || !w.measured || strings.Trim(rest, " .") != "" {
			return numHead.FindString(s) != "" && wholeAmount.MatchString(s)
		}
	}
	return true
}

var wholeAmount = pattern(`(?i)^` + againOne + `\.?$`)
