package notes

import (
	"strconv"
	"strings"
)

// What a hurried hand leaves open: a 1 like an l, tallies, weights without a word, minutes
// written m. Where it is not plain it is asked about.

var (
	ocrOne     = pattern(`(?:^|[ :])[lI](?:[.,]\d{1,2})? ?(?:kg|lbs?|pints?|cups?|tsp|tbsp|pkt)\b`)
	strokesIn  = pattern(`(?i)^(?:jars?|pots?|gläser|got|filled|made)[ :=-]+((?:[I|l/]{1,5} ?){1,20})$`)
	aWeight    = pattern(`(?i)\d ?(?:kg|g|lbs?|oz|pounds?|kilos?|pfund|livres?)\b`)
	aMeasured  = pattern(`(?i)\d ?(?:(?-i:c)|cups?|qts?|quarts?|pts?|pints?|hps?|tbsp|tbs|tsp|l|ml|dl|cl|el|tl|bx|pkts?)\b`)
	weightFor  = pattern(`(?i)\b(lb|pound|pint|kilo|cup|weight|pfund) (?:for|to|per|auf|je|pour) (?:a )?(?:lb|pound|pint|kilo|cup|weight|pfund)\b|^(?:equal|same|half)(?: (?:weight|amount|quantity|measure))?(?: of)? `)
	bareBit    = pattern(`(?i)\b(?:twice|double|hälfte|moitié|etwas|wenig|un peu|thumb|knob|pi?nch|handful|size of a walnut|walnut(?:-sized?)?(?: \p{L}+)? of|sprinkl\p{L}*|splash|dash|half|bit|little|some|few|squeeze|glug|dollop|lump|nut of|scrape|grating|drop|glass)\b`)
	bareMins   = pattern(`(?i)\b(?:boil\p{L}*|simmer\p{L}*|cook\p{L}*|rolling|gekocht|geköchelt|cuit)[^\d.;,]{0,12}\d{1,2}(?:$|[,.;)]| \(| (?:not|then|and|or|instead|dann|nicht|puis)\b| ?\+ ?\d{1,2}$)`)
	clockWords = pattern(`(?i)\b(?:past|half past|quarter (?:past|to)|o'clock|till|uhr|viertel (?:nach|vor)|halb \p{L}+|heures?)\b`)
	shortWords = pattern(`(?i)^\p{L}{1,3}\.? (?:\d{1,3}|\d/\d)(?:\.\d)?(?: \p{L}{1,3}\.?){0,2}$`)
	loneMins   = pattern(`(?i)^\p{L}{1,5} \d{1,2} ?m(?:$| )`)
	coldTubs   = pattern(`(?i)\b(?:freezer|frozen|froze|tk)\b[^\d]{0,12}\d{1,2} (?:tubs?|containers?|boxes|bags?|pots?)\b|\d{1,2} (?:tubs?|containers?|boxes|bags?)\b[^\d]{0,12}\b(?:freezer|frozen)\b`)
	bareDay    = pattern(`(?i)^(?:made |cooked |on )*(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs)?|fri|sat(?:ur)?|sun)(?:day)?\.?(?: (?:night|morning|evening|pm|am))?|\d{1,2}/\d{1,2})$`)
	romanDay   = pattern(`(?i)\b(\d{1,2})[.-] ?(i|ii|iii|iv|v|vi|vii|viii|ix|x|xi|xii)[.-] ?(\d{4}|\d{2})\b`)
	shortM     = pattern(`(?i)(\b(?:at|above|alt\.?|altitude|höhe) )?\b([1-9]\d?) ?m(?:$|([ ,.;)]))`)
	romanApart = pattern(`(?i)\b(\d{1,2}) (ii|iii|iv|vi|vii|viii|ix|xi|xii) (20\d\d)\b`)
	romanOnes  = []string{"i", "ii", "iii", "iv", "v", "vi", "vii", "viii", "ix", "x", "xi", "xii"}
)

var (
	shortStuck = pattern(`(?i)\b(bwb|wb|hs|ph|brix|bx|hp)(\d)`)
	partShort  = pattern(`(?i)\bjce?( (?:of )?\d)`) // jce 2 lem
)

// tidied writes short minutes out beside a word of cooking, and months in Roman figures as
// the others: "boiled 18m", "12.ix.26".
func tidied(s string) string {
	s = partShort.ReplaceAllString(shortStuck.ReplaceAllString(s, "$1 $2"), "juice$1")
	if cooking.MatchString(s) || process.MatchString(s) {
		s = shortM.ReplaceAllStringFunc(s, func(m string) string {
			f := shortM.FindStringSubmatch(m)
			if f[1] != "" {
				return m // metres
			}
			return f[2] + " min" + f[3]
		})
	}
	return romanDay.ReplaceAllStringFunc(romanApart.ReplaceAllString(s, "$1.$2.$3"), func(m string) string {
		f := romanDay.FindStringSubmatch(m)
		for i, r := range romanOnes {
			if strings.EqualFold(r, f[2]) {
				return f[1] + "." + strconv.Itoa(i+1) + "." + f[3]
			}
		}
		return m
	})
}

// manyfold says that a recipe was made more than once, or in part.
var manyfold = pattern(`(?i)\b(?:double[ds]?|tripled?|half(?:ed)?|halved|twice|x ?\d|\d ?x|\d times|` + allFold + `)\b`)

// allFold are words that the amounts of a recipe were folded, with no amount beside them.
const allFold = `(?:made|did|cooked|doing) (?:it|this|that|the lot|all) (?:twice|again)|doubl(?:ed|ing|é|ée|er)|tripl(?:ed|ing|é|er)|quadrupl\p{L}*|verdreifacht|vervierfacht|twice the (?:recipe|amounts?|quantity)|half the (?:recipe|amounts?|quantity)|halved|doppelt\p{L}*|verdoppelt|dreifach\p{L}*|halbe (?:menge|rezept)|halbes rezept|halbiert|double (?:dose|quantité|batch|recipe)|moitié de la recette|deux fois la (?:recette|dose)`

var (
	foldLead = pattern(`^([^:!=]{2,30}?) ?[:!=] (\S.*)$`)
	bareFold = pattern(`(?i)\b(?:` + allFold + `)\b`)
)

// folded asks of amounts behind such a word.
func (l *Line) folded(word string) {
	if manyfold.MatchString(word) {
		l.ask("%s: are these the amounts that went in, or those before? Check them", word)
	}
}

// askScrawl asks of a short line that nothing else asked of.
func (g *grammar) askScrawl(l *Line, s string) {
	figure := strings.ContainsAny(s, "0123456789")
	if long := len(strings.Fields(s)); long > 8 && (long > 14 || !aWeight.MatchString(s)) {
		return
	}
	switch m := strokesIn.FindStringSubmatch(s); {
	case bareFold.MatchString(s) && !figure:
		l.ask("are the amounts in the notes those that went in, or those before? Check them")
	case m != nil:
		l.ask("is that a tally of %d jars? Write got %d, and their size", strokes(m[1]), strokes(m[1]))
	case ocrOne.MatchString(s):
		l.ask("is the letter a 1? Write the line with its figure")
	case bareMins.MatchString(s):
		l.ask("how many minutes was it boiled in all? Write minutes under [cook]")
	case cooking.MatchString(s) && clockWords.MatchString(s):
		l.ask("how many minutes was it boiled in all? Write minutes under [cook]")
	case loneMins.MatchString(s):
		l.ask("the time of what: boiled, or in the canner? Write minutes under [cook] or [process]")
	case coldTubs.MatchString(s):
		l.ask("kept in the freezer? Write method = %q under [process], and how many of which size under [[fill]]", "freezer")
	case bareDay.MatchString(s):
		l.ask("of which date? Write the day it was made as made = 2026-06-14")
	case weightFor.MatchString(s) && (g.foodIn(s) || sugarWord.MatchString(s)), !figure && bareBit.MatchString(s) && g.foodIn(s):
		l.ask("how much of it went into the pot? Write it as an ingredient with its amount")
	case shortWords.MatchString(s) && !phForm.MatchString(s):
		l.ask("what is it short for? Write it out")
	case figure && (aWeight.MatchString(s) || aMeasured.MatchString(s) && !cooking.MatchString(s) && !sentence.MatchString(s)) && !thousands.MatchString(s):
		l.ask("how much of what? Write it as an ingredient with its amount, or the jam's as finished_pot under [cook]")
	}
}

// strokes counts the strokes of a tally.
func strokes(s string) int { return len(strings.ReplaceAll(s, " ", "")) }
