package compose

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// seam is the overlap a wrap-around label needs to close: common practice, no
// source.
const seam = 6 * unit.Millimetre

// checkJar compares the label with the jar it goes on, where its measures are
// known.
func (b brief) checkJar() (found diag.List) {
	c, w, h := b.content, b.cell.W, b.cell.H
	switch b.as {
	case label.Front, label.InfoLabel, label.Wrap:
		b.checkForm(&found)
		if c.Straight > 0 && h > c.Straight {
			past(&found, c, h > c.Straight*11/10, "taller-than-jar", "label is %.1f mm tall, the straight side of %s is %.1f mm",
				h.MM(), b.jarName(), c.Straight.MM()).
				Hinted("choose a lower label, or it will crease at the shoulder; measure your jar and write its panel under [[jar]]")
		}
		if c.Around > 0 && w > c.Around+2*seam {
			past(&found, c, true, "longer-than-jar", "label is %.1f mm long, %s is %.1f mm around",
				w.MM(), b.jarName(), c.Around.MM()).Hinted("choose a shorter label: it would cover itself; measure your jar")
		}
		b.checkView(&found)
	case label.Lid:
		if over := b.overhang(); over > 0 {
			found.Notef("hangs-over-lid", "", "label.sheet", "a round of %.0f mm covers the lid of %s and hangs %.0f mm over its edge", w.MM(), b.jarName(), over.MM()).
				Hinted("for paper or cloth tied over the lid; the words stand on top")
		} else if c.LidAcross > 0 && max(w, h) > c.LidAcross {
			past(&found, c, max(w, h) > c.LidAcross*11/10, "wider-than-lid", "label is %.1f mm across, the lid of %s %.1f mm",
				max(w, h).MM(), b.jarName(), c.LidAcross.MM()).Hinted("choose a smaller round label")
		}
	}
	return found
}

// checkView tells of a label of which a part turns out of view; nobody reads the
// back at a glance.
func (b brief) checkView(found *diag.List) {
	around, w := b.content.Around, b.cell.W
	if b.piece == label.Wrap || around <= 0 || w > around+2*seam || w <= around/2 {
		return
	}
	d := found.Warnf("wide-for-jar", "", "label.sheet", "label is %.1f mm wide, %s shows %.1f mm from one side", w.MM(), b.jarName(), around.MM()/3.1416).
		Hinted("part of it turns out of view")
	if b.piece == label.InfoLabel {
		d.Severity = diag.Note
	}
}

// past tells of a label past a measure of the jar. It is an error when it is
// far past it and the maker measured that jar: a table's measure is typical
// only and never refuses a print, and jars of one name differ by a tenth.
func past(found *diag.List, c *label.Content, far bool, code, format string, args ...any) *diag.Diagnostic {
	if far && c.Measured {
		return found.Errorf(code, "", "label.sheet", format, args...)
	}
	return found.Warnf(code, "", "label.sheet", format, args...)
}

func (b brief) jarName() string {
	if b.content.JarText != "" {
		return "the " + b.content.JarText
	}
	return "the jar"
}
