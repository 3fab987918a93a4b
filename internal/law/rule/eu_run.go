package rule

import "jarmark/internal/kit/unit"

// runEU is the statement kind "eu": every statement of a European or British
// label, from the [eu] table of the set and the phrases "eu.…" of the language.
func runEU(p *pass) {
	if p.set.EU == nil {
		p.l.Errorf("no-eu-table", "", "place", "the rules of %s have no European table", p.set.Name)
		return
	}
	law := p.set.EU.in(p.set.ID)
	c := &euCase{r: p.r, jar: p.jar, law: law, rows: p.set.Products, additives: p.set.Additives.rows(), on: p.labelled(), pack: law.packers(),
		lang: p.say.Lang, gift: p.o.Gift, ppds: p.k.SaleMode == "ppds",
		say: func(key string, kv ...string) string { return p.say.Say("eu."+key, kv...) },
		has: func(key string) bool { return p.say.Has("eu." + key) }}
	c.dec = c.say("decimal")
	if c.ppds && len(law.PPDS) == 0 {
		p.l.Warnf("sale-mode", p.kitchenFile(), "sale_mode", "%s has no lighter rules for food packed for direct sale here, so the label says all a prepacked food must", p.set.Name).
			Hinted(`write sale_mode = "prepacked"; in Germany the net quantity may stand on a sign beside the goods`).Cited("Regulation (EU) 1169/2011 Art 44; FPackV s. 19, 38(7)")
	}
	c.names = annexNames(c.say)
	p.allergens(c.names, citeFIC21)
	c.handled = p.handled(c.names, citeFIC21)
	c.declare()
	p.netMass, p.c.Keep, p.c.AllergenNames = c.netMass, c.keep, c.allAllergens()
	p.c.NoAllergens = p.c.NoAllergens && len(p.c.AllergenNames) == 0 && len(c.handled) == 0 && !c.sulphiteDoubt
	for _, b := range c.blocks {
		p.add(b)
	}
	p.l = append(p.l, c.l...)
}

// labelled is the day the labels are made: stock labelled before new jam rules
// may be sold off.
func (p *pass) labelled() unit.Date {
	if p.set.On.IsZero() {
		return p.b.Made
	}
	return p.set.On
}

// euPhrases are the phrases every language of a European set must have, beside
// the names of ingredients.
var euPhrases = euKeys(
	"jam.fruit", "jam.sugar", "date.best", "date.best-end", "date.use-by", "date.day", "date.month", "date.year",
	"product.spread",
	"name.mixed", "name.composed", "ingredients.heading", "contains", "and", "decimal", "quid.item", "quid.prepared",
	"name.mixed-also", "name.numbers", "name.juice", "with-sweeteners", "with-sugars-and-sweeteners", "laxative", "origin", "origin.of", "phenylalanine",
	"word.juice", "word.forms", "word.heads", "claim.reduced-sugar",
	"keep.chilled", "keep.shelf", "keep.shelf-short", "keep.refrigerated", "keep.freezer", "keep.refrigerator-jam",
	"keep.opened", "keep.opened-days", "keep.opened-weeks", "keep.unsealed", "caution.honey", "advisory",
	"additive.colon", "additive.gelling", "additive.thickener", "additive.stabiliser", "additive.acid", "additive.regulator", "additive.antioxidant",
	"additive.preservative", "additive.firming", "additive.emulsifier", "additive.humectant", "additive.colour", "additive.sweetener", "additive.raising",
	"annex2.wheat", "annex2.spelt", "annex2.khorasan", "annex2.rye", "annex2.barley", "annex2.oats", "annex2.crustaceans", "annex2.eggs",
	"annex2.fish", "annex2.peanuts", "annex2.soybeans", "annex2.milk", "annex2.almonds", "annex2.hazelnuts", "annex2.walnuts",
	"annex2.cashews", "annex2.pecans", "annex2.brazils", "annex2.pistachios", "annex2.macadamias", "annex2.celery", "annex2.mustard",
	"annex2.sesame", "annex2.sulphites", "annex2.lupin", "annex2.molluscs",
)

func euKeys(keys ...string) []string {
	out := make([]string, len(keys))
	for i, k := range keys {
		out[i] = "eu." + k
	}
	return out
}
