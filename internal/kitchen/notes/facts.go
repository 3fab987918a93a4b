package notes

import (
	"slices"
	"strings"

	"jarmark/internal/kit/unit"
)

// A line of several facts: "2 kg plums, got 9 jars, 104 C, 14.9.26".

var (
	mayCut   = pattern(`[,;.]+ |;| ?[|] ?| / |/ | /|\p{L}/\d| [+&→-]+ |: | (?:then|and|und|et|sowie) | [\d~]| (?:simmered|boiled|cooked|stewed|gekocht|geköchelt|cuit|bouilli)e?s? `)
	aFigure  = pattern(`\d+(?:[.,]\d+)?`)
	restForm = pattern(`(?i)^(?:a bit|a half|half|a little|a (?:bit|little|small one|taste) (?:left|over|more)|some left|1 small(?: one)?|rest|ein rest|etwas übrig|1 kleines?|(?:a half|half|1/2) (?:left(?: over)?|over))\.?$`)
)

// The most of a line that is cut into facts: how many words one has, how many
// places to cut there are.
const (
	mostWords  = 8
	mostPlaces = 40
)

// A fact and what it costs to take it: what is unread or lost costs most.
type fact struct {
	line Line
	text string
	cost int
	read bool // or asked about in words of its own
}

// facts cuts a line where it reads the most of it, and reads each fact; what is
// none is asked about. Two facts at least must be read or known for a question of
// their own, and half of all.
func (g *grammar) facts(l Line, s string) (Line, bool) {
	all, ok := g.cheapest(s)
	if !ok || len(all) < 2 {
		return l, false
	}
	out, read, told, words := Line{No: l.No, Text: l.Text}, 0, 0, 0
	for i, f := range all {
		sub := f.line
		jars := len(out.Fills) > 0 || len(out.Asks) > 0 && jarTalk.MatchString(strings.Join(out.Asks, " "))
		switch {
		case sub.Read():
			read += len(sub.Ingredients) + len(sub.Fills) + sub.paths()
			out.softer(f.text)
		case jars && restForm.MatchString(f.text):
			sub.ask(`the jar that is not full: write part_jar = "100 g", what is in it`)
		case f.read:
			told++
		case !strings.ContainsAny(f.text, "0123456789") && (i == 0 || !g.foodIn(f.text) && !jarTalk.MatchString(f.text) && deVerb.MatchString(f.text)):
			sub.say("%q is no amount and no time", f.text)
			words++
		default:
			sub.ask("what is %q? Write it on a line of its own", f.text)
			out.softer(f.text)
		}
		if k := sub.find("cook.temperature"); k != nil && !k.Asked && i > 0 && otherHeat.MatchString(all[i-1].text) && !tempWords.MatchString(f.text) {
			k.Asked = true
			sub.ask("was it %s when it was done? Then take the # off", strings.Trim(k.Value, `"`))
		}
		if f.read && lost(sub, f.text) > 0 && !strings.Contains(strings.Join(sub.Asks, " "), formDoubt) {
			sub.ask("is all of %q read? Write each thing on a line of its own", f.text)
		}
		out.take(sub)
	}
	if words > 0 && read > 0 && read+words == len(all) && out.readings() {
		return out, true
	}
	enough := read >= 2 && read >= len(all)-read || len(out.Ingredients) > 0 && read+told >= 2 && 2*(read+told) >= len(all)
	return out, enough && !g.twiceTheSame(out)
}

// readings reports that a line holds nothing but what was measured of the jam.
func (l Line) readings() bool {
	return len(l.Ingredients)+len(l.Fills) == 0 && !slices.ContainsFunc(l.Keys, func(k Key) bool {
		return !slices.Contains([]string{"cook.skimmed", "cook.finished_pot", "cook.pot_tare", "cook.brix", "cook.ph"}, k.Path)
	})
}

// otherHeat is said of what is no jam: jars, an oven, water.
var otherHeat = pattern(`(?i)\b(?:st(?:e|é)rili\p{L}*|pasteur\p{L}*|wasserbad|bain-marie|einkoch\p{L}*|eingekocht|einweck\p{L}*|wecken|oven|ofen|backofen|four|canner|bath|bwb|wb|process\p{L}*)\b`)

// paths counts the keys of a line, each once.
func (l Line) paths() int {
	seen := map[string]bool{}
	for _, k := range l.Keys {
		seen[k.Path] = true
	}
	return len(seen)
}

// softer asks about the time before words that tell of softening: "simmer 20
// minutes, until soft, add 2 cups sugar".
func (l *Line) softer(words string) {
	k := l.find("cook.minutes")
	if k == nil || k.Asked || !aside.MatchString(words) || finished.MatchString(words) {
		return
	}
	k.Asked = true
	l.ask("were %s minutes the boil, and not only to soften? Then take the # off", k.Value)
}

// twiceTheSame reports a food that stands twice: the second may say the first in
// other words ("1/2 cup lemon juice, about 3 lemons juiced").
func (g *grammar) twiceTheSame(l Line) bool {
	seen := map[string]bool{}
	for _, in := range l.Ingredients {
		row, _ := g.row(in.Name)
		if row.Key != "" && seen[row.Key] {
			return true
		}
		seen[row.Key] = true
	}
	return false
}

// allFoods reports that every thing in the pot is in the table.
func (g *grammar) allFoods(l Line) bool {
	return !slices.ContainsFunc(l.Ingredients, func(in Ingredient) bool {
		_, known := g.row(in.Name)
		return !known && in.Name != ""
	})
}

// cheapest parts a text into facts so that they cost least.
func (g *grammar) cheapest(s string) ([]fact, bool) {
	from, to := places(s)
	if len(from) > mostPlaces {
		return nil, false
	}
	type way struct {
		cost int
		last fact
		back int
	}
	best := make([]way, len(from)) // best[j]: all before place j is read
	for j := 1; j < len(from); j++ {
		best[j].cost = 1 << 30
		for i := j - 1; i >= 0; i-- {
			text := strings.Trim(s[from[i]:to[j]], " ,;.|+&→-")
			if text == "" {
				best[j] = best[i]
				continue
			}
			f, long := fact{}, len(strings.Fields(brackets.ReplaceAllString(text, ""))) > mostWords
			switch {
			case long && strings.ContainsAny(text, "0123456789"):
				continue
			case long:
				f = unreadFact(text)
			default:
				f = g.fact(text)
			}
			if j < len(from)-1 && from[j]-to[j] == 1 && s[to[j]] == ' ' && (!f.read || trailsWords(text)) {
				continue // a name before an amount: no sign parts them
			}
			if best[i].cost+f.cost < best[j].cost {
				best[j] = way{best[i].cost + f.cost, f, i}
			}
		}
	}
	var out []fact
	for j := len(from) - 1; j > 0; j = best[j].back {
		if best[j].last.text == "" {
			return nil, false
		}
		out = append(out, best[j].last)
	}
	slices.Reverse(out)
	return out, true
}

// trailsWords reports words without a figure behind the last sign of a fact:
// they may belong to the next one ("1 kg sugar, juice 1 lemon").
func trailsWords(text string) bool {
	at := max(strings.LastIndexAny(text, ",;/|"), strings.LastIndex(text, ". "), strings.LastIndex(text, " - "))
	return at >= 0 && !strings.ContainsAny(text[at:], "0123456789")
}

// places gives where a fact may begin and where the one before it ends, the
// ends of the text among them.
func places(s string) (from, to []int) {
	from, to = []int{0}, []int{0}
	for _, at := range mayCut.FindAllStringIndex(s, -1) {
		end := at[1]
		if letter := strings.IndexByte(s[at[0]:end], '/'); letter > 0 && s[at[0]] != ' ' { // "plums/5 lb": the letter is the last fact's
			at[0] += letter
		}
		if verb := s[at[0]:end]; len(verb) > 6 && verb[0] == ' ' && cooking.MatchString(verb) {
			end = at[0] + 1 // the verb is the next fact's
		} else if last := s[end-1]; last >= '0' && last <= '9' || last == '~' {
			end-- // the figure is the next fact's
		}
		if !inBrackets(s, at[0]) && at[0] > 0 && !again(s, at[0], end) {
			from, to = append(from, end), append(to, at[0])
		}
	}
	return append(from, len(s)), append(to, len(s))
}

// again reports a slash between two measures of the same: "4 pints/2.3 litres".
func again(s string, at, end int) bool {
	last := s[:at][strings.LastIndexByte(s[:at], ' ')+1:]
	return at < len(s) && s[at] == '/' && end == at+1 && valid("1 "+strings.TrimLeft(last, "0123456789.,/")) && aMeasure.MatchString(last)
}

var aMeasure = pattern(`(?i)^[\d.,/]*(?:` + againUnit + `)$`)

// fact reads one short fact of a line.
func (g *grammar) fact(s string) fact {
	if f, again := g.read[s]; again {
		return f
	}
	sub := Line{Text: s}
	if !parted.MatchString(s) {
		g.alone(&sub, s)
	}
	strange := 0
	for _, in := range sub.Ingredients {
		if _, known := g.row(in.Name); known || in.Name == "" {
			continue
		}
		strange += 4 // not in the table, and asked about
		if q, err := unit.ParseQuantity(in.Amount); err != nil || q.Dim == unit.ByCount || len(strings.Fields(in.Name)) > 3 {
			sub = Line{Text: s} // no food: something else
			g.sentences(&sub, s)
			g.bareCount(&sub, s)
			break
		}
	}
	f := fact{line: sub, text: s, cost: 1 + strange + len(sub.Asks) + 20*lost(sub, s), read: sub.Read() || len(sub.Asks) > 0}
	if !f.read {
		f = unreadFact(s)
	}
	if g.read == nil {
		g.read = map[string]fact{}
	}
	g.read[s] = f
	return f
}

func unreadFact(s string) fact {
	return fact{line: Line{Text: s}, text: s, cost: 8 + 2*len(strings.Fields(s)) + 4*len(aFigure.FindAllString(s, -1))}
}

// parted is an amount with a sign between it and the food: of two things.
var parted = pattern(`(?i)^` + num + `(?: ?[\p{L}#]{1,12})?(?:\.? ?[,;/|] ?| - )[\p{L}]`)

func (g *grammar) alone(l *Line, s string) {
	switch {
	case g.date(l, s), g.labelled(l, s):
	case g.ingredients(l, s):
	default:
		g.sentences(l, s)
		g.bareCount(l, s)
	}
}

// take adds a fact to a line. A key that stands there already is asked about.
func (l *Line) take(sub Line) {
	for _, k := range sub.Keys {
		other := l.find(k.Path)
		if other != nil && k.Path == "cook.finished_pot" && emptyToo.MatchString(l.Text) {
			k = lighter(other, k)
			sub.Asks = slices.DeleteFunc(sub.Asks, func(a string) bool { return a == withPot })
			other = nil
		}
		switch {
		case other == nil:
		case other.Value == k.Value:
			continue
		default:
			if !other.Asked {
				l.ask("%s or %s for %s? Take the # off one", other.Value, k.Value, k.Path[strings.Index(k.Path, ".")+1:])
			}
			other.Asked, k.Asked = true, true
		}
		l.Keys = append(l.Keys, k)
	}
	l.Ingredients, l.Fills = append(l.Ingredients, sub.Ingredients...), append(l.Fills, sub.Fills...)
	l.Asks, l.Says = append(l.Asks, sub.Asks...), append(l.Says, sub.Says...)
}

// emptyToo are a vessel with the jam and the vessel alone: "pan + jam 4.85 kg, pan 1.9 kg".
var emptyToo = pattern(`(?i)(?:^|[,;/:] ?|and |und |et )(?:the |der |la )?(?:pan|pot|kettle|topf|kessel|bassine|casserole|marmite)[ :=]+\d`)

// lighter makes the tare of the lighter of two weights of the pot.
func lighter(a *Key, b Key) Key {
	x, _ := unit.ParseMass(strings.Trim(a.Value, `"`))
	y, _ := unit.ParseMass(strings.Trim(b.Value, `"`))
	if x < y {
		a.Path = "cook.pot_tare"
	} else {
		b.Path = "cook.pot_tare"
	}
	return b
}

// bareCount takes a count of jars without a verb, and asks whether it is one.
func (g *grammar) bareCount(l *Line, s string) {
	if l.Read() || len(l.Asks) > 0 {
		return
	}
	if f, ok := g.count(s); ok && (f.Jar != "" || jarTalk.MatchString(s) || glasses.MatchString(s)) {
		l.ask("jars that were filled? Then write: got %s, and their size", s)
	}
}
