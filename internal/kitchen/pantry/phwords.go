package pantry

import "slices"

// What the words a maker writes of an instrument say of a pH (ph-words.csv).
const (
	PHNone      = "none"      // a number nobody read off anything
	PHUntrusted = "untrusted" // a meter nobody may trust
	PHStrips    = "strips"    // what shows a colour
	PHMeter     = "meter"     // what is a meter
)

// phWord is one row: words of one language that mean one of the above, or do
// so only where nothing else is written.
type phWord struct {
	Lang, Means, Source string
	Whole               bool
	words               [][]string
}

func (p *Pantry) loadPHWords() error {
	t := readTable(p.from, "ph-words")
	t.each(func(r row) {
		x := phWord{Lang: r.need("lang"), Means: r.need("means"), Whole: r.yes("whole"), Source: r.need("source"), words: patterns(r.list("words"))}
		if len(x.Lang) != 2 {
			r.fail("lang", x.Lang+" is no code of two letters, as of ISO 639-1")
		}
		if !slices.Contains([]string{PHNone, PHUntrusted, PHStrips, PHMeter}, x.Means) {
			r.fail("means", x.Means+" is none of none, untrusted, strips and meter")
		}
		if len(x.words) == 0 {
			r.fail("words", "no words")
		}
		for _, w := range x.words {
			if len(w) == 0 || slices.Contains(w, "*") || slices.Contains(w, "**") || slices.Contains(w, "") {
				r.fail("words", "a phrase without a letter fits everything, or nothing")
			}
		}
		p.phWords = append(p.phWords, x)
	})
	return t.err
}

// PHSays reports whether what a maker wrote of an instrument has words that
// mean one of PHNone, PHUntrusted, PHStrips and PHMeter, in any language.
func (p *Pantry) PHSays(said, means string) bool {
	ts := spelled(said)
	return slices.ContainsFunc(p.phWords, func(x phWord) bool {
		return x.Means == means && slices.ContainsFunc(x.words, func(w []string) bool {
			return find(ts, w) >= 0 && (!x.Whole || len(w) == len(ts))
		})
	})
}
