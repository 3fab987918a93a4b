package notes

import (
	"strings"
)

// Packs with their size: "1 (3 oz) pouch", "2 pouches (3 oz each)".

var (
	packForm   = pattern(`(?i)^(\d{1,3}|1/2)(?: ?- ?| ?x ?| ?-?\( ?| )(` + num + `)[- ]?(` + sizeUnit + `)(?: each)?(?:\)[ -]?|[ -])(` + holder + `)\b\.?`)
	packAfter  = pattern(`(?i)^(\d{1,3}) (` + holder + `) ?\((?:\d{1,2} (?:pouches|packets|sachets|envelopes), )?(?:about |each |of )?(` + num + `)[- ]?(` + sizeUnit + `)(?: ?[/,;=] ?(?:about )?` + num + ` ?` + sizeUnit + `)?(?: each)?\)`)
	packBehind = pattern(`(?i)^(\d{1,3}) (` + holder + `),? (` + num + `) ?(` + sizeUnit + `)$`)
	packEach   = pattern(`(?i)\((?:\d{1,2} (?:pouches|packets|sachets|envelopes), )?(?:each|of) | each\)$`)
	severalOf  = pattern(`(?i)^(\d{1,2}) ?x ?(` + num + ` ?(?:g|kg|lbs?|oz))\.? (?:of |de |d')?(\p{L})`)
	sizedPack  = pattern(`(?i)^(` + num + `)[- ]?(` + sizeUnit + `) (` + holder + `)\b\.?`)
)

// pack reads packs with their size.
func pack(s string) (a amount, rest string, ok bool) {
	if m := packForm.FindStringSubmatch(s); m != nil && !fractionOf(m[1], m[2], s) {
		a.text = m[1] + " (" + m[2] + " " + strings.TrimSuffix(m[3], ".") + ") " + held(m[4])
		return a, s[len(m[0]):], valid(a.text)
	}
	if m := packAfter.FindStringSubmatch(s); m != nil {
		a.text = m[1] + " (" + m[3] + " " + strings.TrimSuffix(m[4], ".") + ") " + held(m[2])
		if m[1] != "1" && !packEach.MatchString(m[0]) { // each of them, or all together
			a.choices, a.text = []string{a.text, m[3] + " " + strings.TrimSuffix(m[4], ".")}, ""
			return a, s[len(m[0]):], valid(a.choices...)
		}
		return a, s[len(m[0]):], valid(a.text)
	}
	if m := packBehind.FindStringSubmatch(s); m != nil { // pectin 1 pkt 13 g
		a.text = m[1] + " (" + m[3] + " " + strings.TrimSuffix(m[4], ".") + ") " + held(m[2])
		if m[1] != "1" {
			a.choices, a.text = []string{a.text, m[3] + " " + strings.TrimSuffix(m[4], ".")}, ""
			return a, "", valid(a.choices...)
		}
		return a, "", valid(a.text)
	}
	if m := severalOf.FindStringSubmatch(s); m != nil {
		a.text = m[1] + " (" + m[2] + ")"
		return a, s[len(m[0])-len(m[3]):], valid(a.text)
	}
	if m := sizedPack.FindStringSubmatch(s); m != nil {
		a.text = m[1] + " " + strings.TrimSuffix(m[2], ".")
		return a, s[len(m[0]):], valid(a.text)
	}
	return a, s, false
}

// fractionOf reports that "1 3/4 oz" is one and three quarters.
func fractionOf(n, size, s string) bool {
	return strings.HasPrefix(s, n+" "+size) && strings.Contains(size, "/") && !strings.Contains(size, " ")
}

func held(w string) string {
	w = strings.ToLower(strings.TrimSuffix(w, "."))
	if full, ok := sameHolder[w]; ok {
		return full
	}
	return w
}

// holderFirst puts the piece before its food: "2 pectin sachets", "3 celery stalks".
func (g *grammar) holderFirst(s string) string {
	m := holderLast.FindStringSubmatch(s)
	if m == nil || !pieces[strings.ToLower(m[3])] || jarTalk.MatchString(m[3]) || pieces[strings.ToLower(m[2])] {
		return s
	}
	_, known := g.row(m[2])
	if _, whole := g.row(m[2] + " " + m[3]); !known || whole {
		return s
	}
	return m[1] + " " + m[3] + " " + m[2] + m[4]
}

var holderLast = pattern(`^(` + num + `) ((?:\p{L}+ )?\p{L}+) (\p{L}+)((?: \(|,).*)?$`)
