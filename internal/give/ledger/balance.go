package ledger

import (
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Made is what a batch file says was filled of one size and may be handed out.
type Made struct {
	Lot, Jar string // the jar's key
	Count    int    // filled
	Words    []string
}

// Balance is where the jars of one size of one lot are. Made = Given + Sold +
// Lost + Home in every state: jars that came home or were recalled are taken
// off the row they left by.
type Balance struct {
	Made
	Given, Sold   int
	Eaten, Broken int
	Recalled      int
	Promised      int          // still at home, for those it was promised to
	Takings       []unit.Money // of jars sold and not brought back, by currency
	Unpriced      int          // jars sold on rows without a price
	Holders       []Holder
}

// Lost is what nobody will eat any more, or was eaten at home.
func (b Balance) Lost() int { return b.Eaten + b.Broken + b.Recalled }

// Home is what stands on the shelf, promised or not.
func (b Balance) Home() int { return b.Count - b.Given - b.Sold - b.Lost() }

// Free is what can still be promised.
func (b Balance) Free() int { return b.Home() - b.Promised }

// Holder is one person or market and jars of one size of one lot.
type Holder struct {
	Who      string
	Promised int // still to come
	Given    int
	Sold     int
	CameHome int
	Recalled int
	First    unit.Date
	Last     unit.Date
	Days     []Day   // days on which jars were sold or came home, in order
	Gifts    []Entry // rows of jars given, less those that came back
	Open     []Entry // promises that are open, by what is still to come
	Loose    []Entry // rows of jars given, sold or brought home beyond what was promised
}

// Day is what one name bought or brought back on one day: a market's week.
// A zero Date is rows without one.
type Day struct {
	Date           unit.Date
	Sold, CameHome int // sold: paid for, and the money not given back
	Kept           int // of those sold, less what was recalled
	Takings        []unit.Money
	Unpriced       int
}

// Balances sums rows over what was made, in the order of made. A row of a lot
// or size that nobody made, or of more jars than there were, is told at its row.
func Balances(made []Made, rows []Entry) ([]Balance, diag.List) {
	s := summing{accounts: map[key]map[string]*account{}, at: map[key]Entry{}}
	out := make([]Balance, len(made))
	sizes := map[string][]int{} // by folded lot
	for i, m := range made {
		out[i].Made = m
		sizes[fold(m.Lot)] = append(sizes[fold(m.Lot)], i)
	}
	for _, e := range rows {
		i, ok := s.sizeOf(e, made, sizes[fold(e.Lot)])
		if !ok {
			continue
		}
		k := key{i}
		s.at[k] = e
		s.add(k, e)
		switch {
		case e.Why == Eaten:
			out[i].Eaten += e.Count
		case e.Why == Broken:
			out[i].Broken += e.Count
		case e.Why == Recalled && e.Who == "":
			out[i].Recalled += e.Count
		}
	}
	for i := range out {
		s.settle(&out[i], key{i})
	}
	return out, s.found
}

type key struct{ made int }

// account is all that happened between one name and one size of one lot.
type account struct {
	who         string
	rows        []Entry
	first, last unit.Date
}

type summing struct {
	accounts map[key]map[string]*account
	at       map[key]Entry
	found    diag.List
}

func (s *summing) errorAt(e Entry, code, format string, args ...any) *diag.Diagnostic {
	d := s.found.Errorf(code, e.File, e.Path, format, args...)
	d.Pos = e.Pos
	return d
}

// sizeOf finds the size of a lot that a row is about.
func (s *summing) sizeOf(e Entry, made []Made, sizes []int) (int, bool) {
	if e.Of > 0 && e.Of <= len(made) {
		return e.Of - 1, true
	}
	if len(sizes) == 0 {
		s.errorAt(e, "unknown-lot", "no batch here has the lot %q", e.Lot).Hinted("check the lot; a batch in another folder is not read")
		return 0, false
	}
	if e.Jar == "" && len(sizes) == 1 {
		return sizes[0], true
	}
	var words []string
	for _, i := range sizes {
		for _, w := range append([]string{made[i].Jar}, made[i].Words...) {
			if same(w, e.Jar) {
				return i, true
			}
		}
		words = append(words, made[i].Jar)
	}
	hint := "jars of this lot: " + strings.Join(words, ", ")
	if e.Jar == "" {
		s.errorAt(e, "which-jar", "lot %s has jars of several sizes, and this row does not say which", e.Lot).Hinted(hint)
	} else {
		s.errorAt(e, "unknown-jar", "lot %s has no jar %q", e.Lot, e.Jar).Hinted(hint)
	}
	return 0, false
}
