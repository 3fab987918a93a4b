package eu

import (
	"slices"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/kitchen/weigh"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
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

// pass is one jar size of one batch on its way through the European steps.
type pass struct {
	*draft.Draft
	law  *place.European
	on   unit.Date // the day the labels are made
	pack weigh.Packers
	ppds bool
	dec  string // decimal sign of the language

	product       place.Product // the row that governs the batch
	governed      bool          // there is one
	fruits        []share       // the fruit as it counts, heaviest first
	names         draft.Names   // of a substance, in the label's language
	sulphiteDoubt bool          // something may be sulphited, and nobody read the packet
	handled       []string      // what else the kitchen handles

	x unit.Length // least x-height
}

// say gives a phrase "eu.KEY" of the language, filled.
func (c *pass) say(key string, kv ...string) string { return c.Say.Say("eu."+key, kv...) }

func (c *pass) has(key string) bool { return c.Say.Has("eu." + key) }

// add appends a block, its least x-height where no other height is set, and
// whether this sale mode requires it.
func (c *pass) add(b label.Block) {
	if b.Min.Length == 0 {
		b.Min = label.Height{On: label.XHeight, Length: c.x}
	}
	b.Required = c.required(b.Kind)
	if b.Verified == "" {
		b.Verified = verifiedRead
	}
	c.Add(b)
}

func (c *pass) required(k label.Kind) bool {
	if c.ppds && len(c.law.PPDS) > 0 {
		return slices.Contains(c.law.PPDS, string(k))
	}
	return slices.Contains(c.law.Prepacked, string(k))
}

// missing reports a particular the label cannot do without: a duty, and a warning
// where the sale mode does not ask it.
func (c *pass) missing(code string, what label.Kind, path, message string) *diag.Diagnostic {
	if c.O.Gift || c.required(what) {
		return c.Duty(code, c.BatchFile(), path, "%s", message)
	}
	return c.L.Warnf(code, c.BatchFile(), path, "%s", message)
}

// pending is missing for what only a cooked and filled batch can know: of a plan
// it says what is still to come.
func (c *pass) pending(code string, what label.Kind, path, toCome, missing, hint, cite string) {
	if c.required(what) {
		c.Awaits(code, c.BatchFile(), path, toCome, missing, hint, cite)
		return
	}
	c.missing(code, what, path, missing).Hinted(hint).Cited(cite)
}

// fail blocks printing for sale; on a gift it warns.
func (c *pass) fail(code, path, message string) *diag.Diagnostic {
	if c.O.Gift {
		return c.L.Warnf(code, c.BatchFile(), path, "%s", message)
	}
	return c.L.Errorf(code, c.BatchFile(), path, "%s", message)
}

// tooLittle is fail for what is measured against the yield: on an estimated one it
// warns.
func (c *pass) tooLittle(code, path, message string) *diag.Diagnostic {
	if c.R.Yield.How == cook.Estimated {
		return c.L.Warnf(code, c.BatchFile(), path, "%s", message)
	}
	return c.fail(code, path, message)
}

// sideArea is the straight side of the jar in mm², the largest surface of a
// jar (Commission questions and answers 2013, from memory); 0 = unknown.
func sideArea(j cook.JarPlan) float64 {
	return j.Jar.Circumference.MM() * j.Jar.Panel.MM()
}

// smaller reports that the largest surface of a jar is known and below so many cm².
func smaller(j cook.JarPlan, cm2 int) bool {
	mm2 := sideArea(j)
	return mm2 > 0 && mm2 < float64(cm2)*100
}
