package draft

import (
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Options are the circumstances of one run.
type Options struct {
	Payload string    // text of the QR code; empty = the record page, or plain words
	Gift    bool      // labels of jars given away: market duties become notes
	Today   unit.Date // prices are those of the market that comes next; zero: of the first
	Broken  bool      // the batch file has errors in what a label is made of: what the rules would say of it is mere consequence
}

// Draft is the content of the labels of one jar size while it is made: what came
// in, the words of the language, and the blocks and findings so far.
type Draft struct {
	R   *cook.Result
	B   *batch.Batch   // never nil
	K   *batch.Kitchen // never nil
	Jar cook.JarPlan
	Set *place.Set
	O   Options
	Say *place.Phrases
	C   *label.Content
	L   diag.List

	Made      map[string]*batch.Ingredient // by path
	NetMass   unit.Mass                    // declared net content as printed; 0 = none
	NetVolume unit.Volume                  // the same by fluid measure
	Net       string                       // the same in the first system of the place: "10 oz"
	Allergy   cook.Allergy                 // what the recipe's allergens rest on

	told map[[4]string]bool // what Wordings told: code, file, path, words
}

// NewDraft begins the labels of one jar size of a batch, by the rules of a place.
func NewDraft(r *cook.Result, jar cook.JarPlan, s *place.Set, o Options) *Draft {
	p := &Draft{R: r, B: r.Batch, K: r.Kitchen, Jar: jar, Set: s, O: o, Allergy: r.Allergy()}
	if p.B == nil {
		p.B = &batch.Batch{}
	}
	if p.K == nil {
		p.K = &batch.Kitchen{}
	}
	p.Made = make(map[string]*batch.Ingredient, len(p.B.Ingredients))
	for i := range p.B.Ingredients {
		p.Made[p.B.Ingredients[i].Path] = &p.B.Ingredients[i]
	}
	p.Say = p.language()
	title, sub := display(p.B)
	p.C = &label.Content{Title: title, Subtitle: sub, Parts: p.B.Label.Parts, Lang: p.Say.Lang, MainFruit: r.MainFruit, Colours: p.B.Label.Colours,
		JarKey: jar.Jar.Key, Around: jar.Jar.Circumference, Straight: jar.Jar.Panel, Face: jar.Jar.Face, Foot: jar.Jar.Foot, PanelArea: PanelArea(jar.Jar), LidAcross: lidAcross(jar.Jar.Lid), Measured: jar.Jar.Taped}
	return p
}

// language picks the kitchen's language when the place allows it.
func (p *Draft) language() *place.Phrases {
	for _, lang := range p.Set.Languages {
		if lang == p.K.Language {
			return p.Set.Words[lang]
		}
	}
	first := p.Set.Languages[0]
	base, _, _ := strings.Cut(strings.ToLower(p.K.Language), "-")
	switch {
	case p.K.Language == "":
	case Has(p.Set.Languages, base): // "de-DE"
		return p.Set.Words[base]
	case p.Set.EU != nil:
		p.Duty("language", p.KitchenFile(), "language", "a label for %s must be in a language easily understood there, and the rules are not held in %q; it is in %q", p.Set.Name, p.K.Language, first).
			Hinted("one of: " + Listed(p.Set.Languages)).Cited("Regulation (EU) 1169/2011 Art 15")
	default:
		p.L.Warnf("language", p.KitchenFile(), "language", "labels for %s can't be in %q, so they are in %q", p.Set.Name, p.K.Language, first).
			Hinted("one of: " + Listed(p.Set.Languages))
	}
	return p.Set.Words[first]
}

// Add appends a block; a block without an id takes its kind's.
func (p *Draft) Add(b label.Block) {
	if b.ID == "" {
		b.ID = string(b.Kind)
	}
	p.C.Blocks = append(p.C.Blocks, b)
}

// BatchFile names the batch file in findings; "" where there is none.
func (p *Draft) BatchFile() string {
	if p.B.File != nil {
		return p.B.File.Name
	}
	return ""
}

// KitchenFile names the kitchen file in findings.
func (p *Draft) KitchenFile() string {
	if p.K.File != nil {
		return p.K.File.Name
	}
	return "kitchen.toml"
}

// Duty reports what goods for sale must have: an error, on gifts a note.
func (p *Draft) Duty(code, file, path, format string, args ...any) *diag.Diagnostic {
	if p.O.Gift {
		return p.L.Notef(code, file, path, format, args...)
	}
	return p.L.Errorf(code, file, path, format, args...)
}

// A plan owes what only a cooked and filled batch can know: it is told what is
// still to come. Labels for sale wait for it.
const (
	NetToCome  = "a plan: the net weight is still to come"
	BrixToCome = "a plan: the refractometer reading is still to come"
	toComeHint = "labels for sale can be printed once it is written here"
)

// Awaits reports what a filled jar must have; of a plan it says what is to come.
func (p *Draft) Awaits(code, file, path, toCome, missing, hint, cite string) {
	if p.Jar.Planned() && !p.O.Gift {
		p.L.Notef(code, file, path, "%s", toCome).Hinted(toComeHint).Cited(cite)
		return
	}
	p.Duty(code, file, path, "%s", missing).Hinted(hint).Cited(cite)
}

// PacketRead reports whether the maker wrote out what an ingredient contains.
func (p *Draft) PacketRead(ln cook.Line) bool {
	return slices.ContainsFunc(ln.Paths, func(path string) bool { in := p.Made[path]; return in != nil && len(in.Contains) > 0 })
}

// Sulphited reports whether an ingredient is commonly sulphited and nobody read its
// packet: by the table, or by the words of one the table does not know.
func (p *Draft) Sulphited(ln cook.Line) bool {
	names := strings.Join(append([]string{ln.Name}, ln.Written...), " | ")
	if p.PacketRead(ln) || p.saysOf(names, "sulphited.not", "") {
		return false
	}
	return ln.Row.SulphiteCheck || ln.Key == "" && p.saysOf(ln.Name, "sulphited.words", "sulphited.unless")
}

// saysOf reports whether a name has one of a list of words, in any language of the place.
func (p *Draft) saysOf(name, words, unless string) bool {
	return slices.ContainsFunc(p.Set.Languages, func(lang string) bool {
		say := p.Set.Words[lang]
		if !say.Has(words) {
			return false
		}
		var but []string
		if say.Has(unless) {
			but = strings.Split(say.Say(unless), "|")
		}
		return Said(name, strings.Split(say.Say(words), "|"), but) != ""
	})
}

// TakenOut reports whether all of an ingredient was removed before the finish (a
// spice bag).
func (p *Draft) TakenOut(ln cook.Line) bool {
	stays := func(path string) bool { in := p.Made[path]; return in == nil || !in.Skip }
	return len(ln.Paths) > 0 && !slices.ContainsFunc(ln.Paths, stays)
}
