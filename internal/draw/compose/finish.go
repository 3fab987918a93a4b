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
			s.past(h > c.Straight*11/10, "taller-than-jar", "label is %.1f mm tall, the straight side of %s is %.1f mm",
				h.MM(), s.jar(), c.Straight.MM()).
				Hinted("choose a lower label, or it will crease at the shoulder; measure your jar and write its panel under [[jar]]")
		}
		if c.Around > 0 && w > c.Around+2*seam {
			s.past(true, "longer-than-jar", "label is %.1f mm long, %s is %.1f mm around",
				w.MM(), s.jar(), c.Around.MM()).Hinted("choose a shorter label: it would cover itself; measure your jar")
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
			s.past(max(w, h) > c.LidAcross*11/10, "wider-than-lid", "label is %.1f mm across, the lid of %s %.1f mm",
				max(w, h).MM(), s.jar(), c.LidAcross.MM()).Hinted("choose a smaller round label")
		}
	}
}

// past tells of a label past a measure of the jar. It is an error when it is
// far past it and the maker measured that jar: a table's measure is typical
// only and never refuses a print, and jars of one name differ by a tenth.
func (s *setter) past(far bool, code, format string, args ...any) *diag.Diagnostic {
	if far && s.c.Measured {
		return s.found.Errorf(code, "", "label.sheet", format, args...)
	}
	return s.found.Warnf(code, "", "label.sheet", format, args...)
}

func (s *setter) jar() string {
	if s.c.JarText != "" {
		return "the " + s.c.JarText
	}
	return "the jar"
}
