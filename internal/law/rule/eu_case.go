package rule

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/weigh"
	"jarmark/internal/law/label"
	"slices"
)

// Clauses cited more than once.
const (
	citeFIC9      = "Regulation (EU) 1169/2011 Art 9(1)"
	citeFIC13     = "Regulation (EU) 1169/2011 Art 13(2), (3), Annex IV"
	citeFIC18     = "Regulation (EU) 1169/2011 Art 18, Annex VII"
	citeFIC21     = "Regulation (EU) 1169/2011 Art 21, Annex II"
	citeFIC22     = "Regulation (EU) 1169/2011 Art 22, Annex VIII"
	citeFIC24     = "Regulation (EU) 1169/2011 Art 24, Annex X"
	citeFIC25     = "Regulation (EU) 1169/2011 Art 25"
	citeNet       = "Directive 76/211/EEC Annex I; Regulation (EU) 1169/2011 Art 23"
	citeLot       = "Directive 2011/91/EU Art 3, 5"
	citeJam       = "Directive 2001/113/EC Art 2, Annex I"
	verifiedRead  = "primary"
	verifiedOther = "secondary"
	verifiedNot   = "memory"
)

// euCase is one batch in one jar under European rules: what came in, the words
// of the language, and the blocks and findings made so far.
type euCase struct {
	r    *cook.Result
	jar  cook.JarPlan
	law  *euTable
	rows []product // legal products of the place
	on   unit.Date // the day the labels are made
	pack weigh.Packers
	lang string
	gift bool
	ppds bool
	say  func(key string, kv ...string) string // a phrase of the language, filled
	has  func(key string) bool
	dec  string // decimal sign of the language

	additives     []additive
	product       product   // the row that governs the batch
	governed      bool      // there is one
	fruits        []euShare // the fruit as it counts, heaviest first
	names         lawNames  // of a substance, in the label's language
	sulphiteDoubt bool      // something may be sulphited, and nobody read the packet
	handled       []string  // what else the kitchen handles

	x       unit.Length // least x-height
	netMass unit.Mass   // nominal quantity as printed; 0 = none
	keep    label.Keep
	blocks  []label.Block
	l       diag.List
}

// add appends a block, its least x-height where no other height is set, and
// whether this sale mode requires it.
func (c *euCase) add(b label.Block) {
	if b.ID == "" {
		b.ID = string(b.Kind)
	}
	if b.Min.Length == 0 {
		b.Min = label.Height{On: label.XHeight, Length: c.x}
	}
	b.Required = c.required(b.Kind)
	if b.Verified == "" {
		b.Verified = verifiedRead
	}
	c.blocks = append(c.blocks, b)
}

func (c *euCase) required(k label.Kind) bool {
	if c.ppds && len(c.law.PPDS) > 0 {
		return slices.Contains(c.law.PPDS, string(k))
	}
	return slices.Contains(c.law.Prepacked, string(k))
}

// batchFile and kitchenFile name the maker's files in findings.
func (c *euCase) batchFile() string {
	if c.r.Batch != nil && c.r.Batch.File != nil {
		return c.r.Batch.File.Name
	}
	return ""
}

func (c *euCase) kitchenFile() string {
	if c.r.Kitchen != nil && c.r.Kitchen.File != nil {
		return c.r.Kitchen.File.Name
	}
	return "kitchen.toml"
}

// missing reports a particular the label cannot do without: an error on goods
// for sale, a warning where the sale mode does not ask it, a note on a gift.
func (c *euCase) missing(code string, what label.Kind, path, message string) *diag.Diagnostic {
	switch {
	case c.gift:
		return c.l.Notef(code, c.batchFile(), path, "%s", message)
	case !c.required(what):
		return c.l.Warnf(code, c.batchFile(), path, "%s", message)
	}
	return c.l.Errorf(code, c.batchFile(), path, "%s", message)
}

// pending is missing for what only a cooked and filled batch can know: of a plan
// it says what is still to come.
func (c *euCase) pending(code string, what label.Kind, path, toCome, missing, hint, cite string) {
	if c.jar.Planned() && !c.gift && c.required(what) {
		c.l.Notef(code, c.batchFile(), path, "%s", toCome).Hinted(toComeHint).Cited(cite)
		return
	}
	c.missing(code, what, path, missing).Hinted(hint).Cited(cite)
}

// sideArea is the straight side of the jar in mm², the largest surface of a
// jar (Commission questions and answers 2013, from memory); 0 = unknown.
func sideArea(j cook.JarPlan) float64 {
	return j.Jar.Circumference.MM() * j.Jar.Panel.MM()
}
