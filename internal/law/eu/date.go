package eu

import (
	"jarmark/internal/kit/unit"
)

// shownDate is how a date of minimum durability is to be printed: the day form
// ("Best before 25 11 2027") or the month with "end".
type shownDate struct {
	Form  string // "day" or "month"
	Shown unit.Date
}

// dateFor coarsens a date where a place asks for the month. It rounds down, so the
// end of the printed month never passes the real date; a real date that is already
// the last day stays. The month form needs a life over three months (Annex X(1)(c));
// otherwise the day is shown.
func dateFor(best, made unit.Date, form string) shownDate {
	if form == "month" && made.AddMonths(3).Before(best) {
		return shownDate{"month", monthDown(best)}
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
