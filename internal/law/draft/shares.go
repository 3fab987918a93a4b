package draft

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"jarmark/internal/kitchen/cook"
)

// shares reports figures in the maker's own words that the recipe does not give:
// "70 % strawberries", "only four ingredients".
func (p *Draft) shares(cite string) {
	for _, o := range p.ownTexts() {
		if o.text == "" || o.as == "ingredient" || o.as == "brand" {
			continue
		}
		p.shareOf(o, cite)
		p.countOf(o, cite)
		p.sharesInWords(o, cite)
		p.fruitsOf(o, cite)
	}
}

var percent = regexp.MustCompile(`(?i)(?:^|[^\d.,])(\d{1,2}(?:[.,]\d+)?)\s*(?:%|per ?cent\b|Prozent\b|pour cent\b)`)

// ofFruit are words that stand for all the fruit together.
var ofFruit = []string{"fruit", "fruits", "berries", "berry", "frucht", "früchte", "früchten", "fruchtanteil", "fruchtgehalt", "obst"}

// nearShare is how far a share in words may be from the recipe's, in points.
const nearShare = 1.0

// shareOf compares a percentage before a food with what went in, and with what is
// in the finished jar: a maker may mean either.
func (p *Draft) shareOf(o ownText, cite string) {
	for _, at := range percent.FindAllStringSubmatchIndex(o.text, -1) {
		value, err := strconv.ParseFloat(strings.ReplaceAll(o.text[at[2]:at[3]], ",", "."), 64)
		behind, _, _ := strings.Cut(o.text[at[1]:], ".")
		words := strings.Fields(Spaced(behind))
		if err != nil || len(words) == 0 {
			continue
		}
		name, added, finished, ok := p.shareNamed(words[:min(len(words), wordsBefore)])
		if !ok || math.Abs(added-value) <= nearShare || math.Abs(finished-value) <= nearShare {
			continue
		}
		p.L.Warnf("share-claim", o.file, o.path, "%q: the recipe has %.0f %% %s of all that went in, and %.0f g in 100 g of what came out",
			strings.TrimSpace(o.text[at[2]:at[1]]+" "+strings.Join(words[:min(len(words), 2)], " ")), added, name, finished).
			Hinted("write what the recipe gives, or leave the figure out").Cited(cite)
		return
	}
}

// shareNamed finds what the first of some words name, and its shares of the pot
// and of the yield in percent.
func (p *Draft) shareNamed(words []string) (name string, added, finished float64, ok bool) {
	sum := func(is func(cook.Line) bool) {
		for _, ln := range p.R.Lines {
			if is(ln) {
				added, finished, ok = added+ln.Percent, finished+ln.PercentFin, true
			}
		}
	}
	for i, w := range words {
		if Has(ofFruit, w) {
			sum(isAnyFruit)
			return "fruit", added, finished, ok
		}
		if x, n := foodAt(words[i:], p.Say.Lang); n > 0 {
			sum(func(ln cook.Line) bool { return ln.Key == x.food.Key })
			return x.said, added, finished, ok
		}
	}
	return "", 0, 0, false
}

var counted = regexp.MustCompile(`(?i)(?:^|[^\p{L}\d])(\d{1,2}|two|three|four|five|six|seven|zwei|drei|vier|fünf|sechs|deux|trois|quatre|cinq|six) (?:simple |natural |honest |good |real |pure |einfache |natürliche )?(ingredients|Zutaten|ingrédients)(?:[^\p{L}]|$)`)

var numbers = map[string]int{"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "zwei": 2, "drei": 3, "vier": 4, "fünf": 5, "sechs": 6, "deux": 2, "trois": 3, "quatre": 4, "cinq": 5}

// countOf compares a number of ingredients with the recipe's: as listed, or with
// the parts of what was bought counted for themselves.
func (p *Draft) countOf(o ownText, cite string) {
	m := counted.FindStringSubmatch(o.text)
	if m == nil {
		return
	}
	n, err := strconv.Atoi(m[1])
	if err != nil {
		n = numbers[strings.ToLower(m[1])]
	}
	listed, single := map[string]bool{}, map[string]bool{}
	for _, ln := range p.R.Lines {
		listed[strings.ToLower(ln.Name)] = true
		if len(ln.Contains) == 0 {
			single[strings.ToLower(ln.Name)] = true
		}
		for _, part := range ln.Contains {
			single[strings.ToLower(part.Name)] = true
		}
	}
	if n == len(listed) || n == len(single) {
		return
	}
	p.L.Warnf("share-claim", o.file, o.path, "%q: the recipe lists %d", m[1]+" "+m[2], len(listed)).
		Hinted("write the number the label lists, or leave it out").Cited(cite)
}
