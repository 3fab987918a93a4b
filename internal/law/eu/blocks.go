package eu

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
)

// date adds the date of minimum durability, or the use-by date the maker chose.
func (c *pass) date() {
	best := c.R.BestBefore
	if best.IsZero() {
		c.missing("no-best-before", label.Date, "best_before", "there is no best-before date").
			Hinted("write best_before, or the facts it is computed from").Cited(citeFIC24)
		return
	}
	useBy := c.B.UseBy
	form := c.law.DateForm
	if useBy {
		form = "day"
	}
	d := dateFor(best, c.B.Made, form)
	text, path := c.dateText(d, useBy), "best_before"
	if useBy { // "shall be followed by a description of the storage conditions"
		path = "use_by"
		if keep := c.chilled(); keep != "" {
			text = draft.Dotted(text) + " " + keep
		}
	} else {
		c.perishable()
	}
	c.add(label.Block{Kind: label.Date, Exact: true, Runs: []label.Run{{Text: text}}, Cite: citeFIC24, Path: path})
}

// chilled is the storage condition beside a use-by date, with its temperature.
func (c *pass) chilled() string {
	switch c.R.Keeping.Class {
	case cook.Cold, cook.Refrigerator, "":
		return c.say("keep.chilled")
	}
	return c.C.Keep.Sealed
}

// perishable asks for a use-by date where eggs or milk keep a month at most
// (Art 24(1): highly perishable from a microbiological point of view; which food
// is, its maker must know). A month is common practice, no source.
func (c *pass) perishable() {
	cold := c.R.Keeping.Class == cook.Cold || c.R.Keeping.Class == cook.Refrigerator || c.R.Keeping.Class == ""
	if !cold || !c.R.BestBefore.Before(c.B.Made.AddDays(32)) {
		return
	}
	for _, ln := range c.R.Lines {
		if ln.Row.Class != "egg" && ln.Row.Class != "dairy" {
			continue
		}
		c.L.Warnf("use-by-question", c.BatchFile(), "best_before", "a food of %s that keeps so short and cold may be highly perishable, and then its date is a use-by date", c.ingredientQuiet(ln)).
			Hinted("if it is, write use_by instead of best_before; ask your food authority").Cited("Regulation (EU) 1169/2011 Art 24(1)")
		return
	}
}

// dateText words a date, day before month before year, uncoded (Annex X).
func (c *pass) dateText(d shownDate, useBy bool) string {
	shown := c.say("date."+d.Form, "d", fmt.Sprintf("%02d", d.Shown.Day), "m", fmt.Sprintf("%02d", d.Shown.Month), "y", fmt.Sprintf("%04d", d.Shown.Year))
	switch {
	case useBy:
		return c.say("date.use-by", "date", shown)
	case d.Form == "day":
		return c.say("date.best", "date", shown)
	}
	return c.say("date.best-end", "date", shown)
}

// lot adds the lot mark with its L. It is printed even where a full date would
// do: two batches can share one date.
func (c *pass) lot() {
	if c.R.Lot == "" {
		c.missing("no-lot", label.Lot, "lot", "there is no lot").Hinted("write lot in the batch file").Cited(citeLot)
		return
	}
	text := c.R.Lot
	if len(text) < 2 || text[0] != 'L' || text[1] >= 'A' {
		text = "L" + nbsp + text
	}
	c.add(label.Block{Kind: label.Lot, Exact: true, Runs: []label.Run{{Text: text}}, Cite: citeLot, Path: "lot"})
}

// maker adds the name and address of the business.
func (c *pass) maker() {
	k := c.K
	if name := strings.TrimSpace(k.Name); c.O.Gift { // a gift lies on other people's tables: no street
		if name != "" {
			c.add(label.Block{Kind: label.Maker, Runs: []label.Run{{Text: name}}, Cite: citeFIC9 + "(h)"})
		}
		return
	}
	if strings.TrimSpace(k.Name) == "" || len(k.Address) == 0 {
		d := c.missing("no-address", label.Maker, "", "the label needs the name and address of the business")
		d.File, d.Path = c.KitchenFile(), "address"
		d.Hinted("write name and address in kitchen.toml: " + c.law.Address).Cited(citeFIC9 + "(h), Art 8(1)")
		return
	}
	text := strings.Join(append([]string{strings.TrimSpace(k.Name)}, k.Address...), ", ")
	c.add(label.Block{Kind: label.Maker, Runs: []label.Run{{Text: text}}, Cite: citeFIC9 + "(h), Art 8(1)"})
}

// storage adds how to keep the jar, and the words after opening (Art 25).
func (c *pass) storage() {
	k := c.R.Keeping
	c.C.Keep.Sealed = c.say("keep." + string(orCold(k.Class)))
	switch {
	case k.OpenedDays >= 14:
		c.C.Keep.Opened = c.say("keep.opened-weeks", "n", strconv.Itoa(k.OpenedDays/7))
	case k.OpenedDays > 0:
		c.C.Keep.Opened = c.say("keep.opened-days", "n", strconv.Itoa(k.OpenedDays))
	default:
		c.C.Keep.Opened = c.say("keep.opened")
	}
	if k.UnsealedDays > 0 {
		c.C.Keep.Unsealed = c.say("keep.unsealed", "n", strconv.Itoa(k.UnsealedDays))
	}
	text := c.C.Keep.Sealed + " " + c.C.Keep.Opened
	if c.B.UseBy { // the storage condition follows the date
		text = c.C.Keep.Opened
	}
	c.add(label.Block{Kind: label.Storage, Runs: []label.Run{{Text: text}}, Cite: citeFIC25})
}

func orCold(k cook.Class) cook.Class {
	if k == "" {
		return cook.Cold // nothing known: the cautious words
	}
	return k
}

// caution adds the honey line, which no rule asks and agencies do.
func (c *pass) caution() {
	if honey := c.Allergy.Honey; len(honey) > 0 {
		c.add(label.Block{Kind: label.Caution, Runs: []label.Run{{Text: c.say("caution.honey")}},
			Cite: "infant botulism advice of food agencies; common practice, no source read", Verified: verifiedNot, Path: honey[0].Path})
	}
}

// closing tells what the maker should know but the label need not say.
func (c *pass) closing() {
	c.Wordings()
	if smaller(c.Jar, c.law.NoNutrition) {
		c.L.Notef("nutrition-exemption", c.BatchFile(), c.Jar.FillPath, "the jar is below %d cm², so it needs no nutrition declaration", c.law.NoNutrition).
			Cited("Regulation (EU) 1169/2011 Annex V(18)")
	} else if words := c.law.Nutrition; words != "" && !c.ppds {
		c.L.Notef("nutrition-exemption", c.KitchenFile(), "place", "%s", words).Cited(c.law.NutritionCite)
	}
	for _, b := range c.law.Beside {
		_, priced := c.C.Find(label.Price)
		if !c.O.Gift && (b.About == "net" && c.Net != "" || b.About == "price" && priced || b.About == "fruit" && c.owesFruit()) {
			c.L.Notef("beside-label", c.KitchenFile(), "place", "%s: %s", c.Set.Name, b.Text).Hinted(b.Hint).Cited(b.Cite)
		}
	}
	for _, u := range c.law.Unverified {
		c.L.Notef("unverified", c.KitchenFile(), "place", "unverified: %s", u).Hinted("check it with your food authority before you sell")
	}
	c.L.Notef("local-law", c.KitchenFile(), "place", "national law, the local food authority and the market come on top of these rules").
		Hinted("before selling, ask them and note the day you asked; this is no legal advice")
}

// advisory adds the voluntary cross-contact line.
func (c *pass) advisory() {
	names := draft.Without(c.handled, c.allAllergens())
	if len(names) == 0 {
		return
	}
	c.add(label.Block{Kind: label.Advisory, Runs: []label.Run{{Text: c.say("advisory", "list", draft.Joined(names, c.say("and")))}},
		Cite: "voluntary; Regulation (EU) 1169/2011 Art 36 (from memory)", Verified: verifiedNot, Path: "also_handles"})
}
