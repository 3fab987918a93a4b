package notes

import "strings"

// What did not go into the pot, in three languages: words behind a thing that was
// measured and left out, and a food that is denied beside another.
const (
	outWords = `(?:not|never) (?:added|used|put in|gone in|went in|in it|needed|taken)|never (?:went|got|made it)|left (?:[\p{L}']+ ){0,3}out|omitted|skipped|forgot(?:ten)?(?:$|[^\p{L} ]| (?:it|them|the|this|in|on|at|again|to (?:add|put|stir))\b)|did ?(?:not|n'?t) (?:add|use|have|put|go|get|bother)\p{L}*|didn'?t(?: need(?: it| them| any)?)?$|none (?:added|used|left)|had none|` +
		`vergessen|weggelassen|ausgelassen|nicht (?:dazu|hinein|rein|drin|verwendet|genommen|zugegeben|dazugegeben|hinzugefügt|gebraucht|benutzt)|doch nicht|` +
		`(?:not|isn'?t) (?:for )?(?:this|here)\b|nicht (?:hierfür|für (?:diese|dies|hier))|pas pour (?:celle|cette|ici)\p{L}*|oublié\p{L}*|pas (?:mis|ajouté|utilisé|incorporé|employé)\p{L}*|laissé\p{L}* de côté|omise?s?|finalement sans`
	noneOf = `no|without|w/o|not any|ohne|kein(?:e[nmrs]?)?|sans|pas (?:de |d')?|ni `
)

var (
	notIn     = pattern(`(?i)(?:^|[^\p{L}])(?:` + outWords + `)(?:$|[^\p{L}])`)
	deniedOne = pattern(`(?i)(^|, | - |; | \()(?:so |but |aber |mais )?(?:` + noneOf + `) ?([\p{L}][\p{L} -]{2,30}?)(?: this time| added| needed| today| diesmal| cette fois)?(\)|, |; |$)`)
)

// elsewhereUse is a part of a food that went into something else.
var elsewhereUse = pattern(`(?i)\b(?:(?:for|into) (?:the |a |my |our |another |some )?(?:pie|cake|tart|crumble|pudding|wine|syrup|sauce|chutney|neighbou?rs?|eating|supper|breakfast|tea|compote|other|next (?:batch|pan|time))|(?:für|in) (?:den |die |das |einen |eine )?(?:kuchen|torte|nachbar\p{L}*|kompott|soße|saft|nächste)|(?:not|only|just) in (?:\p{L}+'s|one|two|some|half|a few)\b[^,;]{0,12}|nur in (?:ein|zwei|drei|halb)\p{L}*|seulement dans \p{L}+|pour (?:la |le |les |une |un )?(?:tartes?|gâteaux?|voisin\p{L}*|compote|crumble|prochaine?))\b`)

// undenied takes a food off that is denied beside another: "4 lb plums, no pectin".
// Stones and lumps are no food, and stay how it was cut.
func (g *grammar) undenied(l *Line, s string) string {
	m := deniedOne.FindStringSubmatchIndex(s)
	if m == nil {
		return s
	}
	row, known := g.row(s[m[4]:m[5]])
	rest := strings.Trim(s[:m[0]]+s[m[6]:], " ,;()-")
	if strings.HasPrefix(s[m[6]:], ")") {
		rest = strings.TrimSpace(s[:m[0]] + s[m[6]+1:])
	}
	if !known || rest == "" || row.Class == "" {
		return s
	}
	l.say("did not go in: %s", strings.Trim(s[m[0]:m[7]], " ,;()-"))
	return rest
}

// leftOut takes a thing off that was measured and did not go in: "4 lb plums, 2 tbsp rum
// left out", "4 lb plums, 2 tbsp rum, forgotten".
func (g *grammar) leftOut(s string) (rest, out string) {
	if !notIn.MatchString(s) {
		return s, ""
	}
	parts := strings.Split(s, ", ")
	for i, p := range parts {
		from := i
		if !strings.ContainsAny(p, "0123456789") {
			from = max(0, i-1)
		}
		out = strings.Join(parts[from:i+1], ", ")
		if notIn.MatchString(p) && g.measuredOne(strings.Trim(notIn.ReplaceAllString(out, " "), " ,;()-")) {
			return strings.Join(append(parts[:from:from], parts[i+1:]...), ", "), out
		}
	}
	return s, ""
}

// measuredOne reports one thing with its amount, and no more.
func (g *grammar) measuredOne(s string) bool {
	try := Line{}
	in, ok := g.one(&try, s)
	return ok && len(in) == 1
}

// denies opens a line that says what is not in it: "no pectin this time".
var denies = pattern(`(?i)^(?:but |so |aber |mais )?(?:` + noneOf + `) ?\p{L}`)

// mostDenied is the most words of a line that is taken so.
const mostDenied = 8

// denied asks of a thing in the pot which another line says was left out.
func (r *Reading) denied(g *grammar) {
	for i := range r.Lines {
		l := &r.Lines[i]
		if l.Read() || len(strings.Fields(l.Text)) > mostDenied || !notIn.MatchString(l.Text) && !denies.MatchString(l.Text) {
			continue
		}
		for _, key := range g.foodsIn(l.Text) {
			r.inDoubt(g, key, l)
		}
	}
}

// inDoubt asks of the ingredients of a row whether they went in after all.
func (r *Reading) inDoubt(g *grammar, key string, by *Line) {
	for i := range r.Lines {
		for _, in := range r.Lines[i].Ingredients {
			if row, _ := g.row(in.Name); row.Key == key && r.Lines[i].No != by.No {
				r.Lines[i].ask("line %d says %q: did it go in? If not, take it out", by.No, by.Text)
			}
		}
	}
}

// foodsIn gives the rows that a text names.
func (g *grammar) foodsIn(s string) (keys []string) {
	words := strings.FieldsFunc(plain(s), func(r rune) bool { return strings.ContainsRune(" ,/().!?", r) })
	for i := range words {
		for n := min(2, len(words)-i); n > 0; n-- {
			if row, ok := g.row(strings.Join(words[i:i+n], " ")); ok {
				keys = append(keys, row.Key)
				break
			}
		}
	}
	return keys
}
