package draft

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kitchen/cook"
)

// fractions are shares in words, in percent: what stands before "fruit".
var fractions = []struct {
	words string
	value float64
}{
	{"three quarters", 75}, {"three quarter", 75}, {"drei Viertel", 75}, {"dreiviertel", 75}, {"trois quarts de", 75}, {"two thirds", 66}, {"two third", 66}, {"zwei Drittel", 66}, {"deux tiers de", 66},
	{"half", 50}, {"halb", 50}, {"moitié", 50}, {"a third", 33}, {"one third", 33}, {"ein Drittel", 33}, {"un tiers de", 33}, {"a quarter", 25}, {"one quarter", 25}, {"ein Viertel", 25}, {"un quart de", 25},
}

// wholeAs are words that say a multiple and not of what.
var wholeAs = []string{"twice the", "twice as much", "double the", "double", "triple the", "three times the", "extra", "doppelt so viel", "dreimal so viel", "doppelt", "deux fois plus de", "trois fois plus de"}

// sharesInWords reports shares that a text puts into words and the recipe does not
// give: "two thirds fruit", "more fruit than sugar", "twice the fruit".
func (p *Draft) sharesInWords(o ownText, cite string) {
	plain := Spaced(o.text)
	for _, f := range fractions {
		for _, fruit := range ofFruit {
			if said := f.words + " " + fruit; strings.Contains(plain, Spaced(said)) {
				_, added, finished, ok := p.shareNamed([]string{fruit})
				if ok && max(added, finished) < f.value-nearShare || ok && min(added, finished) > f.value+10 {
					p.shareTold(o, cite, said, fmt.Sprintf("the recipe has %.0f %% fruit of all that went in", added))
				}
				return
			}
		}
	}
	for _, w := range wholeAs {
		for _, fruit := range ofFruit {
			if said := w + " " + fruit; strings.Contains(plain, Spaced(said)) {
				p.shareTold(o, cite, said, "nothing here shows than what")
				return
			}
		}
	}
	p.moreThan(o, plain, cite)
}

var moreOf = regexp.MustCompile(` (?:more|mehr|plus de|plus d) (\S+(?: \S+)?) (?:than|als|que de|que du|que) (\S+) `)

// moreThan compares two foods of which a text says that one is more.
func (p *Draft) moreThan(o ownText, plain, cite string) {
	m := moreOf.FindStringSubmatch(plain)
	if m == nil {
		return
	}
	_, more, _, ok := p.shareNamed(strings.Fields(m[1]))
	_, less, _, also := p.shareNamed(strings.Fields(m[2]))
	if ok && also && more <= less {
		p.shareTold(o, cite, strings.TrimSpace(m[0]), fmt.Sprintf("the recipe has %.0f %% and %.0f %%", more, less))
	}
}

func (p *Draft) shareTold(o ownText, cite, said, but string) {
	p.L.Warnf("share-claim", o.file, o.path, "%q: %s", said, but).Hinted("write what the recipe gives, or leave the words out").Cited(cite)
}

var fruitsCounted = regexp.MustCompile(`(?i)(?:^|[^\p{L}\d])(\d|two|three|four|five|six|seven|triple|zwei|drei|vier|fünf|sechs|deux|trois|quatre|cinq|six)[ -]?(fruits?|berry|berries|Früchte|Frucht|Beeren|baies|fruits rouges)`)

// fruitsOf compares a number of fruits with the recipe's; whether lemon juice is
// one of them is the maker's own view.
func (p *Draft) fruitsOf(o ownText, cite string) {
	m := fruitsCounted.FindStringSubmatch(o.text)
	if m == nil {
		return
	}
	n, err := strconv.Atoi(m[1])
	if word := strings.ToLower(m[1]); err != nil {
		if n = numbers[word]; word == "triple" {
			n = 3
		}
	}
	fruits, juices, berries := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, ln := range p.R.Lines {
		switch name := strings.ToLower(ln.Row.Name + " " + ln.Name); {
		case ln.Row.Class == "juice" || strings.Contains(ln.Key, "_juice"):
			juices[ln.Key] = true
		case isAnyFruit(ln) || ln.IsFruit:
			fruits[ln.Key+ln.Name] = true
			if strings.Contains(name, "berr") || strings.Contains(name, "currant") || strings.Contains(name, "beere") {
				berries[ln.Key+ln.Name] = true
			}
		}
	}
	if may := []int{len(fruits), len(fruits) + len(juices), len(berries)}; !slices.Contains(may, n) {
		p.shareTold(o, cite, m[1]+" "+m[2], fmt.Sprintf("the recipe has %d", len(fruits)))
	}
}

// isAnyFruit reports what the word fruit may stand for.
func isAnyFruit(ln cook.Line) bool { return ln.Row.Class == "fruit" || ln.Row.Class == "dried fruit" }
