package eu

import (
	"jarmark/internal/kit/unit"
)

// shownDate is how a date of minimum durability is to be printed: the day form
// ("Best before 25 11 2027") or a coarser form with "end".
type shownDate struct {
	Form  string // "day", "month" or "year"
	Shown unit.Date
}

// dateFor coarsens a date. The month and year forms round down, so the end of
// the printed month or year never passes the real date; a real date that is
// already the last day stays. The month form needs a life over three months,
// the year form over eighteen (Annex X(1)); otherwise the day is shown.
func dateFor(best, made unit.Date, form string) shownDate {
	switch {
	case form == "month" && made.AddMonths(3).Before(best):
		return shownDate{"month", monthDown(best)}
	case form == "year" && made.AddMonths(18).Before(best):
		y := best.Year
		if best.Month != 12 || best.Day != 31 {
			y--
		}
		return shownDate{"year", unit.Date{Year: y, Month: 12, Day: 31}}
	}
	return shownDate{"day", best}
}

// monthDown is the last day of the last whole month not after d.
func monthDown(d unit.Date) unit.Date {
	next := d.AddDays(1)
	if next.Month != d.Month {
		return d
	}
	return unit.Date{Year: d.Year, Month: d.Month, Day: 1}.AddDays(-1)
}
