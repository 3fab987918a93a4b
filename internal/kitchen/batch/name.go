package batch

import "strings"

// The marks a maker writes into a name, which are no part of it: where a narrow
// label may part a word, and between words where a line ends.
const (
	softHyphen = '\u00AD'
	mark       = "|"
)

// name reads a name and takes its marks out. A mark in a word, or a soft hyphen,
// says where a narrow label may part it; one beside a blank ends a line.
func (r *reader) name(p *string, path string) string {
	if !has(p) || !strings.ContainsAny(*p, mark+string(softHyphen)) {
		return r.text(p, path)
	}
	note := func(hard, marked string) {
		if r.marked == nil {
			r.marked = map[string]string{}
		}
		r.marked[hard] = marked
	}
	var words []string
	ends := false
	for _, w := range strings.Fields(*p) {
		marked := strings.ReplaceAll(w, mark, string(softHyphen))
		hard := strings.ReplaceAll(marked, string(softHyphen), "")
		ends = ends || strings.HasPrefix(w, mark)
		if hard == "" {
			continue
		}
		if k := len(words); ends && k > 0 {
			note(words[k-1]+" "+hard, words[k-1]+"\n"+hard)
		}
		if inner := strings.Trim(marked, string(softHyphen)); inner != hard {
			note(hard, inner)
		}
		words, ends = append(words, hard), strings.HasSuffix(w, mark)
	}
	return r.text(new(strings.Join(words, " ")), path)
}
