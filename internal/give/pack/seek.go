package pack

import (
	"strings"

	"jarmark/internal/give/table"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kit/words"
	"jarmark/internal/kitchen/cook"
)

// Sought is a lot that a recall is about, and why: Why is empty when the lot
// itself was named, else what its jars hold, or the day they were made.
type Sought struct{ Lot, Why string }

// Seek finds the lots a word of a recall means, in the order of the batches: the
// lot of that name; else those that hold an ingredient from a packet of that
// lot (of narrows it to one ingredient); else those made on that day. An empty
// answer: none of the batches is meant.
func Seek(what, of string, results []*cook.Result, in table.Words) []Sought {
	what = strings.TrimSpace(what)
	if what == "" {
		return nil
	}
	if of == "" {
		if own := seekLot(what, results); len(own) > 0 {
			return own
		}
	}
	if held := seekPacket(what, of, results, in); len(held) > 0 || of != "" {
		return held
	}
	return seekDay(what, results)
}

func seekLot(what string, results []*cook.Result) []Sought {
	for _, r := range results {
		if known(r) && sameName(r.Lot, what) {
			return []Sought{{Lot: r.Lot}}
		}
	}
	return nil
}

func seekPacket(what, of string, results []*cook.Result, in table.Words) (out []Sought) {
	for _, r := range results {
		if !known(r) {
			continue
		}
		var names []string
		for _, i := range r.Batch.Ingredients {
			if samePacket(i.Lot, what) && (of == "" || called(i.Name, of)) {
				names = append(names, i.Name)
			}
		}
		if len(names) > 0 {
			out = append(out, Sought{r.Lot, in.Say("holds %s of lot %s", table.Join(unique(names)), what)})
		}
	}
	return out
}

func seekDay(what string, results []*cook.Result) (out []Sought) {
	day, err := unit.ParseDate(what)
	if err != nil { // another way to write it will do where only one day can be meant
		_, one, _ := unit.DayHint(what)
		if day, err = unit.ParseDate(one); err != nil {
			return nil
		}
	}
	for _, r := range results {
		if known(r) && r.Batch.Made == day {
			out = append(out, Sought{r.Lot, ""}) // the answer says the day
		}
	}
	return out
}

func known(r *cook.Result) bool { return r != nil && r.Batch != nil && r.Lot != "" }

// samePacket compares packet lots as people copy them: blanks and dashes and
// the case of letters do not count. An empty one is no lot.
func samePacket(a, b string) bool {
	plain := strings.NewReplacer(" ", "", "-", "", ".", "", "/", "")
	a, b = plain.Replace(a), plain.Replace(b)
	return a != "" && strings.EqualFold(a, b)
}

// called reports whether an ingredient is of the name asked for: "liquid pectin"
// is pectin.
func called(ingredient, of string) bool {
	has := map[string]bool{}
	for _, w := range strings.Fields(words.Fold(ingredient)) {
		has[words.Singular(w)] = true
	}
	for _, w := range strings.Fields(words.Fold(of)) {
		if !has[words.Singular(w)] {
			return false
		}
	}
	return true
}

// packets lists the packet lots of the batches, for a hint.
func packets(results []*cook.Result) (out []string) {
	for _, r := range results {
		if !known(r) {
			continue
		}
		for _, i := range r.Batch.Ingredients {
			if i.Lot != "" {
				out = append(out, i.Name+" "+i.Lot)
			}
		}
	}
	return unique(out)
}
