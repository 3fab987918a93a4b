package notes

import (
	"regexp"
	"sync"
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

func (p pattern) MatchString(s string) bool                  { return p().MatchString(s) }
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
