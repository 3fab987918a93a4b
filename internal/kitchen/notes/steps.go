package notes

import (
	"slices"
	"strconv"
	"strings"
)

func hasMinutes(s string) bool { return duration.MatchString(s) }

// sentences reads the steps of a line: how long it was boiled and processed,
// how full the jars are, how many there were.
func (g *grammar) sentences(l *Line, s string) {
	s = spelledTimes(s)
	s = hoursAnd.ReplaceAllStringFunc(s, func(m string) string {
		n := hoursAnd.FindStringSubmatch(m)
		hours, _ := strconv.Atoi(n[1] + n[3])
		more, _ := strconv.Atoi(n[2] + n[4])
		return strconv.Itoa(60*hours+more) + " minutes "
	})
	s = slashMinutes.ReplaceAllString(s, "$1-$2 $3")
	s = shortMin.ReplaceAllString(shortened.ReplaceAllString(s, "$1 "), "$1 $2")
	s = labelParts.ReplaceAllString(andStir.ReplaceAllString(stirFor.ReplaceAllString(s, "$1 $2"), "$1"), "; $1")
	s = slashTime.ReplaceAllString(s, "$1-$2 $3")
	s = orSoMany.ReplaceAllString(s, "$1 $2")
	s = heatDown.ReplaceAllString(asBefore.ReplaceAllString(s, ""), "$1")
	s = notBoiled.ReplaceAllString(s, "")
	s = unstirred.ReplaceAllString(boiledDown(s), "")
	if process.MatchString(s) || cooking.MatchString(s) {
		s = primeMin.ReplaceAllString(s, "$1 min$2")
	}
	before := len(l.Keys)
	if m := bareTime.FindStringSubmatch(s); m != nil {
		l.Keys = append(l.Keys, Key{Path: "cook.minutes", Value: m[1], Asked: true})
		l.ask("boiled %s minutes? Then take the # off", m[1])
		return
	}
	if m := addedTimes.FindString(s); m != "" {
		l.ask("%s: how many minutes in all? Write minutes under [cook]", strings.TrimSpace(m))
		return
	}
	l.headspace(s)
	if feet.MatchString(s) && hasMinutes(s) && process.MatchString(s) {
		l.ask("the time depends on the altitude: write minutes for yours, and the altitude, under [process]")
		return
	}
	if height.MatchString(s) && hasMinutes(s) && process.MatchString(s+" process") && strings.ContainsAny(s, ",-") {
		l.ask("the time depends on the altitude: write minutes for yours, under [process]")
		return
	}
	if m := bathTail.FindStringSubmatch(s); m != nil {
		if n, _ := strconv.Atoi(m[1]); n > 0 && n <= 240 {
			g.processed(l, s, []string{m[1]})
		}
		return
	}
	var boiled, baths []string
	canned := false
	clauses := clauses(s)
	for i, c := range clauses {
		soft := aside.MatchString(c) || i+1 < len(clauses) && softened.MatchString(clauses[i+1])
		if !headForm.MatchString(c) && g.yield(l, c) {
			continue
		}
		canned = canned || process.MatchString(c) && jarTalk.MatchString(c)
		for _, part := range chunks(c) {
			soft, early := soft && (part == c || aside.MatchString(part)), beforeSugar(part, c, clauses[i+1:])
			for _, at := range timed(part) {
				t, cooks := at.minutes, at.deed == boils || cooking.MatchString(part)
				switch {
				case at.deed == cans, process.MatchString(bathsOf(at)), canned && cooks && !sureBoil.MatchString(part):
					baths = append(baths, t)
				case early && (pectin.MatchString(part) || jarsIn.MatchString(part)):
				case early && !cooks:
				case early:
					l.early = append(l.early, t)
				case cooks && (!soft || finished.MatchString(part)):
					boiled = append(boiled, t)
				case cooks && lidOn.MatchString(part):
					l.early = append(l.early, t)
				case !soft && (toSet.MatchString(part) || after.MatchString(part) && finished.MatchString(part)) && !strings.Contains(t, "-"):
					l.Keys = append(l.Keys, Key{Path: "cook.minutes", Value: t, Asked: true})
					l.ask("was it boiled %s minutes? Then take the # off", t)
				}
			}
		}
	}
	g.processed(l, s, baths)
	l.boiled(boiled)
	l.sure(s, clauses)
	l.doubted(awake(s), boiled)
	l.jarsBoiled(clauses)
	l.heats(clauses)
	l.bareTimes(s)
	if len(l.Keys)+len(l.Fills) > before && len(strings.Fields(s)) > 14 {
		l.say("read of it: the times and counts below; the rest is words")
	}
}

// chunks parts a clause of which a piece is about softening, where the next verb
// of cooking stands before its own time: "simmered the peel 90 min, boiled 20 min".
func chunks(c string) []string {
	all := duration.FindAllStringIndex(c, -1)
	if len(all) < 2 || !aside.MatchString(c) && !sugarNext.MatchString(c[all[0][1]:]) && !inWater.MatchString(c) && !strained.MatchString(c) {
		return []string{c}
	}
	var out []string
	from := 0
	for i := 1; i < len(all); i++ {
		between := c[all[i-1][1]:all[i][0]]
		if cuts := clauseCut.FindAllStringIndex(between, -1); len(cuts) > 0 && deVerb.FindStringIndex(between) != nil {
			at := all[i-1][1] + cuts[len(cuts)-1][0]
			out, from = append(out, c[from:at]), at
			continue
		}
		verbs := cooking.FindAllStringIndex(between, -1)
		if len(verbs) == 0 {
			continue
		}
		at := all[i-1][1] + verbs[len(verbs)-1][0]
		out, from = append(out, c[from:at]), at
	}
	return append(out, c[from:])
}

// beforeSugar reports that a time is of fruit in water, or that the sugar goes in
// after it: to soften, and not the boil.
func beforeSugar(part, clause string, more []string) bool {
	at := duration.FindStringIndex(part)
	if at == nil {
		return false
	}
	said, _, _ := strings.Cut(part[at[1]:], ",")
	said = brackets.ReplaceAllString(part[:at[1]]+said, "")
	if finished.MatchString(said) || process.MatchString(said) || ofJuice.MatchString(said) && (halfSugar.MatchString(said) || sugarWord.MatchString(said[max(0, len(said)-sugarNear):]) || ofJuice.MatchString(sourJuice.ReplaceAllString(said, ""))) {
		return false
	}
	from := strings.Index(clause, part) + at[1]
	if halfSugar.MatchString(clause[:from]) {
		return true
	}
	if inWater.MatchString(said) && !sugarWord.MatchString(clause[max(0, from-sugarNear):from]) {
		return true
	}
	rest := clause[from:]
	if next := duration.FindStringIndex(rest); next != nil {
		rest = rest[:next[0]]
	}
	if strained.MatchString(rest) && !sugarWord.MatchString(clause[:from]) { // gekocht und durch ein Sieb gerührt
		return true
	}
	return sugarNext.MatchString(clause[from:]) || len(more) > 0 && sugarNext.MatchString(strings.TrimSpace(more[0]))
}

var (
	inWater   = pattern(`(?i)\b(?:(?:with|in) (?:the |some |a little |enough |just )?(?:[\p{L}\d./]+ )?(?:[\p{L}]+ (?:of )?)?water|mit (?:[\p{L}\d]+ ){0,3}wasser|avec (?:[\p{L}\d,]+ ){0,2}(?:d'|de l')?eau)\b`)
	halfSugar = pattern(`(?i)\b(?:half|some|part) (?:of )?(?:the |your )?sugar\b|\bhälfte (?:des|vom) \p{L}*zuckers?\b|\bmoitié du sucre\b`)
	ofJuice   = pattern(`(?i)\b(?:juice|liquid|syrup|\p{L}*saft|jus|sirop|sirup)\b`)
	sourJuice = pattern(`(?i)\b(?:lemon|lime|orange|apple|zitronen|limetten|orangen)[ -]?(?:juice|saft)\b|\bjus d(?:e |'|u )(?:citrons?|oranges?|limes?)\b`) // added, and not boiled down by itself
	sugarWord = pattern(`(?i)\b(?:sugar|\p{L}*zucker|sucre)\b`)
	sugarNext = pattern(`(?i)^\W*(?:(?:and|then|now|when|once|danach|dann|puis) )*(?:[^.;]{0,80}\b)?(?:add|adding|stir in|stirring in|tip in|put in|pour in|mix in|dissolve|zugeben|zufügen|dazugeben|hinzufügen|unterrühren|ajout\p{L}+|vers\p{L}+|incorpor\p{L}+|jet\p{L}+|mett\p{L}+|met)\b[^.;]{0,40}\b(?:sugar|zucker|gelierzucker|sucre)\b|^\W*` + deSugarIn + `|^\W*[^.;]{0,60}\bverser\p{L}* [^.;]{0,20}sur le sucre\b`)
)

// sugarNear is how far before a time in water its sugar may be spoken of, in bytes;
// what stands before is a list of what goes in.
const sugarNear = 100

// after is a time that something has come to.
var after = pattern(`(?i)\b(?:nach|au bout de|après|after)\b[^.;]{0,15}\d`)

// toSet is the time until a set, with no word of cooking.
// evenMore is a time on top of another.
var evenMore = pattern(`(?i)\b(?:more|further|additional|extra|another|weitere[rn]?|noch(?:mals)?|(?:recuit\p{L}*|recuire|nach(?:ge)?koch\p{L}*|encore|noch(?:mals?)?|à nouveau|erneut)\b[^.;,()\d]{0,40}|encore) ?(?:` + num + ` ?)?(?:-? ?` + num + ` ?)?(?:mins?|minutes?|minuten|mn)\b|\b(?:mins?|minutes?|minuten|mn)\.? (?:more|longer|extra|länger|mehr|de plus)\b`)

var toSet = pattern(`(?i)^(?:about |around |ca\.? )?` + num + ` ?(?:m|mins?|minutes|minuten)\b\.? (?:to|till|until|bis(?: zur)?) (?:it |a |the )?(?:set|setting point|gel\w*|jell\w*|jelly point|good set)\b|\b(?:wrinkle|cold plate|saucer|freezer|sheet|plate|flake) (?:test|test\w* )|\b(?:cold|cool) (?:plate|saucer)\b`)

// addedTimes are two times with a sign between: "5+5 min", "2 x 10 min".
var addedTimes = pattern(`(?i)(?:^| )\d{1,3} ?(?:m|mins?|minutes?|minuten|mn)?\.? ?[+x] ?\d{1,3} ?(?:m|mins?|minutes?|minuten|mn)\b`)

// bareTime is a word of cooking and a number that may be its minutes.
var bareTime = pattern(`(?i)^(?:rolling |hard |full )*(?:boil(?:ed)?|simmer(?:ed)?|cook(?:ed)?|gekocht|kochen|cuit|cuire)(?: hard| for| about|,|:)* (\d{1,2})\.?$`)

// processed writes the process; two times for two jars are asked about.
func (g *grammar) processed(l *Line, s string, list []string) {
	list = distinct(list)
	if len(list) == 0 {
		return
	}
	if emptyJars.MatchString(s) {
		l.ask("%s minutes: of empty jars, or of filled ones? Of filled ones write minutes under [process]", strings.Join(list, ", "))
		return
	}
	l.several("process.minutes", list)
	if k := l.find("process.minutes"); k != nil && !k.Asked && slices.ContainsFunc(clauses(s), func(c string) bool {
		return process.MatchString(c) && (evenMore.MatchString(c) || plusTime.MatchString(c))
	}) {
		k.Asked = true
		l.ask("%s minutes in all, or that much more? Then take the # off, or write the sum", k.Value)
	}
	if k := l.find("process.minutes"); k != nil && !k.Asked && (ifCanned.MatchString(s) || slices.ContainsFunc(clauses(s), bathIf)) {
		k.Asked = true
		l.ask("were the jars processed? Then take the # off")
	}
	if t := cooler(s); t != "" {
		for i := range l.Keys {
			l.Keys[i].Asked = l.Keys[i].Asked || l.Keys[i].Path == "process.minutes"
		}
		l.ask("in water of %s? That is no boiling water, and no process that is tested here", t)
		return
	}
	switch {
	case anyCanning.MatchString(s) && !jarsHeated.MatchString(s) && !bath.MatchString(s):
		l.find("process.minutes").Asked = true
		l.ask("boiled down, or filled jars in boiling water? Then take the # off, or write minutes under [cook]")
	case underPressure.MatchString(s):
		l.find("process.minutes").Asked = true
		l.ask("under pressure? No jam is canned so: write minutes and method of the boiling water, under [process]")
	case steam.MatchString(s):
		l.key("process.method", `"steam"`)
	case bath.MatchString(s):
		l.key("process.method", `"boiling water"`)
	case g.water:
		l.key("process.method", `"boiling water"`)
		l.say("in boiling water, as another line says")
	default:
		l.ask("processed in boiling water or in steam? Write method, under [process]")
	}
}

// cooler gives a temperature that is told of a bath and is none of boiling water.
func cooler(s string) string {
	for _, m := range tempForm.FindAllStringSubmatch(s, -1) {
		v, ok := number(m[1])
		u := strings.ToLower(m[3])
		if u == "" && celsius(m[2]) {
			u = "c"
		}
		if ok && u != "" && v >= 40 && (u[0] == 'c' && v < 97 || u[0] == 'f' && v >= 100 && v < 206) {
			return m[1] + " °" + strings.ToUpper(u[:1])
		}
	}
	return ""
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
