package notes

import "strings"

// cookedIn is what was done with one thing in another, before the other's amount:
// "5 lb elderberries simmered with 1 c water".
var cookedIn = pattern(`(?i)^(.*?\p{L}\)?),? ((?:and |then |und |et |slowly |gently )?(simmered|cooked|boiled|stewed|steamed|macerated|layered|tossed|mixed|mashed|crushed|stirred|combined|blended|soaked|steeped|cuite?s?|mélangée?s?|macérée?s?|trempée?s?|mijotée?s?)(?: (?:gently|slowly|overnight|together|down|up|well|over night))* (?:with|in|into|avec|dans)) ((?:\d|an? (?:cup|pint|quart|little|splash)\b).*)$`)

// mixedTail is what was done with several things, behind the last: "mit 750 g
// Gelierzucker gemischt".
var mixedTail = pattern(`(?i)([\p{L}\d.)]) (?:gemischt|vermischt|vermengt|verrührt|angesetzt|gekocht|aufgekocht|mélangée?s?)$`)

// steeped is of what was in a liquid that may have been poured off.
var steeped = pattern(`(?i)^(?:soaked|steeped|trempé)`)

// untilTail is how long it was done, in words.
var untilTail = pattern(`(?i),? (?:until|till|bis|jusqu'à)\b[^\d]*$`)

// together takes what was done with two things in the pot from between them, where
// both are foods with their amounts; done is those words.
func (g *grammar) together(s string) (rest, done string) {
	if first, _, two := strings.Cut(s, " mit "); two && g.startsMeasured(first) {
		return mixedTail.ReplaceAllString(s, "$1"), ""
	}
	m := cookedIn.FindStringSubmatch(s)
	if m == nil {
		return s, ""
	}
	first, _, _ := strings.Cut(m[1], ",")
	second := untilTail.ReplaceAllString(m[4], "")
	if !g.startsMeasured(first) || !g.whole(second) {
		return s, ""
	}
	return m[1] + " and " + second, m[2]
}

// sayDone says what was done with things that were read, and asks of what they were
// soaked in.
func (l *Line) sayDone(done string) {
	if done == "" || len(l.Ingredients) == 0 {
		return
	}
	l.say("in no key: %s", done)
	if steeped.MatchString(done) {
		l.ask("was the water it was %s kept? Take it out if it was poured off", strings.ToLower(done))
	}
}
