package pack

import (
	"slices"
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kitchen/cook"
)

// related finds lots with an ingredient from the same packet, or of the same
// name where a packet's lot was not written down, or of the same day.
func (h *History) related(mine, others []*cook.Result) {
	own := map[string][]string{}
	for _, r := range mine {
		for _, l := range r.Lines {
			if !l.IsWater {
				own[FoldName(l.Name)] = append(own[FoldName(l.Name)], packetsOf(r, l)...)
			}
		}
	}
	common := staples(own, others)
	for _, r := range others {
		var shares []string
		for _, l := range r.Lines {
			here, shared := own[FoldName(l.Name)]
			if !shared {
				continue
			}
			there := packetsOf(r, l)
			lot, same := samePackets(here, there)
			switch {
			case same:
				shares = append(shares, h.in.Say("%s of lot %s", LineName(r, l), lot))
			case allWritten(here) && allWritten(there): // of other packets
			case !common[FoldName(l.Name)]:
				shares = append(shares, LineName(r, l))
			}
		}
		if !r.Batch.Made.IsZero() && r.Batch.Made == h.Made {
			shares = append(shares, h.in.Say("made the same day"))
		}
		if len(shares) > 0 {
			h.Related = append(h.Related, Related{r.Lot, name(r), unique(shares)})
		}
	}
	for _, r := range mine {
		for _, l := range r.Lines {
			if common[FoldName(l.Name)] {
				h.Common = append(h.Common, LineName(r, l))
			}
		}
	}
	h.Common = unique(h.Common)
}

// LineName is an ingredient as the kitchen's lists call it: in their language,
// where the pantry has a name in it.
func LineName(r *cook.Result, l cook.Line) string {
	if r.Kitchen == nil {
		return l.Name
	}
	lang, _, _ := strings.Cut(table.LanguageOf(r.Kitchen), "-")
	if n, ok := l.Row.Names(lang); ok && lang != "en" && n.Label != "" {
		return n.Label
	}
	return l.Name
}

// packetsOf are the packet lots of a cooked line, "" where none was written.
func packetsOf(r *cook.Result, l cook.Line) (out []string) {
	for _, i := range r.Batch.Ingredients {
		if slices.Contains(l.Paths, i.Path) {
			out = append(out, i.Lot)
		}
	}
	return out
}

// samePackets finds a packet two lines share.
func samePackets(a, b []string) (string, bool) {
	for _, x := range a {
		for _, y := range b {
			if samePacket(x, y) {
				return x, true
			}
		}
	}
	return "", false
}

// allWritten reports whether the lot of every packet is known.
func allWritten(lots []string) bool { return len(lots) > 0 && !slices.Contains(lots, "") }

// staples are ingredients that most of the other lots have too, such as sugar:
// by name alone they tell nothing. Among a few lots everything tells.
func staples(own map[string][]string, others []*cook.Result) map[string]bool {
	const few = 4
	out := map[string]bool{}
	if len(others) < few {
		return out
	}
	in := map[string]int{}
	for _, r := range others {
		seen := map[string]bool{}
		for _, l := range r.Lines {
			if n := FoldName(l.Name); !seen[n] {
				seen[n] = true
				in[n]++
			}
		}
	}
	for n := range own {
		out[n] = in[n] > len(others)/2
	}
	return out
}
