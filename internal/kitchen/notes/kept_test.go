package notes

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"jarmark/internal/kitchen/pantry"
)

// everyLine gives the lines of all sets, published and our own.
func everyLine(t *testing.T) (out []string) {
	t.Helper()
	whole, _ := filepath.Glob(published + "*.txt")
	judged, _ := filepath.Glob(published + "unseen/*.txt")
	own, _ := filepath.Glob("testdata/[st]*.txt")
	for _, file := range slices.Concat(whole, judged, own) {
		for _, s := range linesOf(t, file) {
			if !strings.HasPrefix(s, "# ") {
				line, _, _ := strings.Cut(s, " => ")
				out = append(out, line)
			}
		}
	}
	return out
}

var readings = map[string][]Line{}

// everyReading reads each line alone, once for all tests; under -short one of eight,
// for beside the race detector each takes ten times as long.
func everyReading(t *testing.T) map[string][]Line {
	t.Helper()
	for i, s := range everyLine(t) {
		if _, ok := readings[s]; !ok && (i%8 == 0 || !testing.Short()) {
			readings[s] = Read(s, pantry.Default()).Lines
		}
	}
	return readings
}

var (
	fractions = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3", "⁄", "/", "H2O", "water", "h2o", "water")
	anHour    = regexp.MustCompile(`(?i)\d[\d /,.½-]*(?: ?(?:[-–]|to|and|bis) ?\d[\d /]*)? ?(?:h|hrs?|hours?|heures?|stunden?|std)\b`)
	digits    = regexp.MustCompile(`\d+`)
	aSecond   = regexp.MustCompile(`(?i)\((?:[^()\d]*\d[\d ./,-]*-?(?:\p{L}|"|°)[^()\d]*)+\)|[/=] ?\d[\d ./]* ?\p{L}+(?: \d[\d ./]* ?(?:oz|ounces?)\b)?|\d+,\d{3}|\b(?:no|number|#)\.? ?\d+|^\W*(?:step )?\d+[.):]`) // the same again in brackets or behind a slash, thousands, the number of a can or a step
)

// Of a line that is read no figure is gone: it stands in a key, a question or a
// remark, unless it says an amount again in another measure. The test looks at
// the text alone, and knows none of the grammar.
func TestNoFigureIsGone(t *testing.T) {
	lines, gone := 0, 0
	for s, read := range everyReading(t) {
		for _, l := range read {
			if !l.Read() {
				continue
			}
			lines++
			out := strings.ReplaceAll(summary(l), ",", ".")
			bare := fractions.Replace(s)
			if l.find("cook.minutes") != nil || l.find("process.minutes") != nil {
				bare = anHour.ReplaceAllString(bare, " ")
			}
			bare = aSecond.ReplaceAllString(bare, " ")
			if strings.Contains(s, "|") || len(l.Fills) > 0 && l.Fills[0].Sealed >= 0 {
				continue // a table's second column; jars that did not seal, taken off
			}
			for _, f := range digits.FindAllString(bare, -1) {
				if f = strings.TrimLeft(f, "0"); f != "" && !strings.Contains(out, f) {
					gone++
					t.Errorf("%q: %s is gone:\n%s", s, f, summary(l))
				}
			}
		}
	}
	t.Logf("%d figures of %d lines gone", gone, lines)
	if lines < enough(1500) {
		t.Errorf("%d lines", lines)
	}
}

var joinsTwo = regexp.MustCompile(`(?i)\b(?:or|and|of|cups?|oder|und|ou|et|\*)\b|\*|\+`)

// Of a line with things for the pot no food is gone: each food of the table that
// the line names is an ingredient, or stands in a form, a question or a remark.
func TestNoFoodIsGone(t *testing.T) {
	p := pantry.Default()
	g := &grammar{p: p, found: map[string]*pantry.Ingredient{}, tongues: []*pantry.Pantry{p, p.Speaking("de"), p.Speaking("fr")}}
	foods, gone := 0, 0
	for s, read := range everyReading(t) {
		for _, l := range read {
			if len(l.Ingredients) == 0 {
				continue
			}
			kept := strings.ToLower(summary(l))
			keys := map[string]bool{}
			for _, in := range l.Ingredients {
				for _, n := range append(in.Names, in.Name) {
					row, _ := g.row(n)
					keys[row.Key] = true
				}
			}
			words := strings.FieldsFunc(s, func(r rune) bool { return strings.ContainsRune(" ,;/()|.:-–—", r) })
			for i := 0; i < len(words); {
				n := 2
				row, said := pantry.Ingredient{}, ""
				for ; n > 0; n-- {
					if i+n > len(words) {
						continue
					}
					said = strings.Join(words[i:i+n], " ")
					if r, ok := g.row(said); ok && strings.Trim(said, "0123456789 ") == said && len(said) > 2 && !joinsTwo.MatchString(said) && !isForm(strings.ToLower(said)) {
						row = r
						break
					}
				}
				if n == 0 {
					i++
					continue
				}
				i += n
				foods++
				said = strings.TrimSuffix(said, "'s")
				last := strings.ToLower(words[i-1])
				if i > n && cooking.MatchString(words[i-n-1]) {
					continue // "simmer apples 20 min": a step
				}
				if !keys[row.Key] && !strings.Contains(kept, strings.ToLower(said)) && !strings.Contains(kept, strings.TrimSuffix(last, "s")) {
					gone++
					t.Errorf("%q: %s (%s) is gone:\n%s", s, said, row.Key, summary(l))
				}
			}
		}
	}
	t.Logf("%d of %d foods gone", gone, foods)
	if foods < enough(1500) {
		t.Errorf("%d foods", foods)
	}
}
