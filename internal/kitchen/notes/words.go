package notes

import (
	"strconv"
	"strings"
	"sync"
)

// The words of the grammar. They are the kitchen's, no food among them: what is
// a food lies in the table of ingredients.

const (
	num      = `(?:\d{1,6} ?\d{1,2}/\d{1,3}|\d{1,6} ?- ?\d{1,2}/\d{1,3}|\d{1,3}/\d{1,3}|\d{1,7}(?:[.,]\d{1,3})?|\.\d{1,3})`
	sizeUnit = `(?:fl\.? ?oz\.?|fluid ounces?|ounces?|ozs?\.?|grams?|g|kg|ml|milliliters?|millilitres?|cl|liters?|litres?|l|lbs?\.?|pounds?)`
	twiceOne = num + ` ?(?:` + sizeUnit + `|cups?|pints?|pts?|quarts?|qts?|tbsp|tsp)\b`
	holder   = `(?:pouch(?:es)?|packages?|packets?|pkts?\.?|pcks?\.?|pkgs?\.?|pks?\.?|packs?|box(?:es)?|cans?|tins?|jars?|bottles?|bags?|envelopes?|sachets?|cartons?|containers?|tubs?)`
)

// spoken numbers; longer ones first. "a" is one only before a measure.
var numberWords = []struct{ say, number string }{
	{"einer halben", "1/2"}, {"einem halben", "1/2"}, {"eines halben", "1/2"}, {"half of a", "1/2"}, {"half a dozen", "6"}, {"a dozen", "12"}, {"one and a half", "1 1/2"}, {"two and a half", "2 1/2"}, {"a couple of", ""}, {"a few", ""}, {"few", ""}, {"several", ""}, {"mehrere", ""}, {"plusieurs", ""},
	{"half a", "1/2"}, {"half an", "1/2"}, {"a half", "1/2"}, {"a quarter of a", "1/4"}, {"a quarter", "1/4"}, {"half", "1/2"},
	{"one", "1"}, {"two", "2"}, {"three", "3"}, {"four", "4"}, {"five", "5"}, {"six", "6"}, {"seven", "7"}, {"eight", "8"}, {"nine", "9"}, {"ten", "10"},
	{"eleven", "11"}, {"twelve", "12"}, {"an", "1"}, {"a", "1"},
	{"eine halbe", "1/2"}, {"einen", "1"}, {"einem", "1"}, {"einer", "1"}, {"eine", "1"}, {"ein", "1"}, {"zwei", "2"}, {"drei", "3"}, {"vier", "4"}, {"fünf", "5"}, {"sechs", "6"}, {"sieben", "7"}, {"acht", "8"}, {"neun", "9"}, {"zehn", "10"}, {"zwölf", "12"},
	{"une demi", "1/2"}, {"un demi", "1/2"}, {"une", "1"}, {"un", "1"}, {"deux", "2"}, {"trois", "3"}, {"quatre", "4"}, {"cinq", "5"}, {"sept", "7"}, {"huit", "8"}, {"neuf", "9"}, {"dix", "10"}, {"onze", "11"}, {"douze", "12"},
}

// unitAlso are short forms of printed recipes the amounts do not know; a
// capital T is the spoon of the table (common practice, no source).
var unitAlso = map[string]string{"T": "tbsp", "tb": "tbsp", "tbl": "tbsp", "tbls": "tbsp", "tbsps": "tbsp", "tblsp": "tbsp", "tblspn": "tbsp", "tbspn": "tbsp",
	"t": "tsp", "ts": "tsp", "tsps": "tsp", "tspn": "tsp", "tspns": "tsp", "tblspns": "tbsp", "tbspns": "tbsp", "teasp": "tsp", "#": "lb", "gr": "g", "grs": "g", "gm": "g", "gms": "g", "gramm": "g", "kilo": "kg", "k": "kg", "kgr": "kg", "pfd": "Pfund", "pf": "Pfund", "grm": "g", "grms": "g", "esl": "EL", "teel": "TL", "essl": "EL", "kilos": "kg", "kilogramm": "kg", "kgs": "kg",
	"C": "cup", "ozs": "oz", "lt": "l", "lts": "l", "ltr": "l", "ltrs": "l", "liter": "l", "mls": "ml"}

// alsoUnit gives the unit of a short form, without its full stop; of one letter
// the case counts.
func alsoUnit(word string) (u string, ok bool) {
	word = strings.TrimRight(word, ",.")
	if len(word) > 1 {
		word = strings.ToLower(word)
	}
	u, ok = unitAlso[word]
	return u, ok
}

// pieces are words after a number that count, beside sizes.
var pieces = set(`bx pkt pkts pck package packages packet packets pkg pkgs pk pack packs box boxes pouch pouches envelope envelopes sachet sachets can cans tin tins jar jars bottle bottles bag bags
	carton cartons stick sticks clove cloves pinch pinches dash dashes drop drops sprig sprigs bunch bunches handful handfuls head heads bulb bulbs slice slices stalk stalks rib ribs ear ears leaf leaves
	pod pods piece pieces knob knobs thumb splash splashes drizzle glug shot shots glass glasses basket baskets punnet punnets flat flats bucket buckets bushel bushels peck pecks crate crates
	p pk msp messerspitze messerspitzen tropfen blatt blätter knolle knollen stängel stengel brin brins pckg tasse tasses tassen morceau morceaux tronçon tronçons bout bouts zweig zweige prise prisen bund päckchen packung beutel flasche flaschen dose dosen zehe zehen schuss gousse gousses pincée pincées paquet bouteille boîte stange stangen umbels umbel`)

var sizes = set(`med lg lge lrg sm sml large medium small big medium-size medium-sized large-size jumbo extra-large whole große grosse mittelgroße kleine grosses gros petits petit moyens moyennes`)

var sameHolder = map[string]string{"bx": "box", "pkg": "package", "pkt": "packet", "pkts": "packets", "pck": "packet", "pkgs": "packages", "pk": "package", "pks": "packages", "pack": "package", "container": "jar", "containers": "jars", "p": "packung", "stängel": "sprigs", "stengel": "sprigs", "zweig": "sprig", "zweige": "sprigs", "brin": "sprig", "brins": "sprigs", "morceau": "piece", "morceaux": "pieces", "tronçon": "piece", "tronçons": "pieces", "bout": "piece", "bouts": "pieces", "med": "medium", "lg": "large", "lge": "large", "lrg": "large", "sm": "small", "sml": "small"}

// forms say how a food was cut or bought; they go to form.
var forms = set(`crushed chopped sliced diced mashed grated minced shredded pureed puréed halved quartered pitted stoned peeled cored hulled stemmed trimmed washed seeded deseeded seedless
	patted-dry edible unsprayed non-sprayed sieved squeezed zested strained packed drained sifted cubed pared unpeeled unpared skinned rinsed scrubbed wiped shelled blanched pricked bruised torn julienned slivered mashed prepared firmly lightly loosely split scraped finely coarsely roughly thinly fine coarse thin fresh freshly frozen thawed ripe fully
	or long organic regular warmed cut cleaned destemmed broken firm firm-ripe hard-ripe underripe under-ripe slightly topped tailed cooked and chilled cold softened melted beaten snipped crumbled rehydrated
		cracked milled tk t&t netto tiefkühl gefroren
		strong weak soft tender large small medium big plump juicy good quality very too not overripe over-ripe barely just well nice nicely home-grown homegrown garden sun-ripened undrained unsweetened skin-on
		finement grossièrement tamisé tamisée bon bonne bons bonnes moulu moulue moulus moulues séché séchée séchés séchées entier entière ciselé ciselée effeuillé effeuillée fraichement fraîchement fraiche fraiches petites petits petite petit grosses gros grosse moyennes moyens belle belles beau beaux très pas trop trié triés triées épluché épluchés épluchée épluchées égrenés égrenées concassé concassés concassées émincé émincés émincée émincées fondu tiède froide froid chaude filtré écrasé écrasée mixé mixés mixées cuit cuits cuites maison biologique biologiques
		sharp whole bien bio unwaxed non traité traités traitées paré parés parée parées pesé pesés pesée pesées surgelé surgelés surgelée surgelées épépiné épépinés épépinées râpé râpée râpés râpées coupé coupés crisp équeutées équeutés écrasées écrasés netto brutto gewogen fendue fendues égrappées égrappés ausgekratzt grattée grattées égoutté égouttés lavées lavés coupées coupés entières entiers grossièrement et granulé granulée dénoyauté dénoyautés dénoyautées haché hachés pelé pelés pelées frais fraîche fraîches mûr mûrs mûres mûre`)

// german forms, without their ending.
var german = set(`gut gehackt gewürfelt entsteint entkernt geschält püriert frisch reif gerieben abgerieben geputzt zerdrückt geraspelt geviertelt halbiert
	gepresst abgetropft passiert grob fein nicht zu sehr möglichst trocken weich hart fest groß klein mittelgroß dünn dick reichlich schön saftig vollreif überreif vorbereitet zerkleinert zerstoßen entstielt verlesen gezupft abgezupft gepellt gesäubert gewogen aufgetaut gekocht gekühlt kalt warm heiß lauwarm kochend ungespritzt unbehandelt ungeschält ungesüßt naturrein naturtrüb filtriert gesiebt frischgepresst gemörsert
	ernten putzen waschen schneiden schälen entsteinen entkernen halbieren vierteln pürieren reiben hacken würfeln verlesen abtropfen
	entst entk gesch gem getr gek unbeh dénoy abgespült abgebraust gebürstet ausgekratzt ausgepresst ausgedrückt abgerebelt gerebelt entrappt gestiftelt gehobelt gerissen angedrückt gequetscht gestoßen geröstet getrocknet geschnitten aufgeschnitten kleingeschnitten süß säuerlich aromatisch kernlos unreif halbreif ausgereift handgepflückt selbstgepflückt heimisch regional längs ungewachst abgetropft gestampft gekühlt passiert vorgekocht netto brutto
	gewaschen tiefgefroren tiefgekühlt unbehandelt gemahlen gestrichen`)

// french forms without their ending: rincé, rincée, rincés, rincées.
var french = set(`rinc lav press bross essuy équeut etêt étêt tranch taill zest congel décongel évid vid cueilli ramass épluch pel dénoyaut épépin égrapp égren coup hach râp rap émin
	mix écras concass tami filtr égoutt sucr frott séch fendu grill tor caramélis chauff tempér effeuill cisel broy moul pil réduit nettoy prépar par pes tri surgel gratt`)

var frenchDone = pattern(`^(\p{L}+?)ée?s?$`)

// isForm reports that a word says how a food was cut or bought: "finely-chopped",
// and German with its ending.
func isForm(w string) bool {
	if forms[w] || german[w] || plainForms()[w] {
		return true
	}
	if a, b, ok := strings.Cut(w, "-"); ok {
		return isForm(a) && isForm(b)
	}
	if m := frenchDone.FindStringSubmatch(w); m != nil && french[m[1]] {
		return true
	}
	for _, end := range []string{"er", "en", "es", "em", "e"} {
		if bare, ok := strings.CutSuffix(w, end); ok && german[bare] {
			return true
		}
	}
	return false
}

var unaccented = strings.NewReplacer("é", "e", "è", "e", "ê", "e", "â", "a", "à", "a", "î", "i", "ç", "c", "û", "u")

// plainForms are the forms without their accents, as one types them in haste.
var plainForms = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for w := range forms {
		if bare := unaccented.Replace(w); bare != w && len(bare) > 3 {
			m[bare] = true
		}
	}
	return m
})

func set(s string) map[string]bool {
	m := map[string]bool{}
	for _, w := range strings.Fields(s) {
		m[w] = true
	}
	return m
}

var (
	bullet  = pattern(`^(?:(?:[-–—_*•·▪◦●○‣□☐✓]+|\[ ?[xX]?\]) *)+`)
	step    = pattern(`(?i)^(?:step *)?\d{1,2} ?[.):] *([^\d\s].*)$`)
	heading = pattern(`(?i)^(?:ingredients?|directions?|procedures?|method|instructions?|preparation|notes?|recipe|steps?|equipment|you will need|for the (?:\w+ )?\w+|zutaten|zubereitung|ingrédients?|préparation)\b[^\d]{0,20}:?$`)
	vulgar  = strings.NewReplacer("1/2 an inch", "1/2 inch", "1/4 of an inch", "1/4 inch", "half an inch", "1/2 inch", "half inch", "1/2 inch", "demi-", "demi ", "H2O", "water", "h2o", "water", "½", " 1/2", "⅓", " 1/3", "⅔", " 2/3", "¼", " 1/4", "¾", " 3/4", "⅕", " 1/5", "⅖", " 2/5", "⅗", " 3/5", "⅘", " 4/5", "⅙", " 1/6", "⅚", " 5/6",
		"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "⁄", "/", "∕", "/", "−", "-", "‐", "-", "‑", "-", "–", "-", "—", "-", "\u00A0", " ", "\u2009", " ", "\u202F", " ", "’", "'", "“", `"`, "”", `"`, "º", "°", "˚", "°", "×", "x", "®", "", "™", "", "{", "(", "}", ")", "[", "(", "]", ")")
	ordinal      = pattern(`(?i)(\d/\d)(?:th|rd|nd)s?\b`)
	spoonWords   = pattern(`(?i)\b(dessert|table|tea)[ -]?spoon(?:s|sful|fuls?)?\b`)
	cupfuls      = pattern(`(?i)\b(cup|pint|quart|jar)s?fuls?\b`)
	betweenTwo   = pattern(`(?i)\b(?:between|zwischen|entre) (` + num + `) ?(?:and|und|et|&) ?(` + num + `)`)
	frenchSpoon  = pattern(`(?i)(\d|\bune|\bdeux|\btrois|\bdemi) ?(?:cs|cas|càs|c\.à\.s\.?|c\.s\.|c à s)(?:$| )(?:rases? |bombées? )?`)
	frenchTea    = pattern(`(?i)(\d|\bune|\bdeux|\btrois|\bdemi) ?(?:cac|càc|cc|c\.à\.c\.?|c\.c\.|c à c)(?:$| )(?:rases? |bombées? )?`)
	squeezedFr   = pattern(`(?i)^(\d{1,2}|` + num + `) ((?:citron|orange|pamplemousse|lime|clémentine|mandarine)s?)( verts?)?,? pressée?s?$`)
	squeezedDe   = pattern(`(?i)^(\d{1,2}|` + num + `) (?:(?:aus)?gepresste[nr]? )((?:zitrone|limette|orange|blutorange|mandarine)n?)()$`)
	squeezedEn   = pattern(`(?i)^(\d{1,2}|` + num + `) (?:large |medium |small )?(?:fresh(?:ly)? )?(?:squeezed|juiced) (lemon|lime|orange|grapefruit)(s?)$`)
	partBehind   = pattern(`(?i)^(?:le |la |die |der |den )?((?:fein )?(?:ab)?(?:geriebene )?(?:zestes?|jus|schale|saft|abrieb)) (d'une?|de \d|einer|von \d|von einer) (\p{L}+)(?:,| \+|,? (?:et|und|plus|sowie))* (?:le |son |leur |deren |dessen |ihr |ihre |der |die |den )?(jus|zestes?|saft|schale|abrieb)$`)
	pluralIn     = pattern(`(\p{L}{3})\((n|en|e|er|s|nen)\)($|[ ,])`) // Orange(n)
	oneJuice     = pattern(`(?i)^(?:un|1) (?:(?:bon|beau|petit) )?(jus) (?:de |d')(citron|orange|pamplemousse|pomelo|mandarine|clémentine|lime)(?:s?)( vert| non traité| bio|,? (?:pressé|frais)|)$`)
	quarterOf    = pattern(`(?i)^(?:a )?quarter (lbs?|pounds?|pints?|pts?|cups?|kilo|kg|litre|liter|oz|ounce)\b`)
	fractionDe   = pattern(`(?i)(\d/\d) de (litre|tasse|kg|kilo|livre|cuill\p{L}+|c\.)`)
	cuilleree    = pattern(`(?i)\b(?:cuill?|cuill?er|cuill?ère|cuill?ere|cuill?er(?:é|e)e)(s?)\b\.? ?(à|a) (soupe|café|cafe|thé|table|dessert)`)
	sizesTo      = pattern(`(?i)\b(?:small|medium|large)(?: to |-to-| or | ?[-/] ?)(?:small|medium|large)\b`)
	sizedWord    = pattern(`(?i)\b(large|medium|small)[ -]sized?\b`)
	halfMore     = pattern(`(?i)\b(une?|deux|trois|quatre|cinq|six|\d{1,2}) (kilos?|kg|litres?|l|livres?|heures?) et demie?\b`)
	andHalf      = pattern(`(?i)\b(?:(?:an|one|1) hour and a half|(?:one|1) and a half hours)\b`)
	andAHalf     = pattern(`(?i)\b(one|two|three|four|five|six|\d{1,2}) (?:and a half (pounds?|lbs?|kilos?|cups?|pints?|quarts?|hours?|litres?)|(pounds?|lbs?|kilos?|cups?|pints?|quarts?|hours?|litres?) and a half)\b`)
	einhalb      = pattern(`(?i)\b(andert|einein|zweiein|dreiein|vierein)halb(?:e[nrs]?)? `)
	halbes       = pattern(`(?i)\b(?:eine?[nrms]? )?halbe[nrsm]? (kilo|kg|pfund|pfd|liter|l|tasse|tl|el|teelöffel|esslöffel|vanilleschote|zimtstange|päckchen|bund)\b`)
	kiloMore     = pattern(`(?i)^(\d{1,2}) ?(?:kilos?|kg) (\d{3}) (?:g(?:r|rammes)? )?(de |d')`)
	andFraction  = pattern(`(?i)\b(\d{1,3}) (?:and|&|und|et) (\d/\d)`)
	footnote     = pattern(` \*[^\d]*$`)
	dashBracket  = pattern(` - ?\(`) // sugar - (3 1/2 lb)
	dashFraction = pattern(`(\d)-? (\d{1,2}/\d)`)
)

// quarters of an hour in words, the first a quarter.
var hourParts = []pattern{
	pattern(`(?i)\b(?:(?:eine[r]? )?viertelstunde|un quart d'heure|a quarter of an hour|quarter of an hour|(?:a )?quarter(?: of an)?[- ](?:hour|hr))\b`),
	pattern(`(?i)\b(?:(?:eine[r]? )?halbe[n]? stunde|(?:une )?demi heure|half an hour|a half hour|half (?:an )?hr|half[- ]hour)\b`),
	pattern(`(?i)\b(?:(?:eine[r]? )?dreiviertelstunde|trois quarts d'heure|three quarters of an hour|three[- ]quarters? (?:of an )?(?:hour|hr))\b`),
}

// flat takes brackets out of brackets, and closes those the printer forgot.
func flat(s string) string {
	if strings.Count(s, "(") > strings.Count(s, ")") {
		s = strings.ReplaceAll(s, "((", "(")
	}
	var b strings.Builder
	depth := 0
	for _, r := range s {
		switch {
		case r == '(':
			if depth++; depth > 1 {
				r = ' '
			}
		case r == ')' && depth > 0:
			if depth--; depth > 0 {
				r = ' '
			}
		}
		b.WriteRune(r)
	}
	if depth > 0 {
		b.WriteByte(')')
	}
	return strings.ReplaceAll(strings.Join(strings.Fields(b.String()), " "), " )", ")")
}

// spoons writes the short words of French spoons out.
func spoons(s string) string {
	return frenchTea.ReplaceAllString(frenchSpoon.ReplaceAllString(s, "$1 c. à soupe "), "$1 c. à café ")
}

// halves writes halves in words as figures: "deux kilos et demi", "anderthalb
// Stunden", "an hour and a half".
func halves(s string) string {
	s = betweenTwo.ReplaceAllString(spoons(s), "$1-$2")
	s = squeezedDe.ReplaceAllString(squeezedFr.ReplaceAllString(s, "jus de $1 $2$3"), "Saft von $1 $2$3")
	s = partBehind.ReplaceAllString(squeezedEn.ReplaceAllString(s, "juice of $1 $2$3"), "$1 und $4 $2 $3")
	s = pluralIn.ReplaceAllString(s, "$1$2$3")
	s = oneJuice.ReplaceAllString(s, "jus de 1 $2$3")
	s = quarterOf.ReplaceAllString(s, "1/4 $1")
	s = fractionDe.ReplaceAllString(s, "$1 $2")
	s = cuilleree.ReplaceAllString(s, "cuillère$1 à $3")
	s = sizesTo.ReplaceAllString(s, "medium")
	s = sizedWord.ReplaceAllString(cupfuls.ReplaceAllString(spoonWords.ReplaceAllString(s, "${1}spoon"), "$1"), "$1")
	s = andHalf.ReplaceAllString(s, "1 1/2 hours")
	s = andAHalf.ReplaceAllStringFunc(s, func(m string) string {
		f := andAHalf.FindStringSubmatch(m)
		return inFigures(f[1]) + " 1/2 " + f[2] + f[3]
	})
	s = halfMore.ReplaceAllStringFunc(s, func(m string) string {
		f := halfMore.FindStringSubmatch(m)
		return inFigures(f[1]) + " 1/2 " + f[2]
	})
	s = einhalb.ReplaceAllStringFunc(s, func(m string) string {
		n := map[string]string{"a": "1", "e": "1", "z": "2", "d": "3", "v": "4"}[strings.ToLower(m[:1])]
		return n + " 1/2 "
	})
	s = halbes.ReplaceAllString(s, "1/2 $1")
	return kiloMore.ReplaceAllString(s, "$1.$2 kg $3")
}

// inFigures gives the figures of a number in words.
func inFigures(w string) string {
	for _, n := range numberWords {
		if strings.EqualFold(n.say, w) && n.number != "" {
			return n.number
		}
	}
	return w
}

var dayDashes = pattern(`\b(\d{1,2})-(\p{L}{3,9})-(\d{4}|\d{2})\b`)

// kiloComma is a decimal comma: nobody boils 1,250 kilograms.
var kiloComma = pattern(`(?i)\b(\d{1,2}), ?(\d{3}) ?(kg|kilos?|l|litres?|liter)\b`)

// feetComma parts thousands in a height: 6,200 feet.
var feetComma = pattern(`(?i)\b(\d{1,2}),(\d{3}) ?(ft|feet|m)\b`)

// patDry is fruit that was dried on its outside, and no dried fruit.
var patDry = pattern(`(?i)\bpa[td]s?(?:ted|ded)?[ -](?:dry|dried)\b`)

var opened = pattern(`\(\s+`)

// gluedWeight is a weight a page has run together with the food: "peaches3 lbs".
var gluedWeight = pattern(`(?i)(\p{L}{4})(` + num + ` ?(?:lbs?|pounds?|oz|kg|g|ml)\b)`)

// lateComma is a comma set apart from the word before it: "beetroot ,cooked".
var lateComma = pattern(`(\p{L}|\)) , ?([^\d\s]|$)`)

// rangeLength is a length between two: "5 - 6 mm dice".
var rangeLength = pattern(`(?i)\b(\d{1,2}) - (\d{1,2} ?(?:mm|cm)\b)`)

// smallComma parts thousands in an amount that is said again: "95 fl oz / 2,800 ml".
var smallComma = pattern(`(?i)(/ ?[1-9]\d?),(\d{3}) ?(g|gr|grams?|grammes?|ml|millilit(?:er|re)s?)\b`)

// stuck is a bracket a page has run together with the word before it: "2 cups(400 g)";
// the s of "lemon(s)" stays.
var stuck = pattern(`(\p{L})\((\p{L}{3}|\d)`)

// numberComma is a comma between a count and its size: "about four, 8 oz jars".
var numberComma = pattern(`(?i)\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\d{1,2}), (\d{1,3})[- ]?(oz|ounces?|ml|g|cl)\b([^.;,]{0,20}\b(?:jars?|glasses|pots?|bottles?)\b)`)

// plain brings a line to plain signs and single spaces: "2-½ cups" is "2 1/2 cups".
func plain(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return ' '
		}
		return r
	}, vulgar.Replace(s))
	s = dayDashes.ReplaceAllString(strings.Join(strings.Fields(s), " "), "$1 $2 $3")
	s = numberComma.ReplaceAllString(gluedWeight.ReplaceAllString(stuck.ReplaceAllString(s, "$1 ($2"), "$1 $2"), "$1 $2-$3$4")
	s = rangeLength.ReplaceAllString(lateComma.ReplaceAllString(s, "$1, $2"), "$1-$2")
	s = feetComma.ReplaceAllString(smallComma.ReplaceAllString(patDry.ReplaceAllString(s, "patted-dry"), "$1$2 $3"), "$1$2 $3")
	s = kiloComma.ReplaceAllString(opened.ReplaceAllString(s, "("), "$1.$2 $3")
	s = opened.ReplaceAllString(flat(s), "(")
	s = halves(inParts(withOf.ReplaceAllStringFunc(s, func(m string) string {
		return map[bool]string{true: "without ", false: "with "}[strings.Contains(strings.ToLower(m), "o")]
	})))
	for i, p := range hourParts {
		s = p.ReplaceAllString(s, strconv.Itoa(15*(i+1))+" minutes")
	}
	s = andFraction.ReplaceAllString(footnote.ReplaceAllString(ordinal.ReplaceAllString(s, "$1"), ""), "$1 $2")
	return dashBracket.ReplaceAllString(dashFraction.ReplaceAllString(s, "$1 $2"), " (")
}
