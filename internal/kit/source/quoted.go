package source

import (
	"strconv"
	"strings"
)

// quoted skips a string of any of the four kinds.
func (sc *scanner) quoted() { sc.i = skipQuoted(sc.s, sc.i) }

// skipQuoted gives the offset after the string that starts at i. An unclosed
// one-line string ends with its line, an unclosed long one with the text.
func skipQuoted(s string, i int) int {
	q := s[i]
	if triple := strings.Repeat(string(q), 3); strings.HasPrefix(s[i:], triple) {
		for j := i + 3; j < len(s); j++ {
			if s[j] == '\\' && q == '"' {
				j++
				continue
			}
			if strings.HasPrefix(s[j:], triple) {
				j += 3
				for extra := 0; extra < 2 && j < len(s) && s[j] == q; extra++ {
					j++
				}
				return j
			}
		}
		return len(s)
	}
	for j := i + 1; j < len(s) && s[j] != '\n'; j++ {
		switch {
		case s[j] == '\\' && q == '"':
			j++
		case s[j] == q:
			return j + 1
		}
	}
	if end := strings.IndexByte(s[i:], '\n'); end >= 0 {
		return i + end
	}
	return len(s)
}

var shortEscapes = map[byte]string{'b': "\b", 't': "\t", 'n': "\n", 'f': "\f", 'r': "\r", 'e': "\x1b", '"': `"`, '\\': `\`}

// unescape reads the escapes of a basic string on one line.
func unescape(s string) string {
	if !strings.Contains(s, `\`) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] != '\\' || i+1 >= len(s) {
			b.WriteByte(s[i])
			continue
		}
		i++
		digits := map[byte]int{'x': 2, 'u': 4, 'U': 8}[s[i]]
		if digits == 0 {
			b.WriteString(shortEscapes[s[i]])
			continue
		}
		end := min(i+1+digits, len(s))
		if n, err := strconv.ParseUint(s[i+1:end], 16, 32); err == nil {
			b.WriteRune(rune(n))
		}
		i = end - 1
	}
	return b.String()
}
