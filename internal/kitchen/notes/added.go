package notes

// When a thing went into the pot, and parts of a fruit each with its number.

// whenIn are words behind a food that tell when it went in.
const whenIn = `(?:and )?(?:put|stirred|added|thrown|poured|went|goes|tipped|mixed|whisked|dropped|popped|splashed)(?: (?:in|to it|on))*(?: (?:last|late|later|first|early|after|before|at|off|when|once|as|for|near|just|right)\b.*)?$|(?:last|first) thing$|(?:right |just )?(?:at|near) (?:the )?(?:very )?(?:last|end|finish)\b.*|(?:off|out of) (?:the )?heat$|` +
	`(?:ganz )?(?:zum|am) (?:schluss|ende|anfang)(?: \p{L}+)?$|zuletzt$|zu beginn$|von anfang an$|(?:nach|vor) dem (?:kochen|abkühlen|abfüllen|füllen)$|(?:später|zuletzt|zum schluss)? ?(?:da|hin)?(?:zu|zugegeben|zugefügt)$|(?:unter|ein|hinein)gerührt$|` +
	`(?:as (?:it|they|the|there|we|i) |because |since |weil |da (?:es|sie|die) |parce que |car ).*|(?:this time|today|diesmal|heute|cette fois|aujourd'hui)$|` +
	`en plus$|de plus$|extra$|zusätzlich$|as well$|too$|hors du feu$|(?:en|à la|tout à la) (?:fin|début)(?: de cuisson)?$|en dernier$|au (?:tout )?(?:dernier moment|début)$|avant (?:la mise en pots?|de mettre en pots?)$|après (?:la )?cuisson$|(?:ajouté|versé|mis)e?s? (?:à|en|au|hors|après|avant)\b.*|`

const (
	someNum  = `(\d{1,2}(?: ?1/2)?|1/2|one|two|three|four|five|six|an?|half an?|ein(?:e[rmns]?)?|zwei|drei|vier|une?|deux|trois|quatre)`
	partNext = `(?:,? (?:and|und|u\.|et|plus)|,| \+| &) (?:the |die |der |den |le |les |la |l')?`
)

// Parts of a fruit, each with its number: "juice of two lemons and the rind of one", "juice of
// 3, zest of 1 lemon".
var (
	partsThen = pattern(`(?i)^(` + partHow + partOne + ` (?:of|from|von|aus|de |d') ?` + someNum + ` (?:large |medium |small |bio-?|unwaxed )?(\p{L}+))` + partNext + `(` + partHow + partOne + `) (?:of|from|von|aus|de|d') ?(?:only |nur |just )?` + someNum + `(?: of (?:them|these)| davon)?$`)
	partsLast = pattern(`(?i)^(` + partHow + partOne + `) (?:of|from|von|aus|de|d') ?` + someNum + partNext + `(` + partHow + partOne + ` (?:of|from|von|aus|de |d') ?` + someNum + ` (?:large |medium |small )?(\p{L}+))$`)
)

// apartly writes such parts as two things of the line.
func (g *grammar) apartly(s string) string {
	if m := partsThen.FindStringSubmatch(s); m != nil && g.knows(m[4]) {
		return m[1] + "; " + m[5] + " of " + inFigures(m[7]) + " " + m[4]
	}
	if m := partsLast.FindStringSubmatch(s); m != nil && g.knows(m[7]) {
		return m[1] + " of " + inFigures(m[3]) + " " + m[7] + "; " + m[4]
	}
	return s
}
