package notes

import (
	"strconv"
	"strings"
)

// Which jars closed. What is said of one that did not stands behind its number.
const (
	someJars = `(one|two|three|four|ein(?:e[rsnm]?|s)?|zwei|drei|vier|une?|deux|trois|quatre|\d{1,3})(?: (?:of (?:them|those|which)|jars?|lids?|pots?|seals?|gläser|glas|deckel|bocal|bocaux|couvercles?|davon|d'entre eux))?`
	shuts    = `(?:seal|ping|pop|close|take|hold|stick)`
	notShut  = `(?:(?:(?:did|do|does|has|have|had|is|are|was|were|would|will|could) ?(?:not|n'?t|never)|won't|never|failed to|un|no|not|bad)[ -]?` + shuts +
		`|failed|(?:stayed|still) up|(?:popped|sprang|came|pinged) (?:open|up|off|undone|loose)|open\b|loose\b` +
		`|(?:(?:sind|ist|waren|war|gingen?|blieben?|haben|hat|schlossen?) )?(?:der |die )?(?:deckel )?(?:nicht (?:zu|dicht|gezogen|geschlossen|verschlossen|aufgegangen)|offen|undicht|aufgegangen)|ging(?:en)? (?:der |die )?(?:deckel )?nicht zu` +
		`|(?:(?:sont|est|étai(?:en)?t|resté\p{L}*) )?(?:mal (?:fermé|scellé|vissé)|(?:non|pas)[ -](?:bien )?(?:scellé|fermé|pris|étanche)|n'(?:a|ont|est|étai(?:en)?t) pas (?:pris|fermé|scellé|tenu|étanche)|ouverts?\b))`
)

var (
	sealForm     = pattern(`(?i)\b(all|\d{1,4})(?: of them| jars?| lids?)? (?:have |has )?(?:sealed|pinged|popped)(?:$|[^\p{L} ]| (?:ok|well|fine|and|but|by|at|in|after|within|overnight)\b)|\b(alle|tous|toutes)(?: gläser| deckel| les pots)? (?:sind |haben |sont |ont )?(?:zu|dicht|gezogen|fermés?|scellés?|pris)\b`)
	unsealedForm = pattern(`(?i)(?:^|[^\p{L}\d])` + someJars + ` ` + notShut)
	allBut       = pattern(`(?i)\b(?:all|every one|alle|tous|toutes)(?: of them| gläser| deckel| les pots)?(?: (?:sealed|pinged|popped|zu|dicht|fermés|scellés))? (?:but|except|bis auf|außer|sauf) (one|two|three|ein\p{L}*|zwei|drei|une?|deux|trois|\d{1,2})\b`)
	noneShut     = pattern(`(?i)\b(?:none|not one|neither|kein(?:e[rs]?|s)?|aucun)(?: of (?:them|the \p{L}+)| davon| n'a| n'est)? (?:have |has |ist |war |bien )?(?:sealed|seal|pinged|popped|closed|zu|dicht|gezogen|fermé|scellé|pris)\b`)
	closedWord   = pattern(`(?i)\b(?:seal|ping|pop|closed|zu\b|dicht|gezogen|geschlossen|fermé|scellé|pris\b)`)
	sealedOnly   = pattern(`(?i)^(?:all|every one|alle|tous|toutes|\d{1,3}|one|two|three|ein|zwei|drei)?(?: of them)?(?: jars?| gläser| glas| lids?| deckel| bocaux)? ?(?:have |has |are |is |sind |ist )?(?:all )?(?:sealed|pinged|popped|failed|took|(?:did ?n'?t|not) (?:seal(?:ed)?|take|ping|pop)|unsealed|zu|nicht zu|offen|dicht|undicht|nicht dicht|gezogen|nicht gezogen|fermés?)\.?$`)
	butTail      = pattern(`(?i)[ ,;+-]*(?:[ ,;-](?:but|of which|of them|and|with|davon|wovon|bei|aber|und|dont|mais|et))?[ ,;+-]*$`)
)

// unsealed is how many jars are said not to have sealed.
func unsealed(s string) int {
	m := unsealedForm.FindStringSubmatch(s)
	if m == nil && closedWord.MatchString(s) {
		m = allBut.FindStringSubmatch(s)
	}
	if m == nil {
		return 0
	}
	low := strings.ToLower(m[1])
	if n, ok := wordNumbers()[low]; ok {
		return n
	}
	if strings.HasPrefix(low, "ein") {
		return 1
	}
	n, _ := strconv.Atoi(m[1])
	return n
}

// shut gives how many of a count of jars closed, where it is told.
func shut(s string, of float64) (n int, ok bool) {
	if noneShut.MatchString(s) {
		return 0, true
	}
	if n := unsealed(s); n > 0 {
		return int(of) - n, float64(n) <= of
	}
	m := sealForm.FindStringSubmatch(s)
	if m == nil {
		return 0, false
	}
	if n, err := strconv.Atoi(m[1]); err == nil {
		return n, float64(n) <= of
	}
	return int(of), true
}

// askUnsealed asks which jars are told of that did not close, where none are counted.
func (l *Line) askUnsealed(s string) {
	if unsealed(s) > 0 && len(l.Fills) == 0 && len(strings.Fields(s)) <= 12 && !strings.Contains(strings.Join(l.Asks, " "), "jars") {
		l.ask("of which jars? Write sealed, how many of them closed, under their [[fill]]")
	}
}
