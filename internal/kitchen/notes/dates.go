package notes

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"jarmark/internal/kit/unit"
)

// monthOf knows the months of three languages by their first letters.
func monthOf(word string) int {
	w := strings.ToLower(strings.TrimSuffix(word, "."))
	for i, names := range []string{"january januar janvier jan", "february februar février fevrier feb fév", "march märz maerz mars mar mär", "april avril apr avr",
		"may mai", "june juni juin jun", "july juli juillet jul juil", "august août aout aug", "september septembre sept sep", "october oktober octobre oct okt",
		"november novembre nov", "december dezember décembre decembre dec dez déc"} {
		for _, n := range strings.Fields(names) {
			if w == n {
				return i + 1
			}
		}
	}
	return 0
}

const monthWord = `(\p{L}{3,9}\.?)`

var (
	isoForm     = pattern(`\b(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})\b`)
	dayFirst    = pattern(`\b(\d{1,2})(?:st|nd|rd|th|er|\.)?(?: of)? ` + monthWord + `,?(?: (\d{4}|'?\d{2}))?(?:$|[^\d])`)
	monthLead   = pattern(monthWord + ` (\d{1,2})(?:st|nd|rd|th)?(?:,? (\d{4}|'\d{2}))?(?:$|[^\d])`)
	dotted      = pattern(`\b(\d{1,2})\. ?(\d{1,2})\. ?(\d{4}|\d{2})\b`)
	dottedShort = pattern(`\b(\d{1,2})\. ?(\d{1,2})\.(?:$|[^\d])`)
	slashed     = pattern(`\b(\d{1,2})[/-](\d{1,2})[/-](\d{4}|\d{2})\b`)
	weekDay     = pattern(`(?i)^(?:made |on |am |le )?(?:mon|tue|wed|thu|fri|sat|sun|mo|di|mi|do|fr|sa|so|lun|mar|mer|jeu|ven|sam|dim)\p{L}*\.?,? (\d{1,2})[./-](\d{1,2})\.?$`)
	dayWords    = pattern(`(?i)\b(?:made|cooked|canned|on|date|the|it|day|batch|from|today|mo|di|mi|do|fr|sa|so|lun|mar|mer|jeu|ven|sam|dim|mon|tues?|weds?|thu(?:rs?)?|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday|gekocht|eingekocht|am|den|vom|datum|fait|le|du|cuit|date de|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche)\b`)
)

// date reads a line that is a date, in several spellings. One that may be two
// days is asked about.
func (g *grammar) date(l *Line, s string) bool {
	if m := lotForm.FindStringSubmatch(s); m != nil && strings.ContainsFunc(m[1], unicode.IsLetter) {
		return false // "lot 26-09-04-B"
	}
	s = clockTime.ReplaceAllString(gluedDay.ReplaceAllString(s, "$1 $2 $3"), "")
	days, from, to := dayIn(s)
	if len(days) == 0 {
		return g.yearless(l, s)
	}
	if rest := strings.Trim(dayWords.ReplaceAllString(s[:from]+" "+s[to:], ""), " ,.:;-()"); rest != "" && !g.heads(rest) {
		if len(strings.Fields(rest)) <= 6 && !strings.ContainsAny(rest, "0123456789") {
			l.ask("is %s the day it was made? Take the # off if so", strings.Join(days, " or "))
			l.made(days, true)
			return true
		}
		return false
	}
	l.made(days, len(days) > 1)
	if len(days) > 1 {
		l.ask("day or month first, %s? Take the # off one", strings.Join(days, " or "))
	}
	return true
}

func (l *Line) made(days []string, asked bool) {
	for _, d := range days {
		l.Keys = append(l.Keys, Key{Path: "made", Value: d, Asked: asked})
	}
}

// heads reports words that are the name of a preserve and no more: "strawberry &
// rhubarb jam".
func (g *grammar) heads(s string) bool {
	words := strings.Fields(s)
	_, fruit, ok := g.p.KindIn(s)
	if !ok || !g.isKind(words[0]) && !g.isKind(words[len(words)-1]) || fruit == "" && len(words) > 1 {
		return false
	}
	if _, known := g.row(fruit); known {
		return true
	}
	ws := strings.FieldsFunc(nameJoin.ReplaceAllString(" "+fruit+" ", " "), func(r rune) bool { return !unicode.IsLetter(r) })
	return !slices.ContainsFunc(ws, func(w string) bool { _, known := g.row(w); return !known })
}

// isKind reports a word that says a kind of preserve.
func (g *grammar) isKind(w string) bool {
	_, _, ok := g.p.KindIn(w)
	return ok
}

// nameJoin are the words between the fruits of a name.
var nameJoin = pattern(`(?i) (?:and|with|und|mit|et|aux?|à|de|des|du) `)

// gluedDay is a day as a stamp has it: 05SEP2026.
var gluedDay = pattern(`^(\d{2})(\p{L}{3})(\d{4}|\d{2})$`)

// clockTime is a time of day beside a day.
var clockTime = pattern(`(?i),? (?:at |um |à )?(?:\d{1,2}(?:[:.]\d{2})? ?(?:am|pm|a\.m\.|p\.m\.|uhr|o'clock)|\d{1,2}[:h]\d{2}|(?:in the |am |le )?(?:morning|afternoon|evening|night|morgens?|vormittags?|nachmittags?|abends?|matin|soir|après-midi))$`)

// yearless asks of a line that is a day and a month, or the name of the preserve
// with them.
func (g *grammar) yearless(l *Line, s string) bool {
	days, around := dayOfYear(s)
	if len(days) == 0 {
		return false
	}
	if rest := strings.Trim(dayWords.ReplaceAllString(around, ""), " ,.:;-()"); rest != "" && !g.heads(rest) {
		return false
	}
	l.ask("of which year? Write it for yyyy, and take the # off")
	l.made(days, true)
	return true
}

// dayOfYear finds a day and a month without a year, as "yyyy-06-14"; around is what
// stands about them.
func dayOfYear(s string) (days []string, around string) {
	const leap = "2024" // has every day
	if m := dottedShort.FindStringSubmatch(s); m != nil {
		days, around = day(leap, m[2], m[1]), strings.Replace(s, m[0], "", 1)
	} else if m := weekDay.FindStringSubmatch(s); m != nil {
		days = append(day(leap, m[2], m[1]), day(leap, m[1], m[2])...)
	}
	for i, f := range []pattern{dayFirst, monthLead} {
		if m := f.FindStringSubmatch(s); m != nil && m[3] == "" && len(days) == 0 {
			days, around = day(leap, strconv.Itoa(monthOf(m[2-i])), m[1+i]), strings.Replace(s, m[0], "", 1)
		}
	}
	for i := range days {
		days[i] = "yyyy" + strings.TrimPrefix(days[i], leap)
	}
	return slices.Compact(days), around
}

// dayIn finds the day a text names: no day, one, or two to choose from.
func dayIn(s string) (days []string, from, to int) {
	if m := isoForm.FindStringSubmatchIndex(s); m != nil {
		return day(s[m[2]:m[3]], s[m[4]:m[5]], s[m[6]:m[7]]), m[0], m[1]
	}
	for _, f := range []struct {
		form       pattern
		day, month int
	}{{dayFirst, 1, 2}, {monthLead, 2, 1}} {
		for _, m := range f.form.FindAllStringSubmatchIndex(s, -1) {
			if month := monthOf(s[m[2*f.month]:m[2*f.month+1]]); month > 0 && m[6] >= 0 {
				return day(s[m[6]:m[7]], strconv.Itoa(month), s[m[2*f.day]:m[2*f.day+1]]), m[0], m[7]
			}
		}
	}
	if m := dotted.FindStringSubmatchIndex(s); m != nil { // day first, as where points are written
		return day(s[m[6]:m[7]], s[m[4]:m[5]], s[m[2]:m[3]]), m[0], m[1]
	}
	if m := slashed.FindStringSubmatchIndex(s); m != nil {
		a, b, y := s[m[2]:m[3]], s[m[4]:m[5]], s[m[6]:m[7]]
		days = append(day(y, a, b), day(y, b, a)...)
		if len(days) == 2 && days[0] == days[1] {
			days = days[:1]
		}
		return onWeekday(s, days), m[0], m[1]
	}
	return nil, 0, 0
}

// weekdays are the first letters of the days in three languages, Sunday first.
var weekdays = []string{"sun so dim", "mon mo lun", "tue di mar", "wed mi mer", "thu do jeu", "fri fr ven", "sat sa sam"}

var weekdayLead = pattern(`(?i)\b(sun|mon|tue|wed|thu|fri|sat|dim|lun|mar|mer|jeu|ven|sam|so|mo|di|mi|do|fr|sa)\p{L}*\.?,? (?:am |den |the |le )?\d`)

// onWeekday keeps the one of two days that is on the weekday that is told: "Sat 12/9/26".
func onWeekday(s string, days []string) []string {
	m := weekdayLead.FindStringSubmatch(s)
	if m == nil || len(days) != 2 {
		return days
	}
	for _, d := range days {
		t, err := time.Parse(time.DateOnly, d)
		if err == nil && slices.Contains(strings.Fields(weekdays[t.Weekday()]), strings.ToLower(m[1])) {
			return []string{d}
		}
	}
	return days
}

// day gives the day as ISO 8601, or nothing where there is no such day. Two
// figures are a year of this century.
func day(y, m, d string) []string {
	year, _ := strconv.Atoi(strings.TrimPrefix(y, "'"))
	if year < 100 {
		year += 2000
	}
	month, _ := strconv.Atoi(m)
	dd, _ := strconv.Atoi(d)
	out := fmt.Sprintf("%04d-%02d-%02d", year, month, dd)
	if _, err := unit.ParseDate(out); err != nil || year < 1990 || year > 2100 {
		return nil
	}
	return []string{out}
}
