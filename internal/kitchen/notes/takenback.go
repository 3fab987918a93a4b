package notes

import (
	"slices"
	"strings"
)

// What a writer takes back: a figure that another one follows, and a plan that came
// to something else.

// Words with which a figure is taken back, and words of a plan, in three languages.
const (
	backWords = `sorry|pardon|oops|correction|korrektur|korrigiert|corrigé|corrected|make (?:that|it)|more like|well|or rather|rather|actually|really|in fact|i mean|scratch that|wrong|(?:should|must) (?:be|have been|read)|after all|that was|counted again|crossed out|struck out|weighed again|re-?weighed|it was|turned out|` +
		`vielmehr|eigentlich|tatsächlich|in wirklichkeit|besser gesagt|stimmt nicht|falsch|soll heißen|nachgewogen|nachgezählt|durchgestrichen|waren es|doch (?:nur|eher)|` +
		`plutôt|en fait|finalement|en réalité|je veux dire|faux|repesée?s?|recomptée?s?|barrée?s?|au final`
	noWords   = `no|nope|not|nein|nicht|non|pas`
	planWords = `targets?|aim(?:ed)?|goal|hoped for|hoping for|planned|expected|expecting|wanted|aimed for|reckoned on|counted on|meant to (?:make|get|fill)|(?:the )?(?:recipe|book) (?:says|said)|supposed to (?:be|make|give)|should (?:make|give|have (?:made|given|been))|` +
		`ziel|geplant|gehofft auf|erwartet|gedacht|vorgesehen|(?:das )?rezept sagt(?:e)?|laut rezept|sollte[n]? .{0,12}(?:werden|ergeben)|objectif|prévue?s?|espérée?s?|attendue?s?|(?:la )?recette (?:dit|annonce)|selon la recette`
	gotWords = `got|filled|made|gave|yielded|came to|ended with|ergab|ergaben|bekam|gefüllt|wurden|obtenus?|remplis?|donnés?|faits?|voll`
)

var (
	takenBack   = pattern(`(?i)(?:^|[^\p{L}])(?:(?:` + backWords + `)(?:$|[^\p{L}])|(?:` + noWords + `)[,:;]? (?:(?:it was|only|es waren|nur|c'était|seulement) )?(?:the )?\d|(?:` + noWords + `)[,!] |thermom\p{L}+ [^.;,]{0,20}(?:out|off|low|high|zu (?:viel|wenig|hoch|tief)|falsch|trop))`)
	plannedIn   = pattern(`(?i)^(?:(?:jars?|pots?|gläser|bocaux) )?(?:(?:i|we|ich|wir|je|on|nous) )?(?:had |hatte[n]? |avais |avait )?(?:` + planWords + `)[ :]+[^,;]*?[\d][^,;\d]*(?:,|;| -|:|) ?(?:(?:but|and|aber|mais|only|it|we|i|ich|wir|es|on|j'ai|a) )*((?:` + gotWords + `) ((?:[^\d]{0,20} )?\d.*))$`)
	lessOfIt    = pattern(`(?i)\b(?:un peu|un brin|légèrement|a bit|a little|slightly|rather|much|etwas|ein wenig|ein bisschen|viel|deutlich|beaucoup|nettement) (?:less|more|moins|plus|weniger|mehr)\b`)
	changedMind = pattern(`(?i)(?:^|[ ,(])(?:i mean[t]?|or rather|sorry|scratch that|correction|besser gesagt|vielmehr|soll heißen|ich meine|je veux dire|pardon|ou plutôt)(?: [\p{L}]+)?`)
	planOnly    = pattern(`(?i)^(?:(?:i|we|ich|wir|je|on|nous) )?(?:had |hatte[n]? |avais |avait )?(?:` + planWords + `)[ :]+([^,;]*\d[^,;]*)$`)
)

// behindPlan gives what was got behind what was planned: "hoped for 10, got 8 jars". A
// plan alone is said as a recipe says it.
func (g *grammar) behindPlan(s string) (got, plan string) {
	if m := planOnly.FindStringSubmatch(s); m != nil {
		if f, ok := g.count(m[1]); ok && (f.Jar != "" || jarTalk.MatchString(m[1])) {
			return "makes " + m[1], ""
		}
	}
	m := plannedIn.FindStringSubmatch(s)
	if m == nil {
		return s, ""
	}
	return "got " + m[2], strings.TrimRight(s[:len(s)-len(m[1])], " ,;:-")
}

// doubtBack asks of a line that holds two figures and takes one back, where nothing
// else asks of it.
func (l *Line) doubtBack(s string) {
	m := strings.Trim(takenBack.FindString(s), " ,;:.-()0123456789")
	if c := changedMind.FindString(s); c != "" && len(l.Ingredients) > 0 && len(l.Asks) == 0 {
		l.ask("%q: what went in at the end? Check name and amount", strings.Trim(c, " ,"))
	}
	if slices.ContainsFunc(l.Ingredients, func(in Ingredient) bool { return lessOfIt.MatchString(in.Form) }) && len(l.Asks) == 0 {
		l.ask("how much was it in the end? Check amount")
	}
	if m == "" || len(l.Asks) > 0 || len(strings.Fields(s)) > mostWords*2 || len(aFigure.FindAllString(s, 2)) < 2 {
		return
	}
	l.unsay()
	l.takeBack()
	l.ask("%q takes something back: what counts? Check it", m)
}

// opensBack asks of a line that begins by taking back what stands above it.
func (l *Line) opensBack(s string) {
	at := takenBack.FindStringIndex(s)
	if at == nil || at[0] > 0 || !strings.ContainsAny(s[:min(len(s), at[1]+3)], "0123456789") || len(l.Asks) > 0 {
		return
	}
	l.unsay()
	l.takeBack()
	l.ask("does it take back what stands above? Then write it once")
}

// takeBack leaves the keys of a line open.
func (l *Line) takeBack() {
	for i := range l.Keys {
		l.Keys[i].Asked = true
	}
}
