package us

import (
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/place"
)

// chooseProgramme picks the scheme of the place: the one the kitchen names,
// else the first that is in force.
func (p *pass) chooseProgramme() {
	list := p.Set.Programmes
	if len(list) == 0 {
		return
	}
	want := strings.TrimSpace(p.K.Programme)
	for i := range list {
		if want != "" && strings.EqualFold(list[i].ID, want) {
			p.prog = &list[i]
			p.programmeDates()
			return
		}
	}
	if want != "" {
		p.L.Warnf("unknown-programme", p.KitchenFile(), "programme", "%s has no programme %q", p.Set.Name, want).Hinted("one of: " + draft.Listed(programmeIDs(list)))
	}
	now := inForce(list, p.Set.On)
	p.prog = &now[0]
	if len(now) > 1 {
		p.L.Warnf("choose-programme", p.KitchenFile(), "place", "%s has %d programmes with different labels; this label is for %q (%s)", p.Set.Name, len(now), p.prog.ID, p.prog.Name).
			Hinted(`write programme = "` + strings.Join(programmeIDs(now), `" or "`) + `" in kitchen.toml`).Cited(p.prog.Law)
	}
	p.programmeDates()
}

// inForce gives the programmes of a day; all of them when none is.
func inForce(list []place.Programme, on unit.Date) (out []place.Programme) {
	for _, pr := range list {
		if place.Within(on, pr.ValidFrom, pr.ValidTo) {
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
	if !place.Within(p.Set.On, pr.ValidFrom, pr.ValidTo) {
		p.L.Warnf("rules-not-in-force", p.KitchenFile(), "programme", "the words of %s are for %s to %s, and this is %s", p.Set.Name, place.Open(pr.ValidFrom), place.Open(pr.ValidTo), p.Set.On).Cited(pr.Law)
	}
}

func programmeIDs(list []place.Programme) (ids []string) {
	for _, p := range list {
		ids = append(ids, p.ID)
	}
	return ids
}
