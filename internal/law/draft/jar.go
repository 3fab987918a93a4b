package draft

import (
	"strconv"
	"strings"

	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/pantry"
)

// lidAcross reads the lid's size off its neck finish: "70-450 CT" and "63 mm
// lug" are named by the millimetres the lid is across (trade naming, no source);
// 0 = not named.
func lidAcross(finish string) unit.Length {
	finish = strings.TrimSpace(finish)
	n, _ := strconv.Atoi(strings.TrimSuffix(finish, strings.TrimLeft(finish, "0123456789"))) // of none 0, of too many the largest
	if n < 20 || n > 200 {
		return 0
	}
	return unit.Length(n) * unit.Millimetre
}

// PanelArea is the principal display panel of a round jar in mm²: 40 % of
// height times circumference of the body without shoulder and neck (21 CFR
// 101.1(b)); 0 = unknown.
func PanelArea(j pantry.Jar) float64 {
	h := j.Panel
	if h <= 0 {
		h = j.Height
	}
	return 0.40 * max(0, h.MM()) * max(0, j.Circumference.MM())
}
