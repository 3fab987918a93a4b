package record

import (
	"strings"
	"unicode/utf8"

	"jarmark/internal/batch"
	"jarmark/internal/cook"
	"jarmark/internal/diag"
	"jarmark/internal/label"
)

// PlainSize is how many bytes PlainText keeps to: what a version 10 QR code
// (57 modules) holds at the lowest error correction (ISO/IEC 18004), so that it
// still reads from a jar.
const PlainSize = 271

// PlainText is the payload of a QR code for a maker without a website: name,
// lot, allergens and, as far as they fit, what else the kitchen handles, the
// date and the ingredients. Allergens are never cut: when they are long the
// text is longer than PlainSize. Content may be nil.
func PlainText(r *cook.Result, c *label.Content) string {
	if r == nil || r.Batch == nil {
		return ""
	}
	k := r.Kitchen
	if k == nil {
		k = &batch.Kitchen{}
	}
	var found diag.List
	w := wordsFor(langOf(r, c, Options{}))
	p := publisher{r: r, c: c, k: k, w: w, found: &found}
	name, sub := p.title()
	must := []string{w.text["lot"] + " " + r.Lot, w.text["allergens"] + ": " + p.allergens()}
	room := PlainSize - len(strings.Join(must, "\n")) - 1
	out := append(nonEmpty(cut(strings.TrimSpace(name+" "+sub), max(0, room))), must...)
	for _, s := range []string{p.advisory(), p.date(), w.text["ingredients"] + ": " + runsText(p.ingredients())} {
		if s != "" && len(strings.Join(append(out, s), "\n")) <= PlainSize {
			out = append(out, s)
		}
	}
	return strings.Join(out, "\n")
}

func (p publisher) date() string {
	if p.r.BestBefore.IsZero() {
		return ""
	}
	return p.w.dateWord(p.r) + " " + p.r.BestBefore.String()
}

func runsText(runs []label.Run) string {
	s := ""
	for _, r := range runs {
		s += r.Text
	}
	return s
}

// cut shortens to n bytes at a letter's end.
func cut(s string, n int) string {
	if len(s) <= n {
		return s
	}
	for n > 0 && !utf8.RuneStart(s[n]) {
		n--
	}
	return strings.TrimSpace(s[:n])
}
