package pack

import (
	"fmt"
	"jarmark/internal/give/table"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	fold "jarmark/internal/kit/words"
)

// jamRead is what the words for a jam mean.
type jamRead struct {
	batches []int
	lot     bool   // the words are a lot
	near    string // the name they were taken for, where they are not it
}

func (j jamRead) has(batch int) bool { return slices.Contains(j.batches, batch) }

// jam reads the words for a jam, once each: a lot, a name, words that all
// stand in a name, or a name with a slip.
func (b *builder) jam(wish string) jamRead {
	key := FoldName(wish)
	if j, ok := b.jams[key]; ok || key == "" {
		return j
	}
	if b.jams == nil {
		b.jams = map[string]jamRead{}
	}
	j := b.readJam(key)
	b.jams[key] = j
	return j
}

func (b *builder) readJam(key string) jamRead {
	names := make([]string, len(b.results))
	for i, r := range b.results {
		names[i] = FoldName(name(r))
	}
	pick := func(is func(i int) bool) (out []int) {
		for i := range b.results {
			if is(i) {
				out = append(out, i)
			}
		}
		return out
	}
	if l := pick(func(i int) bool { return sameName(key, b.results[i].Lot) }); len(l) > 0 {
		return jamRead{batches: l, lot: true}
	}
	if l := pick(func(i int) bool { return key == names[i] }); len(l) > 0 {
		return jamRead{batches: l}
	}
	if l := pick(func(i int) bool { return within(key, names[i]) }); len(l) > 0 {
		return jamRead{batches: l}
	}
	near, ok := diag.DidYouMean(key, names)
	if !ok {
		return jamRead{}
	}
	return jamRead{batches: pick(func(i int) bool { return near == names[i] }), near: near}
}

// within reports whether all words stand in a name, in any order and number.
func within(wish, name string) bool {
	have := map[string]bool{}
	for _, w := range strings.Fields(fold.Fold(name)) {
		have[fold.Singular(w)] = true
	}
	for _, w := range strings.Fields(fold.Fold(wish)) {
		if !have[fold.Singular(w)] {
			return false
		}
	}
	return true
}

// jamTold tells how words that are no jam's name were read.
func (b *builder) jamTold(p promise) {
	j := b.jam(p.jam)
	if p.jam == "" || j.near == "" {
		return
	}
	d := b.found.Notef("near-jam", p.file, pathOf(p, "jam"), "%s: %q is read as %s", b.who(p), p.jam, name(b.results[j.batches[0]])).Hinted("write the name as on the jar to be sure")
	pointAt(d, p)
}

func (b *builder) noSuchJam(p promise) {
	if p.entry != nil && b.again(p.entry.Pos.Line, "unknown-jam", p.file, FoldName(p.jam)) {
		return
	}
	var have []string
	for _, r := range b.results {
		have = append(have, fmt.Sprintf("%s (%s)", name(r), r.Lot))
	}
	d := b.found.Errorf("unknown-jam", p.file, pathOf(p, "jam"), "%s is promised %s of %q, and no batch here is called so", b.who(p), table.Jars(p.jars), p.jam)
	d.Hint = "jams here: " + strings.Join(unique(have), ", ")
	pointAt(d, p)
}
