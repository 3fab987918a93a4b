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
	if head, how, ok := g.prefixFood(name); ok {
		segments[at] = how
		return head, segments
	}
	if m := afterIng.FindStringSubmatchIndex(name); m != nil {
		bare, _ := g.leadForm(name[:m[0]])
		if _, known := g.row(bare); known {
			segments[at], name = name[m[2]:], name[:m[0]]
			return name, segments
		}
	}
	return name, slices.Delete(segments, at, at+1)
}

// withWord parts a name into a food of the table and a word or two beside it that
// no table knows: "flame raisins", "orange douce". A word that is a food itself, or
// makes another food of it, is none.
func (g *grammar) withWord(name string) (food, word string) {
	words := strings.Fields(name)
	for n := len(words) - 1; n > 0 && len(words)-n <= 4; n-- {
		behind, before := strings.Join(words[len(words)-n:], " "), strings.Join(words[:n], " ")
		for i, cut := range [][2]string{{behind, strings.Join(words[:len(words)-n], " ")}, {before, strings.Join(words[n:], " ")}} {
			if i == 1 && !g.french && !g.frenchAll { // of English and German words the last is the food: mayhaw juice
				continue
			}
			_, known := g.row(cut[0])
			_, asks := g.p.Ambiguous(cut[0], "")
			_, another := g.p.Another(cut[0], cut[1])
			if known && !asks && !another && !g.foodIn(cut[1]) && !joins(cut[1]) && !joins(firstAndLast(cut[0])) && !g.formOnly(cut[0]) {
				return cut[0], cut[1]
			}
		}
	}
	return name, ""
}

// firstAndLast gives the outer words of a food where they join it to another:
// "of lemon", "sucre à".
func firstAndLast(s string) string {
	words := strings.Fields(s)
	for _, w := range []string{words[0], words[len(words)-1]} {
		if w = strings.ToLower(w); len(words) > 1 && outer[w] {
			return w
		}
	}
	return ""
}

var outer = set("of with in for from de du des d' à au aux en sans avec mit ohne von aus für im and or und oder et ou")

// joining are words that join two foods, or make another of one.
var joining = set(`and or with of in for from each und oder mit von aus für im et ou avec de du des en au aux à sans ohne free less substitute replacer flavour flavor
	flavoured flavored flavouring flavoring essence mix powder powdered concentrate concentrated extract juice jus milk cream butter oil vinegar syrup sauce paste & + /`)

func joins(s string) bool {
	return strings.ContainsAny(s, "&+/'-") || slices.ContainsFunc(strings.Fields(strings.ToLower(s)), func(w string) bool { return joining[w] })
}

// ownNames gives the foods of a choice as the kitchen's own table calls them, where
// it does not know the word of another language.
func (g *grammar) ownNames(l *Line, names []string) []string {
	out := slices.Clone(names)
	for i, n := range out {
		if _, own := g.p.Ingredient(n); own {
			continue
		}
		if _, asks := g.p.Ambiguous(n, ""); asks {
			continue
		}
		if row, known := g.row(n); known {
			out[i] = row.Name
			l.say("%s is read as %s", n, row.Name)
		}
	}
	return out
}

// prefixFood finds the food words begin with where how it was cut follows:
// "elderflower heads washed and tied up in muslin".
func (g *grammar) prefixFood(s string) (food, how string, ok bool) {
	bare, lead := g.leadForm(s)
	words := strings.Fields(bare)
	if _, known := g.row(bare); known || len(words) < 3 || strings.ContainsAny(s, "0123456789") {
		return s, "", false
	}
	for n := len(words) - 1; n > 0; n-- {
		food, how = strings.Join(words[:n], " "), strings.Join(words[n:], " ")
		if _, known := g.row(food); known && isForm(strings.ToLower(words[n])) && !g.foodIn(how) && !strings.Contains(" "+how+" ", " or ") {
			return strings.TrimSpace(lead + " " + food), how, true
		}
	}
	return s, "", false
}

// listed gives the foods of "sultanas, raisins or chopped dates"; all must be
// known, and two of them at least be different foods.
func (g *grammar) listed(s string) (out, cuts []string) {
	if !orList.MatchString(s) {
		return nil, nil
	}
	for {
		at := strings.LastIndex(s, ", ")
		if at < 0 || !g.formOnly(s[at:]) && (g.foodIn(s[at:]) || g.knows(s[at+2:]) || eitherWord.MatchString(s[at:])) {
			break
		}
		s = s[:at] // "apples, pears or quinces, quartered"
	}
	out = splitWords(s, ", or ", ", ", " or ", " oder ", " ou ")
	for _, w := range out {
		if g.formOnly(w) {
			cuts = append(cuts, strings.ToLower(w))
		}
	}
	out = slices.DeleteFunc(out, g.formOnly) // "pitted, chopped sweet or sour cherries"
	if len(out) < 2 {
		return nil, nil
	}
	for i := range out {
		out[i], _ = g.leadForm(out[i])
	}
	g.sharing(out)
	keys := map[string]bool{}
	for i := range out {
		row, known := g.row(out[i])
		if _, asks := g.p.Ambiguous(out[i], ""); asks {
			row.Key = out[i]
		} else if !known {
			return nil, nil
		}
		keys[row.Key] = true
	}
	if len(keys) < 2 {
		return nil, nil
	}
	return out, cuts
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
		if ofColour.MatchString(out[i]) && len(last) > 1 { // "red or green peppers"
			out[i] += " " + strings.Join(last[1:], " ")
		}
	}
}

// tells says what telling left out.
func (g *grammar) tells(l *Line, s string) string {
	told := g.telling(s)
	if first, _, _ := strings.Cut(s, " ("); told != s && !strings.Contains(told, first) {
		l.say("%s, as the brackets say", first)
	}
	return told
}

// telling takes a word in brackets into the name where it makes another food
// of it: "lemon juice (bottled)".
func (g *grammar) telling(s string) string {
	for _, b := range brackets.FindAllString(s, -1) {
		inner := plusRatio.ReplaceAllString(ratioSay.ReplaceAllString(strings.Trim(b, "() .!?"), ""), "$1:$2")
		bare := strings.TrimSpace(strings.Replace(s, b, "", 1))
		name, _, _ := strings.Cut(bare, ",")
		name = strings.TrimSpace(afterIng.ReplaceAllString(name, ""))
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
	if row, ok := g.row(rest); !ok && !g.knows(rest) || n == len(words) || same && row.Key != whole.Key {
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
	out := splitWords(name, " and/or ", " or ", " oder ", " ou ", "/")
	if len(out) < 2 {
		return nil
	}
	for i, w := range out { // "mirabelles ou d'abricots pesés parés", "jus de citron ou de lime"
		bare := ofForm.ReplaceAllString(w, "")
		if head, _, ok := strings.Cut(out[0], " de "); ok && i > 0 && bare != w {
			if _, known := g.row(head + " de " + bare); known {
				bare = head + " de " + bare
			}
		}
		out[i], _ = g.tailForm(bare)
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
