package notes

import "strings"

// line reads one line: a date, a measurement, a count, a time, or things in the
// pot; else it says that it is none of them.
func (g *grammar) line(l *Line) {
	s, doubt := g.unwrapped(l)
	s, plan := g.behindPlan(s)
	s, label := g.unlabelled(l, s)
	s, method := g.unnumbered(s)
	done := ""
	if !method {
		s, done = g.together(s)
	}
	g.readWhole(l, s, method)
	l.sayDone(done)
	g.sayBeside(l, s, method)
	if !g.countLast(l, s) {
		g.askOf(l, s)
	}
	if label != "" {
		l.folded(label)
	}
	if plan != "" {
		l.say("%q was the plan; what was filled counts", plan)
	}
	l.doubtBack(s)
	l.opensBack(s)
	if doubt != "" && len(l.Ingredients) > 0 {
		l.ask("%s", doubt)
	}
}

// unwrapped takes bullets, columns, struck words and headings off a line; doubt is
// what the cells of a table leave to ask.
func (g *grammar) unwrapped(l *Line) (s, doubt string) {
	whole, gone := unstruck(bullet.ReplaceAllString(strings.Join(strings.Fields(columns(l.Text)), " "), ""))
	if gone != "" {
		l.say("%s", gone)
	}
	if !shortDay.MatchString(whole) {
		whole = strings.TrimRight(whole, " .,;!-–—")
	}
	s, doubt = g.cells(plain(bullet.ReplaceAllString(whole, "")))
	if m := aboutTail.FindStringSubmatch(s); m != nil {
		s = m[1]
	}
	s = g.apartly(tidied(s))
	s = kiloTail.ReplaceAllString(jarsFirst.ReplaceAllString(s, "$2 $1"), "$1.$2 kg")
	s = listFor.ReplaceAllString(s, "$1 $2")
	if m := titledYield.FindStringSubmatch(s); m != nil {
		s = m[1]
	}
	if strings.HasPrefix(s, "(") && strings.HasSuffix(s, ")") && strings.Count(s, "(") == 1 && yieldLead.MatchString(s[1:]) {
		s = strings.TrimSpace(s[1 : len(s)-1])
	}
	return g.asFilled(s), doubt
}

// unlabelled takes off the words before an amount; label is the one that is in no
// table, which is kept.
func (g *grammar) unlabelled(l *Line, s string) (rest, label string) {
	if m := nameTwice.FindStringSubmatch(s); m != nil && g.startsMeasured(m[2]) {
		if _, known := g.row(m[1]); known || strings.Contains(strings.ToLower(m[2]), strings.ToLower(m[1])) {
			s = m[2]
		}
	}
	if m := leadList.FindStringSubmatch(s); m != nil && g.whole(m[1]) {
		s = m[1]
	}
	if m := labelLead.FindStringSubmatch(s); m != nil && (g.startsMeasured(m[2]) || g.startsMeasured(madeOf.ReplaceAllString(m[2], "$1"))) {
		if _, known := g.row(m[1]); !known {
			l.say("%q is no amount and no time", m[1])
			return m[2], m[1]
		}
	}
	if m := foldLead.FindStringSubmatch(s); m != nil && manyfold.MatchString(m[1]) && !g.foodIn(m[1]) {
		return m[2], m[1]
	}
	return s, ""
}

// unnumbered takes the number of a step or of a list off a line; method reports a
// step.
func (g *grammar) unnumbered(s string) (rest string, method bool) {
	if m := numbered.FindStringSubmatch(s); m != nil && len(dayOnly(s)) == 0 && g.startsMeasured(m[1]) {
		s = m[1]
	}
	m := step.FindStringSubmatch(s)
	if m == nil || g.startsMeasured(m[1]) || wholeDay(s) {
		return s, false
	}
	_, _, listed := g.behind(m[1])
	if list := leadList.FindStringSubmatch(m[1]); list != nil && g.whole(list[1]) { // "2. You need 6 cups of sugar."
		return list[1], false
	}
	return m[1], !listed
}

// readWhole reads a line, and what it made apart from what went in.
func (g *grammar) readWhole(l *Line, s string, method bool) {
	switch m := madeOf.FindStringSubmatch(s); {
	case s == "":
		l.say("not read: nothing but signs")
	case heading.MatchString(s):
		l.say("a heading")
	case m != nil && !method && g.whole(afterIng.ReplaceAllString(m[1], "")) && !strings.Contains(m[1], ". "):
		sub := Line{Text: m[2]}
		g.readAs(l, m[1], method)
		g.sentences(&sub, m[2])
		l.take(sub)
	default:
		g.readAs(l, s, method)
	}
}

// sayBeside says what stands beside what was read.
func (g *grammar) sayBeside(l *Line, s string, method bool) {
	if note := strings.TrimSpace(footnote.FindString(vulgar.Replace(l.Text))); l.Read() && len(note) > 3 {
		l.say("beside it stands %s", note)
	}
	if len(l.Keys) > 0 && len(l.Ingredients)+len(l.Asks) == 0 && !method && g.whole(s) {
		l.ask("what goes into the pot is not read where a line goes on with steps: write each thing on a line of its own")
	}
	if left := missing(*l, s); l.Read() && len(left) > 0 {
		l.say("only what stands below was read of it; in no key: %s", strings.Join(left, ", "))
	}
}

// madeOf parts what went in from the jars it made: "3 kg plums gave 7 half-pints".
var madeOf = pattern(`(?i)^(.*?\p{L}.*?[\p{L})]),? (?:(?:which|that|and|it|und|et) )?((?:made|makes|gave|gives|yielded|yields|filled|ergab|ergaben|ergibt|donné|donnent) (?:only |just |nur |seulement |about |ca\.? |roughly |environ )?(?:\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|deux|trois|quatre|cinq|sept|huit|neuf|dix)\b(?:[^,;|/.+&-]|\.\d|\d/\d|\p{L}-\p{L})*\.?)$`)

// aboutTail says behind an amount that it is about that: "4 pots de 350 g environ".
var aboutTail = pattern(`(?i)^(.*\d ?[\p{L}]*),? (?:environ|approximately|approx|circa|ca|à peu près|ungefähr|roughly|more or less|or thereabouts)$`)

var shortDay = pattern(`\d\. ?\d{1,2}\.$`) // 14.6.

var degrees = pattern(`(?i)^\d{2,3}(?:[.,]\d)? ?(?:°|deg|degrees?|grad|degrés?)\b ?[cf]?\b`)

var yieldVerb = pattern(`(?i)\b(?:ergab|ergibt|ergeben|bekam|made|makes?|yields?|yielded|gave|gives|filled|obtenu|obtient|donn\p{L}+)\b`)

// readAs reads a line as one thing, and as several facts where it is not read so
// or figures of it are lost. Of prose only times and counts are read.
func (g *grammar) readAs(l *Line, s string, method bool) {
	method = method || g.aStep(s)
	switch {
	case g.date(l, s), g.labelled(l, s):
	case !method && g.ingredients(l, s):
	default:
		g.sentences(l, s)
	}
	gone := lost(*l, s)
	if method || gone == 0 && len(l.Asks)+len(l.Ingredients)+len(l.Keys)+len(l.Fills) > 0 || len(strings.Fields(s)) > 40 || !strings.ContainsAny(s, "0123456789") {
		return
	}
	if several, ok := g.facts(*l, s); ok && (!l.Read() || lost(several, s) < gone && g.allFoods(several)) {
		*l = several
	}
	if !l.Read() && len(l.Asks) == 0 {
		g.loose(l, s)
	}
}

var (
	pulpOf   = pattern(`(?i)^(?:the )?(?:pulp|flesh|sections|segments|fruchtfleisch|pulpe|chair) (?:of|from|von|de|d')\b`)
	bareHead = pattern(`(?i)\d/\d (?:of )?(?:head ?space|hs)\b|^(?:head ?space|hs) ?:? ?\d`)
)

// leadList are the words before a list on one line: "You will need: 1 kg plums, 800 g sugar".
var leadList = pattern(`(?i)^(?:(?:für|for|pour|to make) [^:]{2,60}?,? )?(?:zutaten|ingredients?|ingrédients?|rezept|recipe|recette|you(?:'ll| will)? need|what you need|(?:i|we|they|he|she) (?:use|used|took|take|had|put in)|this (?:is|was)|(?:was )?(?:man|ihr|du|wir|ich) (?:brauch\p{L}*|benötig\p{L}*|nehm\p{L}*|nimmt|nahm)|(?:brauch\p{L}*|benötig\p{L}*|nehm\p{L}*|nimmt) (?:man|ihr|du|wir|ich)|man nehme|il (?:vous |me |nous |te )?(?:faut|fallait|faudra)|(?:prenez|prendre|on prend))(?: (?:dazu|dafür|hierfür|pour cela))?(?: (?:für|for|pour) [^:\d]{0,20}(?:\d{1,2} [^:\d]{2,20})?)?(?: \([^()]*\))? ?[:-]? (.+)$`)

// labelLead are words before a list that are no food: "Fruit: 2 lb plums".
var labelLead = pattern(`^([\p{L}][\p{L} ]{1,30})[:!] (\d.*)$`)

// listFor is the head of a list with its jars in brackets: "Zutaten (für 5 Gläser)".
var listFor = pattern(`(?i)^(zutaten|ingredients?|ingrédients?) ?\(((?:für|for|pour) [^()]+)\):?$`)

// jarsFirst is a count behind its jars, kiloTail grams behind kilograms: "jars: 8",
// "groseilles 1 kg 200".
var (
	jarsFirst = pattern(`(?i)^(jars|gläser|pots|bocaux) ?[:=-]? ?(\d{1,3}(?: and a (?:bit|half)| plus a bit)?)$`)
	kiloTail  = pattern(`(?i)\b(\d{1,2}) ?kg (\d{3})$`)
)

var nameTwice = pattern(`^([^:\d]{2,40}): (\d.*)$`) // sugar: 900 g granulated sugar

var numbered = pattern(`^\d{1,2}[.)] +(\d.*)$`)

// wholeDay: "14. Juni 2026" is a day, and no step of a method.
func wholeDay(s string) bool {
	s = clockTime.ReplaceAllString(s, "")
	if m := dayFirst.FindStringSubmatch(s); m != nil && monthOf(m[2]) > 0 && strings.TrimRight(s[len(m[0]):], " .") == "" && strings.HasPrefix(s, m[0]) {
		return true
	}
	days, from, to := dayIn(s)
	return len(days) > 0 && from == 0 && strings.Trim(dayWords.ReplaceAllString(s[to:], ""), " ,.:;-()") == ""
}

func dayOnly(s string) []string { days, _, _ := dayIn(s); return days }

func (g *grammar) startsMeasured(s string) bool {
	_, rest, ok := g.amount(s)
	if !ok {
		return false
	}
	name, _ := g.leadForm(strings.Join(strings.Fields(brackets.ReplaceAllString(rest, " ")), " "))
	return g.knows(name)
}

// whole reports that a text begins with an amount of a known food.
func (g *grammar) whole(s string) bool {
	if partForm.MatchString(s) || partNumber.MatchString(s) {
		return true
	}
	_, rest, ok := g.amount(s)
	if !ok || strings.TrimSpace(rest) == "" {
		return false
	}
	first := firstWords(rest)
	if g.formOnly(first) { // "skinned and quartered tomatoes"
		first, _, _ = strings.Cut(rest, ",")
		first, _, _ = strings.Cut(first, "(")
	}
	name, _ := g.leadForm(strings.TrimSpace(first))
	_, known := g.row(strings.TrimSpace(name))
	return known
}

func firstWords(s string) string {
	cut, _, _ := strings.Cut(s, ",")
	if at := between.FindStringIndex(cut); at != nil {
		cut = cut[:at[0]]
	}
	cut, _, _ = strings.Cut(cut, "(")
	return cut
}

func inBrackets(s string, at int) bool {
	return strings.Count(s[:at], "(") > strings.Count(s[:at], ")")
}
