package notes

import (
	"slices"
	"strings"
)

// The name of a food among the words beside it: forms, choices, brackets.

// nameOf finds the food among what commas and dashes part; the rest is form. A
// word beside it that is no form known here ("hard, ripe peaches") is one.
func (g *grammar) nameOf(s string) (name string, form []string) {
	segments := cutForm.Split(s, -1)
	at := -1
	for i, seg := range segments {
		segments[i] = strings.TrimSpace(seg)
		if at < 0 && (!g.formOnly(strings.ReplaceAll(seg, "ground", "")) || i == len(segments)-1) {
			at = i
		}
	}
	if _, known := g.row(segments[at]); !known && !strings.Contains(segments[at], " ") {
		for i := at + 1; i < len(segments); i++ {
			if _, known := g.row(segments[i]); known {
				at = i
				break
			}
		}
	}
	name = segments[at]
	if m := afterIng.FindStringSubmatchIndex(name); m != nil {
		bare, _ := g.leadForm(name[:m[0]])
		if _, known := g.row(bare); known {
			segments[at], name = name[m[2]:], name[:m[0]]
			return name, segments
		}
	}
	return name, slices.Delete(segments, at, at+1)
}

// listed gives the foods of "sultanas, raisins or chopped dates"; all must be
// known, and two of them at least be different foods.
func (g *grammar) listed(s string) []string {
	if !orList.MatchString(s) {
		return nil
	}
	for {
		at := strings.LastIndex(s, ", ")
		if at < 0 || !g.formOnly(s[at:]) {
			break
		}
		s = s[:at] // "apples, pears or quinces, quartered"
	}
	out := splitWords(s, ", or ", ", ", " or ", " oder ", " ou ")
	g.sharing(out)
	keys := map[string]bool{}
	for i := range out {
		out[i], _ = g.leadForm(out[i])
		row, known := g.row(out[i])
		if _, asks := g.p.Ambiguous(out[i], ""); asks {
			row.Key = out[i]
		} else if !known {
			return nil
		}
		keys[row.Key] = true
	}
	if len(keys) < 2 {
		return nil
	}
	return out
}

// sharing gives each food of a choice the words that stand at the end only:
// "lemon or lime juice".
func (g *grammar) sharing(out []string) {
	last := strings.Fields(out[len(out)-1])
	for i, w := range out[:len(out)-1] {
		for n := len(last) - 1; n > 0; n-- {
			long := w + " " + strings.Join(last[len(last)-n:], " ")
			if _, ok := g.row(long); ok {
				out[i] = long
				break
			}
		}
	}
}

// telling takes a word in brackets into the name where it makes another food
// of it: "lemon juice (bottled)".
func (g *grammar) telling(s string) string {
	for _, b := range brackets.FindAllString(s, -1) {
		inner := plusRatio.ReplaceAllString(ratioSay.ReplaceAllString(strings.TrimSpace(strings.Trim(b, "()")), ""), "$1:$2")
		bare := strings.TrimSpace(strings.Replace(s, b, "", 1))
		name, _, _ := strings.Cut(bare, ",")
		without, also := g.row(name)
		words := strings.Fields(name)
		if !also || len(strings.Fields(inner)) > 2 || len(words) == 0 {
			continue
		}
		for _, told := range []string{inner + " " + name, inner + " " + words[len(words)-1]} {
			last, _ := g.row(words[len(words)-1])
			if with, ok := g.row(told); ok && with.Key != without.Key && with.Key != last.Key {
				return told + strings.TrimPrefix(bare, name)
			}
		}
	}
	return s
}

// tailForm takes the words of form from behind a name, unless with them it is
// another food: "vanilla bean split & scraped".
func (g *grammar) tailForm(name string) (rest, tail string) {
	words := strings.Fields(name)
	n := len(words)
	for n > 1 && (isForm(strings.ToLower(words[n-1])) || n == len(words) && sizes[strings.ToLower(words[n-1])] || words[n-1] == "&" || words[n-1] == "+") {
		n--
	}
	rest = strings.Join(words[:n], " ")
	whole, same := g.row(name)
	if row, ok := g.row(rest); !ok || n == len(words) || same && row.Key != whole.Key {
		return name, ""
	}
	return rest, strings.Join(words[n:], " ")
}

// leadForm takes the words of form from before a name, unless with them it is
// another food: "dried apricots".
func (g *grammar) leadForm(name string) (rest, lead string) {
	words := strings.Fields(name)
	n := 0
	for n < len(words)-1 && (isForm(strings.ToLower(strings.Trim(words[n], ","))) || n > 0 && words[n] == "&") {
		n++
	}
	if n == 0 {
		return name, ""
	}
	whole, known := g.row(name)
	for ; n > 0; n-- {
		rest = strings.Join(words[n:], " ")
		if bare, also := g.row(rest); !known || also && bare.Key == whole.Key {
			return rest, strings.TrimSuffix(strings.TrimSuffix(strings.Join(words[:n], " "), " and"), " &")
		}
	}
	return name, ""
}

// either gives the foods of "butter or margarine", "lemon or lime juice"; the
// words they share stand at the end.
func (g *grammar) either(name string) []string {
	out := splitWords(name, " or ", " oder ", " ou ", "/", " and/or ")
	if len(out) < 2 {
		return nil
	}
	g.sharing(out)
	keys := map[string]bool{}
	for i := range out {
		out[i], _ = g.leadForm(out[i])
	}
	for _, w := range out {
		if row, ok := g.row(w); ok {
			keys[row.Key] = true
		} else {
			keys[w] = true
		}
	}
	switch known := slices.ContainsFunc(out, func(w string) bool { _, ok := g.row(w); return ok }); {
	case !known:
		return nil
	case len(keys) == 1:
		return out[:1]
	}
	return out
}
