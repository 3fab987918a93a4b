package pantry

import (
	"strings"
)

// loadShort reads the short words of makers' notes: "sug", "rasps", "GZ".
func (p *Pantry) loadShort() error {
	t := readTable(p.from, "short-words")
	p.short = map[string]string{}
	t.each(func(r row) {
		means := r.need("means")
		r.need("source")
		if len(r.list("words")) == 0 {
			r.fail("words", "no words")
		}
		for _, w := range r.list("words") {
			w = strings.ToLower(w)
			if _, again := p.short[w]; again {
				r.fail("words", w+" stands in two rows")
			}
			p.short[w] = means
		}
	})
	return t.err
}

// Short gives the words a short word of a maker's notes stands for: "strawbs" is
// strawberries. They may be asked about in their turn (Ambiguous).
func (p *Pantry) Short(word string) (means string, ok bool) {
	word = strings.ToLower(word)
	if means, ok = p.short[word]; !ok {
		means, ok = p.short[strings.TrimSuffix(word, ".")]
	}
	return means, ok
}
