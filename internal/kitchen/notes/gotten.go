package notes

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// whichJars is asked of a count without a size.
const whichJars = `jars of which size? Write jar = "8 fl oz" or another`

// gotten puts what was filled beside what a recipe promised. A count without a
// size is of the recipe's jars where it names one size alone; and where anything was
// counted the promise is no second plan.
func (r *Reading) gotten() {
	promised, lines, got := []Fill{}, []int{}, false
	for i, l := range r.Lines {
		for _, f := range l.Fills {
			if !f.Planned {
				got = true
				continue
			}
			if !slices.Contains(lines, i) {
				lines = append(lines, i)
			}
			if !slices.ContainsFunc(promised, func(p Fill) bool { return p.Jar == f.Jar && p.Said == f.Said }) {
				promised = append(promised, f)
			}
		}
	}
	if !got || len(promised) == 0 {
		return
	}
	for i := range r.Lines {
		r.Lines[i].ofPromised(promised, r.Lines[lines[0]].No)
	}
}

// ofPromised settles the fills of a line by those a recipe promised at another.
func (l *Line) ofPromised(promised []Fill, at int) {
	for k := range l.Fills {
		f := &l.Fills[k]
		switch {
		case f.Planned:
			f.Outdone = true
			l.Asks = slices.DeleteFunc(l.Asks, func(a string) bool { return a == whichJars })
			l.Says = append(l.Says, fmt.Sprintf("the recipe says %s; what was filled counts", strconv.FormatFloat(f.Low, 'f', -1, 64)))
		case f.Jar == "" && f.Said == "" && len(promised) == 1 && promised[0].Jar != "" && slices.Contains(l.Asks, whichJars):
			f.Jar = promised[0].Jar
			l.Asks = slices.DeleteFunc(l.Asks, func(a string) bool { return a == whichJars })
			l.Says = append(l.Says, fmt.Sprintf("taken for the jars of line %d", at))
		}
	}
}

// potted are words of what was done with jars, before their count, behind it, and
// what a count ends up as: "ladled into 5 pint jars", "in 6 Gläser abgefüllt".
// "Ladle into 5 pint jars" is what a recipe has one do, and is none of them.
var (
	potted     = pattern(`(?i)^(?:(?:and |then |und |et )?(?:i |we |ich |wir |j'ai |on a |nous avons )?(?:hab(?:e|en) )?)(?:(?:potted|bottled|jarred|ladled|poured|packed|spooned|canned|decanted|abgefüllt|eingefüllt|gefüllt|verteilt|versé|rempli|mis en (?:pots?|bocaux)|empoté)(?: up| off)?(?: (?:it|them|the jam|all|hot|while hot|heiß|à chaud))*|(?:ended|finished) up with|in gläser (?:ab|ein)?gefüllt)(?: (?:in|into|to|auf|dans|en))?(?: hot| clean| warm| sterili[sz]ed)? ?[:=-]? ?(\(?(?:\d|` + countWord + `).*)$`)
	pottedTail = pattern(`(?i)^(?:(?:ich|wir) )?(?:hab(?:e|en) )?(?:in|auf) ((?:\d|` + countWord + `).*?) (?:ab|ein)?gefüllt$|^((?:\d|` + countWord + `).*?) (?:(?:were |was |got )?(?:filled|potted|bottled|jarred)(?: up)?|(?:ab|ein)gefüllt|remplis)$`)
)

// countWord are counts of jars in words.
const countWord = `(?:an?|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|eine?n?|zwei|drei|vier|fünf|sechs|sieben|acht|neun|zehn|une?|deux|trois|quatre|cinq|sept|huit|neuf|dix)\b`

// asFilled says in the words of a count that jars were filled, where a line tells it
// otherwise.
func (g *grammar) asFilled(s string) string {
	for _, f := range []pattern{potted, pottedTail} {
		m := f.FindStringSubmatch(s)
		if m == nil {
			continue
		}
		jars := strings.Join(m[1:], "")
		first, _, _ := strings.Cut(markAnd(jars), ", ")
		if c, ok := g.count(first); ok && (c.Jar != "" || c.Said != "" || jarTalk.MatchString(first)) {
			return "filled " + jars
		}
	}
	return s
}
