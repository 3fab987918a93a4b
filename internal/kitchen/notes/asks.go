package notes

import (
	"strings"

	"jarmark/internal/kit/unit"
)

// What a line of one food leaves open, and is asked about.

var (
	bareInside = pattern(`(?i)(\((?:about |ca\.? |~|or |oder |ou )?` + num + `(?: ?-? ?` + num + `)?(?: or so| or less| or more| etwa)?\))`)
	insteadOf  = pattern(`(?i)\((?:or|oder|ou|for|für|pour)\b[^()]*\b(?:use|take|nehm\p{L}+|prenez|prendre|version|instead|stattdessen|statt)\b[^()]*\d[^()]*\)`)
	less       = pattern(`(?i)\((?:or |plus |and )?(?:more|less|to taste)\b|\((?:oder|ou|evtl\.|eventuell) (?:etwas |un peu )?(?:nach|mehr|weniger|plus|moins|selon)\b|,? (?:plus more|or more|or less|more or less)\b|\b(?:used|took|added|put in) (?:only |just )?(?:a )?(?:little |bit |few )?(?:less|more|half|fewer)\b|\b(?:bit|little|touch|tad) (?:less|more)\b|\b(?:half|part|some|most)(?: of (?:it|them))? (?:was |were )?(?:used|left)\b|\bused \d|\((?:may|can|could|you may|you can) (?:use|be) \d`)
	orElse     = pattern(`(?i)\((?:or|oder|ou) (?:any |some |an )?(?:others?|any|similar|a mix\p{L}*|mix\p{L}*|a combination|a blend|whatever|substitut\p{L}*|your (?:favou?rite|choice)|andere\p{L}*|beliebige\p{L}*|autres?)\b|\([^()]*\bif you\b[^()]*\d[^()]*\)|\([^()]*\d[^()]*\bif you\b[^()]*\)|(?:^|[,(] ?)(?:or|oder|ou) (?:any )?(?:other|another|similar|andere\p{L}*|autres?) [\p{L} ]+$`)
	otherIn    = pattern(`(?i)\([^()]*\b(?:genommen|verwendet|weggelassen|ausgelassen|benutzt|stattdessen|alternativ\p{L}*|ersatzweise|notfalls|wahlweise|oder auch|davantage|à défaut|remplac\p{L}*|omis|pas mis|j'en ai mis|bei mir|chez moi)\b[^()]*\)|\((?:etwas |un peu |nur |diesmal |cette fois |viel |beaucoup )*(?:weniger|mehr|moins|plus|halb)\b[^()]*\)|\( ?(?:ou|oder|bzw\.?) \d[\d.,]* ?(?:g|kg|ml|l)?,? (?:si|selon|wenn|je nach|bei|für|pour|falls)\b[^()]*\)`)
	ownWay     = pattern(`(?i)\((?:i|we) (?:will |always |usually |often |just |only )?(?:use|used|took|take|add|added|put|had)\b|\((?:ich|wir) (?:nehme|nahm|nehmen|habe)\b|\((?:j'ai|je|on|nous) `)
	shareIn    = pattern(`(?i)\((?:per|for each|for every|pro|je|par|pour chaque) (?:` + num + ` ?)?\p{L}[^()]*\)`)
)

// askLast asks of a line that gave nothing what it may have been.
func (g *grammar) askLast(l *Line, s string) {
	s = asBefore.ReplaceAllString(s, "")
	short := len(strings.Fields(s)) <= 8
	figure := strings.ContainsAny(s, "0123456789")
	switch {
	case madeWeight.MatchString(s) && !jarTalk.MatchString(s):
		l.ask("the jam weighed? Then write finished_pot, under [cook]; else how many jars of which size it filled")
	case pulpOf.MatchString(s):
		l.ask("how much is that without peel and juice? Weigh it, or give cups")
	case sealedOnly.MatchString(s):
		l.ask("of which jars? Write sealed, how many of them closed, under their [[fill]]")
	case jarTalk.MatchString(s) && headCount.MatchString(s) && (short || jarTalk.MatchString(s[:min(len(s), 40)])), jarsNear.MatchString(s):
		l.ask("how many jars of which size is that? Write jar and count under [[fill]]")
	case readied.MatchString(s) && jarTalk.MatchString(s):
		l.ask("how many jars of which size were filled? Write jar and count under [[fill]]")
	case process.MatchString(s) && (hasMinutes(s) || figure && len(strings.Fields(s)) <= 12), figure && short && canned.MatchString(s):
		l.ask("how many minutes was it in the canner, for your jars? Write minutes and method under [process]")
	case jarTalk.MatchString(s) && yieldVerb.MatchString(s), figure && short && counts.MatchString(s):
		l.ask("how many jars of which size is that? Write jar and count under [[fill]]")
	case len(times(s)) > 0 && (len(strings.Fields(s)) <= 4 || headTime.MatchString(s)):
		l.ask("the time of what: boiled, or in the canner? Write minutes under [cook] or [process]")
	case short && len(dayOnly(s)) > 0:
		l.ask("is %s the day it was made? Then write it as made", strings.Join(dayOnly(s), " or "))
	case short && tookTime.MatchString(s) && len(times(spelledTimes(s))) > 0:
		l.ask("the time of what: boiled, or in the canner? Write minutes under [cook] or [process]")
	case testedTime.MatchString(s) && hasMinutes(s) && !condition.MatchString(s) && len(strings.Fields(s)) <= 14:
		l.ask("how many minutes was it boiled in all? Write minutes under [cook]")
	case bareHead.MatchString(s):
		l.ask("of what: inches? Write headspace = \"1/4 in\" under [process]")
	case figure && netOf.MatchString(s):
		l.ask("the jam weighed? Then write finished_pot, under [cook]")
	case figure && len(strings.Fields(s)) <= 12 && g.foodIn(s) && !cooking.MatchString(s) && !thousands.MatchString(s) && !hasMinutes(s) && !sentence.MatchString(s):
		l.ask("how much of it went into the pot? Write it as an ingredient with its amount")
	case !figure && leadList.MatchString(s) && g.foodIn(s):
		l.ask("how much of each was it? Write one line for each, with its amount")
	case figure && g.names(l, s):
	case len(strings.Fields(s)) <= 14 && jarsOnce.MatchString(s):
		l.ask("how many jars of which size is that? Write jar and count under [[fill]]")
	case figure && short && atSet.MatchString(s) && !notThis.MatchString(s):
		l.ask("minutes, or degrees? Write minutes or temperature, under [cook]")
	}
}

// jarsOnce is a count of jars among other words.
var jarsOnce = pattern(`(?i)\b\d{1,3} (?:\p{L}+ )?(?:jars?|gläser|bocaux|pots?|half-?pints?|hps?|pints|filled|gefüllt|remplis?)\b|\bsealed \d{1,3}\b|\b(?:jars|gläser|bocaux|pots):? \d{1,3}(?:$|[,;. ])|\b(?:made|got|filled|gefüllt|wurden|fait|rempli) \d{1,3}(?:$|[,;])`)

// tookTime is a time of something that is not named, testedTime one at which it was tested.
var (
	tookTime   = pattern(`(?i)\b(?:took|taken|needed|dauerte|gedauert|gebraucht|brauchte|a pris|a duré|il a fallu)\b`)
	testedTime = pattern(`(?i)\b(?:test(?:ed|s)?|gelierprobe|probe|test de l'assiette|wrinkl\p{L}*|set|sets|flüssig|runny|liquide|pris)\b`)
)

// netOf is a weight of what was made; atSet a figure of the set, of minutes or degrees.
var (
	madeWeight = pattern(`(?i)\b(?:makes?|made|yields?|yielded|gives?|gave|ergibt|ergab|donne)\b (?:about |approx\.? |around |roughly |ca\.? |environ )?` + num + ` ?(?:kg|kilos?|lbs?|pounds?|g|grams?)\b`)
	netOf      = pattern(`(?i)^(?:net|netto|total|in all|zusammen|en tout)\b`)
	atSet      = pattern(`(?i)\b(?:set|sets|setting|reached|jelled|gelled|geliert|after)\b|\d ?°?[cf]\b.*\d ?min`)
)

var jarsNear = pattern(`(?i)\((?:für |pour |for |ergibt |ca\.? |env\.? |environ |about )*\d{1,3}(?: ?(?:-|to|bis|à) ?\d{1,3})? (?:[\p{L}-]+ )?(?:gläser|pots|bocaux|jars)\b[^()]*\)|\b(?:\d{1,3}|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|zwölf|deux|trois|quatre|cinq|six|sept|huit|dix|une dizaine de) (?:[\p{L}-]+ )?(?:[\p{L}-]*gläsern?|pots|bocaux|conserves|verrines) (?:à|de|von|zu|mit|d')[^.;]{0,12}\d|\b\d{1,3} ?x ?\d{1,4} ?(?:ml|g|oz|cl)\b|^(?:\D{0,12}[ (])?\d{1,3}(?: ?(?:-|to|or|bis|oder|à|ou) ?\d{1,3})? (?:[\p{L}-]+ )?(?:jars?|gläser|bocaux|pots)\b`)

// canned is a time in water told without the canner; counts is a bare count.
var (
	canned = pattern(`(?i)\b(?:in|under) (?:the )?boiling water\b|\balt(?:itude)?\b`)
	counts = pattern(`(?i)\b(?:got|made|filled|gave|bekam|ergab|obtenu|donné) (?:about |ca\.? )?\d{1,3}$`)
)

// insideBrackets asks about what brackets say of the amount: another one, a share,
// more or less.
func (l *Line) insideBrackets(s string) {
	if m := bareInside.FindStringSubmatch(s); m != nil {
		l.ask("what is %s? Check amount", m[1])
	}
	switch {
	case shareIn.MatchString(s):
		l.ask("that is a share: how much was it in all? Check amount")
	case insteadOf.MatchString(s):
		l.ask("what went in, and how much? Check name and amount")
	case less.MatchString(s), otherIn.MatchString(s):
		l.ask("how much was it in the end? Check amount")
	case orElse.MatchString(s):
		l.ask("what went in at the end? Check name and amount")
	case ownWay.MatchString(s):
		l.ask("what went in at the end? Check name and amount")
	}
}

// sayAmount tells what is open in an amount.
func (g *grammar) sayAmount(l *Line, a amount, in *Ingredient) {
	if a.say != "" {
		l.say("%s", a.say)
	}
	if a.doubt != "" {
		l.ask("%s", a.doubt)
	}
	switch {
	case a.vague:
		in.Amount = ""
		l.ask("how much is that? Weigh it, or give spoons")
	case len(a.choices) > 0:
		in.Amount = ""
		l.ask("how much was it? Take the # off one, or write your own")
	default:
		g.sayPiece(l, in)
	}
}

// sayPiece asks for the weight of a pack or a handful nobody knows, and of a spirit that
// was weighed, and is rather short for a root.
func (g *grammar) sayPiece(l *Line, in *Ingredient) {
	q, err := unit.ParseQuantity(in.Amount)
	if err == nil && q.Dim == unit.ByMass && strings.EqualFold(in.Name, "gin") {
		l.ask("gin, or ginger? Check the name")
	}
	if err != nil || q.Dim != unit.ByCount || q.Part != "" {
		return
	}
	row, known := g.row(in.Name)
	if m, ok := g.p.Measure(q.Piece, row); ok && m.Ask != "" {
		l.ask("%s", m.Ask)
	} else if known && !ok && row.PieceG <= 0 {
		l.ask("what one of them weighs is not known: give a weight or a kitchen measure")
	}
}

// doubtForm asks about a form that holds figures: minutes, jars or another food
// of the same line may be lost in it.
func (l *Line) doubtForm(form string) {
	if strings.ContainsAny(cutSize.ReplaceAllString(form, ""), "0123456789") {
		l.ask("is %q "+formDoubt+"? Write each thing on its own line", form)
	}
}

const formDoubt = "more than how it was cut"

// hint names foods near to an unknown name.
func (g *grammar) hint(name string) string {
	if near := g.p.Suggest(name); len(near) > 0 {
		return " Did you mean " + strings.Join(near, ", ") + "?"
	}
	return ""
}

// askOf asks of a line nothing was read of, and of lids that did not close.
func (g *grammar) askOf(l *Line, s string) {
	if m := noAmount.FindStringSubmatch(someOf.ReplaceAllString(s, "$1, to taste")); m != nil && !l.Read() && len(l.Asks) == 0 {
		if _, ok := g.row(m[1]); ok {
			l.ask("how much %s was it? Write it as an ingredient with its amount", strings.ToLower(m[1]))
		}
	}
	if !l.Read() && len(l.Asks) == 0 {
		g.askLast(l, s)
		if len(l.Asks)+len(l.names) == 0 {
			g.askScrawl(l, s)
		}
	}
	l.askUnsealed(s)
	if !l.Read() && len(l.Asks)+len(l.Says) == 0 {
		l.say("not read: %s", why(s))
	}
}

// someOf is a holder of a food of which nobody tells what it holds: "small pot of pectin".
var someOf = pattern(`(?i)^(?:an? |one |the |eine? |une? )?(?:small|large|little|big|good|kleine[rs]?|große[rs]?|petite?|gros(?:se)?) (?:pot|tub|jar|bag|pack|packet|tin|can|bottle|bowl|bunch|glass|glas|tüte|dose|flasche|schale|boîte|sachet|botte|bouteille) (?:of |de |d')?(\p{L}[\p{L} '-]{1,40}?)\.?$`)

var noAmount = pattern(`(?i)^([\p{L}][\p{L} '-]{1,40}?),? (?:to taste|to cover|as needed|if needed|enough to cover|nach bedarf|nach geschmack|selon besoin|à volonté|q\.? ?s\.?|optional)\.?$`)
