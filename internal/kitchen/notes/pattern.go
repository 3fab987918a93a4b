package notes

import (
	"regexp"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"
)

// pattern is a regular expression compiled when it is first used: there are
// near a hundred here, and most runs of the program read no notes.
type pattern func() *regexp.Regexp

// patterns are all of the package, for the test that compiles each.
var patterns []pattern

func lazily(text string) pattern {
	p := pattern(sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(text) }))
	patterns = append(patterns, p)
	return p
}

// MatchString also matches with the accented letters of both written in ASCII: a word
// boundary of RE2 knows no other, so \b would never stand before "ébullition" or
// behind "jusqu'à".
func (p pattern) MatchString(s string) bool {
	if p().MatchString(s) {
		return true
	}
	text := p().String()
	if len(s) == utf8.RuneCountInString(s) || len(text) == utf8.RuneCountInString(text) {
		return false
	}
	spelt, ok := inASCII.Load(text)
	if !ok {
		spelt = regexp.MustCompile(spellOut(text, "(?:", ")"))
		inASCII.Store(text, spelt)
	}
	return spelt.(*regexp.Regexp).MatchString(spellOut(s, "", ""))
}

var inASCII sync.Map

// spellOut writes each accented letter as three letters no word has.
func spellOut(s, open, shut string) string {
	var b strings.Builder
	for _, r := range s {
		if i := strings.IndexRune(accented, unicode.ToLower(r)); r > 'z' && i >= 0 {
			b.WriteString(open + "q" + string(rune('a'+i/2)) + "q" + shut)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// accented are letters of two bytes each.
const accented = "àâäáçéèêëîïíôöóùûüúñ"

func (p pattern) FindString(s string) string                 { return p().FindString(s) }
func (p pattern) FindStringIndex(s string) []int             { return p().FindStringIndex(s) }
func (p pattern) FindStringSubmatch(s string) []string       { return p().FindStringSubmatch(s) }
func (p pattern) FindStringSubmatchIndex(s string) []int     { return p().FindStringSubmatchIndex(s) }
func (p pattern) FindAllString(s string, n int) []string     { return p().FindAllString(s, n) }
func (p pattern) FindAllStringIndex(s string, n int) [][]int { return p().FindAllStringIndex(s, n) }
func (p pattern) ReplaceAllString(s, with string) string     { return p().ReplaceAllString(s, with) }
func (p pattern) FindAllStringSubmatch(s string, n int) [][]string {
	return p().FindAllStringSubmatch(s, n)
}
func (p pattern) Split(s string, n int) []string { return p().Split(s, n) }
func (p pattern) FindAllStringSubmatchIndex(s string, n int) [][]int {
	return p().FindAllStringSubmatchIndex(s, n)
}
func (p pattern) ReplaceAllStringFunc(s string, f func(string) string) string {
	return p().ReplaceAllStringFunc(s, f)
}
