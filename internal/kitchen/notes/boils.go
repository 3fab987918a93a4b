package notes

import (
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
	goesOn   = lazily(`(?i)^(?:stirring|skimming|uncovered|covered|until|till|or until|for (?:about |another )?\d|unter (?:ständigem )?rühren|bis |en remuant|jusqu)`)
	onlyTime = lazily(`(?i)^(?:for |about |ca\.? |approx\.? )*` + num + `(?: ?(?:-|to|bis|à) ?` + num + `)?[- ]?(?:minutes?|mins?|minuten|mn)\b\.?(?:$|[.;,)])`)
)

// elsewhere is a vessel that boils away otherwise than an open pot; jarsIn are jars
// in boiling water, without a word of the canner.
var (
	elsewhere = lazily(`(?i)\b(?:oven|slow[- ]?cook\p{L}*|crock ?-?pot|pressure[- ]?cook\p{L}*|at pressure|microwav\p{L}*|on high\b|bread ?-?machine|bread ?-?maker|backofen|im ofen|rohr|schnellkoch\p{L}*|mikrowelle|dampfentsaft\p{L}*|steam juicer|au four|autocuiseur|cocotte[- ]minute|micro-?ondes|robot)\b`)
	jarsIn    = lazily(`(?i)\b(?:boil|simmer)(?:ed|ing|s)?(?: (?:the|your|these|all|filled|full|sealed|closed|hot|empty|clean))* (?:jars?|lids?|bottles?|glasses)\b|\b(?:jars?|gläser|bocaux|lids?|deckel)\b[^.;]{0,60}\b(?:in(?:to)?|under|with) (?:the |gently |rapidly )?boiling water\b|\b(?:gläser|deckel|bocaux|couvercles)\b[^.;]{0,40}\b(?:auskochen|ausgekocht|abkochen|ébouillant\p{L}+|bouillir)\b`)
	moreTime  = lazily(`(?i)\b(?:another|a further|again|plus|noch(?:mal)?s?|weitere|encore|puis|then|dann|danach) (?:for |about |ca\.? )*(\d{1,3})(?:$|[,.;)]| ?(?:m|min|mins|minutes?|minuten|mn)\b)|(?:^|[^\d.,/])(\d{1,3}) (?:more|longer|extra|länger|de plus)(?:$|[,.;)]| (?:m|min|mins|minutes?)\b)|(?:^|[ ,(])\+ ?(\d{1,3})(?:$|[,.;) ])`)
	bareBoil  = lazily(`(?i)\b(?:boil(?:ed)?|simmer(?:ed)?|cook(?:ed)?|gekocht|geköchelt)(?: hard| gently| again| for| about| another)* (\d{1,2})(?:$|[,.;)])`)
	advised   = lazily(`(?i)\b(?:if you (?:have|use|are using)|should (?:read|register|reach|show)|will (?:read|register)|si vous avez|wenn (?:sie|du|man) ein|falls (?:sie|du|man))\b`)
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
	case evenMore.MatchString(s):
		ask("%s minutes in all, or that much more? Then take the # off, or write the sum", k.Value)
	case m != nil && m[1]+m[2]+m[3] != k.Value:
		ask("%s minutes, and %s more? Then write the sum, or take the # off", k.Value, m[1]+m[2]+m[3])
	case elsewhere.MatchString(s):
		ask("%s minutes in an open pot? In an oven or a closed cooker less boils away. Then take the # off", k.Value)
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
		if sub.temperature(c); len(sub.Keys) == 0 || len(list) == 1 && len(c) <= 120 {
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
