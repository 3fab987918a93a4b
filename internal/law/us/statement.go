package us

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// statement adds the sentence a home kitchen's food must bear, and checks the
// particulars the state asks. On gifts it stays away, and a finding says so.
func statement(p *pass) {
	pr := p.prog
	if pr == nil {
		p.L.Notef("pick-your-state", p.KitchenFile(), "place", "most states want a sentence of their own on food from a home kitchen, and no state is chosen").
			Hinted(`write place = "us-or" (your state) in kitchen.toml; jarmark places lists them`)
		return
	}
	if p.O.Gift {
		p.giftNote(pr)
		return
	}
	p.sentence(pr)
	p.sign(pr)
	p.trust(pr)
	p.unread(pr)
	p.particulars(pr)
	p.pets(pr)
	p.jamAllowed(pr)
	p.coldGoods(pr)
	p.acidified(pr)
	p.standardOnly(pr)
	p.fruitPH(pr)
	p.finishedPH(pr)
	p.excluded(pr)
	p.websiteNote(pr)
	p.typeNotes(pr)
}

func (p *pass) giftNote(pr *place.Programme) {
	if pr.Statement == "" && pr.Meaning == "" {
		return
	}
	p.L.Notef("gift-no-statement", p.KitchenFile(), "place", "this is a gift label: the home-kitchen statement of %s is left off", p.Set.Name).
		Hinted("print market labels for every jar you sell; that gifts are free of it is our reading, ask your agency").Cited(pr.Law)
}

// sentence adds the blocks: the exact words, the words for a prescribed
// meaning, the recommended words.
func (p *pass) sentence(pr *place.Programme) {
	n := 0
	put := func(text string, exact, required bool) {
		n++
		b := label.Block{ID: fmt.Sprintf("statement-%d", n), Kind: label.Statement, Runs: []label.Run{{Text: text, Bold: pr.Bold}},
			Min: p.statementHeight(pr), Exact: exact, Bold: pr.Bold, Required: required, Cite: pr.Law, Verified: pr.Confidence, Path: "place"}
		if pr.Placement == "panel" {
			b.Zone = label.Panel
		}
		p.add(b)
	}
	if pr.Statement != "" {
		put(pr.Statement, true, true)
	}
	if pr.Meaning != "" {
		put(p.Say.Say("us.meaning", "meaning", pr.Meaning), false, true)
	}
	if pr.Recommended != "" {
		put(pr.Recommended, true, false)
		p.L.Notef("statement-recommended", p.KitchenFile(), "place", "%s recommends the words %q and does not demand them", p.Set.Name, pr.Recommended).Cited(pr.Law)
	}
}

// sign adds the words of a sign at the point of sale. Its letters are at least
// as high as the statement's on a label; that they be seen from where buyers
// stand is what the laws ask, without a figure.
func (p *pass) sign(pr *place.Programme) {
	if pr.Sign == "" {
		return
	}
	p.add(label.Block{ID: "sign", Kind: label.SignWords, Runs: []label.Run{{Text: pr.Sign}}, Min: p.statementHeight(pr),
		Exact: true, Cite: pr.Law, Verified: pr.Confidence, Path: "place"})
}

// seen says how a sign must look where the law does: no law that was read gives
// its letters a size.
func seen(pr *place.Programme) string {
	if pr.SignRule == "" {
		return ""
	}
	return "; it must be " + pr.SignRule
}

// statementHeight is the least letter height of the statement.
func (p *pass) statementHeight(pr *place.Programme) label.Height {
	switch {
	case pr.MinLetter > 0:
		return label.Height{On: label.AnyCase, Length: unit.Length(pr.MinLetter)}
	case pr.MinPoints > 0:
		return label.Height{On: label.PointSize, Length: unit.Points(float64(pr.MinPoints))}
	}
	return p.letterO()
}

// trust says how far the words may be relied on.
func (p *pass) trust(pr *place.Programme) {
	file, words := p.KitchenFile(), "the home-kitchen statement of "+p.Set.Name
	if pr.Statement == "" && pr.Meaning == "" {
		d := p.L.Notef("no-statement", file, "place", "no compulsory home-kitchen statement of %s was found", p.Set.Name)
		d.Hinted("ask the agency whether there is one").Cited(pr.Law)
		if pr.Confidence != "primary" {
			d.Severity = diag.Warning
		}
		return
	}
	if pr.Meaning != "" {
		p.L.Warnf("statement-meaning", file, "place", "%s prescribes what the statement says, not its words; the label says %q", p.Set.Name, p.Say.Say("us.meaning", "meaning", pr.Meaning)).
			Hinted("confirm the words with the agency before selling").Cited(pr.Law)
	}
	switch pr.Confidence {
	case "primary":
		p.L.Notef("statement-source", file, "place", "%s was read in: %s", words, pr.Source).Hinted("looked up " + looked(pr.CheckedOn) + "; such words change nearly every year").Cited(pr.Law)
	case "secondary":
		p.L.Warnf("statement-secondary", file, "place", "%s was read on a page about the law, not in it: %s", words, pr.Source).
			Hinted("confirm it with the agency before selling; looked up " + pr.CheckedOn).Cited(pr.Law)
	default:
		p.L.Warnf("statement-memory", file, "place", "%s is a draft from memory, unverified", words).
			Hinted("confirm with the agency before selling").Cited(pr.Law)
	}
	switch {
	case pr.Note != "": // tells of the conditions too
		p.L.Notef("state-note", file, "place", "%s: %s", p.Set.Name, pr.Note).Cited(pr.Law)
	case pr.When != "":
		p.L.Notef("statement-when", file, "place", "%s", pr.When).Cited(pr.Law)
	}
}

// unread tells what of a programme nobody has read in the law.
func (p *pass) unread(pr *place.Programme) {
	if len(pr.Memory) > 0 {
		p.L.Notef("state-memory", p.KitchenFile(), "place", "not read in the law of %s: %s", p.Set.Name, draft.Listed(pr.Memory)).
			Hinted("ask the agency about it").Cited(pr.Law)
	}
}

// pets adds the line some states want where animals live in the home.
func (p *pass) pets(pr *place.Programme) {
	if !p.shows("pets") {
		return
	}
	species := draft.PlainStars(strings.TrimSpace(p.K.Pets))
	if species == "" {
		p.L.Notef("pets", p.KitchenFile(), "place", "%s wants the label to say so when pets live in the home, with their species", p.Set.Name).
			Hinted(`write pets = "a cat" in kitchen.toml if there are any`).Cited(pr.Law)
		return
	}
	p.add(label.Block{ID: "pets", Kind: label.Statement, Runs: []label.Run{{Text: p.Say.Say("us.pets", "species", species)}}, Required: true, Cite: pr.Law, Verified: pr.Confidence, Path: "pets"})
}

// typeNotes tells what of the type rule no program can measure.
func (p *pass) typeNotes(pr *place.Programme) {
	if len(pr.Fonts) > 0 {
		p.L.Warnf("statement-font", p.KitchenFile(), "place", "the rule of %s names a typeface (%s), and our labels are set in others", p.Set.Name, draft.Listed(pr.Fonts)).
			Hinted("ask the agency whether another clear face will do").Cited(pr.Law)
	}
	switch {
	case pr.Sign != "" && pr.SignAbout != "":
		p.L.Notef("stall-sign", p.KitchenFile(), "place", "%s wants a sign where you sell: %s", p.Set.Name, pr.SignAbout).
			Hinted("--kind sign prints one, in the words of the label's statement" + seen(pr)).Cited(pr.Law)
	case pr.Sign != "":
		p.L.Notef("stall-sign", p.KitchenFile(), "place", "%s has words for a sign where you sell: %q", p.Set.Name, pr.Sign).
			Hinted("--kind sign prints it" + seen(pr)).Cited(pr.Law)
	case pr.SignAbout != "":
		p.L.Notef("stall-sign", p.KitchenFile(), "place", "%s also wants a sign where you sell: %s", p.Set.Name, pr.SignAbout).Cited(pr.Law)
	}
}

// looked is the day of a look-up in words.
func looked(day string) string {
	if d, err := unit.ParseDate(day); err == nil {
		return d.Words(true)
	}
	return day
}
