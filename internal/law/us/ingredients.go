package us

import (
	"cmp"
	"slices"
	"sort"
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

const citeList = "21 CFR 101.4(a)"

// entry is one ingredient of the list; lines of one name are one entry, and
// its line holds their sums.
type entry struct {
	name     string
	mass     unit.Mass
	percent  float64 // of all as added
	finished float64 // of the yield
	line     cook.Line
}

// ingredients adds the list in descending order by weight as added, compounds
// with their parts in parentheses.
func ingredients(p *pass) {
	list := p.list
	if len(list) == 0 {
		p.Duty("no-ingredients", p.BatchFile(), "ingredient", "there are no ingredients to list").Cited(citeList)
		return
	}
	for _, e := range list {
		p.sulfites(e)
		p.Banned(e.line)
	}
	text := draft.Upper(p.listText(list))
	p.add(label.Block{Kind: label.Ingredients, Runs: place.Starred(p.Say.Say("us.ingredients") + " " + draft.PlainStars(draft.Dotted(text))), Zone: label.Info, With: []label.Kind{label.Maker, label.Allergens}, Required: true,
		Cite: citeList, Verified: p.Set.Ingredients.Confidence, Path: "ingredient"})
}

// entries merges lines of one name and puts the heaviest first, ties in file
// order. Water and what is taken out before the finish stay in: both were
// added to the food.
func entries(r *cook.Result) []entry {
	var out []entry
	at := map[string]int{}
	for _, ln := range r.ByWeight() {
		key := strings.ToLower(strings.TrimSpace(ln.Name)) + "\n" + partsText(ln)
		if i, ok := at[key]; ok {
			e := &out[i]
			e.mass, e.percent, e.finished = e.mass+ln.Mass, e.percent+ln.Percent, e.finished+ln.PercentFin
			e.line.Allergens = append(append([]string(nil), e.line.Allergens...), ln.Allergens...)
			e.line.Paths = append(append([]string(nil), e.line.Paths...), ln.Paths...)
			e.line.Mass, e.line.Soluble, e.line.Estimated = e.mass, e.line.Soluble+ln.Soluble, e.line.Estimated || ln.Estimated
			continue
		}
		at[key] = len(out)
		out = append(out, entry{strings.TrimSpace(ln.Name), ln.Mass, ln.Percent, ln.PercentFin, ln})
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].mass > out[j].mass })
	return out
}

// threshold is the percentage below which ingredients may stand at the end: the
// maker's choice, else the set's; 0 = none.
func (p *pass) threshold() float64 {
	if p.K.SmallAmounts > 0 {
		return p.K.SmallAmounts
	}
	return p.Set.Ingredients.TwoPercent
}

// listText words the list, with the "2 % or less" clause where the set asks.
func (p *pass) listText(list []entry) string {
	main, small := group(list, p.threshold())
	var words []string
	for _, e := range main {
		words = append(words, p.entryText(e))
	}
	text := strings.Join(words, ", ")
	if len(small) == 0 {
		return text
	}
	words = nil
	for _, e := range small {
		words = append(words, p.entryText(e))
	}
	clause := p.Say.Say("us.two-percent", "t", strconv.FormatFloat(p.threshold(), 'f', -1, 64), "list", strings.Join(words, ", "))
	return strings.TrimPrefix(text+", "+clause, ", ")
}

// group parts the ingredients that may stand after "contains t % or less of":
// none over t percent, by the formula and by the finished food, as jam boils
// down and the rule does not say which is meant (21 CFR 101.4(a)(2)). The first
// ingredient always stays in the main list.
func group(list []entry, t float64) (main, small []entry) {
	for i, e := range list {
		if t > 0 && i > 0 && e.percent <= t && e.finished <= t {
			small = append(small, e)
		} else {
			main = append(main, e)
		}
	}
	return main, small
}

// entryText is one ingredient: name, function of a preservative, parts of a
// compound, declared sulfites.
func (p *pass) entryText(e entry) string {
	text := e.name
	if parts := partsText(e.line); parts != "" {
		text += " (" + parts + ")"
	}
	text = p.withFunction(text)
	if p.sulfited(e.line) && !strings.Contains(strings.ToLower(text), "sulf") {
		text += " (sulfites)"
	}
	return text
}

// sulfited reports that the maker said so of an ingredient: as an allergen, or in
// its name, "apricots, sulfured".
func (p *pass) sulfited(ln cook.Line) bool {
	if slices.ContainsFunc(ln.Allergens, func(a string) bool { return draft.Has(p.Set.Ingredients.Sulfites, a) }) {
		return true
	}
	return slices.ContainsFunc(p.R.LineAllergy(ln).Found, func(f cook.Found) bool { return f.ID == "sulphites" && !f.Usual })
}

// withFunction writes "(preservative)" behind each preservative of an entry
// that has no parenthesis of its own, at any depth of parts (21 CFR 101.22(j)).
func (p *pass) withFunction(text string) string {
	for _, w := range p.Set.Ingredients.Preservatives {
		for from := 0; ; {
			i := strings.Index(strings.ToLower(text[from:]), w)
			if i < 0 || len(strings.ToLower(text)) != len(text) { // lower-casing moved bytes: leave it
				break
			}
			end := from + i + len(w)
			before, rest := text[:from+i], text[end:]
			whole := !letterAt(before, len(before)-1) && !letterAt(rest, 0)
			from = end
			if whole && !strings.HasPrefix(strings.TrimSpace(rest), "(") {
				text = text[:end] + " (preservative)" + rest
			}
		}
	}
	return text
}

// letterAt reports whether an ASCII letter stands at a place of a text.
func letterAt(s string, i int) bool {
	return i >= 0 && i < len(s) && (s[i]|0x20 >= 'a' && s[i]|0x20 <= 'z')
}

// partsText lists the parts of a compound: by their percentages where all are
// known, else as the packet has them (21 CFR 101.4(b)(2)(i)).
func partsText(ln cook.Line) string {
	parts := slices.Clone(ln.Contains)
	if !slices.ContainsFunc(parts, func(x pantry.Part) bool { return x.Percent <= 0 }) {
		slices.SortStableFunc(parts, func(a, b pantry.Part) int { return cmp.Compare(b.Percent, a.Percent) })
	}
	var names []string
	for _, part := range parts {
		if n := strings.TrimSpace(part.Name); n != "" {
			names = append(names, n)
		}
	}
	return strings.Join(names, ", ")
}

// sulfites asks for the packet of what is often sulfited: 10 ppm or more in the
// finished food must be declared.
func (p *pass) sulfites(e entry) {
	if !p.sulfited(e.line) && p.Sulphited(e.line) {
		p.L.Warnf("sulfites-unknown", p.BatchFile(), draft.LinePath(e.line), "%s may have been treated with sulfites", e.name).
			Hinted(`read the packet; if it names them, write allergens = ["sulfites"] on this ingredient`).Cited("21 CFR 101.100(a)(4), 130.9(a)")
	}
}
