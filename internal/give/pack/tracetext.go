package pack

import (
	"fmt"

	"jarmark/internal/kitchen/cook"
)

// Text answers the trace for a terminal of 80 columns.
func (h *History) Text() string {
	w := &writer{}
	w.line("%s", h.in.say("Lot %s: %s", h.Lot, join(h.Products)))
	w.line("%s", h.in.say("made %s, best before %s", h.in.day(h.Made), h.in.day(h.BestBefore)))
	w.wrap("", h.sum())
	if len(h.Holders) > 0 {
		w.head(h.in.say("Who has them"), "")
	}
	for _, k := range h.Holders {
		w.row(fmt.Sprintf("%d × %s", k.Jars, k.JarText), k.title(), k.fate())
	}
	if h.Left > 0 || h.Fridge > 0 {
		w.head(h.in.say("At home"), "")
		for _, s := range h.Stock {
			if s.Left > 0 {
				w.row(fmt.Sprintf("%d × %s", s.Left, s.JarText), s.kept(), "")
			}
			if s.Unsealed > 0 {
				w.row(fmt.Sprintf("%d × %s", s.Unsealed, s.JarText), h.in.say("in the refrigerator, not sealed"), "")
			}
		}
	}
	if len(h.Related) > 0 {
		w.head(h.in.say("Other lots that share something by the files"), "")
		for _, r := range h.Related {
			w.row(r.Lot, r.Name, "")
			w.wrap("      ", join(r.Shares))
		}
		w.wrap("  ", h.in.say(relatedNote))
	}
	if gaps := h.Gaps(); len(gaps) > 0 {
		w.head(h.in.say("Not read"), "")
		for _, t := range gaps {
			w.wrap("  ", t)
		}
	}
	w.line("")
	for _, t := range h.honest() {
		w.wrap("", t)
	}
	return w.b.String()
}

const relatedNote = "The files know ingredients by name, not by packet: check receipts and packet lot codes."

func (h *History) sum() string {
	how := "filled"
	if h.CountHow == cook.Estimated {
		how = "planned"
	}
	t := h.in.say("%s %s, %d sealed; %d given or sold or promised, %d at home, %d not sealed",
		h.in.jars(h.Count), h.in.say(how), h.Sealed, h.Count-h.Left-h.Fridge-h.Lost, h.Left, h.Fridge)
	if h.Lost > 0 {
		t += h.in.say(", %d eaten, broken or recalled", h.Lost)
	}
	return t
}

func (k Holder) title() string {
	return Stop{in: k.in, Kind: k.Kind, To: k.To, Date: k.Date}.Title()
}

// fate is what became of the jars, as far as it was written down.
func (k Holder) fate() string {
	if k.Fate != "" {
		return k.in.say(k.Fate)
	}
	if k.Kind == Gift {
		return k.in.say("gift")
	}
	n, exact := k.Sold()
	if !exact {
		return k.in.say("up to %d sold", n)
	}
	return k.in.say("%d sold, %d came home", n, k.CameHome)
}

// honest says what the files cannot know.
func (h *History) honest() []string {
	var out []string
	if h.Unknown > 0 {
		out = append(out, h.in.say("The buyers of up to %s at markets are not in the files: put up a notice at the stall and tell the market's manager.", h.in.jars(h.Unknown)))
	}
	for _, k := range h.Holders {
		if k.Kind == Gift {
			out = append(out, h.in.say("Gifts are listed as promised: whether they were handed over, and on to whom, is not in the files."))
			break
		}
	}
	return out
}
