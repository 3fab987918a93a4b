package pack

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// columnsWide is the width of the text output.
const columnsWide = 80

// Text shows the plan for a terminal of 80 columns.
func (p *Plan) Text() string {
	w := &writer{}
	w.line("%s", p.title())
	w.line("%s", p.summary())
	for _, s := range p.Stops {
		p.stopText(w, s)
	}
	if p.Filter == "" {
		p.stayText(w)
		p.doneText(w)
	}
	p.fridgeText(w)
	if len(p.Supplies) > 0 {
		w.head(p.in.say("Needed from the cupboard"), "")
		for _, s := range p.Supplies {
			w.row("[ ] "+s.amount(p.Units), s.in.say(s.What), s.note(p.Units))
		}
	}
	return w.b.String()
}

func (p *Plan) title() string {
	t := p.in.say("Packing list")
	if p.Filter != "" {
		t += ": " + p.Filter
	}
	if p.Maker != "" {
		t += ", " + p.Maker
	}
	return t
}

func (p *Plan) summary() string {
	t := p.in.jars(p.Jars) + " " + p.in.say(plural(len(p.Stops), "to %d stop", "to %d stops"), len(p.Stops))
	if p.Boxes > 0 {
		t += ", " + p.in.boxes(p.Boxes)
	}
	if p.Gross > 0 {
		t += ", " + p.in.say("%s without boxes", p.in.weight(p.Gross, p.GrossHow, p.Units))
	}
	return t
}

// Title is the heading of a stop: who or where, and when.
func (s Stop) Title() string {
	t := strings.TrimSpace(s.To)
	if t == "" {
		t = s.in.say("(no name)")
	}
	if s.Kind == Market && !s.Date.IsZero() {
		t += ", " + s.in.day(s.Date)
	}
	return t
}

// Sum is the totals of a stop.
func (s Stop) Sum(units string) string {
	t := s.in.jars(s.Jars)
	if len(s.Boxes) > 0 {
		t += ", " + s.in.boxes(len(s.Boxes))
	}
	return t + ", " + s.in.weight(s.Gross, s.GrossHow, units)
}

func (p *Plan) stopText(w *writer, s Stop) {
	w.head(s.Title(), s.Sum(p.Units))
	for _, l := range s.Lines {
		w.row(fmt.Sprintf("[ ] %d × %s", l.Count, l.JarText), l.Name, l.Lot+"  "+dateShort(l))
		if l.Contains != "" {
			w.wrap("      ", p.in.say("contains %s", l.Contains))
		}
		if l.Cold {
			w.line("      %s", p.in.say("keep this one cold on the way"))
		}
	}
	if n := s.Short(); n > 0 {
		w.line("  !!  %s", p.in.say("%s short: %d promised", p.in.jars(n), s.Wanted))
	}
	for _, x := range s.Wishes {
		if t := x.String(); t != "" {
			w.wrap("      ", t)
		}
	}
	if len(s.Boxes) > 1 || s.Kind == Market {
		for i, x := range s.Boxes {
			w.wrap("      ", p.in.say("box %d: %s", i+1, x.String()))
		}
	}
	if len(s.Value) > 0 {
		w.line("      %s", p.in.say("worth %s", p.in.money(s.Value)))
	}
}

// String is what is in a box: "6 x 8 fl oz of L26165-SR".
func (x Box) String() string {
	var out []string
	for _, p := range x.Parts {
		out = append(out, x.in.say("%d × %s of %s", p.Count, p.JarText, p.Lot))
	}
	return strings.Join(out, ", ")
}

// String is the words that go with a gift.
func (x Wish) String() string {
	var out []string
	if x.From != "" {
		out = append(out, x.in.say("from %s", x.From))
	}
	if x.Occasion != "" {
		out = append(out, x.Occasion)
	}
	if x.Message != "" {
		out = append(out, "“"+x.Message+"”")
	}
	return strings.Join(out, ", ")
}

func dateShort(l Line) string {
	if l.BestBefore.IsZero() {
		return l.in.say("no date")
	}
	return l.in.brief(l.BestBefore)
}

func (p *Plan) stayText(w *writer) {
	left := 0
	for _, s := range p.Stock {
		left += s.Left
	}
	sum := p.in.jars(left)
	if len(p.Value) > 0 {
		sum += ", " + p.in.say("worth %s", p.in.money(p.Value))
	}
	w.head(p.in.say("Stays at home"), sum)
	for _, s := range p.Stock {
		if s.Left > 0 {
			w.row("    "+s.stays(), s.Name, s.Lot+"  "+p.in.brief(s.BestBefore))
		}
	}
}

// stays is the amount left, and whether it is only planned.
func (s Stock) stays() string {
	t := fmt.Sprintf("%d × %s", s.Left, s.JarText)
	if s.CountHow == cook.Estimated {
		t += ", " + s.in.say("planned")
	}
	if s.Cold {
		t += ", " + s.in.say("kept cold")
	}
	return t
}

// kept says where jars at home stand.
func (s Stock) kept() string {
	if s.Cold {
		return s.in.say("kept cold")
	}
	return s.in.say("on the shelf")
}

func (p *Plan) doneText(w *writer) {
	if len(p.Done) == 0 {
		return
	}
	w.head(p.in.say("Sold"), "")
	for _, s := range p.Done {
		w.row("    "+p.in.jars(s.sold()), s.Title(), s.tally())
	}
}

// sold is how many jars of a market that is over did not come home.
func (s Stop) sold() int { return s.Jars - s.back() }

func (s Stop) back() (n int) {
	for _, l := range s.Lines {
		n += l.CameHome
	}
	return n
}

func (s Stop) tally() string { return s.in.say("%d went, %d came home", s.Jars, s.back()) }

func (p *Plan) fridgeText(w *writer) {
	if len(p.Fridge) == 0 {
		return
	}
	w.head(p.in.say("Refrigerator: not to give, sell or store on a shelf"), "")
	for _, f := range p.Fridge {
		w.row("[ ] "+f.amount(p.Units), f.Name, f.Lot)
		w.line("      %s", f.Guidance())
	}
}

func (f FridgeItem) amount(units string) string {
	if f.Count > 0 {
		return fmt.Sprintf("%d × %s", f.Count, f.JarText)
	}
	return f.in.say("part jar, %s", f.in.number(f.Part.Format(units)))
}

// Guidance says how an unsealed or part jar is kept.
func (f FridgeItem) Guidance() string {
	why := f.in.say("did not seal")
	if f.Count == 0 {
		why = f.in.say("not full")
	}
	if f.Days <= 0 {
		return why + ": " + f.in.say("keep refrigerated and eat first")
	}
	return why + ": " + f.in.say(plural(f.Days, "keep refrigerated, eat within %d day, by %s", "keep refrigerated, eat within %d days, by %s"), f.Days, f.in.day(f.By))
}

func (s Supply) amount(units string) string {
	if s.NeedLength > 0 {
		return s.in.number(ribbonText(s.NeedLength, units))
	}
	return fmt.Sprint(s.Need)
}

func (s Supply) note(units string) string {
	switch {
	case s.NeedLength > 0 && s.HaveLength >= 0:
		return s.in.say("have %s", s.in.number(ribbonText(s.HaveLength, units))) + missing(s)
	case s.NeedLength == 0 && s.Have >= 0:
		return s.in.say("have %s", fmt.Sprint(s.Have)) + missing(s)
	}
	return ""
}

func missing(s Supply) string {
	if s.Missing() {
		return ", " + s.in.say("too few")
	}
	return ""
}

// ribbonText rounds up: to whole feet, or to 0.1 m.
func ribbonText(l unit.Length, units string) string {
	if units == unit.US {
		return fmt.Sprintf("%d ft", (l+unit.Foot-1)/unit.Foot)
	}
	tenths := (l + 10*unit.Centimetre - 1) / (10 * unit.Centimetre)
	return fmt.Sprintf("%d.%d m", tenths/10, tenths%10)
}
