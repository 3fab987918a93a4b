package notes

import "strings"

// The times of a clause, and which of them may be a boil or a bath.

// condition is a time for a jam that has not come to what it should.
var condition = pattern(`(?i)\b(?:if|unless|otherwise|falls|wenn|ansonsten|sinon|si|s'il)\b`)

// times gives the minutes of a clause: "10", or "15-20" for a range.
func times(c string) (out []string) {
	for _, t := range timed(c) {
		out = append(out, t.minutes)
	}
	return out
}

// spell is one time of a clause, what is done in it, and the words beside it.
type spell struct {
	minutes, near string
	deed          deed
}

// timed gives the times of a clause in which something may be boiled or canned.
func timed(c string) (out []spell) {
	all := duration.FindAllStringSubmatchIndex(c, -1)
	last := 0
	for i, m := range all {
		next := len(c)
		if i+1 < len(all) {
			next = all[i+1][0]
		}
		d := ruled(c, last, m[0], m[1], next)
		near := c
		if d != unsaid && len(all) > 1 {
			near = wordsBy(c, last, m[0], m[1], next)
		}
		lead := leftTo.ReplaceAllString(c[last:m[0]], "cook")
		for _, join := range []string{" and ", ", ", " then "} {
			if at := strings.LastIndex(lead, join); at >= 0 && (join == " and " || (cooking.MatchString(lead[at:]) || process.MatchString(lead[at:])) && !condition.MatchString(lead[:at])) {
				lead = lead[at:]
			}
		}
		last = m[1]
		other := notThis.MatchString(withLid.ReplaceAllString(lead, "")) || soFar.MatchString(c[:m[0]]) && ofBoil.MatchString(c[m[1]:]) && (d == unsaid || onlyPart.MatchString(lead))
		if d == rests || other || prepHead.MatchString(lead) || jarsFor.MatchString(lead) && !jarSizes.MatchString(lead) && !process.MatchString(lead) {
			continue
		}
		low, ok := minutes(c[m[2]:m[3]], c[m[6]:m[7]])
		if !ok {
			continue
		}
		if m[4] >= 0 {
			if high, ok := minutes(c[m[4]:m[5]], c[m[6]:m[7]]); ok {
				low += "-" + high
			}
		}
		out = append(out, spell{low, near, d})
	}
	return out
}

// soFar and ofBoil stand around a time that is part of a boil: "after 2 hours of cooking".
var (
	soFar  = pattern(`(?i)\b(?:prepare|start|begin|check|heat)\b[^.;]*\b(?:after|for) (?:about |the first )?$`)
	ofBoil = pattern(`(?i)^ ?(?:of|into) (?:the |its )?(?:cook|boil|simmer)`)
)
