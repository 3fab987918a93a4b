package place

import (
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"

	"jarmark/internal/law/label"
)

// Phrases are the words of one language, by key ("keep.shelf", written quoted,
// one a line). {name} stands for a value; *words* are set bold.
type Phrases struct {
	Lang  string
	words map[string]string
}

// Has reports whether the language has the phrase.
func (p *Phrases) Has(key string) bool { _, ok := p.words[key]; return ok }

// Say gives a phrase with its values filled in; kv alternates names and
// values. A key the loader did not ask for and nobody wrote gives the key
// itself, so that a gap is seen, not hidden.
func (p *Phrases) Say(key string, kv ...string) string {
	text, ok := p.words[key]
	if !ok {
		return "[" + key + "]"
	}
	for i := 0; i+1 < len(kv); i += 2 {
		text = strings.ReplaceAll(text, "{"+kv[i]+"}", kv[i+1])
	}
	return text
}

// Cite writes a clause as the language does: "Directive" is "Richtlinie". Its
// phrase cite.words lists what is written for what, parted by bars; a language
// without it writes clauses as they stand.
func (p *Phrases) Cite(clause string) string {
	if !p.Has("cite.words") {
		return clause
	}
	return strings.NewReplacer(strings.Split(p.Say("cite.words"), "|")...).Replace(clause)
}

// Runs gives a phrase as runs, its *starred* words bold.
func (p *Phrases) Runs(key string, kv ...string) []label.Run { return Starred(p.Say(key, kv...)) }

// Starred splits "*Keep* cool" into bold and plain runs.
func Starred(text string) []label.Run {
	var out []label.Run
	for i, s := range strings.Split(text, "*") {
		if s != "" {
			out = append(out, label.Run{Text: s, Bold: i%2 == 1})
		}
	}
	return out
}

// loadPhrases reads every language. LANG.toml and LANG-*.toml make one
// language; a key written twice is an error.
func loadPhrases(files fs.FS) (map[string]*Phrases, error) {
	names, err := fs.Glob(files, "languages/*.toml")
	if err != nil {
		return nil, err
	}
	sort.Strings(names)
	out := map[string]*Phrases{}
	for _, n := range names {
		data, err := fs.ReadFile(files, n)
		if err != nil {
			return nil, err
		}
		lang, _, _ := strings.Cut(strings.TrimSuffix(path.Base(n), ".toml"), "-")
		if out[lang] == nil {
			out[lang] = &Phrases{Lang: lang, words: map[string]string{}}
		}
		raw := map[string]string{}
		if err := decode(n, data, &raw); err != nil {
			return nil, err
		}
		for k, v := range raw {
			if out[lang].Has(k) {
				return nil, fmt.Errorf("%s: phrase %s is written twice", n, k)
			}
			out[lang].words[k] = v
		}
	}
	return out, nil
}
