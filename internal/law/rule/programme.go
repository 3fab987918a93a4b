package rule

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/unit"
)

// check reports what a programme's data lacks.
func (p Programme) check() error {
	if err := known(p.Confidence); err != nil {
		return err
	}
	for _, d := range []string{p.ValidFrom, p.ValidTo, p.CheckedOn} {
		if _, err := day(d); err != nil {
			return err
		}
	}
	if p.Letter != "" && p.Letter != "o" || p.Placement != "" && p.Placement != "panel" || p.Scope != "" && p.Scope != "label" {
		return fmt.Errorf("letter, placement or scope is not known")
	}
	for _, group := range p.Required {
		for _, token := range group {
			if _, ok := particularNamed(token); !ok {
				return fmt.Errorf("no particular %q", token)
			}
		}
	}
	return nil
}

// chooseProgramme picks the scheme of the place: the one the kitchen names,
// else the first that is in force.
func (p *pass) chooseProgramme() {
	list := p.set.Programmes
	if len(list) == 0 {
		return
	}
	want := strings.TrimSpace(p.k.Programme)
	for i := range list {
		if want != "" && strings.EqualFold(list[i].ID, want) {
			p.prog = &list[i]
			p.programmeDates()
			return
		}
	}
	if want != "" {
		p.l.Warnf("unknown-programme", p.kitchenFile(), "programme", "%s has no programme %q", p.set.Name, want).Hinted("one of: " + listed(programmeIDs(list)))
	}
	now := inForce(list, p.set.On)
	p.prog = &now[0]
	if len(now) > 1 {
		p.l.Warnf("choose-programme", p.kitchenFile(), "place", "%s has %d programmes with different labels; this label is for %q (%s)", p.set.Name, len(now), p.prog.ID, p.prog.Name).
			Hinted(`write programme = "` + strings.Join(programmeIDs(now), `" or "`) + `" in kitchen.toml`).Cited(p.prog.Law)
	}
	p.programmeDates()
}

// inForce gives the programmes of a day; all of them when none is.
func inForce(list []Programme, on unit.Date) (out []Programme) {
	for _, pr := range list {
		if within(on, pr.ValidFrom, pr.ValidTo) {
			out = append(out, pr)
		}
	}
	if len(out) == 0 {
		return list
	}
	return out
}

func (p *pass) programmeDates() {
	pr := p.prog
	if !within(p.set.On, pr.ValidFrom, pr.ValidTo) {
		p.l.Warnf("rules-not-in-force", p.kitchenFile(), "programme", "the words of %s are for %s to %s, and this is %s", p.set.Name, open(pr.ValidFrom), open(pr.ValidTo), p.set.On).Cited(pr.Law)
	}
}

func programmeIDs(list []Programme) (ids []string) {
	for _, p := range list {
		ids = append(ids, p.ID)
	}
	return ids
}
