package notes

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

// How many jars of which size.
var (
	yieldLead  = pattern(`(?i)^(?:(?:approx\.?|approximate|average|total|final) )?(?:cette fois(?:-ci)?,? )?(?:(?:(?:this|one|the) )?recipe |the |das rezept |die (?:\p{L}+ )?(?:menge|mengen|zutaten) |dieses rezept )?(?:(?:we|i|it|this|that|je|ça|cela|on|ich|wir|das|es) )?(?:should |will |would )?(?:(?:m'|me |nous |vous |te )?(?:a |avait |ont ))?(?:yields?[ :-]+)?((?:you(?:'ll| will)? need )?for|pour (?:réaliser|obtenir|remplir|faire)|recette pour|recipe for|quantity|ingredients? for|zutaten(?:menge)? für|menge für|ingrédients? pour|ingrédients?|menge|ertrag|rendement|quantités?|nombre de (?:pots|bocaux)|servings?|serves|portions?|yields?|yielded|yl?d(?:ed|s)?|makes?|made|got|gave|filled|gives?|fills?|remplit|ergibt|ergeben|ergaben|ergab|gibt|gab|macht|reicht|bekam|bekommen|erhalten|reicht für|reichen für|rezept für|donne|donné|fais|fait|obtenu|obtient|obtenir|obtenez|rempli|pour|für|total|expect|sufficient for|enough for|enough to fill|to make|to fill)(?: (?:for|of|from) (?:this|the) (?:recipe|batch|lot|amount))?(?:[ :-]+|\b|$)(?:is |us |me )?(?:only |just |nur |seulement )?(?:about |approximately |approx\.? |ca\.? |around |roughly |etwa |environs? |env\.? |ungefähr |rund |at least |~ ?)?`)
	counted    = pattern(`(?i)^(?:got|gave|filled|made|yielded|yl?ded|ergaben|ergab|bekam|obtenu|donné|rempli)$`)
	countForm  = pattern(`(?i)^(` + num + `|\p{L}+)(?: ?(?:-|to|or|bis|à) ?(` + num + `))?(?: and a (half|bit)| plus a bit| et demi| und ein bisschen)?(?: ?[x-] ?| of | )?(.*)$`)
	onlyCounts = pattern(`^(?:pour|für|(?:.* )?for|recette pour|fait|ingr.*|zutaten.*|rezept.*|menge.*)$`)
	andMore    = pattern(`(?i) (?:and|\+|plus|und|et|&) (\d|(?:an?|one|two|three|eine?n?|zwei|drei|une?|deux|trois) (?:\p{L}+ )?(?:de |of |à |mit |zu )?(?:\d|one|two|four|six|eight|half))`)
	headCount  = pattern(`(?i)^(?:the )?(?:\(?\d|une? |eine?[nms]? |zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|deux|trois|quatre|cinq|sept|huit|dix|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)`)
	looseJar   = pattern(`(?i)^(?:(?:more|small|medium|large|big|little|full|jam|jelly|standard|regular|normal|ordinary|average|good|nice|average-sized?|medium-sized?|good-sized|preserving|mason|canning) )*(?:jars?|glasses|gläser|glas|pots?|bocaux|of them)?(?: mittlerer größe)?(?: and a bit| and a half| plus a bit)?\.?$`)
)

// yield reads how many jars there were, or a recipe says there will be.
func (g *grammar) yield(l *Line, s string) bool {
	s = bitForm.ReplaceAllString(strings.TrimSpace(s), " and a bit")
	m := yieldLead.FindStringSubmatch(s)
	if at := takenBack.FindStringIndex(s); m == nil || at != nil && at[0] == 0 {
		return false
	}
	var fills []Fill
	body := tailWords.ReplaceAllString(s[len(m[0]):], "")
	body = needTail.ReplaceAllString(body, "")
	lead := strings.ToLower(m[1])
	if lead == "fill" && !headCount.MatchString(body) {
		return false // "Fill hot jars": what is done, and no count
	}
	body = strings.Trim(body, " -:,")
	if f, ok := g.count(body); onlyCounts.MatchString(lead) && !(headCount.MatchString(body) && jarTalk.MatchString(body)) && (!ok || f.Jar == "") {
		return false // "pour over the water": French only before a count
	}
	if at := unsealedForm.FindStringIndex(body); at != nil {
		body = butTail.ReplaceAllString(body[:at[0]], "")
	}
	for _, part := range strings.Split(markAnd(body), ", ") {
		f, ok := g.count(part)
		if !ok {
			if len(fills) > 0 && strings.ContainsAny(part, "0123456789") && !sealForm.MatchString(part) {
				l.ask("and %q: how many jars of which size is that?", part)
			}
			if _, err := unit.ParseMass(ofJam.ReplaceAllString(strings.TrimRight(part, " ."), "")); err == nil {
				l.ask("the jam weighed? Then write finished_pot, under [cook]; else how many jars of which size it filled")
			} else if len(fills) == 0 && strings.ContainsAny(s, "0123456789") {
				l.ask("how many jars of which size is that? Write jar and count under [[fill]]")
			}
			break
		}
		f.Planned = !counted.MatchString(m[1])
		fills = append(fills, f)
	}
	if len(fills) == 0 {
		return len(l.Asks) > 0
	}
	if (strings.HasPrefix(lead, "serv") || strings.HasPrefix(lead, "portion")) && fills[0].Jar == "" {
		return false
	}
	g.fills(l, s, fills)
	for _, b := range brackets.FindAllString(body, -1) {
		if inner := eachOne.ReplaceAllString(strings.Trim(b, "()"), ""); strings.ContainsAny(b, "0123456789") && otherCount.MatchString(inner) {
			l.ask("what is %s? Write count under [[fill]], how many there were", b)
		}
	}
	return true
}

// otherCount is what a bracket says of jars that were got in the end.
var otherCount = pattern(`(?i)\b(?:obtenu|donné|donnait|rempli|hat|ergab|j'ai|j'en|bekam|bekommen|hatte|waren|wurden|got|had|made|filled|bei mir|chez moi|actually|tatsächlich)\b`)

// tailWords are a remark behind a count: "24 jars - that is enough".
var tailWords = pattern(` - [^\d]*$`)

// ofJam is what a weight is of, where the jam was weighed.
var ofJam = pattern(`(?i) (?:of )?(?:\p{L}+ )?(?:it|jams?|jelly|marmalade|chutney|preserves?|conserve|butter|curd|cheese|konfitüre|marmelade|gelee|confiture)$`)

// markAnd keeps the figure after "and" when a count is cut there.
func markAnd(s string) string {
	return andMore.ReplaceAllString(s, ", $1")
}

// fills writes the counts, and asks for what they leave open.
func (g *grammar) fills(l *Line, s string, fills []Fill) {
	low := strings.ToLower(s)
	for i, f := range fills {
		if n, ok := shut(s, f.Low); ok && !f.Planned && len(fills) == 1 {
			fills[i].Sealed = n
		}
		switch {
		case f.Said != "":
			l.ask("%s", askSaid(f.Said))
		case f.Jar == "":
			l.ask(whichJars)
		case f.High > f.Low && !f.Planned:
			l.ask("how many were there? Take the # off one")
		}
	}
	if m := leftOver.FindString(s); m != "" && !fills[0].Planned {
		l.ask(`what is %q in? The jar that is not full: write part_jar = "100 g"`, strings.TrimSpace(m))
	}
	if strings.Contains(low, "and a bit") || strings.Contains(low, "and a half") || strings.Contains(low, "plus a bit") || fills[0].Low != float64(int(fills[0].Low)) {
		l.ask(`the jar that is not full: write part_jar = "100 g", what is in it`)
	}
	l.Fills = append(l.Fills, fills...)
}

// leftOver is an amount over the full jars.
var leftOver = pattern(`(?i)` + num + ` ?(?:cups?|c|tbsp|tablespoons?|oz|ounces?|g|ml|EL) (?:was |were )?(?:left|over|extra|spare|remaining|übrig|de reste)\b.*`)

// askSaid asks which jar is meant by a size no jar of the table has.
func askSaid(size string) string {
	if _, err := unit.ParseMass(size); err == nil {
		return "which jar is it that " + size + " went into? Write jar, and declared where the label is to say " + size
	}
	return size + " is no jar of the table: write the one it was as jar, or measure yours as [[jar]] in kitchen.toml"
}

// bitForm is what was left over the full jars.
var bitForm = pattern(`(?i)(?: ?\+ ?| & | and | plus | und | u\. | et |, )(?:a (?:bit|half|little)|half a jar|half|a part(?:ial)? jar|part(?:ial)? (?:jar|full)|bit|1/2 (?:a )?jar|(?:ein )?rest|etwas|un peu|un reste|(?:1|one|a|ein(?:en)?|un|some) (?:\p{L}+ )?(?:small(?: one)?|kleines|tiny(?: one)?|tast(?:er|e)|tester|bowl(?:ful)?|dish|ramekin|saucer|sample|cup|mug|spoonful|drop|over|left|schälchen|schüssel|probe|bol|fond|dégustation))\b[^\d]*$`)

// count reads "8 half-pints", "5 or 6 half-pint jars", "6 x 350 ml".
func (g *grammar) count(s string) (f Fill, ok bool) {
	s = jarHolds.ReplaceAllString(jarKind.ReplaceAllString(s, ""), "$2 à $1")
	s = holdsJar.ReplaceAllString(s, " à ")
	s = namedGlass.ReplaceAllString(glasses.ReplaceAllString(s, "$1 Gläser "), "Gläser")
	if m := sameCount.FindStringSubmatch(s); m != nil && m[1] == m[3] { // 3 Gläser (3 x 250 ml)
		s = m[1] + " x " + m[4]
	}
	s = setApart.ReplaceAllString(bareAbout.ReplaceAllString(s, ""), "$1 half-pint")
	s = bracketed.ReplaceAllString(s, "$1 ")
	s = brackets.ReplaceAllStringFunc(strings.TrimSpace(s), func(b string) string {
		inner := strings.TrimSpace(eachOne.ReplaceAllString(strings.Trim(b, "()"), ""))
		switch {
		case strings.HasPrefix(inner, "1/2"):
			return b
		case sizeOf(inner) == "":
			return ""
		}
		return inner
	})
	s = orSo.ReplaceAllString(s, "")
	s, _ = spelled(strings.Join(strings.Fields(strings.Trim(atSign.ReplaceAllString(s, " of "), " .:")), " "))
	if m := halfPint.FindStringSubmatch(s); m != nil {
		s = m[1] + " half-pint"
	}
	m := countForm.FindStringSubmatch(s)
	if m == nil || orPints.MatchString(s) || orCount.MatchString(m[4]) {
		return f, false
	}
	f.Sealed = -1
	if f.Low, ok = number(m[1]); !ok || f.Low <= 0 || f.Low > 1000 {
		return f, false
	}
	f.High = f.Low
	if m[2] != "" {
		if v, ok := number(m[2]); ok && v >= f.Low && v <= 1000 {
			f.High = v
		}
	}
	rest := strings.TrimSpace(m[4])
	if p := poundJar.FindStringSubmatch(rest); p != nil { // nine one-pound pots
		rest = inFigures(p[1]) + " lb" + rest[len(p[0]):]
	}
	if sealForm.MatchString(rest) {
		rest = strings.TrimRight(rest[:sealForm.FindStringIndex(rest)[0]], " ,")
	}
	if of := jarsOf.FindStringSubmatch(rest); of != nil {
		rest = of[1]
	}
	if f.Jar = sizeOf(rest); f.Jar != "" {
		if _, known := g.p.Jar(f.Jar); !known {
			f.Jar, f.Said = "", f.Jar
		}
		return f, true
	}
	if of := heldForm.FindStringSubmatch(strings.TrimSuffix(rest, " and a bit")); of != nil {
		u := strings.ToLower(strings.TrimSuffix(of[2], "."))
		if also, short := alsoUnit(u); short { // 350 gr
			u = also
		}
		f.Said = strings.Replace(of[1], ",", ".", 1) + " " + u
		return f, valid(f.Said)
	}
	return f, looseJar.MatchString(rest)
}

var poundJar = pattern(`(?i)^(one|two|half|1|2|1/2)[- ](?:pounds?|lb|pfund)\b`)

var eachOne = pattern(`(?i)^(?:of|à|je|zu(?: je)?|de|each) `)

// heldForm is the weight in a jar; a jar has no name by it.
var (
	heldForm = pattern(`(?i)^(?:(?:of|de|à|zu|mit) )?(` + num + `) ?(g|gr|gms?|grams?|grammes?|gramm|kg|lbs?)\b\.?(?: each| net| netto| jars?| gläser| pots?| bocaux| inhalt| füllmenge| chacun| env\.?| environ| ca\.?)*\)?$`)
	orSo     = pattern(`(?i),? (?:à peu près|environ|env\.?|chacun|etwa|inhalt|füllmenge|or so|ca\.?|approx\.?|approximately)$`)
	atSign   = pattern(` ?@ ?`)
	needTail = pattern(`(?i),? (?:brauch\p{L}*|benötig\p{L}*|nehm\p{L}*|il (?:vous |te |nous |me )?fau\p{L}+|you(?:'ll| will)? need)(?: (?:ihr|man|du|wir|ich|sie))? ?:?$`)
)

var (
	jarKind    = pattern(`(?i)(?:^|\b)(?:(?:klein|groß|gross|mittelgroß|mittelgross|steril|sterilisiert|sauber|ausgespült|ausgekocht|leer|heiß ausgespült|normal|schön|üblich|vorbereitet|hübsch)(?:e[nrsm]?) |mittlere[ns]? |(?:petits?|grands?|beaux|bons|moyens|jolis|gros) )`)
	jarHolds   = pattern(`(?i)((?:ca\.? |je |à )*\d[\d.,]* ?(?:ml|cl|dl|l|g))[- ]?(\p{L}*gläse?r?n?)\b`) // 5 200-ml-Gläser
	holdsJar   = pattern(`(?i),? ?\(?(?:mit|von|zu|à|a|de|d'|mit je|zu je)(?: (?:je|jeweils|einem|einer|d'une|un))?(?: (?:glasvolumen|fassungsvermögen|inhalt|füllmenge|volumen|füllvolumen|füllinhalt|fassung|größe|contenance|capacité))(?: (?:von|de|d'))?(?: (?:je|jeweils|ca\.?|circa|etwa|environ))* ?`)
	namedGlass = pattern(`(?i)\b(?:kleinen? |große[ns]? |mittlere[ns]? )?(?:[\p{L}-]*gläse?r?(?:chen|n)?|gläser|gläschen|[\p{L}-]+glas)\b`)
	sameCount  = pattern(`(?i)^(\d{1,3}) (\p{L}+) \((\d{1,3}) ?x ?([^()]+)\)`)
	glasses    = pattern(`(?i)(\d)(?: ?x)? ?gl\.?(?: |$)`) // 8 Gl. à 200 ml
	halfPint   = pattern(`(?i)^(\d{1,3})(?: ?--? ?| ?\( ?)1/2\)?[- ]p(?:in)?ts?\b.*$`)
	setApart   = pattern(`(?i)^ ?\((\d{1,3})\) ?1/2[- ]p(?:in)?ts?\b`) // (5) 1/2 pint jars
	bareAbout  = pattern(`(?i)^(?:about|approximately|approx\.?|around|etwa|ca\.?|environ) `)
	jarsOf     = pattern(`(?i)^(?:(?:full|hot|warm|clean|sterili[sz]ed) )*(?:jars?|glasses|gläser|pots?|bocaux)(?: (?:à|de) confitures?| en verre| à vis| \p{L}{3,20})?(?: of| à| a| zu| je| jeweils| von| ca\.?| etwa| circa| environ| d'environ| de| avec| mit| with|,)* (\d.*)$`)
	orPints    = pattern(`(?i)^\d{1,3} 1/2[- ]pints?\b`) // four and a half pints, or four half-pints
	bracketed  = pattern(`^ ?\((\d{1,3})\) `)
	orCount    = pattern(`(?i)\b(?:or|oder|ou) (?:about |de |ca\. |à |zu )?\d`) // 6 pints or 12 half-pints
	jarSize    = pattern(`(?i)^(?:x ?)?(\d{1,4}(?:[.,]\d{1,2})?|one|four|six|eight|twelve|sixteen|half|1/[248]|3/[48])?[- ]?(pints?|pts?\.?|lit(?:er|re)s?|l\b|ounces?|oz\.?|fl\.? ?oz\.?|ml|milliliters?|millilitres?|cl|dl)[- ]?(?:each |size )?(?:canning |jelly |mason |preserving |hot )?(?:jars?|glasses|gläser|pots?|bocaux|containers?)?\b\.?(?: each)?.{0,40}$`)
)

// halfPints are short words for half a pint.
var halfPints = pattern(`(?i)\b(?:hps?\b|half[- ]?pts?\b|1/2[- ]?pts?\b|½[- ]?pts?\b)\.?`)

// sizeLead are the words before a size.
var sizeLead = pattern(`^(?:of|de|à|zu|mit) `)

// sizeOf names a size of jar as the batch file does. A jar is called by its
// fluid ounces, so "8-ounce jars" are half-pints.
func sizeOf(s string) string {
	s = halfPints.ReplaceAllString(s, "half pint")
	m := jarSize.FindStringSubmatch(strings.TrimSpace(sizeLead.ReplaceAllString(strings.ToLower(s), "")))
	if m == nil {
		return ""
	}
	n := m[1]
	if strings.HasPrefix(m[2], "l") { // half a litre
		v, ok := number(strings.Replace(strings.Replace(n, "half", "1/2", 1), "one", "1", 1))
		if n == "" || !ok {
			return ""
		}
		return strconv.FormatFloat(1000*v, 'f', -1, 64) + " ml"
	}
	for i, w := range []string{"one", "four", "six", "eight", "twelve", "sixteen"} {
		if n == w {
			n = []string{"1", "4", "6", "8", "12", "16"}[i]
		}
	}
	u := m[2]
	if strings.HasPrefix(u, "pt") {
		u = "pint"
	}
	switch {
	case strings.HasPrefix(u, "pint") && (n == "half" || n == "1/2"):
		return "8 fl oz"
	case strings.HasPrefix(u, "pint") && (n == "" || n == "1"):
		return "16 fl oz"
	case strings.HasPrefix(u, "pint") || n == "" || n == "half" || n == "1/2":
		return ""
	case strings.HasPrefix(u, "m"):
		return n + " ml"
	case u == "cl", u == "dl":
		v, _ := strconv.ParseFloat(strings.Replace(n, ",", ".", 1), 64)
		return fmt.Sprintf("%.0f ml", v*map[string]float64{"cl": 10, "dl": 100}[u])
	}
	return n + " fl oz"
}
