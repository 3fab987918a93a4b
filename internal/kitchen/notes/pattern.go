package notes

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// pattern is a regular expression compiled when it is first used: there are some
// two hundred here, and most runs of the program read no notes. A text and no
// more, it costs the program nothing at its start.
type pattern string

// compiled holds what was compiled: as it is, and with its accents spelt out.
var (
	compiling sync.Mutex
	compiled  = [2]map[pattern]*regexp.Regexp{{}, {}}
)

func (p pattern) compile(spelt int) *regexp.Regexp {
	compiling.Lock()
	defer compiling.Unlock()
	re, ok := compiled[spelt][p]
	if !ok {
		text := string(p)
		if spelt == 1 {
			text = spellOut(text, "(?:", ")")
		}
		re = regexp.MustCompile(text)
		compiled[spelt][p] = re
	}
	return re
}

func (p pattern) re() *regexp.Regexp { return p.compile(0) }

// MatchString matches with the accented letters of both written in ASCII: a word
// boundary of RE2 knows no other, so \b would stand behind the é of "ébouillanter"
// and not before that of "ébullition".
func (p pattern) MatchString(s string) bool {
	if len(s) == utf8.RuneCountInString(s) {
		return p.re().MatchString(s)
	}
	return p.compile(1).MatchString(spellOut(s, "", ""))
}

// spellOut writes each accented letter as three letters no word has. A pattern has
// none in a class of letters.
func spellOut(s, open, shut string) string {
	var b strings.Builder
	for _, r := range s {
		i := -1
		if r > 'z' {
			i = strings.IndexRune(accented, unicode.ToLower(r))
		}
		if i < 0 {
			b.WriteRune(r)
			continue
		}
		b.WriteString(open + "q" + string(rune('a'+i/2)) + "q" + shut)
	}
	return b.String()
}

// accented are letters of two bytes each.
const accented = "àâäáçéèêëîïíôöóùûüúñßœæ"

func (p pattern) FindString(s string) string                 { return p.re().FindString(s) }
func (p pattern) FindStringIndex(s string) []int             { return p.re().FindStringIndex(s) }
func (p pattern) FindStringSubmatch(s string) []string       { return p.re().FindStringSubmatch(s) }
func (p pattern) FindStringSubmatchIndex(s string) []int     { return p.re().FindStringSubmatchIndex(s) }
func (p pattern) FindAllString(s string, n int) []string     { return p.re().FindAllString(s, n) }
func (p pattern) FindAllStringIndex(s string, n int) [][]int { return p.re().FindAllStringIndex(s, n) }
func (p pattern) ReplaceAllString(s, with string) string     { return p.re().ReplaceAllString(s, with) }
func (p pattern) Split(s string, n int) []string             { return p.re().Split(s, n) }
func (p pattern) FindAllStringSubmatch(s string, n int) [][]string {
	return p.re().FindAllStringSubmatch(s, n)
}
func (p pattern) FindAllStringSubmatchIndex(s string, n int) [][]int {
	return p.re().FindAllStringSubmatchIndex(s, n)
}
func (p pattern) ReplaceAllStringFunc(s string, f func(string) string) string {
	return p.re().ReplaceAllStringFunc(s, f)
}
