package notes

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
)

var (
	lotForm    = pattern(`(?i)^(?:lot|batch|charge|los)(?: ?(?:no|nr|n ?°|number|code|#))?\.? ?[:=#]? ?([A-Za-z0-9][A-Za-z0-9-]{0,39})$`)
	badLot     = pattern(`(?i)^(?:lot|batch|charge|los)(?: ?(?:no|nr|n ?°|number|code|#))?\.? ?[:=#]? ?[A-Za-z]*\d[A-Za-z0-9-]*[/.+][A-Za-z0-9/.+-]+$`)
	brixForm   = pattern(`(?i)\b(?:brix|bx)\b\.? ?[:=]? ?(?:was |is )?(\d{1,2}(?:[.,]\d{1,2})?)\b|\b(\d{1,2}(?:[.,]\d{1,2})?) ?°? ?(?:brix|bx)\b|\br(?:e|é)fr(?:a[ck](?:t(?:o(?:m(?:eter|(?:e|è)tre)?)?)?)?)?\b\.?[ :=]*(?:reads? |says |said |was |showed |zeigt )?(\d{2}(?:[.,]\d)?)\b|\b(\d{2}(?:[.,]\d)?) ?%? (?:on |by |with )?(?:the )?refra[ck]t`)
	brixTemp   = pattern(`(?i)\b(?:at|bei|à) (\d{1,2}(?:[.,]\d)?) ?°? ?(celsius|fahrenheit|c|f)\b`)
	phForm     = pattern(`(?i)\bph\b[- ]?(?:wert|value|meter|metre|strips?|paper|probe|streifen|papier)? ?(?:was|is|of|says|reads)? ?[:=]? ?(?:about |ca\.? |~ ?)?(\d{1,2}(?:[.,]\d{1,2})?)\b`)
	tempForm   = pattern(`(?i)(?:^|[^\d.,/])(\d{2,3}(?:[.,]\d{1,2})?) ?(°|deg\.?|degrees?|grad|degrés?)? ?(fahrenheit|celsius|f|c)?(?:$|[^\p{L}\d])`)
	tempWords  = pattern(`(?i)\b(?:jelled|test at|gelled|geliert|atteint|atteigne|monte|monter|montée|sp|goutte|figée?|nappe|perle|arrive|erreicht|set|setting|cooked to|boiled to|cook to|boil to|reached|reaches|jelly point|gelling point|gel point|(?:gel|gell|jell|jelly|set|setting|soft ball) stage|jelling point|jellying point|temp|temperature|thermometer|thermomètre|température|finished at|grad|degrés|degrees|up to|till|until|bis|jusqu'à|to \d{2,3})\b`)
	tempEnd    = pattern(`(?i)\b(?:at the end|in the end|end temp|end temperature|got to|went to|off at|off the heat at|am ende|zum schluss|endtemperatur|à la fin|en fin de cuisson)`) // with a unit
	tempNot    = pattern(`(?i)gläser|\b(?:sterili[sz]\w*|stérili\w*|einkoch\w*|eingekocht|einweck\w*|wasserbad|bain-marie|bocaux|couvercles|deckel|umluft|heißluft|rohr|chaleur tournante|th\.|thermostat|process|canner|oven|backofen|ofen|four|vorheizen|préchauff\w*|water bath|kettle of water|preheat|back of|room|fridge|altitude|jars?)\b`)
	potForm    = pattern(`(?i)^(?:the |der |die |la |le )?((?:bassine|casserole|marmite|chaudron|faitout)(?: (?:vide|pleine?|seule?|avec (?:la )?confiture))?|(?:bassine|casserole|marmite) (?:et|\+|&) (?:la )?confiture|(?:with|mit|avec) (?:the |der |la )?(?:jam|marmelade|konfitüre|gelee|confiture)|confiture(?: (?:pesée|finie|terminée))?|jam in (?:the |my )?(?:pan|pot)|(?:pan|pot|kettle) tare|écume|abschaum|kessel(?: leer| voll)?|voller topf|topf voll|topf leer|leerer topf|(?:topf|kessel) (?:mit|und|\+|&) (?:marmelade|konfitüre|gelee|inhalt)|topf|voll|leer|full|empty|marmelade|konfitüre|schaum|finished pot|full (?:pot|pan)|(?:pot|pan|kettle) ?(?:with|and|\+|&|w/|w) ?(?:the )?jam|tare|tara|leergewicht|topfgewicht|gewicht (?:des )?topf(?:es|s)?|poids (?:de la )?(?:bassine|casserole|marmite)|(?:pot|pan|kettle) weight|empty pan|pan empty|pan|kettle|pot and jam|pot|jam|finished jam|finished(?: weight)?|final weight|batch|empty pot|pot empty|skimmings|skimmed|skim|scum|foam)(?: (?:off|abgeschöpft|abgenommen|gewogen|wiegt|wog|pèse|pesait|weighed|weighs|weight|was|came to|is|empty|alone|full|foam))*[ :=,-]+(?:(?:about|abt\.?|approx\.?|ca\.?|roughly|nearly) )?(` + num + ` ?[a-z]+\.?(?: ` + num + ` ?[a-z]+\.?)?)(?: (?:of foam|foam|net|without the pot|in all))?\.?$`)
	altForm    = pattern(`(?i)^(?:altitude|elevation|height|we are at|höhe|altitude de)[ :=]+(?:about |ca\.? )?(\d{1,2},?\d{3}|\d{2,4}) ?(ft|feet|m|meters|metres)\b`)
	headForm   = pattern(`(?i)(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm)(?: of)? ?(?:head[ -]?(?:space|room)|hs\b)|(?:hs|head[ -]?(?:space|room))[ :=]+(?:of )?` + some + `(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm)|head[ -]?(?:space|room)[ :=]+(?:of )?` + some + `(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm)|(?:leav(?:e|ing) ` + some + `(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm)(?: of)? (?:space|at (?:the )?top)|(?:^|jars?,? )` + some + `(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm) (?:from|below|short of) (?:the )?(?:jar )?(?:tops?|rims?|brims?)|(?:within|to|till|until|up to) ` + some + `(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm) (?:of|off|from|below) (?:the )?(?:jar )?(?:tops?|rims?|brims?)|(?:à|bis) (?:ca\.? |etwa |environ )?(` + num + `) ?(po|pouce|mm|cm) (?:du (?:re)?(?:bord|haut|col|sommet)|unter (?:den|dem) (?:Glas)?rand)|laiss\p{L}+ (?:un espace (?:de tête |libre |vide )*)?(?:de |d'environ |d')?(?:environ )?(` + num + `) ?(?:de )?(pouces?|po|mm|cm)\b(?: sous| d'espace| libre| de vide| entre)|(` + num + `)[- ]?(inch(?:es)?|in\.?|"|mm|cm)(?: of)? (?:space|gap|air)(?: left)? (?:at|on) (?:the )?top|(` + num + `) ?(mm|cm|zoll) (?:rand|platz|luft|kopfraum)\b)`)
	setTests   = []struct{ say, test string }{{"wrinkle test", "cold plate"}, {"cold plate", "cold plate"}, {"cold saucer", "cold plate"}, {"on the saucer", "cold plate"}, {"on a saucer", "cold plate"}, {"auf dem teller", "cold plate"}, {"assiette froide", "cold plate"}, {"kalten teller", "cold plate"}, {"kalter teller", "cold plate"}, {"saucer test", "cold plate"}, {"freezer test", "cold plate"}, {"sheet test", "sheet"}, {"sheeting", "sheet"}, {"sheeted", "sheet"}, {"refractometer", "refractometer"}, {"refraktometer", "refractometer"}, {"réfractomètre", "refractometer"}, {"refractomètre", "refractometer"}}
	sterilised = pattern(`(?i)^(?:jars? )?(?:were |was )?(?:sterili[sz]ed|sterile)(?: jars?| the jars?)?\.?$`)
)

// some are words before a length that leave it as it is.
const some = `(?:an? |about |at least |approximately |approx\.? |around |roughly |exactly |ca\.? |generous )*`

// labelled reads measurements: lot, °Brix, pH, temperature, weights, headspace.
func (g *grammar) labelled(l *Line, s string) bool {
	if m := lotForm.FindStringSubmatch(s); m != nil && strings.ContainsAny(m[1], "0123456789") {
		l.key("lot", quoted(m[1]))
		return true
	}
	if badLot.MatchString(s) {
		l.ask("a lot has letters, figures and hyphens only, for it names files: which is it? Write lot")
		return true
	}
	if m := potForm.FindStringSubmatch(s); m != nil {
		return l.weighed(strings.ToLower(m[1]), m[0], m[2])
	}
	if m := altForm.FindStringSubmatch(s); m != nil {
		l.key("process.altitude", quoted(strings.ReplaceAll(m[1], ",", "")+" "+strings.ToLower(m[2])))
		return true
	}
	if len(s) > 120 {
		return false
	}
	if sterilised.MatchString(s) {
		l.key("process.sterilised", "true")
	}
	l.numbers(s)
	if !g.startsMeasured(s) { // 16 C is sixteen cups of something
		l.temperature(s)
		if k := l.find("cook.temperature"); k != nil && !k.Asked && advised.MatchString(s) {
			k.Asked = true
			l.ask("was it %s when it was done? Then take the # off", strings.Trim(k.Value, `"`))
		}
	}
	low := strings.ToLower(s)
	for _, t := range setTests {
		if strings.Contains(low, t.say) && len(s) < 60 {
			l.key("cook.set_test", quoted(t.test))
			break
		}
	}
	return len(l.Keys)+len(l.Asks) > 0 && !hasMinutes(spelledTimes(s))
}

// numbers reads °Brix and pH.
func (l *Line) numbers(s string) {
	if m := brixForm.FindStringSubmatch(s); m != nil {
		if v, ok := within(m[1]+m[2]+m[3]+m[4], 1, 99); ok && !oneBox.MatchString(m[0]) {
			l.key("cook.brix", v)
			l.severalReadings(s, m[0])
			if t := brixTemp.FindStringSubmatch(s); t != nil {
				l.key("cook.brix_temperature", quoted(t[1]+" °"+strings.ToUpper(t[2][:1])))
			} else if hotReading.MatchString(s) {
				l.Keys[len(l.Keys)-1].Asked = true
				l.ask("was the sample cooled? A hot one reads otherwise: cool it and read again, or write brix_temperature too, and take the # off")
			}
		}
	}
	if m := phForm.FindStringSubmatch(s); m != nil {
		if v, ok := within(m[1], 1, 13); ok {
			l.key("cook.ph", v)
			l.severalReadings(s, m[0])
		}
	}
}

// severalReadings asks where another reading follows: "Brix 64-65", "pH 3.9, then 3.4".
func (l *Line) severalReadings(s, first string) {
	_, more, _ := strings.Cut(s, first)
	if m := nextReading.FindStringSubmatch(more); m != nil {
		k := &l.Keys[len(l.Keys)-1]
		k.Asked = true
		l.ask("%s or %s? Take the # off, or write the one that counts", k.Value, m[1])
	}
}

var (
	nextReading = pattern(`(?i)^[%°]?(?: ?brix)?(?: ?(?:[-/,;]|->|→|to|or|and|then|later|now|retested|re-?read|again|second time|nachgemessen|erneut|remesurée?|at the end|bis|oder|und|dann|später|à|ou|et|puis))+ ?(?:was |is )?(\d{1,2}(?:[.,]\d{1,2})?)(?:$|[^\d.,°%\p{L} ]|[,.] | ?(?:brix|bx)| \p{L}{4,})`)
	oneBox      = pattern(`(?i)^\d(?:[.,]\d+)? ?bx$`) // 1 bx of pectin
)

// temperature reads the temperature of the set, as degrees with their unit; one
// without a unit is asked about.
func (l *Line) temperature(s string) {
	s = atHeight.ReplaceAllString(s, "")
	var m []string
	all := tempForm.FindAllStringSubmatch(tempRange.ReplaceAllString(s, "$1 - $2"), -1) // each with a sign before it
	for _, one := range all {
		if m == nil || m[2]+m[3] == "" {
			m = one // the first with its unit
		}
	}
	if len(all) == 1 && m[2]+m[3] == "" {
		l.bareDegrees(s, m[1])
		return
	}
	if len(m) == 0 || tempNot.MatchString(s) || m[2] == "" && m[3] == "" || strings.Count(s, "°")+len(tempForm.FindAllString(s, -1)) > 4 {
		return
	}
	alone := len(strings.Fields(strings.Replace(duration.ReplaceAllString(wordsAside.ReplaceAllString(s, ""), " "), m[0], " ", 1))) <= 2
	if !alone && !tempWords.MatchString(s) && !tempEnd.MatchString(s) {
		return
	}
	if r := tempRange.FindStringSubmatch(s); r != nil && r[2] == m[1] && m[3] != "" {
		l.ask("%s or %s °%s? Write temperature, under [cook]", r[1], r[2], strings.ToUpper(m[3][:1]))
		return
	}
	for _, one := range all {
		if one[3] != "" && strings.EqualFold(one[3], m[3]) && one[1] != m[1] {
			l.ask("%s or %s °%s? Write temperature, under [cook]", m[1], one[1], strings.ToUpper(m[3][:1]))
			return
		}
	}
	v, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	u := strings.ToUpper(m[3])
	if u == "" && celsius(m[2]) {
		u = "C"
	}
	switch {
	case err != nil:
	case u == "":
		l.ask("%s °C or °F? Write temperature with its unit, under [cook]", m[1])
	case setAt.MatchString(s) && hasMinutes(s) && !reached.MatchString(s): // a stove's or a canner's
		if u[:1] == "C" && v >= 103 && v <= 110 {
			l.Keys = append(l.Keys, Key{Path: "cook.temperature", Value: quoted(m[1] + " °C"), Asked: true})
			l.ask("was it %s °C when it was done? Then take the # off", m[1])
		}
	case u[:1] == "C" && v >= 90 && v <= 125, u[:1] == "F" && v >= 190 && v <= 260:
		l.key("cook.temperature", quoted(m[1]+" °"+u[:1]))
	default:
		l.ask("%s °%s is no temperature of a set: what was measured?", m[1], u[:1])
	}
}

// atHeight is where it was cooked: at 1000 ft.
var atHeight = pattern(`(?i),? (?:at|auf|à) \d{3,4} ?(?:ft|feet|m|meters|metres|meter|mètres)\b\.?`)

// setAt is a temperature something is set to; reached one that it comes to.
var (
	setAt   = pattern(`(?i)\b(?:auf|bei)(?: ca\.?| etwa)? \d{2,3} ?(?:°|grad)|(?:^| )à(?: environ)? \d{2,3} ?(?:°|degrés)`)
	reached = pattern(`(?i)\b(?:bis|erreich\p{L}*|erhitz\p{L}*|jusqu|attei\p{L}+|reach\p{L}*|monte\p{L}*)`)
)

// celsius reports the word for degrees of a language in whose countries all
// kitchens measure in Celsius.
func celsius(word string) bool {
	return strings.EqualFold(word, "grad") || strings.HasPrefix(strings.ToLower(word), "degré")
}

// wordsAside is a bracket without a figure.
var wordsAside = pattern(`\([^()\d]*\)`)

var tempRange = pattern(`\b(\d{2,3})-(\d{2,3})\b`)

// bareDegrees asks of a number that can only be the temperature of a set.
func (l *Line) bareDegrees(s, n string) {
	v, err := strconv.ParseFloat(strings.Replace(n, ",", ".", 1), 64)
	if err != nil || !tempWords.MatchString(s) || tempNot.MatchString(s) || len(strings.Fields(s)) > 6 || hasMinutes(s) {
		return
	}
	for _, u := range []struct {
		low, high float64
		name      string
	}{{100, 112, "°C"}, {212, 234, "°F"}} {
		if v >= u.low && v <= u.high {
			l.Keys = append(l.Keys, Key{Path: "cook.temperature", Value: quoted(n + " " + u.name), Asked: true})
			l.ask("%s %s? Then take the # off", n, u.name)
		}
	}
}

func within(s string, low, high float64) (string, bool) {
	s = strings.Replace(s, ",", ".", 1)
	v, err := strconv.ParseFloat(s, 64)
	return strconv.FormatFloat(v, 'f', -1, 64), err == nil && v >= low && v <= high
}

// weighed reads what the pot weighed.
func (l *Line) weighed(what, whole, weight string) bool {
	if _, err := unit.ParseMass(weight); err != nil {
		return false
	}
	low := strings.ToLower(whole)
	switch {
	case strings.Contains(low, "empty") || strings.Contains(low, "alone") || strings.Contains(what, "tare") || what == "tara" || vesselOnly.MatchString(what) || strings.Contains(low, "leer") || strings.Contains(low, "vide") || strings.Contains(low, "seule"):
		l.key("cook.pot_tare", quoted(weight))
		if vesselOnly.MatchString(what) {
			l.ask("the empty pot? With the jam in it, write it as finished_pot")
		}
	case strings.Contains(low, "skim") || strings.Contains(low, "scum") || strings.Contains(low, "foam") || strings.Contains(low, "schaum") || strings.Contains(low, "écume"):
		l.key("cook.skimmed", quoted(weight))
	default:
		l.key("cook.finished_pot", quoted(weight))
		if what == "pot" || what == "topf" || strings.Contains(what, "voll") || strings.Contains(what, "plein") || strings.Contains(what, "avec") || strings.Contains(what, "mit") || strings.Contains(what, "full") || strings.ContainsAny(what, "+&/") || strings.Contains(what, "and") || strings.Contains(what, " et ") || strings.Contains(what, "und") || strings.Contains(what, "with") {
			l.ask(withPot)
		}
	}
	return true
}

// vesselOnly are words of the pot's weight that do not say whether it was empty.
var vesselOnly = pattern(`(?i)topfgewicht|gewicht |poids |(?:pot|pan|kettle) weight$`)

var lengthAgain = pattern(`(?i) ?\((?:about |ca\. |or |approx\.? )?` + num + ` ?-?(?:cm|mm|in\.?|inch(?:es)?|po|")\)`)

// rangeTail is the first of two numbers before the second.
var rangeTail = pattern(`(?i)\d ?(?:-|to|or|bis|oder|à|ou) ?$`)

// headspace reads "1/4 inch headspace".
func (l *Line) headspace(s string) {
	s = lengthAgain.ReplaceAllString(s, "")
	m := headForm.FindStringSubmatch(s)
	if m == nil {
		return
	}
	if before, _, _ := strings.Cut(s, m[0]); rangeTail.MatchString(before) { // a 1/2-1 inch space
		l.ask("how much headspace was it? Write headspace, under [process]")
		return
	}
	n, u := "", ""
	for i := 1; i+1 < len(m); i += 2 { // one of the ways of saying it matched
		n, u = n+m[i], u+strings.ToLower(m[i+1])
	}
	if strings.HasPrefix(u, "in") || strings.HasPrefix(u, "po") || u == "zoll" || u == `"` {
		u = "in"
	}
	if _, err := unit.ParseLength(n + " " + u); err == nil {
		l.key("process.headspace", quoted(n+" "+u))
	}
}
