package pack

import (
	"cmp"
	"fmt"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/give/table"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
)

// What the files know of ingredients.
const (
	relatedNote = "Without the lot of its packet the files know an ingredient by name alone: check receipts and packet lot codes."
	commonNote  = "Left out, because most lots have them by name: %s."
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

// List answers the trace.
func (h *History) List() *table.List {
	say := h.in.Say
	head := say("Lot %s: %s", h.Lot, table.Join(h.Products))
	l := &table.List{In: h.in, Head: head, Title: head, Maker: h.Maker, Sum: say("made %s, best before %s", h.in.Day(h.Made), h.in.Day(h.BestBefore)) + "\n" + h.sum()}
	if h.Because != "" {
		l.Sum = h.Because + "\n" + l.Sum
	}
	l.Add(table.Part{Title: say("Who has them"), Rows: h.holders(), Flush: true})
	l.Add(table.Part{Title: say("At home"), Rows: h.home(false), Flush: true})
	related := table.Part{Title: say("Other lots that share something by the files"), Flush: true, Not: table.OnScreen} // there they lead on
	for _, r := range h.Related {
		related.Rows = append(related.Rows, table.Row{Amount: r.Lot, What: r.Name}, table.Row{Type: table.Aside, What: table.Join(r.Shares)})
	}
	related.Rows = append(related.Rows, h.relatedNotes(table.Say)...)
	l.Add(related)
	l.Add(table.Part{Title: say("Not read"), Rows: h.gaps()})
	l.Add(table.Part{Rows: h.honest(table.Say)})
	return l
}

// Text answers the trace for a terminal of 80 columns.
func (h *History) Text() string { return h.List().Text() }

// Recall is a sheet to work from by telephone when a lot must come back. The
// reason is left to be written by hand.
func (h *History) Recall() *table.List {
	say := h.in.Say
	product := table.Join(h.Products)
	l := &table.List{In: h.in, Head: say("Recall sheet, lot %s", h.Lot), Title: say("Recall sheet: lot %s", h.Lot), Maker: h.Maker, Sum: product, Told: h.told}
	facts := table.Part{}
	for _, t := range []string{
		say("On the label: %s, lot %s.", product, h.Lot),
		say("Made %s, best before %s.", h.in.Day(h.Made), h.in.Day(h.BestBefore)),
		h.sum() + ".",
		h.Because,
	} {
		if t == "" {
			continue
		}
		facts.Rows = append(facts.Rows, table.Row{Type: table.Say, What: t})
	}
	l.Add(facts)
	l.Add(table.Part{Rows: []table.Row{{Type: table.Write, What: say("Reason, and what to look for (write by hand)"), Lines: 2}}})
	l.Add(table.Part{Title: say("Not read"), Sum: say("look into these by hand"), Rows: h.gaps()})
	first := table.Part{Title: say("First"), Sum: say("the agency has the last word")}
	for _, s := range recallSteps {
		first.Rows = append(first.Rows, table.Row{Type: table.Step, What: say(s)})
	}
	l.Add(first)
	if len(h.Holders) > 0 {
		l.Add(table.Part{Title: say("Call or tell"), Rows: append(h.calls(), h.honest(table.Aside)...)})
	}
	l.Add(table.Part{Title: say("Set aside at home"), Sum: h.aside(), Rows: h.home(true)})
	related := table.Part{Title: say("Other lots to think of")}
	for _, r := range h.Related {
		related.Rows = append(related.Rows, table.Row{Tick: true, Amount: r.Lot, What: r.Name + ": " + table.Join(r.Shares)})
	}
	related.Rows = append(related.Rows, h.relatedNotes(table.Aside)...)
	l.Add(related)
	l.Add(table.Part{Rows: []table.Row{{Type: table.Write, What: say("Agency called: name, date, reference; notes"), Lines: 3}}})
	return l
}

// aside is how many jars are to be set aside; of those promised, nobody may have
// noted that they were handed over.
func (h *History) aside() string {
	t := h.in.Jars(h.Left + h.Fridge + h.Promised)
	if h.Promised > 0 {
		t = h.in.Say("up to %s", t)
	}
	return t
}

// relatedNotes say how far the list of related lots can be trusted.
func (h *History) relatedNotes(kind table.RowType) (out []table.Row) {
	if len(h.Common) > 0 {
		out = append(out, table.Row{Type: kind, What: h.in.Say(commonNote, table.Join(h.Common))})
	}
	if len(h.Related)+len(h.Common) > 0 {
		out = append(out, table.Row{Type: kind, What: h.in.Say(relatedNote)})
	}
	return out
}

// RecallDoc is the recall sheet to print.
func (h *History) RecallDoc(fs *face.Set, paper string) (*page.Doc, diag.List) {
	return h.Recall().Doc(fs, cmp.Or(paper, table.Paper(h.Units)))
}

func (h *History) sum() string {
	how := "filled"
	if h.CountHow == cook.Estimated {
		how = "planned"
	}
	gone := h.Count - h.Promised - h.Left - h.Fridge - h.Lost
	t := h.in.Say("%s %s, %d sealed; %d given or sold, %d at home, %d not sealed", h.in.Jars(h.Count), h.in.Say(how), h.Sealed, gone, h.Left, h.Fridge)
	if h.Promised > 0 {
		t = h.in.Say("%s %s, %d sealed; %d given or sold, %d promised and at home unless handed over, %d more at home, %d not sealed",
			h.in.Jars(h.Count), h.in.Say(how), h.Sealed, gone, h.Promised, h.Left, h.Fridge)
	}
	if h.Lost > 0 {
		t += h.in.Say(", %d eaten, broken or recalled", h.Lost)
	}
	return t
}

func (h *History) holders() (out []table.Row) {
	for _, k := range h.Holders {
		out = append(out, table.Row{Amount: fmt.Sprintf("%d × %s", k.Jars, k.JarText), What: heading(h.in, k.Type, k.To, k.Date), Note: h.fate(k)})
	}
	return out
}

// calls are those to call: who, what they have, two fields to fill in.
func (h *History) calls() (out []table.Row) {
	for _, k := range h.Holders {
		out = append(out, table.Row{Tick: true, What: heading(h.in, k.Type, k.To, k.Date), Under: fmt.Sprintf("%d × %s, %s", k.Jars, k.JarText, h.fate(k)),
			Fields: []string{h.in.Say("jars left"), h.in.Say("reached on")}})
	}
	return out
}

// fate is what became of the jars, as far as it was written down.
func (h *History) fate(k Holder) string {
	if k.Fate != "" {
		return h.in.Say(k.Fate)
	}
	if k.Type == Gift {
		return h.in.Say("gift")
	}
	n, exact := k.Sold()
	if !exact {
		return h.in.Say("up to %d sold", n)
	}
	return h.in.Say("%d sold, %d came home", n, k.CameHome)
}

func (h *History) home(tick bool) (out []table.Row) {
	for _, s := range h.Stock {
		lot := ""
		if tick {
			lot = s.Lot
		}
		where := h.in.Say("on the shelf")
		if s.Cold {
			where = h.in.Say("kept cold")
		}
		if s.Left > 0 {
			out = append(out, table.Row{Tick: tick, Amount: fmt.Sprintf("%d × %s", s.Left, s.JarText), What: where, Note: lot})
		}
		if s.Promised > 0 {
			out = append(out, table.Row{Tick: tick, Amount: fmt.Sprintf("%d × %s", s.Promised, s.JarText), What: h.in.Say("promised: what was not handed over"), Note: lot})
		}
		if s.Unsealed > 0 {
			out = append(out, table.Row{Tick: tick, Amount: fmt.Sprintf("%d × %s", s.Unsealed, s.JarText), What: h.in.Say("in the refrigerator, not sealed"), Note: lot})
		}
	}
	return out
}

// gaps names what was not read: jars may be missing from the list.
func (h *History) gaps() (out []table.Row) {
	for i, t := range h.Gaps() {
		out = append(out, table.Row{Type: table.Say, What: t, Strong: i == 0})
	}
	return out
}

// honest says what the files cannot know.
func (h *History) honest(as table.RowType) (out []table.Row) {
	if h.Unknown > 0 {
		out = append(out, table.Row{Type: as, What: h.in.Say("The buyers of up to %s at markets are not in the files: put up a notice at the stall and tell the market's manager.", h.in.Jars(h.Unknown))})
	}
	for _, k := range h.Holders {
		if k.Type == Gift && k.Fate == "" {
			return append(out, table.Row{Type: as, What: h.in.Say("Gifts are listed as promised: whether they were handed over, and on to whom, is not in the files.")})
		}
	}
	return out
}
