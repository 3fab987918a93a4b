package place

import (
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"
	"sync"

	"jarmark/internal/law/label"
)

// Phrases are the words of one language, by key ("keep.shelf", written quoted,
// one a line). {name} stands for a value; *words* are set bold.
type Phrases struct {
	Lang  string
	words map[string]string
	read  func() error // fills words, once
}

// Has reports whether the language has the phrase.
func (p *Phrases) Has(key string) bool { _, ok := p.all()[key]; return ok }

// Say gives a phrase with its values filled in; kv alternates names and
// values. A key the loader did not ask for and nobody wrote gives the key
// itself, so that a gap is seen, not hidden.
func (p *Phrases) Say(key string, kv ...string) string {
	text, ok := p.all()[key]
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

// openPhrases finds every language, and reads one when it is asked for: a label
// speaks one or two. LANG.toml and LANG-*.toml make one language.
func openPhrases(files fs.FS) (map[string]*Phrases, error) {
	names, err := fs.Glob(files, "languages/*.toml")
	if err != nil {
		return nil, err
	}
	sort.Strings(names)
	of := map[string][]string{}
	for _, n := range names {
		lang, _, _ := strings.Cut(strings.TrimSuffix(path.Base(n), ".toml"), "-")
		of[lang] = append(of[lang], n)
	}
	out := map[string]*Phrases{}
	for lang, names := range of {
		p := &Phrases{Lang: lang, words: map[string]string{}}
		p.read = sync.OnceValue(func() error { return p.take(files, names) })
		out[lang] = p
	}
	return out, nil
}

// take reads the files of a language; a key written twice is an error.
func (p *Phrases) take(files fs.FS, names []string) error {
	for _, n := range names {
		data, err := fs.ReadFile(files, n)
		if err != nil {
			return err
		}
		raw := map[string]string{}
		if err := decode(n, data, &raw); err != nil {
			return err
		}
		for k, v := range raw {
			if _, twice := p.words[k]; twice {
				return fmt.Errorf("%s: phrase %s is written twice", n, k)
			}
			p.words[k] = v
		}
	}
	return nil
}

// fault reads the language and tells what is wrong with its files.
func (p *Phrases) fault() error {
	if p == nil || p.read == nil {
		return nil
	}
	return p.read()
}

// all gives the phrases by key.
func (p *Phrases) all() map[string]string {
	_ = p.fault() // the set that speaks the language has told it: see [Book.compile]
	return p.words
}
