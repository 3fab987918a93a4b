package pack

import (
	"jarmark/internal/give/table"
	"sort"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
	"jarmark/internal/kitchen/cook"
)

// bow is the ribbon of one bow with its ends, beside once around the jar
// (common practice, no source).
const bow = 350 * unit.Millimetre

// supplies sums what the plan needs against the cupboard: lids and jars for
// jars still to be filled, labels for sealed jars, tags and ribbon for gifts,
// boxes for what leaves the house.
func (b *builder) supplies() {
	cup := b.cupboard()
	lids, empty, labels := map[string]int{}, map[string]int{}, map[string]int{}
	for _, s := range b.plan.Stock {
		if s.CountHow == cook.Estimated {
			lids[s.Jar.Lid] += s.Count
			empty[s.Jar.Key] += s.Count
		}
		labels[b.results[s.batch].Batch.Label.Sheet] += s.Sealed
	}
	if b.plan.Filter == "" {
		b.counted("jars, ", empty, cup.Jars)
		b.counted("lids, ", lids, cup.Lids)
		b.counted("labels, ", labels, cup.Labels)
	}
	gifts := len(b.plan.Tags)
	if gifts > 0 {
		b.need(table.Plural(gifts, "hang tag", "hang tags"), gifts, cup.Tags)
		b.plan.Supplies = append(b.plan.Supplies, Supply{What: "ribbon", Have: -1, NeedLength: b.ribbon(), HaveLength: cup.Ribbon})
	}
	if b.plan.Boxes > 0 {
		b.need(table.Plural(b.plan.Boxes, "box", "boxes"), b.plan.Boxes, cup.Boxes)
	}
	for _, s := range b.plan.Supplies {
		if s.Missing() {
			b.missing(s)
		}
	}
}

// Wanted lists the names of supplies of which some are needed, in order.
func Wanted(need map[string]int) (out []string) {
	for k, n := range need {
		if n > 0 {
			out = append(out, k)
		}
	}
	sort.Strings(out)
	return out
}

func (b *builder) counted(what string, need, have map[string]int) {
	for _, k := range Wanted(need) {
		left, said := have[k]
		if !said {
			left = -1
		}
		title := what + b.called(k)
		if k == "" {
			title = what[:len(what)-2]
		}
		b.need(title, need[k], left)
	}
}

// called gives a jar key the jar's name; other keys stay.
func (b *builder) called(key string) string {
	for _, s := range b.plan.Stock {
		if s.Jar.Key == key {
			return s.JarText
		}
	}
	return key
}

func (b *builder) need(what string, n, have int) {
	b.plan.Supplies = append(b.plan.Supplies, Supply{What: what, Need: n, Have: max(have, -1), HaveLength: -1})
}

func (b *builder) cupboard() batch.Supplies {
	for _, r := range b.results {
		if r.Kitchen != nil {
			return r.Kitchen.Supplies
		}
	}
	return batch.Supplies{Tags: -1, Boxes: -1, Ribbon: -1}
}

// ribbon is once around each gift jar and a bow.
func (b *builder) ribbon() unit.Length {
	var sum unit.Length
	for _, s := range b.stops {
		for _, run := range s.tags {
			sum += unit.Length(run.count) * (around(b.plan.Stock[run.stock]) + bow)
		}
	}
	return sum
}

// around is a jar's circumference; 230 mm, a half-pint's, where unknown.
func around(s Stock) unit.Length {
	switch {
	case s.Jar.Circumference > 0 && s.Jar.Circumference < unit.Metre:
		return s.Jar.Circumference
	case s.Jar.Diameter > 0 && s.Jar.Diameter < unit.Metre:
		return s.Jar.Diameter * 355 / 113
	}
	return 230 * unit.Millimetre
}

func (b *builder) missing(s Supply) {
	file := ""
	for _, r := range b.results {
		if r.Kitchen != nil && r.Kitchen.File != nil {
			file = r.Kitchen.File.Name
			break
		}
	}
	if s.NeedLength > 0 {
		b.found.Warnf("supplies-short", file, "supplies", "%s of %s is needed, %s is in the cupboard", s.NeedLength.Format(b.plan.Units), s.What, s.HaveLength.Format(b.plan.Units)).
			Hinted("buy more, or correct [supplies]")
		return
	}
	b.found.Warnf("supplies-short", file, "supplies", "%d needed of %s, %d in the cupboard: %d short", s.Need, s.What, s.Have, s.Need-s.Have).
		Hinted("buy more, or correct [supplies]")
}
