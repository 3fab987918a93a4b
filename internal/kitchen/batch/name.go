package batch

import "strings"

// name reads a name. Its soft hyphens (U+00AD) are no part of it: they say where a
// narrow label may part its words.
func (r *reader) name(p *string, path string) string {
	if !has(p) || !strings.ContainsRune(*p, softHyphen) {
		return r.text(p, path)
	}
	hard := strings.NewReplacer(string(softHyphen), "").Replace
	for _, w := range strings.Fields(*p) {
		if h := hard(w); h != w && h != "" {
			if r.marked == nil {
				r.marked = map[string]string{}
			}
			r.marked[h] = strings.Trim(w, string(softHyphen))
		}
	}
	return r.text(new(hard(*p)), path)
}

const softHyphen = '\u00AD'
