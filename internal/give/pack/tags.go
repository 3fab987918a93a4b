package pack

import (
	"encoding/csv"
	"maps"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/templates"
)

// Designs is the built-in table of occasion -> design (templates/pantry/occasions.csv).
func Designs() map[string]string {
	out := map[string]string{}
	text, _ := templates.FS.ReadFile("pantry/occasions.csv") // a test reads it strictly
	rows, _ := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	for _, r := range rows[min(1, len(rows)):] {
		out[r[0]] = r[1]
	}
	return out
}

// Occasions lists the words of the built-in table in order.
func Occasions() []string {
	return slices.Sorted(maps.Keys(Designs()))
}

// design is the wish's own, else its occasion's; empty = the job's default.
func (b *builder) design(w Wish) string {
	if w.Design != "" {
		return w.Design
	}
	return b.o.Designs[FoldName(w.Occasion)]
}

// occasion tells of a word the table has no design for, once each.
func (b *builder) occasion(p promise) {
	word := FoldName(p.wish.Occasion)
	if _, ok := b.o.Designs[word]; ok || word == "" || p.wish.Design != "" || b.asked[word] {
		return
	}
	if b.asked == nil {
		b.asked = map[string]bool{}
	}
	b.asked[word] = true
	hint := "occasions are " + strings.Join(Occasions(), ", ") + "; or name a design"
	if near, ok := diag.DidYouMean(word, Occasions()); ok {
		hint = "did you mean " + near + "?"
	}
	d := b.found.Warnf("unknown-occasion", p.file, p.path+".occasion", "no design goes with the occasion %q", p.wish.Occasion).Hinted(hint)
	if p.entry != nil {
		d.Pos = p.entry.Pos
	}
}

// tags makes one tag for each gift jar of a stop.
func (b *builder) tags(s *stop) []Tag {
	var out []Tag
	for _, run := range s.tags {
		st := b.plan.Stock[run.stock]
		for range min(run.count, maxJars-len(b.plan.Tags)-len(out)) {
			out = append(out, Tag{To: run.to, From: run.wish.From, Message: run.wish.Message, Occasion: run.wish.Occasion,
				Design: run.wish.Design, Lot: st.Lot, JarKey: st.Jar.Key,
				File: run.file, Path: run.path, Pos: run.pos})
		}
	}
	return out
}
