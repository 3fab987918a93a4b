package compose

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// overflow reports what did not fit, in millimetres.
func (s *setter) overflow(what string, need, have unit.Length, across bool) {
	need = max(need, have+100*unit.Micrometre) // it did not fit, whatever the sum says
	s.over = append(s.over, Overflow{Block: what, Need: need, Have: have, Across: across})
	way := "in height"
	if across {
		way = "in width"
	}
	s.found.Errorf("does-not-fit", "", "label.sheet", "%s on the %s label: needs %.1f mm %s, there are %.1f mm",
		what, s.piece, need.MM(), way, have.MM()).
		Hinted("choose a larger label, or move facts to an information label")
}

// seam is the overlap a wrap-around label needs to close: common practice, no
// source.
const seam = 6 * unit.Millimetre

// checkJar compares the label with the jar it goes on, where its measures are
// known.
func (s *setter) checkJar() {
	c, w, h := s.c, s.cell.W, s.cell.H
	switch s.piece {
	case label.Front, label.InfoLabel, label.Wrap:
		if c.Straight > 0 && h > c.Straight {
			s.past(h, c.Straight)("taller-than-jar", "", "label.sheet", "label is %.1f mm tall, the straight side of %s is %.1f mm",
				h.MM(), s.jar(), c.Straight.MM()).
				Hinted("choose a lower label, or it will crease at the shoulder; measure your jar and write its panel under [[jar]]")
		}
		if c.Around > 0 && w > c.Around+2*seam {
			s.found.Errorf("longer-than-jar", "", "label.sheet", "label is %.1f mm long, %s is %.1f mm around",
				w.MM(), s.jar(), c.Around.MM()).Hinted("choose a shorter label: it would cover itself")
		}
		if s.piece != label.Wrap && c.Around > 0 && w <= c.Around+2*seam && w > c.Around/2 {
			tell := s.found.Warnf
			if s.piece == label.InfoLabel {
				tell = s.found.Notef // nobody reads the back at a glance
			}
			tell("wide-for-jar", "", "label.sheet", "label is %.1f mm wide, %s shows %.1f mm from one side",
				w.MM(), s.jar(), c.Around.MM()/3.1416).Hinted("part of it turns out of view")
		}
	case label.Lid:
		if c.LidAcross > 0 && max(w, h) > c.LidAcross {
			s.past(max(w, h), c.LidAcross)("wider-than-lid", "", "label.sheet", "label is %.1f mm across, the lid of %s %.1f mm",
				max(w, h).MM(), s.jar(), c.LidAcross.MM()).Hinted("choose a smaller round label")
		}
	}
}

// past makes a finding about a label past a measure of the jar: an error, or
// within a tenth a warning, because jars of one name differ that much.
func (s *setter) past(is, limit unit.Length) func(code, file, path, format string, args ...any) *diag.Diagnostic {
	if is <= limit+limit/10 {
		return s.found.Warnf
	}
	return s.found.Errorf
}

func (s *setter) jar() string {
	if s.c.JarText != "" {
		return "the " + s.c.JarText
	}
	return "the jar"
}
