package pack

import (
	"fmt"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// recallSteps is our own wording of ordinary practice; the agency's
// instructions come first (common practice, no source).
var recallSteps = []string{
	"Call your local food-safety agency first: what they ask for comes before this sheet.",
	"Stop giving and selling this lot, and set aside what is at home, marked DO NOT EAT.",
	"Call everyone below. Ask them not to eat or taste it, and how many jars they still have.",
	"For jars sold at markets put up a notice with product, lot and date, and tell its manager.",
	"Write down whom you reached and when; keep this sheet.",
}

// RecallDoc is a sheet to work from by telephone when a lot must come back.
// The reason is left to be written by hand.
func (h *History) RecallDoc(fs *face.Set, paper string) (*page.Doc, diag.List) {
	if paper == "" {
		paper = Paper(h.Units)
	}
	head := h.in.say("Recall sheet, lot %s", h.Lot)
	c, found := newLayout(fs, paper, head)
	if c == nil {
		return nil, found
	}
	product := join(h.Products)
	for _, b := range c.titleBands(h.in.say("Recall sheet: lot %s", h.Lot), strings.TrimPrefix(h.Maker+" · "+product, " · ")) {
		c.put(b)
	}
	for _, t := range []string{
		h.in.say("On the label: %s, lot %s.", product, h.Lot),
		h.in.say("Made %s, best before %s.", h.in.day(h.Made), h.in.day(h.BestBefore)),
		h.sum() + ".",
	} {
		for _, b := range c.paragraph(plainFace, pt(11.5), margin, ink, t) {
			c.put(b)
		}
	}
	c.group(group{head: gap(unit.Millimetre), rows: linesBand(h.in.say("Reason, and what to look for (write by hand)"), 2)})
	h.gapsGroup(c)
	h.stepsGroup(c)
	h.callGroup(c)
	h.homeGroup(c)
	h.relatedGroup(c)
	c.group(group{head: gap(2 * unit.Millimetre), rows: linesBand(h.in.say("Agency called: name, date, reference; notes"), 3)})
	return c.finish(head, h.Maker)
}

func (h *History) stepsGroup(c *layout) {
	g := group{head: headBand(h.in.say("First"), h.in.say("the agency has the last word"))}
	for _, s := range recallSteps {
		lines := c.wrap(plainFace, pt(11), c.w-2*margin-tickSide-4*unit.Millimetre, h.in.say(s))
		g.rows = append(g.rows, band{h: pt(11)*14/10*unit.Length(len(lines)) + 2*unit.Millimetre, draw: func(c *layout, y unit.Length) {
			c.tick(margin, y+3*unit.Millimetre, 4*unit.Millimetre)
			for i, l := range lines {
				c.text(plainFace, pt(11), margin+tickSide+4*unit.Millimetre, y+unit.Millimetre+pt(11)*14/10*unit.Length(i)+pt(11), ink, l)
			}
		}})
	}
	c.group(g)
}

// gapsGroup names what was not read, ahead of all else: jars may be missing
// from the list below.
func (h *History) gapsGroup(c *layout) {
	gaps := h.Gaps()
	if len(gaps) == 0 {
		return
	}
	g := group{head: headBand(h.in.say("Not read"), h.in.say("look into these by hand")), cont: headBand(h.in.say("Not read")+", "+h.in.say("continued"), "")}
	for i, t := range gaps {
		f := plainFace
		if i == 0 {
			f = boldFace
		}
		g.rows = append(g.rows, c.paragraph(f, pt(10.5), margin, ink, t)...)
	}
	c.group(g)
}

func (h *History) callGroup(c *layout) {
	if len(h.Holders) == 0 {
		return
	}
	g := group{head: headBand(h.in.say("Call or tell"), ""), cont: headBand(h.in.say("Call or tell")+", "+h.in.say("continued"), "")}
	for _, k := range h.Holders {
		g.rows = append(g.rows, callBand(k))
	}
	for _, t := range h.honest() {
		g.rows = append(g.rows, c.paragraph(italicFace, pt(10.5), margin, soft, t)...)
	}
	c.group(g)
}

// callBand is one to call: box to tick, who, what they have, two fields.
func callBand(k Holder) band {
	return band{h: 14 * unit.Millimetre, draw: func(c *layout, y unit.Length) {
		base := y + 6500*unit.Micrometre
		c.tick(margin, y+5500*unit.Micrometre, tickSide)
		x, end := margin+tickSide+4*unit.Millimetre, c.w-margin
		low := base + 4800*unit.Micrometre
		c.stroke(end-16*unit.Millimetre, end, base+unit.Millimetre/2, soft, unit.Points(0.8))
		c.text(plainFace, pt(8.5), end-16*unit.Millimetre, low, soft, k.in.say("jars left"))
		c.stroke(end-50*unit.Millimetre, end-20*unit.Millimetre, base+unit.Millimetre/2, soft, unit.Points(0.8))
		c.text(plainFace, pt(8.5), end-50*unit.Millimetre, low, soft, k.in.say("reached on"))
		room := end - 54*unit.Millimetre - x
		c.text(boldFace, pt(12), x, base, ink, c.short(boldFace, pt(12), room, k.title()))
		note := fmt.Sprintf("%d × %s, %s", k.Jars, k.JarText, k.fate())
		c.text(plainFace, pt(10.5), x, base+4800*unit.Micrometre, soft, c.short(plainFace, pt(10.5), room, note))
		c.rule(margin, c.w-margin, y+13400*unit.Micrometre)
	}}
}

func (h *History) homeGroup(c *layout) {
	g := group{head: headBand(h.in.say("Set aside at home"), h.in.jars(h.Left+h.Fridge))}
	for _, s := range h.Stock {
		if s.Left > 0 {
			g.rows = append(g.rows, plainBand(fmt.Sprintf("%d × %s", s.Left, s.JarText), s.kept(), s.Lot, true))
		}
		if s.Unsealed > 0 {
			g.rows = append(g.rows, plainBand(fmt.Sprintf("%d × %s", s.Unsealed, s.JarText), h.in.say("in the refrigerator, not sealed"), s.Lot, true))
		}
	}
	if len(g.rows) > 0 {
		c.group(g)
	}
}

func (h *History) relatedGroup(c *layout) {
	if len(h.Related) == 0 {
		return
	}
	g := group{head: headBand(h.in.say("Other lots to think of"), "")}
	for _, r := range h.Related {
		g.rows = append(g.rows, plainBand(r.Lot, r.Name+": "+join(r.Shares), "", true))
	}
	g.rows = append(g.rows, c.paragraph(italicFace, pt(10.5), margin, soft, h.in.say(relatedNote))...)
	c.group(g)
}
