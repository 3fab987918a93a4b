// Package eu makes the statements of the European Union, its members, Great
// Britain and Northern Ireland: Regulation (EU) 1169/2011, Directive 2001/113/EC
// and what countries changed in them. It is a table of steps over a draft; every
// number comes from the tables of the place. What the American law says lives in
// us, what both say in draft. To add a statement: one method, one line of steps.
package eu

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Declare makes the labels of one jar size for a place of European law.
func Declare(r *cook.Result, jar cook.JarPlan, s *place.Set, o draft.Options) (*label.Content, diag.List) {
	c := newPass(r, jar, s, o)
	c.begin()
	return draft.Take(c.Draft, steps(), c)
}

// newPass reads what the steps share: the table of the place, the product that
// governs the batch, the letter height of the jar.
func newPass(r *cook.Result, jar cook.JarPlan, s *place.Set, o draft.Options) *pass {
	c := &pass{Draft: draft.NewDraft(r, jar, s, o), law: s.EU.In(s.ID), on: s.On}
	if c.on.IsZero() { // stock labelled before new rules may be sold off
		c.on = c.B.Made
	}
	c.pack, c.ppds, c.dec = c.law.Packers(), c.K.SaleMode == "ppds", c.say("decimal")
	c.names = annexNames(c.say)
	c.x = c.law.LetterHeight(sideArea(jar))
	c.choose()
	return c
}

// begin tells what is wrong before any statement is made, and reads the allergens.
func (c *pass) begin() {
	if c.ppds && len(c.law.PPDS) == 0 {
		c.L.Warnf("sale-mode", c.KitchenFile(), "sale_mode", "%s has no lighter rules for food packed for direct sale here, so the label says all a prepacked food must", c.Set.Name).
			Hinted(`write sale_mode = "prepacked"; in Germany the net quantity may stand on a sign beside the goods`).Cited("Regulation (EU) 1169/2011 Art 44; FPackV s. 19, 38(7)")
	}
	c.Evidence(c.names, citeFIC21)
	c.handled = c.Handles(c.names, citeFIC21)
	for _, ln := range c.R.Lines {
		c.Banned(ln)
	}
	if sideArea(c.Jar) <= 0 {
		c.L.Notef("jar-not-measured", c.BatchFile(), c.Jar.FillPath, "the jar's side is not known, so the larger letter height is used").
			Hinted("give the jar's circumference and straight height in kitchen.toml").Cited(citeFIC13)
	}
}

// Law says what a set may name.
func Law() place.Law { return place.Law{Statements: draft.StatementTypes(steps())} }

// steps lists every kind of statement; a set's `kinds` picks from it, in the
// order given there.
func steps() []draft.Step[*pass] {
	step := draft.NewStep[*pass]
	return []draft.Step[*pass]{
		step("name", "name of the food and what may bear it, Art 17; Directive 2001/113/EC", namePhrases, (*pass).identity),
		step("fruit", "fruit content, Directive 2001/113/EC Art 2(3)", keys("jam.fruit"), (*pass).fruit),
		step("sugar", "total sugar content, Directive 2001/113/EC Art 2(4) until 2026", keys("jam.sugar"), (*pass).sugar),
		step("sweeteners", "words beside the name, Annex III 2", keys("with-sweeteners", "with-sugars-and-sweeteners", "laxative", "phenylalanine"), (*pass).sweeteners),
		step("net", "nominal quantity, Art 23; Directive 76/211/EEC", keys("decimal"), (*pass).net),
		step("ingredients", "list of ingredients with allergens and quantities, Art 18, 21, 22", listPhrases, (*pass).list),
		step("storage", "how to keep the jar, Art 25", keepPhrases, (*pass).storage),
		step("date", "date of minimum durability or use-by date, Art 24", keys("date.best", "date.best-end", "date.use-by", "date.day", "date.month", "keep.chilled"), (*pass).date),
		step("lot", "lot mark, Directive 2011/91/EU", nil, (*pass).lot),
		step("maker", "name and address of the business, Art 8", nil, (*pass).maker),
		step("origin", "place of provenance, Art 26", keys("origin", "origin.of", "origin.words", "origin.unless"), (*pass).origin),
		step("caution", "honey and infants", keys("caution.honey"), (*pass).caution),
		step("price", draft.PriceDoc, draft.PricePhrases, (*pass).Price),
		step("closing", "nutrition exemption, what is unverified, whom to ask", nil, (*pass).closing),
		step("advisory", "what else the kitchen handles, voluntary", keys("advisory", "and"), (*pass).advisory),
		step("extras", draft.ExtrasDoc, draft.ExtrasPhrases, (*pass).Extras),
	}
}

var namePhrases = keys("product.spread", "name.mixed", "name.composed", "name.mixed-also", "name.numbers", "name.juice", "word.juice", "word.forms", "word.heads", "claim.reduced-sugar")

var keepPhrases = keys("keep.shelf", "keep.shelf-short", "keep.refrigerated", "keep.freezer", "keep.refrigerator-jam",
	"keep.opened", "keep.opened-days", "keep.opened-weeks", "keep.unsealed")

var listPhrases = keys("ingredients.heading", "contains", "and", "quid.item", "quid.prepared",
	"additive.colon", "additive.gelling", "additive.thickener", "additive.stabiliser", "additive.acid", "additive.regulator", "additive.antioxidant",
	"additive.preservative", "additive.firming", "additive.emulsifier", "additive.humectant", "additive.colour", "additive.sweetener", "additive.raising",
	"annex2.wheat", "annex2.spelt", "annex2.khorasan", "annex2.rye", "annex2.barley", "annex2.oats", "annex2.crustaceans", "annex2.eggs",
	"annex2.fish", "annex2.peanuts", "annex2.soybeans", "annex2.milk", "annex2.almonds", "annex2.hazelnuts", "annex2.walnuts",
	"annex2.cashews", "annex2.pecans", "annex2.brazils", "annex2.pistachios", "annex2.macadamias", "annex2.celery", "annex2.mustard",
	"annex2.sesame", "annex2.sulphites", "annex2.lupin", "annex2.molluscs")

func keys(keys ...string) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = "eu." + k
	}
	return out
}
