package notes

import (
	"slices"
	"strings"
)

// What makes a time doubtful: more of it elsewhere in the line, another vessel,
// jars in the water, a recipe's advice.

// clauses cuts a text where a sentence ends; what goes on with the verb before it
// ("; until thickened (about 3 minutes)") stays with it.
func clauses(s string) (out []string) {
	from := 0
	for _, at := range clause.FindAllStringIndex(s, -1) {
		if goesOn.MatchString(s[at[1]:]) || onlyTime.MatchString(s[at[1]:]) {
			continue
		}
		out, from = append(out, s[from:at[0]]), at[1]
	}
	return append(out, s[from:])
}

var (
	goesOn   = pattern(`(?i)^(?:(?:for (?:me|us),? )?(?:das|dies|this|it|that|mine|ours|ça|cela) (?:dauert|braucht|takes?|took|(?:should|will|may|can) take|prend)|stirring|skimming|uncovered|covered|until|till|or until|for (?:about |another )?\d|unter (?:ständigem )?rühren|bis |en remuant|jusqu)`)
	onlyTime = pattern(`(?i)^(?:for |about |ca\.? |approx\.? )*` + num + `(?: ?(?:-|to|bis|à) ?` + num + `)?[- ]?(?:minutes?|mins?|minuten|mn)\b\.?(?:$|[.;,)])`)
)

// elsewhere is a vessel that boils away otherwise than an open pot; jarsIn are jars
// in boiling water, without a word of the canner.
var (
	elsewhere     = pattern(`(?i)\b(?:oven|slow[- ]?cook\p{L}*|crock ?-?pot|pressure[- ]?cook\p{L}*|at pressure|microwav\p{L}*|on high\b|lid on|covered|zugedeckt|à couvert|bread ?-?machine|bread ?-?maker|backofen|im ofen|rohr|schnellkoch\p{L}*|mikrowelle|dampfentsaft\p{L}*|steam juicer|au four|autocuiseur|cocotte[- ]minute|micro-?ondes|robot)\b`)
	jarsIn        = pattern(`(?i)\b(?:boil|simmer)(?:ed|ing|s)?(?: (?:the|your|these|all|filled|full|sealed|closed|hot|empty|clean))* (?:jars?|lids?|bottles?|glasses)\b|\b(?:jars?|gläser|bocaux|lids?|deckel)\b[^.;]{0,60}\b(?:in(?:to)?|under|with) (?:[\p{L}-]+ )?boiling water\b|\b(?:gläser|deckel|bocaux|pots|couvercles)\b[^.;]{0,40}\b(?:auskochen|ausgekocht|abkochen|ébouillant\p{L}+|bouillir)\b`)
	emptyJars     = pattern(`(?i)\bstérilis\w* (?:(?:les|vos|des|tes|nos|bien) )*(?:petits |bocaux et |pots et )?(?:pots|bocaux|couvercles)\b`)
	underPressure = pattern(`(?i)\bpressure\b|\bat \d{1,2} ?(?:pounds|lbs?|psi)\b|\bschnellkoch|\bautocuiseur`)
	moreTime      = pattern(`(?i)\b(?:another|a further|again|plus|noch(?:mal)?s?|weitere|encore|puis|then|dann|danach) (?:for |about |ca\.? )*(\d{1,3})(?:$|[,.;)]| ?(?:m|min|mins|minutes?|minuten|mn)\b)|(?:^|[^\d.,/])(\d{1,3}) (?:more|longer|extra|länger|de plus)(?:$|[,.;)]| (?:m|min|mins|minutes?)\b)|(?:^|[ ,(])\+ ?(\d{1,3})(?:$|[,.;) ])`)
	openEnd       = pattern(`(?i)\b(?:mine|ours|it) (?:took|needed) (?:me )?(?:(?:a (?:bit|little|lot|while)|much|far|way) )?(?:longer|more|less|\d|not quite|almost|nearly|just (?:over|under))|\d ?(?:m|mins?|minutes?|minuten|mn|h|hours?|hrs?|stunden?|heures?)\.?,? (?:(?:or|oder|ou) (?:even |possibly |auch |maybe )?(?:more|longer|less|fewer|mehr|länger|weniger|plus|moins)|\(?(?:(?:but )?(?:it )?(?:will |may |might |would |could |can )?(?:probably|possibly|maybe|perhaps|usually|likely) |(?:it )?(?:may|might|could|can) )(?:(?:will |would )?(?:be|take|need) )?(?:a (?:bit|little) )?(?:less|more|longer))\b`)
	eachTime      = pattern(`(?i)\bx ?\d (?:pans?|pots?|lots|batches|töpfe|bassines|casseroles|fois|mal|times)\b|\d ?(?:m|mins?|minutes?|minuten|mn)\.? (?:each|apiece|je(?:weils)?|chacune?s?)\b|\b(?:each|every|per|je|jede[mnrs]?|pro|chaque|par) (?:half|lot|batch|pan(?:ful)?|pot(?:ful)?|kettle|portion|hälfte|topf|ladung|charge|durchgang|moitié|fournée|bassine|casserole|tournée|fois)\b|\b(?:in|en) (?:two|three|four|several|\d|zwei|drei|vier|mehreren|deux|trois|plusieurs) (?:lots|batches|pans|halves|goes|portionen|töpfen|durchgängen|hälften|fois|fournées|bassines)\b`)
	boilAgain     = pattern(`(?i)\b(?:boil\p{L}*|simmer\p{L}*|cook\p{L}*) (?:(?:rapidly|hard|gently|fast) )?again\b|\b(?:minutes?|mn|min) encore\b|\b(?:noch ?(?:ein)?mal|erneut|wieder)\b[^.;]{0,30}\bkoch`)
	withLid       = pattern(`(?i)\b(?:ohne|mit|bei geschlossenem|bei offenem|unter geschlossenem|sans|avec|with(?:out)?) (?:the |a |le )?(?:deckel|couvercle|lid)\b`)
	bareBoil      = pattern(`(?i)\b(?:boil(?:ed)?|simmer(?:ed)?|cook(?:ed)?|gekocht|geköchelt)(?: hard| gently| again| for| about| another)* (\d{1,2})(?:$|[,.;)])`)
	testAfter     = pattern(`(?i)\b(?:start|begin|starting|beginning|commence)(?: to)? (?:test\w*|check\w*)\b|\b(?:test|check)(?:ing)? (?:[\p{L}]+ ){0,4}(?:after|from|at)(?: about)? (?:the )?(?:first )?\d`)
	advised       = pattern(`(?i)\b(?:if you (?:have|use|are using)|should (?:read|register|reach|show)|will (?:read|register)|si (?:vous|tu|on|l'on) (?:avez|as|a|utilis\p{L}*|possé\p{L}*|dispos\p{L}*|travaill\p{L}*)|température idéale|ideale temperatur|wenn (?:sie|du|ihr|man) (?:ein|mit)|wer ein|falls (?:sie|du|ihr|man|vorhanden))\b`)
)

// doubted asks about a boil where the line tells that it may not be all, or none.
func (l *Line) doubted(s string, boils []string) {
	k := l.find("cook.minutes")
	if k == nil || k.Asked {
		return
	}
	ask := func(format string, args ...any) {
		k.Asked = true
		l.ask(format, args...)
	}
	switch m := moreTime.FindStringSubmatch(s); {
	case jarsIn.MatchString(s) && !process.MatchString(s):
		ask("%s minutes: of the jam, or of the jars in water? Then write minutes under [process], or take the # off", k.Value)
	case len(boils) > 1:
		ask("%s minutes stand there %d times: so many in all, or each time? Then take the # off, or write the sum", k.Value, len(boils))
	case syrupTime(s, k.Value):
		ask("%s minutes of the syrup, or of the jam? Then take the # off", k.Value)
	case testedAt(s, k.Value):
		ask("tested first at %s minutes: how many was it in all? Write minutes, or take the # off", k.Value)
	case openEnd.MatchString(s):
		ask("%s minutes, or more? Write how many it was, or take the # off", k.Value)
	case eachTime.MatchString(s):
		ask("%s minutes each: was the pot cooked in lots, or several times? Then take the # off, or write the sum", k.Value)
	case evenMore.MatchString(s), boilAgain.MatchString(s) && len(duration.FindAllString(s, 2)) > 1:
		ask("%s minutes in all, or that much more? Then take the # off, or write the sum", k.Value)
	case m != nil && m[1]+m[2]+m[3] != k.Value:
		ask("%s minutes, and %s more? Then write the sum, or take the # off", k.Value, m[1]+m[2]+m[3])
	case elsewhere.MatchString(s):
		ask("%s minutes in an open pot? In an oven or a closed cooker less boils away. Then take the # off", k.Value)
	}
}

// syrupTime reports that minutes are of sugar and water, boiled before the fruit.
func syrupTime(s, value string) bool {
	return slices.ContainsFunc(clauses(s), func(c string) bool { return syrupBoil.MatchString(c) && slices.Contains(times(c), value) })
}

var syrupBoil = pattern(`(?i)\b(?:boil|cook|simmer)(?:ed|ing)? (?:the |your |together )*(?:sugar,? (?:and|with|in) (?:the )?(?:water|juice)|water (?:and|with) (?:the )?sugar|syrup|sugar syrup)\b|\b(?:sugar and water|syrup)\b[^.;]{0,30}\b(?:boil|cook|simmer)|\bmake a (?:heavy |thick |light )?syrup\b`)

// testedAt reports that the minutes are those at which testing begins: "start testing
// after about 10 minutes".
func testedAt(s, value string) bool {
	for _, at := range testAfter.FindAllStringIndex(s, -1) {
		said, _, _ := strings.Cut(s[at[0]:min(len(s), at[1]+40)], ". ")
		if slices.Contains(times(said), value) {
			return true
		}
	}
	return false
}

// terse is how many words a line has that needs no more to be a boil.
const terse = 8

// sure asks of a boil in a longer line where nothing tells that it is the jam's.
func (l *Line) sure(s string, list []string) {
	k := l.find("cook.minutes")
	if k == nil || k.Asked || len(strings.Fields(s)) <= terse || aside.MatchString(s) { // what softens it is told apart
		return
	}
	for i, c := range list {
		if slices.Contains(times(c), k.Value) && (sureBoil.MatchString(c) || i > 0 && sureBoil.MatchString(list[i-1]) && !rawFruit.MatchString(c)) {
			return
		}
	}
	k.Asked = true
	l.ask("were %s minutes the boil of the jam? Then take the # off", k.Value)
}

// rawFruit is fruit that is boiled by its own name, with no word of sugar.
var rawFruit = pattern(`(?i)\b(?:boil|cook|simmer|stew)(?:ed|ing|s)? (?:the |your |this |all |these )*(?:crushed |mashed |sliced |chopped |whole |cut )?(?:fruits?|berries|apples?|plums?|pears?|peaches|apricots?|rhubarb|quinces?|oranges?|lemons?|grapes?|currants|gooseberries|damsons|tomatoes|figs|cherries)\b`)

// sureBoil are the jam, its sugar, its set, and a boil that no fruit is softened with.
var sureBoil = pattern(`(?i)\b(?:jams?|marmalades?|jell(?:y|ies)|chutneys?|relish|conserve|preserves?|spread|curd|butter|mixture|syrup|sugar|set|sets|setting|gels?|gell\w+|gelling|jells?|thick\w*|clear|translucent|transparent|glossy|hard|rolling|rapid\w*|brisk\w*|vigorous\w*|fast|furious\w*|full|reduced?|pulp|skim\w*|\p{L}*konfitüre|konfi|\p{L}*marmelade|\p{L}*gelee|\p{L}*mus|\p{L}*masse|\p{L}*mischung|gemisch|sirup|\p{L}*chutney|brodel\w*|kräftig|stark\w*|heftig\w*|\p{L}*zucker|sprudel\w*|wallend|gelier\w*|dick\w*|fest|confiture|gelée|sucre|sirop|vif|épais\w*|nappe\w*|prend|prise|écum\w*|consistance|mélange|bouillons|fige\w*|gélif\w*|petits? bouillons)\b`)

// bathIf reports jars that are heated only where one wants to.
func bathIf(c string) bool { return process.MatchString(c) && mayProcess.MatchString(c) }

// ifCanned are filled jars that one need not heat.
var ifCanned = pattern(`(?i)\bif (?:you are |you're |you )?(?:(?:going|plan(?:ning)?|want(?:ing)?|wish(?:ing)?|choos(?:e|ing)|intend(?:ing)?|prefer(?:ring)?|would like|like) to (?:properly )?(?:preserve|can|process|store|keep)|(?:properly )?(?:canning|processing|preserving|storing))\b`)

var mayProcess = pattern(`(?i)\bif (?:you are |you're |you (?:do )?(?:want|wish|plan|intend|prefer|choose|decide|would like|like)\b|canning|processing|desired|not (?:freezing|refrigerating|using|eating))|\bfor (?:a )?(?:longer|long[- ]term|extended|added|extra)\b|\boptional(?:ly)?\b|\b(?:may|can|could) (?:also )?be (?:processed|water[- ]?bathed|canned)\b|\bor (?:process|can)\b|\b(?:wer|wenn (?:man|du|sie|ihr)) [^.;,]{0,20}\b(?:mag|möchte|will|wollen)\b|\bsi (?:vous|tu|on|l'on) (?:le )?(?:souhait|voul|désir|veu)`)

var pectin = pattern(`(?i)\b(?:pectin|pektin|pectine)\b`)

// jarsBoiled asks of a time that jars stand in water, where no canner is spoken of.
func (l *Line) jarsBoiled(list []string) {
	for _, c := range list {
		if t := times(c); len(t) > 0 && jarsIn.MatchString(c) && l.find("process.minutes") == nil && l.find("cook.minutes") == nil {
			for _, v := range strings.Split(t[0], "-") {
				l.Keys = append(l.Keys, Key{Path: "process.minutes", Value: v, Asked: true})
			}
			l.ask("%s minutes in water: filled jars, or empty ones? Of filled ones take the # off", t[0])
		}
	}
}

// afterJars asks of a boil in a line behind the one that fills the jars.
func (r *Reading) afterJars() {
	filled := false
	for i := range r.Lines {
		l := &r.Lines[i]
		if k := l.find("cook.minutes"); filled && k != nil && !k.Asked && !sureBoil.MatchString(l.Text) {
			k.Asked = true
			l.ask("%s minutes: of the jam, or of the jars in water? Then write minutes under [process], or take the # off", k.Value)
		}
		filled = filled || len(l.Ingredients) == 0 && intoJars.MatchString(l.Text)
	}
}

var intoJars = pattern(`(?i)\b(?:ladle[ds]?|spoon(?:ed)?|pour(?:ed)?|fill(?:ed)?|pack(?:ed)?|pot)\b[^.;]{0,60}\bjars?\b|\bin (?:die |heiße |vorbereitete |saubere )*gläser (?:ab)?füllen|\bmettre en pots\b|\b(?:place|lower|put)\b[^.;]{0,20}\bjars?\b[^.;]{0,40}\b(?:canner|water|rack|pot)\b`)

// onlyEarly asks of the times before the sugar where no boil is told of.
func (r *Reading) onlyEarly() {
	for _, l := range r.Lines {
		if k := l.find("cook.minutes"); k != nil && !k.Asked {
			return
		}
	}
	for i := range r.Lines {
		l := &r.Lines[i]
		for _, t := range l.early {
			for _, v := range strings.Split(t, "-") {
				l.Keys = append(l.Keys, Key{Path: "cook.minutes", Value: v, Asked: true})
			}
			l.unsay()
			l.ask("were %s minutes the boil, and not only before the sugar? Then take the # off", t)
		}
		if len(l.early) > 0 {
			l.sayMissing()
		}
	}
}

// heats reads the temperature of the set out of a paragraph. What a recipe says it
// will be was not measured, so it is asked about.
func (l *Line) heats(list []string) {
	for _, c := range list {
		if l.find("cook.temperature") != nil || process.MatchString(c) {
			return
		}
		sub := Line{Text: c}
		if sub.temperature(c); len(sub.Keys) == 0 && l.find("process.minutes") == nil {
			l.Asks = append(l.Asks, sub.Asks...)
		}
		if len(sub.Keys) == 0 || len(list) == 1 && len(c) <= 120 {
			continue
		}
		for _, k := range sub.Keys {
			k.Asked = true
			l.Keys = append(l.Keys, k)
			l.ask("was it %s when it was done? Then take the # off", strings.Trim(k.Value, `"`))
		}
	}
}

// bareTimes asks about figures behind a word of cooking that may be its minutes.
func (l *Line) bareTimes(s string) {
	if m := bareBoil.FindStringSubmatch(s); m != nil && len(l.Keys)+len(l.Asks) == 0 {
		l.Keys = append(l.Keys, Key{Path: "cook.minutes", Value: m[1], Asked: true})
		l.ask("boiled %s minutes? Then take the # off, or write how many in all", m[1])
	}
}

// plusTime is a time that is added for the altitude: "15 min + 5".
var plusTime = pattern(`(?i)\d ?(?:m|mins?|minutes?|minuten|mn)?\.? ?(?:\+|plus) ?\d{1,2}(?:$|[ ,;)])`)
