package pantry

import (
	"slices"
	"sort"
	"strings"
	"unicode"

	kitwords "jarmark/internal/kit/words"
)

// state words say how an ingredient was bought or cut, not what it is. They
// are dropped only when the full words are not in the table, so "ground
// ginger" stays apart from fresh ginger.
var stateWords = wordSet(`fresh freshly frozen thawed unthawed raw ripe organic local homegrown
	wild chopped crushed sliced diced mashed grated minced shredded pureed puree pulp whole halved quartered
	pitted stoned unpitted unstoned peeled unpeeled cored hulled stemmed trimmed washed seeded deseeded seedless squeezed strained
	ground packed large small medium big firm tart very extra destemmed topped tailed deveined toasted roasted rinsed drained loosely and finely roughly coarsely thinly lightly good quality
	cracked milled sifted our own garden picked hand unwaxed unsweetened unsalted prepared cold warm hot a an the of some cup
	frisch frische frischer reif reife reifer gehackt gehackte gehackter gewurfelt gewurfelte entsteint entsteinte
	entkernt entkernte geschalt geschalte tiefgekuhlt tiefgekuhlte puriert purierte frai fraiche hache hachee denoyaute
	denoyautee pele pelee surgele surgelee bio`)

func wordSet(words string) map[string]bool {
	set := map[string]bool{}
	for _, w := range strings.Fields(words) {
		set[w] = true
		for _, t := range tokens(w) { // words are looked up in the singular: "gros"
			set[t] = true
		}
	}
	return set
}

// fold makes words comparable: lower case, no accents or signs, singular.
func fold(words string) string { return strings.Join(tokens(words), " ") }

// A sign that parts two foods stays a word of its own: "apples/pears" are no
// apple pears.
func tokens(words string) []string {
	if len(words) > 200 {
		words = words[:200]
	}
	out := strings.FieldsFunc(parting.Replace(kitwords.Fold(words)), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("'/&+", r)
	})
	for i, w := range out {
		out[i] = kitwords.Singular(strings.ReplaceAll(w, "'", ""))
	}
	return out
}

var parting = strings.NewReplacer("/", " / ", "&", " & ", "+", " + ")

// parts reports a sign or word between two foods.
func parts(word string) bool {
	switch word {
	case "/", "&", "+", "and", "or", "with", "und", "oder", "mit", "et", "ou", "avec":
		return true
	}
	return false
}

// stripped drops state words, and signs that part nothing any more.
func stripped(ts []string) []string {
	var out []string
	for i, t := range ts {
		switch {
		case i > 0 && ts[i-1] == "with" && (t == "pit" || t == "stone" || t == "skin"): // cherries with pits; a peach pit is no peach
		case t == "with" && i+1 < len(ts) && (ts[i+1] == "pit" || ts[i+1] == "stone" || ts[i+1] == "skin"):
		case stateWords[t] && !parts(t) || strings.Trim(t, "0123456789") == "":
		case parts(t) && (len(out) == 0 || parts(out[len(out)-1])):
		default:
			out = append(out, t)
		}
	}
	if n := len(out); n > 0 && parts(out[n-1]) {
		out = out[:n-1]
	}
	return out
}

// alsoSaid are other words for a state that makes another food of it: "dry
// apricots" are dried ones, "powdered milk" is no milk.
var alsoSaid = map[string]string{"dry": "dried", "powdered": "ground", "crystallised": "crystallized", "glace": "candied", "tinned": "canned", "jarred": "canned"}

// forms gives the keys words are looked up by, most faithful first.
func forms(words string) []string {
	all := tokens(words)
	bare := stripped(all)
	out := []string{strings.Join(all, " "), strings.Join(all, ""), sorted(all)}
	for i := 0; i < len(all)-1 && stateWords[all[i]]; i++ { // "organic raw sugar" is raw sugar first
		out = append(out, strings.Join(all[i+1:], " "))
	}
	out = append(out, strings.Join(bare, " "), strings.Join(bare, ""), sorted(bare))
	if head, _, cut := strings.Cut(words, "("); cut {
		out = append(out, fold(head), strings.Join(stripped(tokens(head)), " "))
	}
	if other := resaid(bare); !slices.Equal(other, bare) {
		out = append(out, strings.Join(resaid(all), " "), strings.Join(other, " "), sorted(other))
	}
	return out
}

func resaid(ts []string) []string {
	out := slices.Clone(ts)
	for i, w := range out {
		if also, ok := alsoSaid[w]; ok {
			out[i] = also
		}
	}
	return out
}

func sorted(ts []string) string {
	c := append([]string(nil), ts...)
	sort.Strings(c)
	return strings.Join(c, " ")
}

// indexed builds the lookup of rows by folded words; earlier rows win, keys
// before names before aliases.
func indexed(rows []Ingredient) map[string]int {
	index := make(map[string]int, 8*len(rows)) // a row has about three names of three forms
	put := func(words string, i int) {
		for _, k := range keysOf(words) {
			if _, taken := index[k]; !taken && k != "" {
				index[k] = i
			}
		}
	}
	for i, g := range rows {
		if !g.AsKin { // its key is another food's
			put(g.Key, i)
		}
	}
	for i, g := range rows {
		put(g.Name, i)
	}
	for i, g := range rows {
		for _, a := range g.Aliases {
			put(a, i)
		}
	}
	return index
}

// keysOf are the folded forms words are found by.
func keysOf(words string) []string {
	ts := tokens(words)
	if len(ts) > 1 {
		return []string{strings.Join(ts, " "), strings.Join(ts, ""), sorted(ts)}
	}
	return ts
}

// at finds a row by one folded form: the maker's own first. A built-in row that
// an own row replaces leads to the own one.
func (p *Pantry) at(form string) (Ingredient, bool) {
	if form == "" {
		return Ingredient{}, false
	}
	if i, ok := p.ownIndex[form]; ok {
		return p.own[i], true
	}
	i, ok := p.spoken[form]
	if !ok {
		i, ok = p.index[form]
		if food, kin := p.kin[form]; kin {
			return p.ingredients[i].as(food), true
		}
	}
	if !ok {
		return Ingredient{}, false
	}
	for _, g := range p.own {
		if !g.AsKin && g.Key == p.ingredients[i].Key {
			return g, true
		}
	}
	return p.ingredients[i], true
}

// Ingredient finds a row by the maker's words: key, label name or alias, in
// any case, singular or plural, with or without words such as "fresh",
// "frozen" or "chopped"; "grape juice" is made from the row of the fruit.
func (p *Pantry) Ingredient(words string) (Ingredient, bool) {
	for _, f := range forms(words) {
		if g, ok := p.at(f); ok {
			if _, another := p.makesAnother(tokens(words), strings.Fields(f), g); !another {
				return g, true
			}
		}
	}
	for _, f := range forms(words) {
		if i, ok := p.juices[f]; ok {
			return juiceOf(p.ingredients[i], p.ingredients[i].Words["en"].Singular+" juice")
		}
	}
	if strings.HasSuffix(fold(words), " juice") {
		return p.Juice(words)
	}
	return p.driedSpice(words)
}

// Told finds the food that the words of a form make of a name: "peppers", form
// "red bell" are no black pepper, and "apricots", form "dried", no fresh ones. By
// are the words that told.
func (p *Pantry) Told(name, form string) (g Ingredient, by string, ok bool) {
	bare, known := p.Ingredient(name)
	if form == "" || !known || len(form) > 80 {
		return Ingredient{}, "", false
	}
	for _, f := range strings.FieldsFunc(form, func(r rune) bool { return strings.ContainsRune(",;()", r) }) {
		f = strings.TrimSpace(f)
		if cutOnly(f) {
			continue
		}
		if row, ok := p.Ingredient(f + " " + name); ok && row.Key != bare.Key {
			return row, f, true
		}
	}
	return Ingredient{}, "", false
}

// cutOnly reports that words say how a food was cut and no other food: apples,
// "peeled", were weighed as apples. What is ground is another one, as a spice.
func cutOnly(form string) bool {
	return !slices.ContainsFunc(tokens(form), func(w string) bool { return !stateWords[w] || w == "ground" })
}

// driedSpice finds "dried chilli flakes" and "dry sherry": of a spice the word says
// nothing new, and of a drink how little sugar is in it.
func (p *Pantry) driedSpice(words string) (Ingredient, bool) {
	ts := tokens(words)
	bare := slices.DeleteFunc(slices.Clone(ts), func(w string) bool { return w == "dried" || w == "dry" })
	if len(bare) == len(ts) || len(bare) == 0 {
		return Ingredient{}, false
	}
	g, ok := p.Ingredient(strings.Join(bare, " "))
	return g, ok && (g.Class == "spice" || g.Class == "alcohol")
}

// Suggest gives up to three label names or aliases near to unknown words.
func (p *Pantry) Suggest(words string) []string {
	want := strings.Join(stripped(tokens(words)), " ")
	if want == "" || len(want) > 60 {
		return nil
	}
	var all []near
	for i, g := range p.Ingredients() {
		best := near{d: 99, name: g.Name, i: i}
		for _, w := range slices.Concat([]string{g.Name}, g.Aliases, g.Kin) {
			if d := nearness(want, fold(w)); d < best.d {
				best.d, best.name = d, w
			}
		}
		if best.d <= 1+len(want)/4 {
			all = append(all, best)
		}
	}
	return nearest(all)
}

type near struct {
	d, i int
	name string
}

func nearest(all []near) (out []string) {
	sort.SliceStable(all, func(i, j int) bool { return all[i].d < all[j].d })
	seen := map[string]bool{}
	for _, n := range all {
		if !seen[n.name] && len(out) < 3 {
			seen[n.name] = true
			out = append(out, n.name)
		}
	}
	return out
}

// nearness is an edit distance; a shared last word ("lemon balm", "balm") is near.
func nearness(a, b string) int {
	d := kitwords.Distance(a, b)
	if len(a) > 3 && strings.HasSuffix(b, " "+a) || len(b) > 3 && strings.HasSuffix(a, " "+b) {
		d = min(d, 2)
	}
	return d
}
