package ledger

import (
	"sort"
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
}

// Balances sums rows over what was made, in the order of made. A row of a lot
// or size that nobody made, or of more jars than there were, is told at its row.
func Balances(made []Made, rows []Entry) ([]Balance, diag.List) {
	s := summing{accounts: map[key]map[string]*account{}, at: map[key]Entry{}}
	out := make([]Balance, len(made))
	sizes := map[string][]int{}
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
	who                               string
	promised, given, sold, home, back int
	sales                             []Entry
	first, last                       unit.Date
	at                                Entry // the last row, to point at
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

// earn adds what was taken for the jars one name bought; those that came back,
// the last ones first, were paid back.
func (b *Balance) earn(sales []Entry, returned int) {
	for i := len(sales) - 1; i >= 0; i-- {
		n := max(0, sales[i].Count-returned)
		returned -= sales[i].Count - n
		b.take(sales[i].Price, n)
	}
}

func (b *Balance) take(price unit.Money, jars int) {
	if price.Currency == "" {
		b.Unpriced += jars
		return
	}
	sum := price.Minor * int64(jars)
	for i := range b.Takings {
		if b.Takings[i].Currency == price.Currency {
			b.Takings[i].Minor += sum
			return
		}
	}
	b.Takings = append(b.Takings, unit.Money{Minor: sum, Currency: price.Currency})
}

func (s *summing) add(k key, e Entry) {
	if e.Why == Eaten || e.Why == Broken || e.Why == Recalled && e.Who == "" {
		return
	}
	if s.accounts[k] == nil {
		s.accounts[k] = map[string]*account{}
	}
	a := s.accounts[k][fold(e.Who)]
	if a == nil {
		a = &account{who: e.Who, first: e.Date}
		s.accounts[k][fold(e.Who)] = a
	}
	a.at = e
	if e.Date.Before(a.first) {
		a.first = e.Date
	}
	if a.last.Before(e.Date) {
		a.last = e.Date
	}
	switch e.Why {
	case Promised:
		a.promised += e.Count
	case Given:
		a.given += e.Count
	case Sold:
		a.sold += e.Count
		a.sales = append(a.sales, e)
	case CameHome:
		a.home += e.Count
	case Recalled:
		a.back += e.Count
	}
}

// settle turns accounts into holders. What came home settles an open promise
// first; beyond it, it is jars sold, then given, that came back. The sums do
// not depend on the order of the rows.
func (s *summing) settle(b *Balance, k key) {
	var names []string
	for n := range s.accounts[k] {
		names = append(names, n)
	}
	sort.Strings(names)
	for _, n := range names {
		a := s.accounts[k][n]
		open := max(0, a.promised-a.given-a.sold)
		returned := max(0, a.home-open)
		if over := returned + a.back - a.given - a.sold; over > 0 {
			s.errorAt(a.at, "back-over", "%d more jars of lot %s came back from %s than went there", over, b.Lot, orNobody(a.who)).
				Hinted("check the counts of came home and recalled")
			returned = max(0, min(returned, a.given+a.sold-a.back))
			a.back = min(a.back, a.given+a.sold)
		}
		h := Holder{Who: a.who, Promised: max(0, open-a.home), CameHome: a.home, Recalled: a.back, First: a.first, Last: a.last}
		gone := returned + a.back
		h.Sold = max(0, a.sold-gone)
		h.Given = a.given - max(0, gone-a.sold)
		b.Promised += h.Promised
		b.Sold += h.Sold
		b.Given += h.Given
		b.Recalled += a.back
		b.earn(a.sales, returned)
		b.Holders = append(b.Holders, h)
	}
	if b.Home() < 0 {
		s.errorAt(s.at[k], "more-than-made", "%d more jars of lot %s left than the %d that were filled", -b.Home(), b.Lot, b.Count).
			Hinted("check the counts of this lot's rows, and count under [[fill]]")
	} else if b.Free() < 0 {
		d := s.found.Warnf("promised-over", s.at[k].File, s.at[k].Path, "%d more jars of lot %s are promised than are at home", -b.Free(), b.Lot)
		d.Pos = s.at[k].Pos
		d.Hinted("take back a promise, or cook again")
	}
}

func orNobody(who string) string {
	if who == "" {
		return "nobody by name"
	}
	return who
}
