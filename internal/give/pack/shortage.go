package pack

import (
	"fmt"
	"jarmark/internal/give/table"
	"maps"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
)

// short says who gets too few jars, by how many, and why.
func (b *builder) short(p promise, got int, cands []int) {
	sealed, guess := 0, false
	for _, i := range cands {
		sealed += b.plan.Stock[i].Sealed
		guess = guess || b.plan.Stock[i].CountHow == cook.Estimated
	}
	what := withJam(p)
	if p.jar != "" {
		what = " of " + p.jar + what
	}
	text := fmt.Sprintf("%s is promised %s%s and gets %d: %d short (%d", b.who(p), table.Jars(p.jars), what, got, p.jars-got, sealed)
	var d *diag.Diagnostic
	if guess {
		d = b.found.Warnf("jars-short", p.file, pathOf(p, "jars"), "%s expected by estimate, %d promised or sold before)", text, sealed-got)
	} else {
		d = b.found.Errorf("jars-short", p.file, pathOf(p, "jars"), "%s sealed, %d promised or sold before)", text, sealed-got)
	}
	d.Hint = "promise fewer jars; gifts are served before markets, both in order, then the rows of the gift list that name a jam, lot, jar or allergy, then its other rows"
	pointAt(d, p)
}

// refuse says why a promise has no jar to choose from.
func (b *builder) refuse(p promise, c *choice) {
	switch c.fault {
	case noJam:
		b.noSuchJam(p)
	case allOver:
		b.onlyOver(p, c)
	case allUnsafe:
		b.unsafe(p, c)
	default:
		b.noSuchJar(p)
	}
}

func (b *builder) onlyOver(p promise, c *choice) {
	lots := map[string]bool{}
	for _, i := range c.lots {
		lots[b.results[i].Lot] = true
	}
	d := b.found.Errorf("jars-short", p.file, pathOf(p, "jars"), "%s is promised %s and gets none: the date of lot %s is over", b.who(p), table.Jars(p.jars), strings.Join(slices.Sorted(maps.Keys(lots)), ", "))
	d.Hint = "promise another jam; a lot past its date is given only where the row names the lot"
	pointAt(d, p)
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
	d := b.found.Errorf("jar-size", p.file, pathOf(p, "jar"), "%s is promised %s of %q, and no jar of that size was filled%s", b.who(p), table.Jars(p.jars), p.jar, withJam(p))
	switch {
	case len(have) == 0:
		d.Message, d.Path = fmt.Sprintf("%s is promised %s, and no jars were filled", b.who(p), table.Jars(p.jars)), pathOf(p, "jars")
		d.Hint = "add a [[fill]] with jar and count"
	case p.lot != "" && !hasLot(lots, p.lot):
		d.Code = "unknown-lot"
		d.Message = fmt.Sprintf("%s is promised %s of lot %q, and there is no such lot", b.who(p), table.Jars(p.jars), p.lot)
		d.Hint = "lots here: " + strings.Join(slices.Sorted(maps.Keys(lots)), ", ")
	default:
		d.Hint = "sizes filled: " + strings.Join(unique(have), ", ")
	}
	pointAt(d, p)
}

// pointAt points at the row of a gift list.
func pointAt(d *diag.Diagnostic, p promise) {
	if p.entry != nil {
		d.Path, d.Pos = p.entry.Path, p.entry.Pos
	}
}

func withJam(p promise) string {
	switch {
	case p.jam != "":
		return fmt.Sprintf(" with %s", p.jam)
	case p.lot != "":
		return " of lot " + p.lot
	}
	return ""
}

func pathOf(p promise, key string) string {
	if p.path == "" {
		return ""
	}
	return p.path + "." + key
}

func (b *builder) who(p promise) string {
	to := strings.TrimSpace(p.to)
	if to == "" {
		return "a " + string(p.kind) + " without a name"
	}
	if !p.date.IsZero() {
		to += " on " + b.day(p.date)
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
