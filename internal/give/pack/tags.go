package pack

import (
	"encoding/csv"
	"sort"
	"strings"

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
	var out []string
	for o := range Designs() {
		out = append(out, o)
	}
	sort.Strings(out)
	return out
}

// design is the wish's own, else its occasion's; empty = the job's default.
func (b *builder) design(w Wish) string {
	if w.Design != "" {
		return w.Design
	}
	return b.o.Designs[foldName(w.Occasion)]
}

// tags makes one tag for each gift jar of a stop.
func (b *builder) tags(s *stop) []Tag {
	var out []Tag
	for _, run := range s.tags {
		st := b.plan.Stock[run.stock]
		for range min(run.count, maxJars-len(b.plan.Tags)-len(out)) {
			out = append(out, Tag{To: run.to, From: run.wish.From, Message: run.wish.Message, Occasion: run.wish.Occasion,
				Design: run.wish.Design, Lot: st.Lot, JarKey: st.Jar.Key})
		}
	}
	return out
}
