package notes

import "strings"

// strained tells that juice runs off fruit which was cooked before.
var strained = pattern(`(?i)\b(?:strain(?:ed|ing)?|drip(?:ped|ping|s)?|jelly bag|muslin bag|cheesecloth|through (?:a |the )?(?:sieve|cloth|muslin|colander)|abseihen|abtropfen|ablaufen lassen|durch (?:ein |das |den |die )?(?:\p{L}+ )?(?:tuch|sieb|haarsieb|passiertuch|mulltuch|küchentuch)|flotte lotte|chinois|étamine|passe-vite|au travers d'un|dans un tamis|moulin à (?:légumes|gelée)|passoire|égoutter|filtrer|passer au)\b`)

// beforeStraining drops the times of a pot whose juice is run off in a later
// line, where neither sugar nor a set is spoken of: what follows is the boil.
func (r *Reading) beforeStraining() {
	last := -1
	for i, l := range r.Lines {
		if strained.MatchString(l.Text) && len(l.Ingredients) == 0 {
			last = i
		}
	}
	for i := range max(last, 0) {
		l := &r.Lines[i]
		k := l.find("cook.minutes")
		if k == nil || k.Asked || headTime.MatchString(l.Text) || sugarWord.MatchString(l.Text) || finished.MatchString(l.Text) || strained.MatchString(l.Text) {
			continue
		}
		l.say("%s minutes, taken as what draws the juice and not as the boil, since it is strained later", k.Value)
		l.drop("cook.minutes")
	}
}

// beforeSugar drops the times of a pot to which the sugar is added in a later line,
// where a boil of its own follows there; else it asks.
func (r *Reading) beforeSugar() {
	sweet, boiled := -1, false
	for i, l := range r.Lines {
		if len(l.Ingredients) == 0 && sugarIn.MatchString(l.Text) {
			sweet = i
		}
		boiled = boiled || sweet >= 0 && l.find("cook.minutes") != nil
	}
	for i := range max(sweet, 0) {
		l := &r.Lines[i]
		k := l.find("cook.minutes")
		if k == nil || k.Asked || headTime.MatchString(l.Text) || sugarWord.MatchString(l.Text) || setPoint.MatchString(l.Text) || thickened.MatchString(l.Text) {
			continue
		}
		if boiled {
			l.say("%s minutes, taken as what softens the fruit and not as the boil, since the sugar goes in later", k.Value)
			l.drop("cook.minutes")
			continue
		}
		k.Asked = true
		l.ask("were %s minutes the boil, and not only before the sugar? Then take the # off", k.Value)
	}
}

// setPoint is a set, and not only that it thickens.
var setPoint = pattern(`(?i)\b(?:sets?|setting|gel\w*|jell\w*|prend|prise|nappe\w*)\b`)

var thickened = pattern(`(?i)\b(?:dick(?:lich|flüssig)?|eindick\w*|sämig|zäh) ?(?:ein)?(?:ge)?(?:koch|köchel)\w*|\bbis (?:[\p{L}]+ ){0,5}?(?:dick|zäh|sämig|eingedickt)\b`)

// sugarIn is a step that puts the sugar in.
var sugarIn = pattern(`(?i)\b(?:add|adding|added|stir(?:red)? in|stirring in|tip(?:ped)? in|pour(?:ed)? in|mix in|dissolve|zugeben|zufügen|dazugeben|hinzufügen|unterrühren|einrühren|ajout\p{L}+|vers\p{L}+|incorpor\p{L}+|remett\p{L}+)\b[^.;]{0,60}\b(?:sugar|\p{L}*zucker|sucre)\b|` + deSugarIn + `|\b\p{L}*zucker\b[^.;]{0,40}\b(?:zugeben|zufügen|dazugeben|hinzufügen|unterrühren|einrühren|dazu)\b|\bsugar in\b`)

// stoveTimes asks of a time in the head of a recipe, which may be all that stood on
// the stove.
func (r *Reading) stoveTimes() {
	for i := range r.Lines {
		l := &r.Lines[i]
		if k := l.find("cook.minutes"); k != nil && !k.Asked && (headTime.MatchString(l.Text) || headLater.MatchString(l.Text)) {
			k.Asked = true
			l.ask("%s minutes of boiling, or all the time on the stove? Then take the # off, or write your own", k.Value)
		}
	}
}

var headTime = pattern(`(?i)^\W*(?:cook(?:ing)? time|(?:temps de )?cuisson|(?:koch|gar)zeit|zeitbedarf|time|dauer|temps total|durée(?: de cuisson)?) ?[:=-]? ?(?:(?:about|approx\.?|approximately|around|ca\.?|etwa|ungefähr|environ|env\.?) )?\d`)

// headLater is such a time behind another: "Préparation : 1 h Cuisson : 20 min".
var headLater = pattern(`(?i)(?:préparation|repos|vorbereitung|zubereitung\p{L}*|prep(?: time)?) ?:.*\b(?:cuisson|kochzeit|garzeit|cook(?:ing)? time) ?: ?(?:environ |ca\.? |env\.? |about )?\d`)

// drop takes a key off a line.
func (l *Line) drop(path string) {
	kept := l.Keys[:0]
	for _, k := range l.Keys {
		if k.Path != path {
			kept = append(kept, k)
		}
	}
	l.Keys = kept
}

// preparedJuice names a juice by the fruit it is from: "prepared juice (from
// 3 lb cherries)".
func (g *grammar) preparedJuice(l *Line, rest string) string {
	m := juiceOnly.FindStringSubmatch(rest)
	if m == nil {
		return rest
	}
	words := strings.Fields(strings.Trim(m[1], " .,"))
	for n := min(3, len(words)); n > 0; n-- {
		row, ok := g.row(strings.Join(words[len(words)-n:], " "))
		juice := row.Words["en"].Singular + " juice"
		if _, known := g.row(juice); ok && known {
			l.say("the juice is read as %s, of the fruit in the brackets", juice)
			return juice
		}
	}
	return rest
}
