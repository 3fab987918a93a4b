package record

import (
	"strconv"
	"strings"

	"jarmark/internal/kitchen/cook"
)

// rests says in the page's language what the keeping words rest on: the facts
// that somebody measured or did. What was assumed is not told as a fact.
func (p publisher) rests() (out []string) {
	r := p.r
	if r.Brix.How == cook.Measured && r.Brix.Value > 0 {
		out = append(out, fill(p.w.text["brix-measured"], "n", p.w.number(r.Brix.Value, 1)))
	}
	if r.PHMeasured {
		out = append(out, fill(p.w.text["ph-measured"], "n", p.w.number(r.PHHigh, 2)))
	}
	way, minutes := "process-"+strings.ReplaceAll(r.Batch.Process.Method, " ", "-"), r.Batch.Process.Minutes
	if text, ok := p.w.text[way]; ok && minutes != nil && *minutes > 0 {
		out = append(out, fill(text, "n", p.w.number(*minutes, 1)))
	}
	return out
}

// number writes a number with the decimal sign of the language, without zeros
// at its end.
func (w words) number(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return strings.Replace(s, ".", w.text["decimal"], 1)
}
