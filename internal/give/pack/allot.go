package pack

import (
	"fmt"
	"sort"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// stop is a Stop being filled.
type stop struct {
	out  Stop
	tags []tagRun
}

// stopKey tells stops apart: a market noted as done is another than one to come.
type stopKey struct {
	kind    Kind
	to      string
	date    unit.Date
	settled bool
}

// tagRun is jars of one wish from one stock row.
type tagRun struct {
	wish  Wish
	to    string
	stock int
	count int
}

// allot serves the promises in order, then tells who goes short.
func (b *builder) allot(all []promise) {
	for _, p := range all {
		cands := b.candidates(p)
		if len(cands) == 0 {
			b.noSuchJar(p)
			b.stopFor(p).out.Wanted += p.jars
			continue
		}
		got := b.take(p, cands)
		if got < p.jars {
			b.short(p, got, cands)
		}
	}
}

// candidates are the stock rows a promise may be served from, first expiry
// first; a batch's own promises go by the order of its sizes.
func (b *builder) candidates(p promise) []int {
	var out []int
	for i, s := range b.plan.Stock {
		if p.batch >= 0 && s.batch != p.batch || p.lot != "" && !sameName(p.lot, s.Lot) {
			continue
		}
		if p.jar != "" && !b.isJar(p.jar, s.Jar) {
			continue
		}
		if p.batch < 0 && p.lot == "" && b.isOver(s) {
			continue // a list never deals jars past their date, unless it names the lot
		}
		out = append(out, i)
	}
	if p.batch < 0 {
		sort.SliceStable(out, func(i, j int) bool {
			return b.sooner(b.plan.Stock[out[i]], b.plan.Stock[out[j]])
		})
	}
	return out
}

// sooner orders stock by expiry, unknown dates last, then by lot.
func (b *builder) sooner(x, y Stock) bool {
	if x.BestBefore != y.BestBefore {
		if x.BestBefore.IsZero() || y.BestBefore.IsZero() {
			return y.BestBefore.IsZero()
		}
		return x.BestBefore.Before(y.BestBefore)
	}
	return x.Lot < y.Lot
}

// take gives a promise its jars. A row of the gift list that names no lot
// takes one jar of each lot in turn, so that three jars are three kinds.
func (b *builder) take(p promise, cands []int) (got int) {
	s := b.stopFor(p)
	s.out.Wanted += p.jars
	counts := map[int]int{}
	if p.batch < 0 && p.lot == "" {
		got = b.inTurn(p.jars, cands, counts)
	} else {
		for _, i := range cands {
			n := min(p.jars-got, b.free(i)-counts[i])
			counts[i] += max(0, n)
			got += max(0, n)
		}
	}
	b.settle(s, p, cands, counts, min(max(p.cameHome, 0), got))
	return got
}

// settle books the jars. What came home is taken off the last rows first: the
// first to expire were on offer first.
func (b *builder) settle(s *stop, p promise, cands []int, counts map[int]int, home int) {
	back := map[int]int{}
	for k := len(cands) - 1; k >= 0; k-- {
		i := cands[k]
		back[i] = min(home, counts[i])
		home -= back[i]
	}
	for _, i := range cands {
		n := counts[i]
		if n == 0 {
			continue
		}
		if p.settled() {
			b.plan.Stock[i].Sold += n - back[i]
		} else {
			b.plan.Stock[i].Promised += n
		}
		b.addLine(s, p, i, n, back[i])
	}
}

// inTurn deals jars like cards: one of each batch in turn, from the batch's
// sizes in order.
func (b *builder) inTurn(want int, cands []int, counts map[int]int) (got int) {
	var batches [][]int
	at := map[int]int{}
	for _, i := range cands {
		k, seen := at[b.plan.Stock[i].batch]
		if !seen {
			k = len(batches)
			at[b.plan.Stock[i].batch] = k
			batches = append(batches, nil)
		}
		batches[k] = append(batches[k], i)
	}
	for got < want {
		before := got
		for _, rows := range batches {
			for _, i := range rows {
				if got < want && b.free(i)-counts[i] > 0 {
					counts[i]++
					got++
					break
				}
			}
		}
		if got == before {
			return got
		}
	}
	return got
}

func (b *builder) free(i int) int {
	s := b.plan.Stock[i]
	return max(0, s.Sealed-s.Promised-s.Sold)
}

// stopFor finds or opens the stop of a promise: one a person, one an event
// and day.
func (b *builder) stopFor(p promise) *stop {
	key := stopKey{p.kind, foldName(p.to), p.date, p.settled()}
	if s := b.byKey[key]; s != nil {
		b.joined(s, p)
		return s
	}
	s := &stop{out: Stop{Kind: p.kind, To: p.to, Date: p.date, CameHome: -1, GrossHow: cook.Measured}}
	if p.settled() {
		s.out.CameHome = 0
	}
	b.stops = append(b.stops, s)
	if b.byKey == nil {
		b.byKey = map[stopKey]*stop{}
	}
	b.byKey[key] = s
	b.joined(s, p)
	return s
}

func (b *builder) joined(s *stop, p promise) {
	if p.settled() {
		s.out.CameHome += p.cameHome
	}
	if p.kind == Gift {
		p.wish.Design = b.design(p.wish)
		s.out.Wishes = append(s.out.Wishes, p.wish)
	}
}

// short says who gets too few jars, by how many, and why.
func (b *builder) short(p promise, got int, cands []int) {
	sealed, guess := 0, false
	for _, i := range cands {
		sealed += b.plan.Stock[i].Sealed
		guess = guess || b.plan.Stock[i].CountHow == cook.Estimated
	}
	add, word := b.found.Errorf, "sealed"
	if guess {
		add, word = b.found.Warnf, "expected by estimate"
	}
	what := ""
	if p.jar != "" {
		what = " of " + p.jar
	}
	d := add("jars-short", p.file, pathOf(p, "jars"), "%s is promised %s%s and gets %d: %d short", who(p), jars(p.jars), what, got, p.jars-got)
	d.Message += fmt.Sprintf(" (%d %s, %d promised or sold before)", sealed, word, sealed-got)
	d.Hint = "promise fewer jars; gifts are served before markets, both in order, then the gift list"
	place(d, p)
}

func (b *builder) noSuchJar(p promise) {
	var have []string
	lots := map[string]bool{}
	for _, s := range b.plan.Stock {
		if p.batch >= 0 && s.batch != p.batch {
			continue
		}
		have = append(have, s.JarText)
		lots[s.Lot] = true
	}
	d := b.found.Errorf("jar-size", p.file, pathOf(p, "jar"), "%s is promised %s of %q, and no jar of that size was filled", who(p), jars(p.jars), p.jar)
	switch {
	case len(have) == 0:
		d.Message, d.Path = fmt.Sprintf("%s is promised %s, and no jars were filled", who(p), jars(p.jars)), pathOf(p, "jars")
		d.Hint = "add a [[fill]] with jar and count"
	case p.lot != "" && !hasLot(lots, p.lot):
		d.Code = "unknown-lot"
		d.Message = fmt.Sprintf("%s is promised %s of lot %q, and there is no such lot", who(p), jars(p.jars), p.lot)
		d.Hint = "lots here: " + strings.Join(sortedKeys(lots), ", ")
	default:
		d.Hint = "sizes filled: " + strings.Join(unique(have), ", ")
	}
	place(d, p)
}

// place points at the row of a gift list.
func place(d *diag.Diagnostic, p promise) {
	if p.entry != nil {
		d.Path, d.Pos = p.entry.Path, p.entry.Pos
	}
}

func pathOf(p promise, key string) string {
	if p.path == "" {
		return ""
	}
	return p.path + "." + key
}

func who(p promise) string {
	to := strings.TrimSpace(p.to)
	if to == "" {
		return "a " + string(p.kind) + " without a name"
	}
	if !p.date.IsZero() {
		to += " on " + day(p.date)
	}
	return to
}

func hasLot(lots map[string]bool, lot string) bool {
	for l := range lots {
		if sameName(l, lot) {
			return true
		}
	}
	return false
}

func sortedKeys(m map[string]bool) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	sort.Strings(out)
	return out
}

func unique(in []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, s := range in {
		if !seen[s] {
			out, seen[s] = append(out, s), true
		}
	}
	return out
}
