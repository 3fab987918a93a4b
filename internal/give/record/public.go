package record

import (
	"net/url"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// view is all a page may show. A fact that has no field here is private.
type view struct {
	Lang, Title, Maker, Index string
	W                         map[string]string
	Name, Subtitle, Lot       string
	Allergens, Advisory       string
	Why                       []string // which ingredient each allergen comes from
	Ingredients               []label.Run
	Contents                  []string // fruit and sugar content
	Keeping, Rests, Seal      []string // words of keeping, and the facts they rest on
	Story                     []string
	Serve                     string
	Made, BestBefore          *when
	DateWord                  string
	Identity                  []string // the name of the food, where it is not the title
	Net                       []string
	Where                     []string // town, or the address where chosen
	Website                   string
	Statements                []string
	Photos                    []shown
}

// when is a date for people and for machines.
type when struct{ ISO, Text string }

func public(r *cook.Result, c *label.Content, w words, found *diag.List) view {
	k := r.Kitchen
	if k == nil {
		k = &batch.Kitchen{}
	}
	p := publisher{r: r, c: c, k: k, w: w, found: found}
	v := view{Lang: w.lang, W: w.text, Maker: strings.TrimSpace(k.Name), Lot: r.Lot,
		Made: w.when(r.Batch.Made), BestBefore: w.when(r.BestBefore), DateWord: w.dateWord(r)}
	v.Name, v.Subtitle = p.title()
	v.Title = strings.Join(nonEmpty(strings.TrimSpace(v.Name+" "+v.Subtitle), w.text["lot"]+" "+r.Lot, v.Maker), " · ")
	v.Allergens, v.Advisory = p.allergens(), p.advisory()
	v.Why = p.why()
	v.Ingredients = p.ingredients()
	v.Contents = p.texts(label.Fruit, label.Sugar)
	v.Keeping, v.Rests = p.keeping(), p.rests()
	v.Seal = p.seal()
	v.Story = paragraphs(r.Batch.Story)
	v.Serve = strings.TrimSpace(r.Batch.Serve)
	v.Identity = p.identity(v.Name + " " + v.Subtitle)
	v.Net = once(p.texts(label.Net))
	v.Where = p.where()
	v.Website = website(k.Website)
	v.Statements = p.texts(label.Statement)
	return v
}

// publisher gathers the public facts of one batch.
type publisher struct {
	r     *cook.Result
	c     *label.Content
	k     *batch.Kitchen
	w     words
	found *diag.List
}

// identity is the legal name of the food, where the title does not say it.
func (p publisher) identity(title string) (out []string) {
	for _, name := range once(p.texts(label.Identity)) {
		if !strings.EqualFold(strings.Join(strings.Fields(name), " "), strings.Join(strings.Fields(title), " ")) {
			out = append(out, name)
		}
	}
	return out
}

func (p publisher) title() (string, string) {
	if p.c != nil && strings.TrimSpace(p.c.Title) != "" {
		return strings.TrimSpace(p.c.Title), strings.TrimSpace(p.c.Subtitle)
	}
	if n := strings.TrimSpace(p.r.Batch.Name); n != "" {
		return n, ""
	}
	return p.w.text["lot"] + " " + p.r.Lot, ""
}

// blocks gives the content's blocks of some kinds, without those that repeat
// a private fact.
func (p publisher) blocks(kinds ...label.Kind) []label.Block {
	if p.c == nil {
		return nil
	}
	var out []label.Block
	for _, kind := range kinds {
		for _, b := range p.c.Blocks {
			if b.Kind != kind || strings.TrimSpace(b.Text()) == "" {
				continue
			}
			if p.private(b.Text()) {
				p.found.Notef("record-private", "", b.Path, "the %s statement repeats an address, telephone number or mail address and is left off the public page", kind).
					Hinted("the label keeps it; show_address = true publishes the address")
				continue
			}
			out = append(out, b)
		}
	}
	return out
}

func (p publisher) texts(kinds ...label.Kind) []string {
	var out []string
	for _, b := range p.blocks(kinds...) {
		out = append(out, strings.TrimSpace(b.Text()))
	}
	return out
}

func (p publisher) allergens() string {
	var said []string
	for _, b := range p.blocks(label.Allergens) {
		said = append(said, upper(runsText(headless(b.Runs, "allerg"))))
	}
	if len(said) > 0 {
		return strings.Join(said, " ")
	}
	if list := p.contains(); len(list) > 0 {
		return fill(p.w.text["contains"], "list", p.w.and(list))
	}
	if p.none() {
		return p.w.text["none"]
	}
	return p.w.text["list"]
}

// contains names the allergens as the label does, else by the recipe.
func (p publisher) contains() []string {
	if p.c != nil {
		return p.c.AllergenNames
	}
	return p.r.Allergy().Names()
}

// none reports whether it is proven that there is no allergen to name.
func (p publisher) none() bool {
	if p.c != nil {
		return p.c.NoAllergens
	}
	return p.r.Allergy().None() && len(p.k.AlsoHandles) == 0
}

// why says which ingredients each allergen comes from.
func (p publisher) why() (out []string) {
	if p.c == nil {
		return nil
	}
	for _, w := range p.c.AllergenWhy {
		out = append(out, upper(w.Name)+": "+strings.Join(w.From, ", "))
	}
	return out
}

func (p publisher) advisory() string {
	if t := p.texts(label.Advisory); len(t) > 0 {
		return strings.Join(t, " ")
	}
	if list := nonEmpty(p.k.AlsoHandles...); len(list) > 0 {
		return fill(p.w.text["handles"], "list", p.w.and(list))
	}
	return ""
}

// ingredients are the label's, else the recipe's by weight.
func (p publisher) ingredients() []label.Run {
	if b := p.blocks(label.Ingredients); len(b) > 0 {
		return headless(b[0].Runs, strings.ToLower(p.w.text["ingredients"]))
	}
	var names []string
	for _, l := range p.r.ByWeight() {
		names = append(names, l.Name)
	}
	return []label.Run{{Text: strings.Join(names, ", ")}}
}

// headless drops the "Ingredients:" or "Allergens:" a label begins with: the
// page has headings. Prescribed words such as "Contains" stay.
func headless(runs []label.Run, head string) []label.Run {
	if len(runs) == 0 {
		return runs
	}
	word, rest, ok := strings.Cut(runs[0].Text, ":")
	if !ok || !strings.HasPrefix(strings.ToLower(strings.TrimSpace(word)), head) || strings.Contains(strings.TrimSpace(word), " ") {
		return runs
	}
	out := append([]label.Run(nil), runs...)
	out[0].Text = rest
	for len(out) > 0 && strings.TrimSpace(out[0].Text) == "" {
		out = out[1:]
	}
	if len(out) == 0 {
		return runs
	}
	out[0].Text = strings.TrimLeft(out[0].Text, " \u00a0")
	return out
}

// upper raises the first letter.
func upper(s string) string {
	s = strings.TrimSpace(s)
	r, n := utf8.DecodeRuneInString(s)
	if n == 0 || r == utf8.RuneError {
		return s
	}
	return string(unicode.ToUpper(r)) + s[n:]
}

// keeping is the label's storage guidance and cautions, else the facts'.
func (p publisher) keeping() []string {
	out := p.texts(label.Storage)
	if len(out) == 0 {
		out = append(out, p.w.text[keepingWord(p.r.Keeping.Class)])
		if d := p.r.Keeping.OpenedDays; d > 0 {
			out = append(out, fill(p.w.text["opened"], "days", itoa(d)))
		}
	}
	return append(out, p.texts(label.Caution)...)
}

func keepingWord(c cook.Class) string {
	switch c {
	case cook.Cold, cook.Refrigerator:
		return "cold"
	case cook.Freezer:
		return "freezer"
	}
	return "shelf"
}

// seal is how to look at a jar before eating. A jar that was never sealed for
// the shelf has no vacuum to check.
func (p publisher) seal() []string {
	t := p.w.text
	out := []string{t["seal-bad"], t["seal-doubt"]}
	if keepingWord(p.r.Keeping.Class) == "shelf" {
		out = append([]string{t["seal-lid"], t["seal-open"]}, out...)
	}
	return out
}

// where is the town, or the whole address where the maker chose so.
func (p publisher) where() []string {
	if p.k.ShowAddress {
		return nonEmpty(p.k.Address...)
	}
	return nonEmpty(town(p.k.Address))
}

// website is a web address that may stand in a link; else nothing.
func website(s string) string {
	s = strings.TrimSpace(s)
	if s != "" && !strings.Contains(s, "://") {
		s = "https://" + s
	}
	u, err := url.Parse(s)
	if err != nil || u.Host == "" || u.Scheme != "http" && u.Scheme != "https" || u.User != nil {
		return ""
	}
	return u.String()
}

func runsText(runs []label.Run) string {
	return label.Block{Runs: runs}.Text()
}

func once(in []string) []string {
	var out []string
	seen := map[string]bool{"": true}
	for _, s := range in {
		s = strings.TrimSpace(s)
		if key := strings.ToLower(s); !seen[key] {
			out, seen[key] = append(out, s), true
		}
	}
	return out
}

func nonEmpty(in ...string) []string {
	var out []string
	for _, s := range in {
		if s = strings.TrimSpace(s); s != "" {
			out = append(out, s)
		}
	}
	return out
}

func paragraphs(s string) []string {
	return nonEmpty(strings.FieldsFunc(s, func(r rune) bool { return r == '\n' })...)
}

func (w words) when(d unit.Date) *when {
	if d.IsZero() {
		return nil
	}
	return &when{d.String(), w.day(d)}
}
