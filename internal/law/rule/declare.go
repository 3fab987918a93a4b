package rule

import (
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
)

// Options are the circumstances of one run.
type Options struct {
	Payload string // text of the QR code; empty = the record page, or plain words
	Gift    bool   // labels of jars given away: market duties become notes
	Broken  bool   // the batch file has errors in what a label is made of: what the rules would say of it is mere consequence
}

// pass is one jar size of one batch on its way through the statement kinds.
type pass struct {
	r    *cook.Result
	b    *batch.Batch   // never nil
	k    *batch.Kitchen // never nil
	jar  cook.JarPlan
	set  *Set
	prog *Programme // chosen scheme of the place; nil = none
	o    Options
	say  *Phrases
	c    *label.Content
	l    diag.List

	list      []entry                      // ingredients, heaviest first
	made      map[string]*batch.Ingredient // by path
	netMass   unit.Mass                    // declared net content as printed; 0 = none
	netVolume unit.Volume                  // the same by fluid measure
	allergy   cook.Allergy                 // what the recipe's allergens rest on
}

// Declare makes the content of the labels of one jar size. Content is always
// returned unless there is nothing to declare; findings tell what blocks it.
func Declare(r *cook.Result, jar cook.JarPlan, s *Set, o Options) (*label.Content, diag.List) {
	if r == nil || s == nil {
		var l diag.List
		l.Errorf("nothing-to-declare", "", "", "there is no batch or no place to declare for")
		return nil, l
	}
	p := newPass(r, jar, s, o)
	p.chooseProgramme()
	for _, name := range s.Kinds {
		if k, ok := kindNamed(name); ok {
			k.Run(p)
		}
	}
	return p.c, p.heard()
}

// heard leaves out what the rules say of a batch file that has to be mended
// first.
func (p *pass) heard() diag.List {
	if !p.o.Broken {
		return p.l
	}
	return slices.DeleteFunc(p.l, func(d diag.Diagnostic) bool { return d.File == p.batchFile() })
}

func newPass(r *cook.Result, jar cook.JarPlan, s *Set, o Options) *pass {
	p := &pass{r: r, b: r.Batch, k: r.Kitchen, jar: jar, set: s, o: o}
	if p.b == nil {
		p.b = &batch.Batch{}
	}
	if p.k == nil {
		p.k = &batch.Kitchen{}
	}
	p.list, p.made = entries(r), make(map[string]*batch.Ingredient, len(p.b.Ingredients))
	for i := range p.b.Ingredients {
		p.made[p.b.Ingredients[i].Path] = &p.b.Ingredients[i]
	}
	p.allergy = r.Allergy()
	p.say = p.language()
	title, sub := display(p.b)
	p.c = &label.Content{Title: title, Subtitle: sub, Lang: p.say.Lang, MainFruit: r.MainFruit, Colours: p.b.Label.Colours,
		JarKey: jar.Jar.Key, Around: jar.Jar.Circumference, Straight: jar.Jar.Panel, PanelArea: panelArea(jar.Jar), LidAcross: lidAcross(jar.Jar.Lid), Measured: jar.Jar.Measured}
	return p
}

// lidAcross reads the lid's size off its neck finish: "70-450 CT" and "63 mm
// lug" are named by the millimetres the lid is across (trade naming, no source);
// 0 = not named.
func lidAcross(finish string) unit.Length {
	n := 0
	for _, r := range strings.TrimSpace(finish) {
		if r < '0' || r > '9' || n > 999 {
			break
		}
		n = n*10 + int(r-'0')
	}
	if n < 20 || n > 200 {
		return 0
	}
	return unit.Length(n) * unit.Millimetre
}

// language picks the kitchen's language when the place allows it.
func (p *pass) language() *Phrases {
	for _, lang := range p.set.Languages {
		if lang == p.k.Language {
			return p.set.words[lang]
		}
	}
	first := p.set.Languages[0]
	base, _, _ := strings.Cut(strings.ToLower(p.k.Language), "-")
	switch {
	case p.k.Language == "":
	case has(p.set.Languages, base): // "de-DE"
		return p.set.words[base]
	case p.set.EU != nil:
		p.duty("language", p.kitchenFile(), "language", "a label for %s must be in a language easily understood there, and the rules are not held in %q; it is in %q", p.set.Name, p.k.Language, first).
			Hinted("one of: " + listed(p.set.Languages)).Cited("Regulation (EU) 1169/2011 Art 15")
	default:
		p.l.Warnf("language", p.kitchenFile(), "language", "labels for %s can't be in %q, so they are in %q", p.set.Name, p.k.Language, first).
			Hinted("one of: " + listed(p.set.Languages))
	}
	return p.set.words[first]
}

// add appends a block; a block without an id takes its kind's.
func (p *pass) add(b label.Block) {
	if b.ID == "" {
		b.ID = string(b.Kind)
	}
	p.c.Blocks = append(p.c.Blocks, b)
}

func (p *pass) batchFile() string {
	if p.b.File != nil {
		return p.b.File.Name
	}
	return ""
}

func (p *pass) kitchenFile() string {
	if p.k.File != nil {
		return p.k.File.Name
	}
	return "kitchen.toml"
}

// duty reports what goods for sale must have: an error, on gifts a note.
func (p *pass) duty(code, file, path, format string, args ...any) *diag.Diagnostic {
	if p.o.Gift {
		return p.l.Notef(code, file, path, format, args...)
	}
	return p.l.Errorf(code, file, path, format, args...)
}

// A plan owes what only a cooked and filled batch can know: it is told what is
// still to come. Labels for sale wait for it.
const (
	netToCome  = "a plan: the net weight is still to come"
	brixToCome = "a plan: the refractometer reading is still to come"
	toComeHint = "labels for sale can be printed once it is written here"
)

// awaits reports what a filled jar must have; of a plan it says what is to come.
func (p *pass) awaits(code, file, path, toCome, missing, hint, cite string) {
	if p.jar.Planned() && !p.o.Gift {
		p.l.Notef(code, file, path, "%s", toCome).Hinted(toComeHint).Cited(cite)
		return
	}
	p.duty(code, file, path, "%s", missing).Hinted(hint).Cited(cite)
}
