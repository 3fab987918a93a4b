package notes

import "strings"

// What the verb beside a time does to the pot. In German it stands behind its time
// ("10 Minuten ziehen lassen"), but in the imperative and where it is the second
// word of the sentence; in French before it ("laisser reposer 10 minutes").

type deed int

const (
	unsaid deed = iota
	boils       // it cooks
	rests       // it stands, soaks, is strained, stirred or puréed; jars are turned over or boiled out
	cans        // filled jars are heated
)

// Verbs of German by their stems, with the prefixes and endings they take: infinitive,
// with "zu", participles, persons, the past, the imperative.
const (
	deEnd    = `(?:e?n|e?t|e?te[nt]?|e?st|e|end\p{L}*)?`
	deBefore = `(?:auf|ein|weiter|mit|durch|ver|nach|zer|herunter|runter|fertig|vor)?(?:zu|ge)?`
	deBoils  = deBefore + `(?:koch` + deEnd + `|köch(?:el|le)` + deEnd + `|sied` + deEnd + `|sott|simmer` + deEnd + `|sprudel` + deEnd + `|wallen|wallt|brodel` + deEnd + `|blubber` + deEnd + `|schmor` + deEnd + `|gar` + deEnd + `|reduzier` + deEnd + `|eindick` + deEnd + `)|(?:\p{L}+)?kochzeit|kochenlassen|garzeit|köchelzeit|(?:auf|an) (?:dem|den) herd|am herd`
	deRests  = `(?:durch|aus|an|ein|nach|mit|weiter)?(?:zu|ge)?(?:zieh` + deEnd + `|zog(?:en)?|ruh` + deEnd + `|rast` + deEnd + `|(?:ab|aus|er)kühl` + deEnd + `|quell` + deEnd + `|quoll\p{L}*|marinier` + deEnd + `|mazerier` + deEnd + `)|(?:auf|ein)(?:zu|ge)?weich` + deEnd + `|(?:ab)(?:zu|ge)?(?:tropf|lauf)` + deEnd + `|(?:stehen|gestanden|dastehen|steht|stehenlassen|ziehenlassen)|(?:ab|aus)(?:zu|ge)?kühl` + deEnd + `|erkalten?|erkaltet|(?:auf|über) (?:den|dem|die|das|ihren|ihre)? ?(?:kopf|deckel)|kopfüber|umgedreht|umdrehen|umzudrehen|dreh\p{L}* [^.;,]{0,20}um|wenden|gewendet|gestürzt|stürzen|(?:aus|ab)(?:zu|ge)?koch` + deEnd + `|(?:vor)?sterilisier` + deEnd + `|keimfrei|(?:zer|ver|ge)(?:ge)?mix` + deEnd + `|mixen|mixt|pürier` + deEnd + `|(?:ver|glatt|kalt)(?:zu|ge)?rühr` + deEnd + `|schlag` + deEnd + `|(?:an|ver)?(?:ge)?(?:schwitz|dünst|brat|röst)` + deEnd + `|röst` + deEnd + `|karamellisier` + deEnd + `|backen|gebacken|trockn` + deEnd + `|warte` + deEnd + `|abwart` + deEnd + `|blanchier` + deEnd + `|überbrüh` + deEnd + `|gebrüht|knete` + deEnd + `|(?:ge)?frier` + deEnd + `|kaltstell` + deEnd + `|vorheiz` + deEnd + `|erwärm` + deEnd + `|entsaft` + deEnd + `|gär` + deEnd + `|beschwer` + deEnd + `|gehackt|hacken|eingefroren|haltbar|mazeration|\p{L}*(?:ruhe|warte|zieh|marinier|einweich|kühl|abtropf|back|vorbereitungs|zubereitungs|arbeits|gesamt)zeit`
	deCans   = `(?:ein(?:zu|ge)?koch` + deEnd + `|ein(?:zu|ge)?weck` + deEnd + `|ein(?:zu|ge)?rex` + deEnd + `|pasteurisier` + deEnd + `)`

	frBoils = `cui(?:re|t|te|ts|tes|s|sez|sons|sent|sait|sant|sson)|(?:re)?cui(?:re|t|sson)|bouill\p{L}*|ébullition|frémi\p{L}*|mijot\p{L}*|réduire|rédui(?:t|sez|sons)|compot(?:er|ez|ée)|épaissir|épaissi\p{L}*|sur le feu`
	frRests = `macér(?:er|e|ez|ation|é|ée|és|ées)|repos(?:er|e|ez|é)?|refroid(?:ir|i|issez|isse|issement)|tiédir|infus(?:er|e|ez|ion|é|ée)|tremp(?:er|e|ez|age|é)|égoutt(?:er|e|ez|é)|dégor(?:ger|ge|gez)|retourn(?:er|e|ez|é|és|ons|ant)|à l'envers|tête en bas|séch(?:er|ez|é)|rest(?:er|e)|ébouillant(?:er|e|ez|é|és)|(?:au|du|le|un) four|réfrigér(?:er|ez|ateur)|frigo|congél\p{L}*|mix(?:er|e|ez|é)|fouett(?:er|ez)|blanch(?:ir|i|issez)|filtr(?:er|e|ez|é)|tamis(?:er|ez)|coul(?:er|ez)|presser|pressez|attend(?:re|ez)|patient(?:er|ez)|laisser (?:prendre|poser|en attente)|conserv(?:er|ez|ation)`
)

var (
	deVerb    = pattern(`(?i)(?:^|[^\p{L}])(?:(` + deRests + `)|(` + deBoils + `))(?:$|[^\p{L}])`)
	frVerb    = pattern(`(?i)(?:^|[^\p{L}])(?:(` + frRests + `)|(` + frBoils + `))(?:$|[^\p{L}])`)
	canVerb   = pattern(`(?i)(?:^|[^\p{L}])(?:` + deCans + `)(?:$|[^\p{L}])`)
	asNoun    = pattern(`(?i)\b(?:unter|beim?|mit|ohne|durch)(?: (?:ständig|stet|stetig|dauernd|gelegentlich|häufig\p{L}*|öfter|mehrmalig|kräftig|vorsichtig|gut|fleißig|viel|leicht|mehrfach)\p{L}*)* (?:um)?rühren\b|\b(?:gut|ständig|stets|oft|öfters?|dabei|immer(?: wieder| gut)?|dauernd|gelegentlich|ab und zu|zwischendurch) (?:um)?(?:zu)?rühren\b|\bkochend(?:e[mnrs]?|heiß\p{L}*)?\b|\b(?:in|im|mit) \p{L}+end(?:em|er|es) wasser\b|\beau (?:bien )?(?:bouillante|frémissante|très chaude)\b`)
	deNext    = pattern(`(?i)[,;:.(]|(?:^| )(?:(?:and )?then|and|und(?: dann| danach| anschließend)?|dann|danach|anschließend|bevor|bis|oder|sowie|damit|puis|et|avant de|pour) `)
	clauseCut = pattern(`(?i)[,;]| (?:und|dann|danach|anschließend) `) // where a German clause ends
	onlyPart  = pattern(`(?i)\b(?:letzten|dernières|last|final|every|alle|toutes les|total|insgesamt|en tout|jede[nr]?|chaque)\b`)
)

// ruled gives what the verb of a time does to the pot: c[from:to] is the time, no
// word of another time stands between last and next.
func ruled(c string, last, from, to, next int) deed {
	behind := asNoun.ReplaceAllString(c[to:next], " ")
	closed := strings.IndexAny(strings.TrimSpace(behind), ",;.") == 0 // Ruhen 10 min, kochen 5 min
	if said := asNoun.ReplaceAllString(c[last:from], " "); closed && (told1(deVerb, said, true) != unsaid || told1(frVerb, said, true) != unsaid) {
		behind = ""
	}
	if first := firstPart(behind); canVerb.MatchString(first) {
		return cans
	} else if d := told1(deVerb, first, false); d != unsaid {
		return d
	}
	before := asNoun.ReplaceAllString(c[last:from], " ")
	if at := strings.LastIndex(before, ". "); at >= 0 {
		before = before[at:]
	}
	if fr := told1(frVerb, before, true); fr != unsaid {
		if told1(frVerb, firstPart(behind), false) == boils { // mélanger, 5 min à gros bouillons
			return boils
		}
		return fr
	}
	if canVerb.MatchString(before) {
		return cans
	}
	if d := told1(deVerb, before, true); d != unsaid {
		return d
	}
	return told1(frVerb, behind, false)
}

// firstPart is the rest of a German clause up to the next one, words there or none.
func firstPart(s string) string {
	for _, at := range deNext.FindAllStringIndex(s, -1) {
		if strings.TrimSpace(s[:at[0]]) != "" || strings.TrimLeft(s[at[0]:at[1]], " ,;:.(") != "" {
			return s[:at[0]]
		}
	}
	return s
}

// told1 gives the first or the last verb of a text, by what it does.
func told1(verbs pattern, s string, last bool) deed {
	out := unsaid
	for s != "" {
		m := verbs.FindStringSubmatchIndex(s)
		if m == nil {
			break
		}
		out = boils
		if m[2] >= 0 {
			out = rests
		}
		if !last {
			break
		}
		s = s[max(m[3], m[5]):]
	}
	return out
}

// wordsBy gives the words of a clause beside one of several times.
func wordsBy(c string, last, from, to, next int) string {
	before := c[last:from]
	if cuts := deNext.FindAllStringIndex(before, -1); len(cuts) > 0 {
		before = before[cuts[len(cuts)-1][0]:]
	}
	return before + c[from:to] + firstPart(c[to:next])
}

// awake leaves out of a text the times in which nothing is boiled: what more of them
// stands there is no more of the boil.
func awake(s string) string {
	var b strings.Builder
	last := 0
	all := duration.FindAllStringIndex(s, -1)
	for i, m := range all {
		next := len(s)
		if i+1 < len(all) {
			next = all[i+1][0]
		}
		b.WriteString(s[last:m[0]])
		if ruled(s, last, m[0], m[1], next) != rests {
			b.WriteString(s[m[0]:m[1]])
		}
		last = m[1]
	}
	return b.String() + s[last:]
}

// boiledDown tells the two meanings of "einkochen" apart: filled jars are heated, and
// a mass is boiled down. Where nothing tells which it is, it stays as it is.
func boiledDown(s string) string {
	s = boilDown.ReplaceAllString(s, "kochen lassen")
	if !jarsHeated.MatchString(s) && ofMass.MatchString(s) {
		s = anyCanning.ReplaceAllString(s, "kochen")
	}
	return s
}

// bathsOf gives the words beside a time that may tell of canning: where something is
// boiled, "einkochen" is of another time.
func bathsOf(t spell) string {
	if t.deed == boils {
		return anyCanning.ReplaceAllString(t.near, "")
	}
	return t.near
}

var (
	anyCanning = pattern(`(?i)\bein(?:zu|ge)?koch(?:en|t|e)\b`)
	jarsHeated = pattern(`(?i)gläser|\b(?:glas|deckel|wasserbad|automat\w*|einkoch(?:topf|er|automat)\w*|kessel)\b|\b(?:[5-9]\d|100) ?(?:°|grad)`)
	ofMass     = pattern(`(?i)masse|mus\b|marmelade|konfitüre|chutney|sirup|zucker|saft|früchte|flüssigkeit|mischung|\b(?:hitze|flamme|rühren|dick\w*|hälfte|sämig|offen|langsam|eingedickt|essig|backofen|ofen|rohr|bräter|umrühren)\b`)
)

// deSugarIn is sugar that goes in, the verb behind it or parted around it: "den Zucker
// dazugeben", "geben Sie den Zucker dazu", "mit dem Gelierzucker verrühren".
const deSugarIn = `(?:[^.;]{0,80}\b)?\p{L}*zucker\b[^.;]{0,60}\b(?:zu|dazu|hinzu|bei|unter|ein|darüber|darunter|hinein|mit|auf|ver)?(?:ge|zu)?(?:geb|füg|misch|rühr|streu|schütt|meng|mix|lös|lass)(?:e?n|e?t|e)\b|(?:[^.;]{0,40}\b)?(?:geb|gib|füg|misch|vermisch|rühr|streu|schütt|meng|vermeng|verrühr)(?:en|t|e)? [^.;]{0,40}\p{L}*zucker\b`
