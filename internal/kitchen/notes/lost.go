package notes

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// What of a line went into nothing.

// lost counts the figures of a text that are in no key, no amount and no
// question; those of a form are lost but for the size of its pieces.
func lost(l Line, s string) (n int) {
	var said []string
	for _, in := range l.Ingredients {
		said = append(said, in.Name, in.Amount, strings.Join(in.Names, " "), strings.Join(in.Amounts, " "), strings.Join(cutSize.FindAllString(in.Form, -1), " "))
	}
	for _, k := range l.Keys {
		said = append(said, k.Value)
	}
	for _, f := range l.Fills {
		said = append(said, summaryOf(f))
	}
	for _, a := range l.Asks {
		if !strings.Contains(a, formDoubt) && !strings.Contains(a, moreFood) {
			said = append(said, a)
		}
	}
	if len(l.Keys)+len(l.Fills) == 0 && len(l.Ingredients) > 0 {
		s = againIn.ReplaceAllString(s, " ") // the same amount in other units
	}
	for _, c := range l.early {
		said = append(said, c)
	}
	s = duration.ReplaceAllStringFunc(awake(s), func(m string) string { // hours are minutes of a key
		if t := times(m); len(t) == 1 {
			return t[0]
		}
		return m
	})
	left := map[string]int{}
	for _, f := range aFigure.FindAllString(strings.Join(append(said, l.Says...), " "), -1) {
		left[plainFigure(f)]++
	}
	for _, f := range aFigure.FindAllString(s, -1) {
		if f = plainFigure(f); left[f] > 0 {
			left[f]--
		} else {
			n++
		}
	}
	return n
}

var againIn = pattern(`(?i)\([^()\p{L}]*` + againOne + `[^()]*\)`)

// missing gives the figures of a line, in digits or words, that stand in no key,
// no question and no remark.
func missing(l Line, s string) (out []string) {
	var said []string
	for _, in := range l.Ingredients {
		said = append(said, in.Name, in.Amount, in.Form)
		said = append(append(said, in.Names...), in.Amounts...)
	}
	for _, k := range l.Keys {
		said = append(said, k.Value)
	}
	for _, f := range l.Fills {
		said = append(said, summaryOf(f), sizesOf(f))
		if f.Low != float64(int(f.Low)) {
			said = append(said, "1 2") // a half
		}
		if f.Sealed >= 0 {
			said = append(said, strconv.Itoa(int(f.Low)-f.Sealed))
		}
	}
	said = append(append(said, l.Asks...), l.Says...)
	known := map[string]bool{}
	for _, f := range aFigure.FindAllString(strings.Join(said, " "), -1) {
		known[plainFigure(f)] = true
	}
	for _, w := range figureOrWord.FindAllString(told(l, s), -1) {
		f := w
		if n, ok := wordNumbers()[strings.ToLower(w)]; ok && n > 1 {
			f = strconv.Itoa(n)
		}
		if strings.ContainsAny(f[:1], "0123456789") && !known[plainFigure(f)] && !slices.Contains(out, w) {
			out = append(out, w)
		}
	}
	return out
}

// unsay takes back that a line was not read.
func (l *Line) unsay() {
	l.Says = slices.DeleteFunc(l.Says, func(s string) bool { return strings.HasPrefix(s, "not read") })
}

// sayMissing tells the figures of a line that was read after all.
func (l *Line) sayMissing() {
	if left := missing(*l, plain(l.Text)); len(left) > 0 {
		l.say("in no key: %s", strings.Join(left, ", "))
	}
}

// told takes out of a line what a key holds in other figures: the day it was
// made, hours, dozens, thousands, and an amount said again.
func told(l Line, s string) string {
	if days, from, to := dayIn(s); len(days) > 0 && l.find("made") != nil {
		s = s[:from] + " " + s[to:]
	}
	if len(l.Ingredients) > 0 {
		if !slices.ContainsFunc(l.Ingredients, func(in Ingredient) bool { return in.Amount != "" && !measured(in.Amount) }) {
			s = againIn.ReplaceAllString(s, " ") // of a count it says more: "1 packet (500 g)"
		}
		s = againSlash.ReplaceAllString(s, "$1 ")
		s = aCount.ReplaceAllStringFunc(s, unit.InDozens)
	}
	keyed := map[string]bool{}
	for _, k := range l.Keys {
		keyed[k.Value] = true
	}
	s = duration.ReplaceAllStringFunc(s, func(m string) string {
		for _, t := range times(m) {
			for _, v := range strings.Split(t, "-") {
				if !keyed[v] {
					return m
				}
			}
		}
		return " "
	})
	return thousandsIn.ReplaceAllString(s, "$1$2")
}

var (
	aCount      = pattern(`(?:\b\d{1,2} )?\b\d{1,2}(?:/\d{1,2})? \p{L}+\.?`)
	againSlash  = pattern(`(?i)(\d ?(?:` + againUnit + `)) ?/ ?` + againOne + `\b(?: ` + againOne + `\b)?`)
	thousandsIn = pattern(`\b(\d{1,3}),(\d{3})\b`)
)

var figureOrWord = pattern(`\d+(?:[.,]\d+)?|[\p{L}-]+`)

// sizesOf gives the figures a size of jar may have been said in: 370 ml are 37 cl.
func sizesOf(f Fill) string {
	n, err := strconv.ParseFloat(aFigure.FindString(f.Jar+f.Said), 64)
	switch {
	case err != nil:
		return ""
	case strings.HasSuffix(f.Jar+f.Said, "ml"):
		return fmt.Sprint(n/10, " ", n/100, " ", n/1000, " ", 2) // and half a litre, written 1/2
	}
	if f.Jar == "8 fl oz" {
		return "1 2" // half-pint
	}
	return "1"
}

func plainFigure(f string) string { return strings.TrimLeft(strings.ReplaceAll(f, ",", "."), "0") }

var thousands = pattern(`(?i)\b\d{1,3}(?:,\d{3}\b|\.\d{3} ?(?:g|ml)\b)`)

// why says what a line lacks.
func why(s string) string {
	switch {
	case thousands.MatchString(s):
		return "a comma or point may part thousands or begin a fraction: write 1500 or 1.5"
	case strings.ContainsAny(s, "0123456789"):
		return "a number, but no amount of a food, no count of jars and no time that jarmark knows; write what counts as a key"
	case len(strings.Fields(s)) <= 4:
		return "no amount and no number in it; if it went into the pot, write how much"
	}
	return "words without an amount; what was done is no key"
}

// summaryOf gives the figures of a count of jars.
func summaryOf(f Fill) string {
	out := []string{f.Jar, f.Said, strconv.FormatFloat(f.Low, 'f', -1, 64)}
	if f.High != f.Low {
		out = append(out, strconv.FormatFloat(f.High, 'f', -1, 64))
	}
	if f.Sealed >= 0 {
		out = append(out, strconv.Itoa(f.Sealed))
	}
	return strings.Join(out, " ")
}
