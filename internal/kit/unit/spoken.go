package unit

import (
	"math/big"
	"regexp"
	"strings"
)

// spoken is an amount brought to number and unit, with what was said beside:
// the part of a fruit ("juice of 3 limes"), a form ("3 cups packed"), and how
// many packs of it ("2 (3 oz) pouches").
type spoken struct {
	text, part, form string
	packs            string // a number, "" = one
}

var (
	partOf   = regexp.MustCompile(`(?i)^(?:the |der |le |les )?(?:(?:finely |coarsely )?(?:grated |pared |strained |fresh |abgeriebene )*)(zest|juice|rind|peel|saft|schale|jus|zestes?)( and (?:zest|juice|rind|peel)| und (?:saft|schale)| et (?:jus|zestes?))? (?:of|from|von|d[e’'u]) ?(.+)$`)
	packed   = regexp.MustCompile(`^([\d./ ]+?) ?(?:\(([^()]+)\)|[x×] ?([\d.,]+ ?[^\d]+?)) ?([^\d()]*)$`)
	aside    = regexp.MustCompile(`^(\S.*?) ?\(([^()]*)\)$`)
	about    = regexp.MustCompile(`(?i)^(?:about|approx\.?|approximately|around|ca\.?|circa|etwa|ungefähr|environ) +`)
	partWord = map[string]string{"zest": "zest", "rind": "zest", "peel": "zest", "schale": "zest", "zeste": "zest", "zestes": "zest", "juice": "juice", "saft": "juice", "jus": "juice"}
)

// oneWords stand for a number before a measure: "a pinch", "half a lemon".
var oneWords = []struct{ say, number string }{
	{"half a dozen", "6"}, {"a dozen", "12"}, {"half a", "1/2"}, {"half an", "1/2"}, {"half", "1/2"}, {"a half", "1/2"}, {"a quarter", "1/4"}, {"one", "1"}, {"an", "1"}, {"a", "1"},
	{"two", "2"}, {"three", "3"}, {"four", "4"}, {"five", "5"}, {"six", "6"}, {"eight", "8"}, {"ten", "10"}, {"twelve", "12"},
	{"eine halbe", "1/2"}, {"ein halber", "1/2"}, {"eine", "1"}, {"einen", "1"}, {"ein", "1"}, {"une demi", "1/2"}, {"un demi", "1/2"}, {"une", "1"}, {"un", "1"},
}

// formWords are said beside a kitchen measure and tell how it was filled.
var formWords = map[string]bool{"packed": true, "unpacked": true, "chopped": true, "diced": true, "cubed": true, "sliced": true, "crushed": true, "mashed": true,
	"pureed": true, "puréed": true, "grated": true, "shredded": true, "whole": true, "halved": true, "quartered": true, "pitted": true, "drained": true, "sifted": true,
	"ground": true, "firmly": true, "lightly": true, "loosely": true, "finely": true, "coarsely": true, "roughly": true, "tightly": true, "level": true, "and": true}

// containers say nothing beside a size: "3 oz pouch" is 3 oz.
var containers = map[string]bool{"pouch": true, "box": true, "package": true, "packet": true, "packets": true, "can": true, "tin": true, "jar": true, "bottle": true, "bag": true, "envelope": true}

// unlevel words make a measure of unknown size.
var unlevel = map[string]bool{"heaped": true, "heaping": true, "rounded": true, "scant": true, "generous": true, "gehäufter": true, "gehäufte": true, "bombée": true}

// listen brings an amount to number and unit; s is cleaned.
func listen(s string) (spoken, error) {
	p := spoken{text: about.ReplaceAllString(s, "")}
	if m := partOf.FindStringSubmatch(p.text); m != nil {
		if m[2] != "" {
			return p, fail("write two ingredients: the juice, and the zest", "%s is two ingredients", quote(s))
		}
		p.part, p.text = partWord[strings.ToLower(m[1])], m[3]
	}
	p.text = InDozens(number(p.text))
	if m := packed.FindStringSubmatch(p.text); m != nil {
		inner := strings.TrimSpace(strings.ReplaceAll(m[2]+m[3], "-", " "))
		if q, err := ParseQuantity(inner); err == nil && q.Dim != ByCount && !formWords[strings.ToLower(inner)] && !isMeasure(m[4]) {
			p.packs, p.text = m[1], inner
			return p, nil
		}
	}
	if m := aside.FindStringSubmatch(p.text); m != nil {
		p.text = strings.TrimSpace(m[1])
		p.form = formsIn(m[2])
	}
	return p.formed()
}

var dozens = regexp.MustCompile(`(?i)^([\d./ ]+) (?:dozen|doz\.?|dutzend|douzaines?)(?: (?:of|de) | |$)`)

// InDozens counts them at the head of a text: "2 dozen plums" is "24 plums". What is no whole number of
// pieces is left as it is.
func InDozens(s string) string {
	m := dozens.FindStringSubmatch(s)
	if m == nil {
		return s
	}
	v, rest, err := scanNumber(m[1])
	if err != nil || strings.TrimSpace(rest) != "" {
		return s
	}
	if v.Mul(v, big.NewRat(12, 1)); !v.IsInt() {
		return s
	}
	return strings.TrimSpace(v.Num().String() + " " + s[len(m[0]):])
}

func isMeasure(words string) bool {
	_, ok := measures[unitWord(words)]
	return ok
}

// number turns "a pinch" into "1 pinch" and "a 3 oz pouch" into "3 oz pouch".
func number(s string) string {
	low := strings.ToLower(s) + " "
	if len(low) != len(s)+1 {
		return s
	}
	for _, w := range oneWords {
		if !strings.HasPrefix(low, w.say+" ") {
			continue
		}
		rest := strings.TrimSpace(s[len(w.say):])
		if rest != "" && (rest[0] >= '0' && rest[0] <= '9' || rest[0] == '(') && w.number == "1" {
			if rest[0] == '(' {
				return "1 " + rest
			}
			return rest
		}
		return strings.TrimSpace(w.number + " " + rest)
	}
	return s
}

// formed takes the words of form from around a unit of measure: "3 packed
// cups", "3 cups, firmly packed". A count keeps its words.
func (p spoken) formed() (spoken, error) {
	end := strings.LastIndexAny(p.text, "0123456789")
	if end < 0 {
		return p, nil
	}
	head, tail := p.text[:end+1], strings.Fields(strings.ReplaceAll(p.text[end+1:], ",", " "))
	var unit, forms []string
	for _, w := range tail {
		switch low := strings.ToLower(w); {
		case unlevel[low]:
			if isMeasure(strings.Join(tail[1:], " ")) || isMeasure(tail[len(tail)-1]) {
				return p, fail("write the level measure, or weigh it", "%s may be anything between two sizes", quote(p.text))
			}
			unit = append(unit, w)
		case containers[low] && isMeasure(strings.Join(unit, " ")):
			forms = append(forms, "")
		case formWords[low]:
			forms = append(forms, low)
		default:
			unit = append(unit, w)
		}
	}
	if len(forms) > 0 && isMeasure(strings.Join(unit, " ")) {
		p.text = head + " " + strings.Join(unit, " ")
		p.form = strings.Join(strings.Fields(p.form+" "+strings.Join(forms, " ")), " ")
	}
	return p, nil
}

// formsIn gives the words of form in a text.
func formsIn(s string) string {
	var out []string
	for _, w := range strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return r == ' ' || r == ',' }) {
		if formWords[w] {
			out = append(out, w)
		}
	}
	return strings.Join(out, " ")
}
