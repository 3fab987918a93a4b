package unit

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

var isoDate = regexp.MustCompile(`^(\d{4})-(\d{2})-(\d{2})$`)

// ParseDate reads an ISO 8601 calendar date, "2026-06-14".
func ParseDate(s string) (Date, error) {
	text := strings.TrimSpace(s)
	m := isoDate.FindStringSubmatch(text)
	if m == nil {
		hint, day, ok := DayHint(text)
		if !ok {
			hint = "write year-month-day, like 2026-06-14"
		}
		return Date{}, meant(day, hint, "%s is not a date", quote(s))
	}
	y, _ := strconv.Atoi(m[1])
	mo, _ := strconv.Atoi(m[2])
	d, _ := strconv.Atoi(m[3])
	date := Date{Year: y, Month: mo, Day: d}
	if y == 0 || fromTime(date.time()) != date {
		return Date{}, fail("check month and day; write year-month-day", "there is no day %s", text)
	}
	return date, nil
}

func (d Date) time() time.Time {
	return time.Date(d.Year, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC)
}

func fromTime(t time.Time) Date {
	return Date{Year: t.Year(), Month: int(t.Month()), Day: t.Day()}
}

// String gives "2026-06-14", and "" for the zero date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

var monthWords = [...]string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"}

// Words writes the day in English with its month in letters, so that no one
// swaps day and month: "14 Jun 2026", or "Jun 14, 2026" as it is written in
// America. The zero date is "no date".
func (d Date) Words(american bool) string {
	switch {
	case d.IsZero():
		return "no date"
	case d.Month < 1 || d.Month > 12:
		return d.String()
	case american:
		return fmt.Sprintf("%s %d, %04d", monthWords[d.Month-1], d.Day, d.Year)
	}
	return fmt.Sprintf("%d %s %04d", d.Day, monthWords[d.Month-1], d.Year)
}

// MonthWord is the short English name of a month, 1 to 12; others give "".
func MonthWord(month int) string {
	if month < 1 || month > 12 {
		return ""
	}
	return monthWords[month-1]
}

// Before reports whether d is an earlier day than e.
func (d Date) Before(e Date) bool {
	if d.Year != e.Year {
		return d.Year < e.Year
	}
	if d.Month != e.Month {
		return d.Month < e.Month
	}
	return d.Day < e.Day
}

// AddMonths goes n months on, to the same day or the month's last: one month
// after January 31 is February 28 or 29.
func (d Date) AddMonths(n int) Date {
	if d.IsZero() {
		return d
	}
	first := fromTime(time.Date(d.Year, time.Month(d.Month)+time.Month(n), 1, 0, 0, 0, 0, time.UTC))
	first.Day = min(d.Day, daysIn(first))
	return first
}

func daysIn(d Date) int {
	return time.Date(d.Year, time.Month(d.Month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}

// AddDays goes n days on.
func (d Date) AddDays(n int) Date {
	if d.IsZero() {
		return d
	}
	return fromTime(d.time().AddDate(0, 0, n))
}

// DaysUntil counts the days from d to e; negative when e is earlier.
func (d Date) DaysUntil(e Date) int {
	return int((e.time().Unix() - d.time().Unix()) / (24 * 60 * 60))
}

// YearDay is the day of the year, 1 to 366; 0 for the zero date.
func (d Date) YearDay() int {
	if d.IsZero() {
		return 0
	}
	return d.time().YearDay()
}
