package cook

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"jarmark/internal/kitchen/batch"
)

// Lot gives the lot code of a batch: the maker's own, or "L", the year's last
// two digits, the day of the year, and the initials of what the name says
// before "with", kind words left out; a single word gives its first two
// letters. Strawberry & rhubarb jam of 14 June 2026 is L26165-SR, apricot jam
// L26165-AP. Empty without a date.
func Lot(b *batch.Batch) string {
	if lot := strings.TrimSpace(b.Lot); lot != "" {
		return lot
	}
	if b.Made.IsZero() {
		return ""
	}
	lot := fmt.Sprintf("L%02d%03d", b.Made.Year%100, b.Made.YearDay())
	if s := initials(b.Name); s != "" {
		lot += "-" + s
	}
	return lot
}

// kindWords say what a preserve is, not what it is of.
var kindWords = strings.Fields("jam jams jelly preserve preserves marmalade butter curd chutney relish conserve spread syrup and the of a in my our no batch")

func initials(name string) string {
	var words []string
	for _, w := range strings.FieldsFunc(ascii(name), func(r rune) bool { return r < 'A' || r > 'Z' }) {
		if w == "WITH" && len(words) > 0 {
			break
		}
		if !slices.Contains(kindWords, strings.ToLower(w)) && w != "WITH" {
			words = append(words, w)
		}
	}
	switch {
	case len(words) == 0:
		return ""
	case len(words) == 1:
		return words[0][:min(2, len(words[0]))]
	}
	out := ""
	for _, w := range words[:min(4, len(words))] {
		out += w[:1]
	}
	return out
}

// ascii gives upper-case letters without accents; apostrophes join.
func ascii(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) || r == '\'' || r == '’' {
			return -1
		}
		return unicode.ToUpper(r)
	}, norm.NFD.String(s))
}

// bestBefore sets the date from the keeping class, or checks the maker's own.
func (c *calc) bestBefore() {
	r, k := c.r, &c.r.Keeping
	k.BestBeforeHow = Estimated
	made := c.b.Made
	computed := made
	if !made.IsZero() {
		computed = made.AddMonths(k.SealedMonths).AddDays(k.SealedDays)
	}
	r.BestBefore = computed
	given := c.b.BestBefore
	if given.IsZero() {
		return
	}
	r.BestBefore, k.BestBeforeHow = given, Given
	if !made.IsZero() && computed.Before(given) { // a day before it was made is told by the reader of the file
		c.warnf("best-before-late", "best_before", "best before %s is later than the %s these facts support", given, computed).
			Hinted("shorten it, or record what supports it: process, reading, pH, tested recipe").Cited(c.decisive)
	}
}
