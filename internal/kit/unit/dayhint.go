package unit

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

var (
	threeNumbers = regexp.MustCompile(`^(\d{1,4})\s*[/.\-]\s*(\d{1,2})\s*[/.\-]\s*(\d{1,4})$`)
	namedMonth   = regexp.MustCompile(`(?i)(?:^|[^\pL])(` + strings.Join(months[:], "|") + `)\pL*`)
	anyNumber    = regexp.MustCompile(`\d+`)
)

var isoTime = regexp.MustCompile(`^(\d{4}-\d{2}-\d{2})[T ]\d{1,2}:\d{2}(:\d{2}(\.\d+)?)?Z?$`)

// months are the beginnings of the months' names in English, German and French.
var months = [12]string{"jan", "feb|fév|fev", "mar|mär|maer", "apr|avr", "may|mai", "jun|juin", "jul|juil", "aug|aoû|aou", "sep", "oct|okt", "nov", "dec|dez|déc"}

// monthOf is the number of a month by the beginning of its name.
func monthOf(begin string) int {
	return 1 + slices.IndexFunc(months[:], func(m string) bool { return slices.Contains(strings.Split(m, "|"), strings.ToLower(begin)) })
}

// DayHint says how a day written another way is written here, ok false when the
// text is no day. Where month and day may be swapped it gives both; else day is
// the one that was meant, empty when there is none.
func DayHint(s string) (hint, day string, ok bool) {
	s = strings.Trim(strings.TrimSpace(s), `"'`)
	var y, a, b int
	named := false
	if m := threeNumbers.FindStringSubmatch(s); m != nil {
		y, a, b = digits(m[1]), digits(m[2]), digits(m[3])
		switch {
		case len(m[1]) > 2:
			named = true // year first: the month follows
		case strings.Contains(s, "."):
			y, b, named = b, y, true // points go with the day first
		default:
			y, a, b = b, y, a
		}
	} else if m := namedMonth.FindStringSubmatch(s); m != nil {
		n := anyNumber.FindAllString(s, -1)
		if len(n) != 2 {
			return "write year-month-day, like 2026-06-14", "", len(n) > 0 && len(n) < 3
		}
		y, a, b, named = digits(n[1]), monthOf(m[1]), digits(n[0]), true
		if len(n[0]) > 2 {
			y, b = digits(n[0]), digits(n[1])
		}
	} else {
		return "", "", false
	}
	if y < 100 {
		y += 2000
	}
	first, second := Date{y, a, b}, Date{y, b, a}
	one, two := fromTime(first.time()) == first, fromTime(second.time()) == second && !named
	switch {
	case one && two && a != b:
		return fmt.Sprintf("write the day as %s, or %s, year first", first, second), "", true
	case one:
		return "write the day as " + first.String(), first.String(), true
	case two:
		return "write the day as " + second.String(), second.String(), true
	}
	return "check month and day; write year-month-day", "", true
}

// Swappable reports a day that may be read month first or day first.
func Swappable(s string) bool {
	_, day, ok := DayHint(s)
	return ok && day == "" && threeNumbers.MatchString(strings.TrimSpace(s))
}

// MonthFirst says how the days of one list are read: as those that can be read
// one way only are written, where they agree; else by the custom of the place.
func MonthFirst(days []string, custom bool) bool {
	var first, second bool // which number has been over twelve
	for _, s := range days {
		if m := threeNumbers.FindStringSubmatch(strings.TrimSpace(s)); m != nil && len(m[1]) <= 2 && !strings.Contains(s, ".") {
			first, second = first || digits(m[1]) > 12, second || digits(m[2]) > 12
		}
	}
	if first != second {
		return second
	}
	return custom
}

func digits(s string) int {
	n, _ := strconv.Atoi(s)
	return n
}

// ReadDay reads a day as a spreadsheet may have written it anew: with a time,
// with a month's name, "5.12.2026", or with strokes, month first where
// monthFirst says so (the custom of the United States), else day first.
func ReadDay(s string, monthFirst bool) (Date, error) {
	text := strings.TrimSpace(s)
	d, err := ParseDate(text)
	if err == nil {
		return d, nil
	}
	if m := isoTime.FindStringSubmatch(text); m != nil {
		return ParseDate(m[1])
	}
	if _, day, ok := DayHint(text); ok && day != "" {
		return ParseDate(day)
	}
	if m := threeNumbers.FindStringSubmatch(text); m != nil && len(m[1]) <= 2 && digits(m[1]) <= 12 && digits(m[2]) <= 12 {
		month, day := m[1], m[2]
		if !monthFirst {
			month, day = day, month
		}
		if y := digits(m[3]); y > 0 {
			if y < 100 {
				y += 2000
			}
			return ParseDate(fmt.Sprintf("%04d-%02d-%02d", y, digits(month), digits(day)))
		}
	}
	return Date{}, err
}
