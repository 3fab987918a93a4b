package pack

import (
	"fmt"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/allergen"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/pantry"
)

// avoided is what a person must not eat.
type avoided struct {
	substances []allergen.Substance
	words      []string // foods no table of allergens knows: sought among the ingredients, as the pantry names them too
	guessed    []string // words taken for another with a slip: "wallnut (walnut)"
	foods      []string // all of it, in the list's words
}

// fillers are words around an allergy that name no food.
var fillers = []string{"free", "no", "not", "non", "none", "without", "allergy", "allergies", "allergic", "to", "intolerant", "intolerance", "all", "any", "severe", "the", "is", "of",
	"known", "please", "thanks", "thank", "you", "eat", "cannot", "can", "t", "must", "anything", "with", "has", "have", "a", "an",
	"ohne", "kein", "keine", "keinen", "bitte", "gegen", "allergie", "allergien", "allergisch", "frei", "sans", "pas", "de", "d", "aux", "a", "au", "la", "les", "allergique", "svp"}

// ands part one food from the next.
var ands = strings.NewReplacer(" and ", ",", " or ", ",", " und ", ",", " oder ", ",", " et ", ",", " ou ", ",", " AND ", ",", " UND ", ",")

// stated is the text of an allergy, empty where it says that there is none.
func stated(text string) string {
	if len(avoid(text).foods) == 0 {
		return ""
	}
	return text
}

// avoid reads the words of an allergy: "walnuts, milk", "nut-free",
// "allergic to strawberries".
func avoid(text string) (a avoided) {
	v := allergen.Default()
	if allergen.SaysNone(text) {
		return a
	}
	if strings.Trim(text, " ?") == "" && text != "" { // somebody still has to ask
		a.words, a.foods = []string{"?"}, []string{"?"}
		return a
	}
	for _, part := range strings.FieldsFunc(ands.Replace(text), func(r rune) bool { return strings.ContainsRune(",;/&+.", r) }) {
		var kept []string
		for _, w := range allergen.Tokens(part) {
			if !slices.Contains(fillers, w) {
				kept = append(kept, w)
			}
		}
		food := strings.Join(kept, " ")
		if food == "" || allergen.SaysNone(part) {
			continue
		}
		a.add(v, food)
		a.foods = append(a.foods, food)
	}
	return a
}

// said is what the person must not eat, without the words around it.
func (a avoided) said() string { return strings.Join(a.foods, ", ") }

func (a *avoided) add(v *allergen.Vocabulary, food string) {
	r := v.Read(food)
	if len(r.Hits) == 0 {
		if near, ok := diag.DidYouMean(food, v.Words()); ok && !r.Known {
			a.guessed = append(a.guessed, fmt.Sprintf("%s (%s)", food, near))
			r = v.Read(near)
		}
	}
	for _, h := range r.Hits {
		if s, ok := v.Substance(h.ID); ok {
			a.substances = append(a.substances, s)
		}
	}
	if len(r.Hits) == 0 {
		a.words = append(a.words, food)
	}
}

// clashes reports whether who avoids one must avoid the other: the same food,
// a kind of the group, or a kind whose name a law gives both (spelt is "wheat"
// in 21 U.S.C. 321(qq), goat milk "milk" in Annex II of Regulation (EU)
// 1169/2011). In doubt it is yes.
func clashes(x, y allergen.Substance) bool {
	switch {
	case x.ID == y.ID:
		return true
	case (x.Group() || y.Group()) && x.Family != "" && x.Family == y.Family:
		return true
	case x.ID == "shellfish" && y.ID == "molluscs", y.ID == "shellfish" && x.ID == "molluscs":
		return true
	case x.US != "" && x.US != allergen.Ask && x.US == y.US:
		return true
	}
	return slices.ContainsFunc(x.Annex2, func(id string) bool { return id != allergen.Ask && slices.Contains(y.Annex2, id) })
}

// in gives what of it a recipe holds, in the words of the recipe.
func (a avoided) in(r *cook.Result, all cook.Allergy) (out []string) {
	for _, s := range a.substances {
		for _, f := range all.Found {
			if clashes(s, f.Substance) {
				out = append(out, f.Word)
			}
		}
		if s.Means == "honey" && len(all.Honey) > 0 {
			out = append(out, "honey")
		}
	}
	for _, w := range a.words {
		f, _ := foodOf(w)
		for _, own := range all.Words {
			if within(w, own.Word) {
				out = append(out, own.Word)
			}
		}
		for _, ln := range r.ByWeight() {
			if within(w, ln.Name) || partWithin(w, ln.Contains) || f.inLine(ln) {
				out = append(out, ln.Name)
			}
		}
	}
	return unique(out)
}

func partWithin(w string, parts []pantry.Part) bool {
	return slices.ContainsFunc(parts, func(p pantry.Part) bool { return within(w, p.Name) })
}

// allergyOf is what a batch holds, read once.
func (b *builder) allergyOf(batch int) cook.Allergy {
	if b.allergens == nil {
		b.allergens = make([]cook.Allergy, len(b.results))
		for i, r := range b.results {
			b.allergens[i] = r.Allergy()
		}
	}
	return b.allergens[batch]
}

// keepSafe leaves out jars that hold what the person must not eat, and where
// the person named no jam, also those of which that is not known.
func (b *builder) keepSafe(p promise, c *choice) {
	if strings.TrimSpace(p.allergy) == "" {
		return
	}
	a := avoid(p.allergy)
	b.narrow(c, allUnsafe, func(i int) bool {
		batch := b.plan.Stock[i].batch
		return len(a.in(b.results[batch], b.allergyOf(batch))) == 0
	})
	proven := slices.DeleteFunc(slices.Clone(c.rows), func(i int) bool { return len(b.allergyOf(b.plan.Stock[i].batch).Unknown) > 0 })
	if len(proven) > 0 && p.jam == "" && p.lot == "" {
		c.rows = proven
	}
}

// unsafe is the error of a jar that holds what the person must not eat.
func (b *builder) unsafe(p promise, c *choice) {
	a := avoid(p.allergy)
	var holds []string
	for _, i := range c.lots {
		r := b.results[i]
		holds = append(holds, fmt.Sprintf("%s (%s) contains %s", name(r), r.Lot, strings.Join(a.in(r, b.allergyOf(i)), ", ")))
	}
	d := b.found.Errorf("allergy-in-jar", p.file, pathOf(p, "allergy"), "%s must not eat %s: %s", b.who(p), a.said(), strings.Join(unique(holds), "; "))
	d.Hint = "promise another jam"
	pointAt(d, p)
}

// careful tells what an allergy leaves in doubt about the jars a person gets.
func (b *builder) careful(d *deal) {
	b.jamTold(d.promise)
	if strings.TrimSpace(d.allergy) == "" || d.got == 0 {
		return
	}
	a := avoid(d.allergy)
	for _, g := range a.guessed {
		b.beware(d, "near-allergen", "write it as it is spelled", "%s: the allergy %s is read as the word in brackets", b.who(d.promise), g)
	}
	for _, w := range a.words {
		if _, known := foodOf(w); known || d.entry != nil && b.again(d.entry.Pos.Line, "unknown-allergy", d.file, w) {
			continue
		}
		b.beware(d, "unknown-allergy", "read the ingredients of each jar yourself before you give it", "%s: no table knows the allergy %q; it was sought among the names of the ingredients alone", b.who(d.promise), w)
	}
	for _, i := range d.choice.rows {
		if d.counts[i] > 0 {
			b.doubts(d, a, i)
		}
	}
}

// beware warns about the allergy of one promise.
func (b *builder) beware(d *deal, code, hint, format string, args ...any) {
	pointAt(b.found.Warnf(code, d.file, pathOf(d.promise, "allergy"), format, args...).Hinted(hint), d.promise)
}

func (b *builder) doubts(d *deal, a avoided, row int) {
	batch := b.plan.Stock[row].batch
	r := b.results[batch]
	if u := b.allergyOf(batch).Unknown; len(u) > 0 {
		b.beware(d, "allergy-unknown", "name what is in it, or give another jar", "%s must not eat %s, and it is not known what is in %s of %s (%s)", b.who(d.promise), a.said(), u[0].Name, name(r), r.Lot)
	}
	if r.Kitchen == nil {
		return
	}
	handled := cook.Stated(r.Kitchen.AlsoHandles, "also_handles")
	if hit := a.in(&cook.Result{}, handled); len(hit) > 0 {
		b.beware(d, "allergy-kitchen", "ask the person whether traces matter, or give none", "%s must not eat %s, and the kitchen of %s (%s) also handles %s", b.who(d.promise), a.said(), name(r), r.Lot, strings.Join(hit, ", "))
	}
}
