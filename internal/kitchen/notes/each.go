package notes

import (
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// each reads one amount of several things: "1/2 tsp each cinnamon and cloves".
func (g *grammar) each(l *Line, a amount, rest string) (out []Ingredient, ok bool) {
	m := eachForm.FindStringSubmatch(rest)
	if m == nil || a.vague || len(a.choices) > 0 {
		return nil, false
	}
	names := splitWords(m[1]+m[2], ", ", " and ", " & ", " und ", " et ")
	for i := range names {
		if _, known := g.row(names[i]); !known {
			bare, lead := g.leadForm(strings.TrimSpace(snipped.ReplaceAllString(names[i], "")))
			names[i] = strings.TrimSpace(lead + " " + bare)
		}
	}
	if len(names) < 2 || slices.ContainsFunc(names, func(n string) bool { bare, _ := g.leadForm(n); return !g.knows(n) && !g.knows(bare) }) {
		return nil, false
	}
	for _, n := range names {
		if a, asks := g.p.Ambiguous(n, ""); asks {
			l.ask("%s may be %s: write the one you used (%s)", n, strings.Join(a.Choices, " or "), a.Why)
		}
		name, form := g.leadForm(n)
		if row, _ := g.row(name); row.Name != "" {
			if _, own := g.p.Ingredient(name); !own {
				name = row.Name
			}
		}
		out = append(out, Ingredient{Name: name, Amount: a.text, Form: strings.ToLower(form)})
	}
	return out, true
}

var snipped = pattern(`(?i)^(?:snipped|cut|cut-up|coarsely cut|finely cut) `)

var (
	eachForm = pattern(`(?i)^each:? (?:of )?(.+)$|^(.+?),? (?:each|de chaque|je(?:weils)?)$`)
	eachLead = pattern(`(?i)^(?:je(?:weils)?|each) (\d.*?) (?:of |von )?([\p{L}].*)$`)
	eachLast = pattern(`(?i)^(?:equal (?:weights?|amounts?|parts)(?: of)? |gleich viel )?([\p{L}][\p{L} ,&-]+?),? (\d[\d.,/ ]* ?\p{L}+) (?:each|apiece|je(?:weils)?)$`)
	eachTail = pattern(`(?i)^([\p{L}][\p{L} ,&-]+?),? (?:je(?:weils)?|each) (\d.*)$`)
)

// eachFirst puts the amount first: "je 500 g Erdbeeren und Rhabarber",
// "strawberries, rhubarb: each 500 g".
func (g *grammar) eachFirst(s string) string {
	if m := eachLast.FindStringSubmatch(s); m != nil && valid(m[2]) && g.allKnown(splitWords(m[1], ", ", " and ", " & ", " und ", " et ")) { // plums and sugar, 1.5 kg each
		return m[2] + " each " + m[1]
	}
	if m := eachTail.FindStringSubmatch(s); m != nil {
		if _, rest, ok := g.amount(m[2] + " x"); ok && rest == "x" {
			return m[2] + " each " + m[1]
		}
	}
	if m := eachLead.FindStringSubmatch(s); m != nil {
		a, rest, ok := g.amount(strings.TrimSpace(m[1] + " " + m[2]))
		if ok && a.text != "" && rest != "" {
			return a.text + " each " + rest
		}
	}
	return s
}

// bracketFirst puts the amount first that stands in brackets behind its food, and
// nothing else with it: "Pectine (20 gr)".
func (g *grammar) bracketFirst(s string) string {
	m := bracketLast.FindStringSubmatch(s)
	if m == nil || !g.knows(strings.TrimSpace(m[1])) {
		return s
	}
	if _, rest, ok := g.amount(m[2] + " x"); !ok || rest != "x" {
		return s
	}
	return m[2] + " " + m[1] + m[3]
}

var bracketLast = pattern(`(?i)^([\p{L}][\p{L} '-]{1,40}?) \((` + num + ` ?\p{L}{1,12}\.?)\)(, [^\d]*)?$`)

var plusTail = pattern(`(?i),? (?:\+|plus|and|und|et)(?: an)?(?: extra)? (` + againOne + `)\.?( (?:for|für|pour|zum) .*)?$`)

// plusBehind adds what stands behind the food: "3 cups sugar plus 2 tbsp". What
// is for something else is asked about.
func plusBehind(l *Line, a amount, rest string) (amount, string) {
	m := plusTail.FindStringSubmatch(rest)
	if m == nil || a.text == "" || a.vague || len(a.choices) > 0 || !valid(a.text+" + "+m[1]) {
		return a, rest
	}
	if q, err := unit.ParseQuantity(a.text); err != nil || q.Dim == unit.ByCount {
		return a, rest
	}
	if m[2] != "" {
		l.ask("did %s more go into the pot? Then write the sum as amount", m[1])
	} else {
		a.text += " + " + m[1]
	}
	return a, strings.TrimSuffix(rest, m[0])
}

var pulpWord = pattern(`(?i)^(.+?) (?:pulp|pur(?:é|e)e|puree|mash)\b(.*)$`)

// pulped takes "pear pulp" as pears, pureed: a cup of pulp is heavier than one of
// slices. What a row already calls so keeps its name.
func (g *grammar) pulped(l *Line, a amount, rest string) (amount, string) {
	m := pulpWord.FindStringSubmatch(rest)
	if m == nil || strings.ContainsAny(m[1], "(,") {
		return a, rest
	}
	q, err := unit.ParseQuantity(a.text)
	whole, known := g.row(strings.TrimSpace(strings.TrimPrefix(rest, "")))
	bare, also := g.row(m[1])
	if err != nil || q.Dim != unit.ByVolume || !also || known && whole.Key != bare.Key || bare.Class != "fruit" && bare.Class != "vegetable" {
		return a, rest
	}
	return a, m[1] + ", pureed" + m[2]
}

// origin is where a food came from, and no food.
var origin = pattern(`(?i)^([\p{L}][\p{L} -]*?) ((?:vom|von|aus|du|de|d'|from|off|of) (?:(?:dem|der|den|meine[mnr]|unsere[mnr]|eigenen|eigenem|mon|ma|notre|chez|the|my|our) )*(?:nachbar\p{L}*|garten|markt|bauern?|baum|hof|oma|opa|tante|jardin|marché|voisine?s?|verger|mamie|garden|neighbou?rs?|market|farm|allotment|strauch|hecke|laden|tiefkühler|truhe|arbre|haie|magasin|congélateur|(?:\p{L}+ )?(?:trees?|hedge|orchard|shop|greenhouse|field|freezer|stall|bush(?:es)?)))$`)

// insteadWord says that what follows may have gone in.
const insteadWord = `(?:(?:you )?(?:may|can|could) (?:also )?(?:be )?)?(?:substitut(?:e|ed|ing)|replaced?)|(?:you )?(?:may|can|could) (?:also )?use|alternatively|use|ersatzweise|alternativ|wahlweise|remplacer|à défaut`

// article stands before a food in a list of words: "le sucre : 800 g".
var article = pattern(`(?i)^(?:(?:nur|only|just|seulement|bloß) )?(?:le |la |les |l'|du |des |de la |de l'|der |die |das |the |)`)

var (
	ofYou    = pattern(`(?i) que (?:vous|tu|je|j'|on|l'on|nous)\b.*$`)
	orInside = pattern(`(?i)\((?:or|oder|ou|bzw\.|statt|` + insteadWord + `) [^()]*\)`)
)
