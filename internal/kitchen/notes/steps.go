package notes

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

var (
	duration = regexp.MustCompile(`(?i)(` + num + `)(?: ?(?:-|to|or|bis|à) ?(` + num + `))?[- ]?(minutes?|mins?|minuten|mn|hours?|hrs?|h|stunden?|std|heures?)\b\.?`)
	bathTail = regexp.MustCompile(`(?i)\b(?:bwb|water bath|bath|steam(?:ed)?(?: canner)?|wasserbad|bain-marie)\b[ :,]*(?:for )?(\d{1,3})$`)
	process  = regexp.MustCompile(`(?i)\b(?:process(?:ed)?|canner|bath|bwb|wbc|einkochen|eingekocht|wasserbad|stérilis\w*|bain-marie)\b`)
	bath     = regexp.MustCompile(`(?i)\b(?:boiling[- ]water|water[- ]?bath|hot water bath|bath|bwb|wasserbad|bain-marie)\b`)
	steam    = regexp.MustCompile(`(?i)\bsteam(?:ed|er)?\b`)
	cooking  = regexp.MustCompile(`(?i)\b(?:boil(?:ed|ing)?|cook(?:ed|ing)?|simmer(?:ed|ing)?|kochen|gekocht|köcheln|cuire|cuit|bouillir|rolling|cuisson|kochzeit)\b`)
	notThis  = regexp.MustCompile(`(?i)\b(?:stand|soak|leave|left|wait|rest|cool(?:ed)?|chill|steep|sterili[sz]\w*|presterili[sz]\w*|jars? for|lids?|preheat|drain|stir(?:ring)? (?:for|\d)|every|prep|total|ready|infuse|macerat\w*|blanch\w*|refrigerate|freeze\w*)\b`)
	aside    = regexp.MustCompile(`(?i)\b(?:pectin (?:in|and|with) water|water and pectin|juice from|extract juice|until soft|until tender|until (?:the )?(?:peel|skins?|fruit|peaches|apples|pears|plums|berries|cranberries))\b`)
	jarTalk  = regexp.MustCompile(`(?i)\b(?:jars?|half-pints?|pints?|quarts?)\b`)
	height   = regexp.MustCompile(`(?i)\b(?:altitudes?|above|elevations?|1,?00[01]|6,?00[01]) ?(?:of|ft|feet|-)`)
	clause   = regexp.MustCompile(`[.;!] |[.;!]$`)
)

// times in words: "one minute".
var (
	spelledTime = regexp.MustCompile(`(?i)\b(?:one|an|two|three|four|five|six|eight|ten|twelve|fifteen|twenty|thirty|forty) (?:more )?(?:minutes?|hours?)\b`)
	timeNumbers = map[string]string{"one": "1", "an": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "eight": "8", "ten": "10", "twelve": "12", "fifteen": "15", "twenty": "20", "thirty": "30", "forty": "40"}
)

func hasMinutes(s string) bool { return duration.MatchString(s) }

// sentences reads the steps of a line: how long it was boiled and processed,
// how full the jars are, how many there were.
func (g *grammar) sentences(l *Line, s string) {
	s = spelledTime.ReplaceAllStringFunc(s, func(m string) string {
		word, after, _ := strings.Cut(m, " ")
		return timeNumbers[strings.ToLower(word)] + " " + after
	})
	before := len(l.Keys)
	if height.MatchString(s) && hasMinutes(s) && process.MatchString(s+" process") && strings.ContainsAny(s, ",-") && jarTalkOrTable(s) {
		l.ask("the time depends on the altitude: write minutes for yours, under [process]")
		return
	}
	l.headspace(s)
	if m := bathTail.FindStringSubmatch(s); m != nil {
		l.processed(s, []string{m[1]})
		return
	}
	var boils, baths []string
	for _, c := range clause.Split(s, -1) {
		if g.yield(l, c) {
			continue
		}
		for _, t := range times(c) {
			switch {
			case process.MatchString(c):
				baths = append(baths, t)
			case cooking.MatchString(c) && !aside.MatchString(c):
				boils = append(boils, t)
			}
		}
	}
	l.processed(s, baths)
	l.boiled(boils)
	if len(l.Keys)+len(l.Fills) > before && len(strings.Fields(s)) > 14 {
		l.say("read of it: the times and counts below; the rest is words")
	}
}

func jarTalkOrTable(s string) bool {
	return len(duration.FindAllString(s, -1)) > 1 || strings.Contains(s, "ft")
}

// times gives the minutes of a clause: "10", or "15-20" for a range.
func times(c string) (out []string) {
	last := 0
	for _, m := range duration.FindAllStringSubmatchIndex(c, -1) {
		lead := c[last:m[0]]
		if at := strings.LastIndex(lead, " and "); at >= 0 {
			lead = lead[at:]
		}
		last = m[1]
		if notThis.MatchString(lead) {
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
		out = append(out, low)
	}
	return out
}

// minutes turns "1 1/2" hours into "90".
func minutes(n, u string) (string, bool) {
	v, ok := number(n)
	if strings.HasPrefix(strings.ToLower(u), "h") || strings.HasPrefix(strings.ToLower(u), "st") {
		v *= 60
	}
	return strconv.FormatFloat(v, 'f', -1, 64), ok && v > 0 && v <= 1440
}

func number(s string) (float64, bool) {
	whole, frac := 0.0, strings.TrimSpace(strings.Replace(s, ",", ".", 1))
	if a, b, ok := strings.Cut(strings.ReplaceAll(frac, "-", " "), " "); ok {
		v, err := strconv.ParseFloat(a, 64)
		if err != nil {
			return 0, false
		}
		whole, frac = v, strings.TrimSpace(b)
	}
	if a, b, ok := strings.Cut(frac, "/"); ok {
		x, err := strconv.ParseFloat(strings.TrimSpace(a), 64)
		y, bad := strconv.ParseFloat(strings.TrimSpace(b), 64)
		if err != nil || bad != nil || y == 0 {
			return 0, false
		}
		return whole + x/y, true
	}
	v, err := strconv.ParseFloat(frac, 64)
	return whole + v, err == nil
}

// processed writes the process; two times for two jars are asked about.
func (l *Line) processed(s string, list []string) {
	list = distinct(list)
	if len(list) == 0 {
		return
	}
	l.several("process.minutes", list)
	switch {
	case steam.MatchString(s):
		l.key("process.method", `"steam"`)
	case bath.MatchString(s):
		l.key("process.method", `"boiling water"`)
	default:
		l.ask("processed in boiling water or in steam? Write method, under [process]")
	}
}

func (l *Line) boiled(list []string) {
	if list = distinct(list); len(list) > 0 {
		l.several("cook.minutes", list)
	}
}

// several writes one value, or asks between more.
func (l *Line) several(path string, list []string) {
	if len(list) == 1 && !strings.Contains(list[0], "-") {
		l.key(path, list[0])
		return
	}
	for _, one := range list {
		for _, v := range strings.Split(one, "-") {
			l.Keys = append(l.Keys, Key{Path: path, Value: v, Asked: true})
		}
	}
	l.ask("several times: how many minutes was it? Take the # off one, or write your own")
}

func distinct(in []string) (out []string) {
	seen := map[string]bool{}
	for _, s := range in {
		if !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	return out
}

var (
	yieldLead = regexp.MustCompile(`(?i)^(?:(?:this )?recipe )?(?:(?:we|i|it) )?(quantity|yields?|yielded|makes?|made|got|gave|filled|gives?|fills?|ergibt|ergab|donne|pour|total|expect)\b[ :-]*(?:is |us |me )?(?:about |approximately |approx\.? |ca\.? |around |roughly |etwa |environ |at least )?`)
	counted   = regexp.MustCompile(`(?i)^(?:got|gave|filled|made|yielded|ergab)$`)
	countForm = regexp.MustCompile(`(?i)^(` + num + `|\p{L}+)(?: ?(?:-|to|or|bis|à) ?(` + num + `))?(?: and a (half|bit)| plus a bit| et demi| und ein bisschen)?(?: ?[x-] ?| of | )?(.*)$`)
	sealForm  = regexp.MustCompile(`(?i)\b(all|\d{1,4})(?: of them| jars?)? (?:have |has )?(?:sealed|pinged|popped)\b`)
	looseJar  = regexp.MustCompile(`(?i)^(?:more |small |large |big |little |full )?(?:jars?|glasses|gläser|glas|pots?|bocaux|of them)?(?: and a bit| and a half| plus a bit)?\.?$`)
)

// yield reads how many jars there were, or a recipe says there will be.
func (g *grammar) yield(l *Line, s string) bool {
	s = strings.TrimSpace(s)
	m := yieldLead.FindStringSubmatch(s)
	if m == nil {
		return false
	}
	var fills []Fill
	for _, part := range regexp.MustCompile(`(?i) and (?:another )?(?:\d|one )|, `).Split(markAnd(s[len(m[0]):]), -1) {
		f, ok := g.count(part)
		if !ok {
			if len(fills) == 0 && strings.ContainsAny(s, "0123456789") {
				l.ask("how many jars of which size is that? Write jar and count under [[fill]]")
			}
			break
		}
		f.Planned = !counted.MatchString(m[1])
		fills = append(fills, f)
	}
	if len(fills) == 0 {
		return len(l.Asks) > 0
	}
	g.fills(l, s, fills)
	return true
}

// markAnd keeps the figure after "and" when a count is cut there.
func markAnd(s string) string {
	return regexp.MustCompile(`(?i) (?:and|\+|plus) (\d)`).ReplaceAllString(s, ", $1")
}

// fills writes the counts, and asks for what they leave open.
func (g *grammar) fills(l *Line, s string, fills []Fill) {
	low := strings.ToLower(s)
	for i, f := range fills {
		if m := sealForm.FindStringSubmatch(s); m != nil && !f.Planned && len(fills) == 1 {
			if n, err := strconv.Atoi(m[1]); err == nil && float64(n) <= f.Low {
				fills[i].Sealed = n
			} else if err != nil {
				fills[i].Sealed = int(f.Low)
			}
		}
		switch {
		case f.Jar == "":
			l.ask("jars of which size? Write jar = %q or another", "8 fl oz")
		case f.High > f.Low && !f.Planned:
			l.ask("how many were there? Take the # off one")
		}
	}
	if strings.Contains(low, "and a bit") || strings.Contains(low, "and a half") || strings.Contains(low, "plus a bit") || fills[0].Low != float64(int(fills[0].Low)) {
		l.ask(`the jar that is not full: write part_jar = "100 g", what is in it`)
	}
	l.Fills = append(l.Fills, fills...)
}

// count reads "8 half-pints", "5 or 6 half-pint jars", "6 x 350 ml".
func (g *grammar) count(s string) (f Fill, ok bool) {
	s = brackets.ReplaceAllStringFunc(strings.TrimSpace(s), func(b string) string {
		if inner := strings.Trim(b, "()"); inner != "1/2" && sizeOf(inner) == "" {
			return ""
		}
		return strings.Trim(b, "()")
	})
	s, _ = spelled(strings.Join(strings.Fields(strings.Trim(s, " .:")), " "))
	if m := halfPint.FindStringSubmatch(s); m != nil {
		s = m[1] + " half-pint"
	}
	m := countForm.FindStringSubmatch(s)
	if m == nil {
		return f, false
	}
	f.Sealed = -1
	if f.Low, ok = number(m[1]); !ok || f.Low <= 0 || f.Low > 1000 {
		return f, false
	}
	f.High = f.Low
	if m[2] != "" {
		if v, ok := number(m[2]); ok && v >= f.Low && v <= 1000 {
			f.High = v
		}
	}
	rest := strings.TrimSpace(m[4])
	if sealForm.MatchString(rest) {
		rest = strings.TrimRight(rest[:sealForm.FindStringIndex(rest)[0]], " ,")
	}
	if f.Jar = sizeOf(rest); f.Jar != "" {
		_, known := g.p.Jar(f.Jar)
		return f, known
	}
	return f, looseJar.MatchString(rest)
}

var (
	halfPint = regexp.MustCompile(`(?i)^(\d{1,3}) ?[- ]{1,3}\(?1/2\)?[- ]pints?\b.*$`)
	jarSize  = regexp.MustCompile(`(?i)^(?:x ?)?(\d{1,4}(?:\.\d)?|one|four|six|eight|twelve|sixteen|half|1/2)?[- ]?(pints?|ounces?|oz\.?|fl\.? ?oz\.?|ml|milliliters?|millilitres?|cl)[- ]?(?:each |size )?(?:canning |jelly |mason |preserving |hot )?(?:jars?|glasses|gläser|pots?|bocaux|containers?)?\b\.?(?: each)?.{0,40}$`)
)

// sizeOf names a size of jar as the batch file does. A jar is called by its
// fluid ounces, so "8-ounce jars" are half-pints.
func sizeOf(s string) string {
	m := jarSize.FindStringSubmatch(strings.TrimSpace(strings.TrimPrefix(strings.ToLower(s), "of ")))
	if m == nil {
		return ""
	}
	n := m[1]
	for i, w := range []string{"one", "four", "six", "eight", "twelve", "sixteen"} {
		if n == w {
			n = []string{"1", "4", "6", "8", "12", "16"}[i]
		}
	}
	switch u := m[2]; {
	case strings.HasPrefix(u, "pint") && (n == "half" || n == "1/2"):
		return "8 fl oz"
	case strings.HasPrefix(u, "pint") && (n == "" || n == "1"):
		return "16 fl oz"
	case strings.HasPrefix(u, "pint") || n == "" || n == "half" || n == "1/2":
		return ""
	case strings.HasPrefix(u, "m"):
		return n + " ml"
	case u == "cl":
		v, _ := strconv.Atoi(n)
		return fmt.Sprintf("%d ml", 10*v)
	}
	return n + " fl oz"
}
