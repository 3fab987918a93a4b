package pack

import (
	"fmt"
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
)

// noticeSteps tell who may have a jar what to do; our own wording of ordinary
// practice (common practice, no source).
var noticeSteps = []string{
	"Do not eat or taste it, even if it looks and smells as it should.",
	"Keep the jar closed, out of the reach of children and pets, and bring it back or tell us where it is.",
	"Who has eaten of it and feels unwell sees a doctor, and says which food it was.",
}

// Notice is the text of a notice to put up at a stall or to send to those who
// may have jars of the lots. reach is how the maker is reached. The reason is
// left to be written in: it is the agency's to word.
func Notice(list []*History, reach string) string {
	if len(list) == 0 {
		return ""
	}
	say := list[0].in.Say
	var b strings.Builder
	line := func(s string) { b.WriteString(s + "\n") }
	line(strings.ToUpper(say("Recall: please check your jars")))
	for _, h := range list {
		line("")
		line(say("On the label: %s, lot %s.", table.Join(h.Products), h.Lot))
		line(say("Made %s, best before %s.", h.in.Day(h.Made), h.in.Day(h.BestBefore)))
		if sizes := h.sizes(); sizes != "" {
			line(say("Jars: %s.", sizes))
		}
		if at := h.markets(); len(at) > 0 {
			line(say("Sold at: %s.", strings.Join(at, "; ")))
		}
	}
	line("")
	line(say("Reason") + ": " + strings.Repeat("_", 40))
	line("")
	for _, s := range noticeSteps {
		line("- " + say(s))
	}
	if reach != "" {
		line("")
		line(reach)
	}
	return b.String()
}

// sizes are the jar sizes of the lot in words.
func (h *History) sizes() string {
	var out []string
	for _, s := range h.Stock {
		out = append(out, s.JarText)
	}
	return table.Join(unique(out))
}

// markets are the events and days jars of the lot were taken to.
func (h *History) markets() (out []string) {
	for _, k := range h.Holders {
		if k.Type != Market {
			continue
		}
		at := k.To
		if k.Date != (unit.Date{}) {
			at = fmt.Sprintf("%s, %s", k.To, h.in.Day(k.Date))
		}
		out = append(out, at)
	}
	return unique(out)
}

// Totals of several lots together.
type Totals struct{ Lots, Jars, Home, Promised, Out int }

// Total sums lots; jars lost or kept cold at home are neither out nor for the
// shelf, and count among Jars alone.
func Total(list []*History) (t Totals) {
	for _, h := range list {
		t.Lots++
		t.Jars += h.Count
		t.Home += h.Left + h.Fridge
		t.Promised += h.Promised
		t.Out += h.Count - h.Promised - h.Left - h.Fridge - h.Lost
	}
	return t
}

// Sum words the totals of several lots.
func Sum(list []*History) string {
	if len(list) == 0 {
		return ""
	}
	t := Total(list)
	in := list[0].in
	if t.Promised > 0 {
		return in.Say("%d lots, %s: %d given or sold, %d promised and at home unless handed over, %d more at home", t.Lots, in.Jars(t.Jars), t.Out, t.Promised, t.Home)
	}
	return in.Say("%d lots, %s: %d given or sold, %d at home", t.Lots, in.Jars(t.Jars), t.Out, t.Home)
}
