package notes

import "strings"

// Fractions, dozens and near amounts in words, and what a writer struck out.

var (
	partsOf  = pattern(`(?i)\b(?:(?:an?|one|eine?[nmrs]?|une?) )?(two[- ]thirds?|three[- ]quarters|three[- ]fourths|thirds?|quarters?|zwei ?drittel|drei ?viertel|drittel|viertel|deux tiers|trois quarts|tiers|quart)(?: of (?:an? |one )?| de | d'| )(inch|cups?|pints?|quarts?|pounds?|lbs?|oz|ounces?|kilos?|kg|litres?|liters?|lit(?:er|re)|l|tasses?|tassen|pfund|tl|el|teelöffel|esslöffel|teaspoons?|tsp|tablespoons?|tbsp|livres?|cuill\p{L}+)\b`)
	scoreOf  = pattern(`(?i)\b(?:une |la )(dizaine|douzaine|quinzaine|vingtaine|trentaine|quarantaine|cinquantaine|soixantaine)(?: de | d')`)
	scores   = map[string]string{"dizaine": "10", "douzaine": "12", "quinzaine": "15", "vingtaine": "20", "trentaine": "30", "quarantaine": "40", "cinquantaine": "50", "soixantaine": "60"}
	nearly   = pattern(`(?i)^(?:just (?:under|over|short of)|(?:a )?(?:little|bit|touch|shade) (?:under|over|more than|less than|short of)|slightly (?:under|over|more than|less than)|nearly|almost|barely|close to|rund|fast|beinahe|zirka|gute[rns]?|gut|knappe[rns]?|knapp|etwas (?:mehr|weniger) als|(?:un peu|légèrement) (?:plus|moins) (?:de|d')|presque|à peu près|à peine) ?`)
	withOf   = pattern(`(?i)\bw/ ?o\b ?|\bw/ ?`)
	struck   = pattern(`~~.*?~~|<(?:s|del|strike)>.*?</(?:s|del|strike)>`)
	wrapped  = pattern(`^(?:"([^"]+)"|“([^”]+)”|„([^“”]+)[“”]|«([^»]+)»|\[([^\[\]]+)\]|\*{1,2}([^*]+)\*{1,2}|_{1,2}([^_]+)_{1,2})([.,;]?)$`)
	fraction = map[string]string{"tw": "2/3", "zw": "2/3", "de": "2/3", "tr": "3/4", "dr": "1/3", "th": "1/3", "ti": "1/3", "qu": "1/4", "vi": "1/4"}
)

// gratedAnd are both parts of a fruit said as what was done to it: "1 lemon grated and
// juiced".
var gratedAnd = pattern(`(?i)^(` + num + ` (?:large |medium |small )?\p{L}+),? ?\(?(?:finely )?(?:(?:rind |peel |zest )?grated|zested)(?: rind| zest| peel)?(?:,| and| &|, and) (?:juiced?|squeezed)\)?$`)

// inParts writes parts in words as figures: "three quarters of a kilo", "un quart
// de litre". A quarter-pint jar is the name of a jar.
func inParts(s string) string {
	s = scoreOf.ReplaceAllStringFunc(s, func(m string) string {
		return scores[strings.ToLower(scoreOf.FindStringSubmatch(m)[1])] + " "
	})
	jars := jarTalk.MatchString(strings.Join(partsOf.Split(s, -1), " "))
	return partsOf.ReplaceAllStringFunc(s, func(m string) string {
		f := partsOf.FindStringSubmatch(m)
		if jars && !strings.EqualFold(f[2], "inch") {
			return m
		}
		w := strings.ToLower(f[1])
		n := fraction[w[:2]]
		switch {
		case strings.HasPrefix(w, "three"), strings.HasPrefix(w, "drei"):
			n = "3/4"
		}
		return n + " " + f[2]
	})
}

// nigh drops a word that says an amount is not quite so much, and says so.
func nigh(s string) (out, say string) {
	m := nearly.FindString(s)
	if m == "" || numHead.FindString(inDigits(s[len(m):])) == "" {
		return s, ""
	}
	return s[len(m):], strings.ToLower(strings.TrimSpace(m)) + ": read as the amount that is named, weigh it where that matters"
}

func inDigits(s string) string { out, _ := spelled(s); return out }

// unstruck takes off what a writer struck out, and the signs around a whole line.
func unstruck(s string) (out, say string) {
	if out = crossed(s); out != s {
		say = "what is struck out is not read"
	}
	if m := struck.FindString(out); m != "" {
		out, say = strings.Join(strings.Fields(struck.ReplaceAllString(out, " ")), " "), "what is struck out is not read: "+m
	}
	for range 2 {
		if m := wrapped.FindStringSubmatch(out); m != nil {
			out = strings.Join(m[1:], "")
		}
	}
	return out, say
}

// crossed drops letters with a stroke through them (U+0335 to U+0338, combining
// overlays of the Unicode Standard).
func crossed(s string) string {
	if !strings.ContainsAny(s, "\u0335\u0336\u0337\u0338") {
		return s
	}
	var out []rune
	for _, r := range s {
		if r >= '\u0335' && r <= '\u0338' {
			if len(out) > 0 {
				out = out[:len(out)-1]
			}
			continue
		}
		out = append(out, r)
	}
	return strings.Join(strings.Fields(string(out)), " ")
}
