package web

import (
	"encoding/csv"
	"regexp"
	"strings"
	"sync"

	"jarmark/internal/app/job"
	"jarmark/internal/kit/diag"
	"jarmark/templates"
)

// findingRows gives findings as the page words them: by the fields of the form and the
// pages there are, not by the keys of a file and by commands.
func findingRows(l diag.List) []job.Finding {
	out := job.FindingRows(l)
	for i := range out {
		out[i].Hint = said(out[i].Hint)
	}
	return out
}

// sayings are phrases of the command line and how the page says them, in the
// order they are looked for.
var sayings = sync.OnceValue(func() *strings.Replacer {
	f, _ := templates.FS.Open("web/hint-words.csv") // embedded; a test reads it
	defer f.Close()
	all, _ := csv.NewReader(f).ReadAll()
	var pairs []string
	for _, row := range all[1:] {
		pairs = append(pairs, row...)
	}
	return strings.NewReplacer(pairs...)
})

var (
	tableWord = regexp.MustCompile(`\[{1,2}([a-z_.]+)\]{1,2}( tables?)?`)
	setting   = regexp.MustCompile(`\b([a-z_]+(?:\.[a-z_]+)*) = ([\[{]?)`)
	keyWord   = regexp.MustCompile(`\b[a-z]+(?:[._][a-z]+)+\b`)
	boundary  = regexp.MustCompile(`[\[{]([^\[\]{}]*)[\]}]`)
)

// said words a hint for the page.
func said(hint string) string {
	if strings.Contains(hint, "brackets") {
		return hint // about the text itself
	}
	hint = sayings().Replace(hint)
	hint = tableWord.ReplaceAllStringFunc(hint, func(m string) string {
		name := tableWord.FindStringSubmatch(m)[1]
		if title, ok := labels().tables[name]; ok {
			return "“" + title + "”"
		}
		return "“" + strings.ReplaceAll(name, "_", " ") + "”"
	})
	hint = setting.ReplaceAllStringFunc(hint, func(m string) string {
		s := setting.FindStringSubmatch(m)
		return labels().field(s[1]) + ": " + s[2]
	})
	hint = boundary.ReplaceAllString(hint, "$1")
	return keyWord.ReplaceAllStringFunc(hint, labels().known)
}

// labelled are the words of the form for the tables and keys of the files.
type labelled struct{ tables, keys map[string]string }

var labels = sync.OnceValue(func() labelled {
	l := labelled{map[string]string{}, map[string]string{}}
	for _, form := range [][]section{batchForm, kitchenForm} {
		for _, s := range form {
			for _, g := range s.Groups {
				title := s.Title
				if g.Title != "" {
					title = g.Title
				}
				if l.tables[g.Table] == "" {
					l.tables[g.Table] = title
				}
				for _, f := range g.Fields {
					for _, key := range []string{f.Key, strings.TrimPrefix(g.Table+"."+f.Key, ".")} {
						if l.keys[key] == "" {
							l.keys[key] = f.Label
						}
					}
				}
			}
		}
	}
	return l
})

// field is what a key is called on the form.
func (l labelled) field(key string) string {
	if label := l.keys[key]; label != "" {
		return "“" + label + "”"
	}
	return strings.NewReplacer("_", " ", ".", " ").Replace(key)
}

// known words a key that stands in a sentence; what is no key stays.
func (l labelled) known(word string) string {
	if l.keys[word] == "" && !strings.Contains(word, "_") {
		return word // "own.site": not ours
	}
	return l.field(word)
}
