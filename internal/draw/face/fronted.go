package face

import "strings"

// Fronted is how the program for browsers carries patterns, a sixth smaller to
// load: on one line behind a plus sign, each as a capital that tells how many bytes
// it has in common with the one before (A = none), and the rest of it. Comments
// and exceptions stay lines of their own.
func Fronted(text string) string {
	var kept, coded strings.Builder
	last := ""
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\r\n")
		if line == "" || strings.ContainsAny(line, "%-+") || strings.ToLower(line) != line {
			kept.WriteString(line + "\n")
			continue
		}
		n := 0
		for n < min(len(line), len(last), 'Z'-'A') && line[n] == last[n] {
			n++
		}
		coded.WriteString(string(rune('A'+n)) + line[n:])
		last = line
	}
	return kept.String() + "+" + coded.String() + "\n"
}

// unfronted writes such a line out again, a pattern a line.
func unfronted(line string) string {
	var out strings.Builder
	last := make([]byte, 0, 64)
	for rest := line; rest != ""; {
		n := int(rest[0]) - 'A'
		end := strings.IndexFunc(rest[1:], func(r rune) bool { return 'A' <= r && r <= 'Z' })
		if end < 0 {
			end = len(rest) - 1
		}
		if n < 0 || n > len(last) {
			break // not ours
		}
		last = append(last[:n], rest[1:1+end]...)
		out.Write(last)
		out.WriteByte('\n')
		rest = rest[1+end:]
	}
	return out.String()
}
