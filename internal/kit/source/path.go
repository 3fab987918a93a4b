package source

import (
	"strconv"
	"strings"
)

// Step is one step of a path: a key, or an index into a list (Key empty).
type Step struct {
	Key     string
	Index   int
	IsIndex bool
}

// Join adds a key to a path, in quotes where TOML wants them.
func Join(path, key string) string {
	if !bare(key) {
		key = `"` + keyEscapes.Replace(key) + `"`
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// At adds an index to a path.
func At(path string, i int) string { return path + "[" + strconv.Itoa(i) + "]" }

var keyEscapes = strings.NewReplacer(`\`, `\\`, `"`, `\"`)

func bare(key string) bool {
	for i := 0; i < len(key); i++ {
		if !bareByte(key[i]) {
			return false
		}
	}
	return key != ""
}

func bareByte(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-'
}

// SplitPath takes a path apart. ok is false when it isn't one.
func SplitPath(path string) (steps []Step, ok bool) {
	for i := 0; i < len(path); {
		if path[i] == '[' {
			end := strings.IndexByte(path[i:], ']')
			if end < 0 {
				return nil, false
			}
			n, err := strconv.Atoi(path[i+1 : i+end])
			if err != nil || n < 0 || len(steps) == 0 {
				return nil, false
			}
			steps = append(steps, Step{Index: n, IsIndex: true})
			i += end + 1
			continue
		}
		if len(steps) > 0 {
			if path[i] != '.' {
				return nil, false
			}
			i++
		}
		key, n, good := pathKey(path[i:])
		if !good {
			return nil, false
		}
		steps = append(steps, Step{Key: key})
		i += n
	}
	return steps, len(steps) > 0
}

// pathKey reads one key at the start of s, and how many bytes it takes.
func pathKey(s string) (key string, n int, ok bool) {
	if !strings.HasPrefix(s, `"`) {
		for n < len(s) && bareByte(s[n]) {
			n++
		}
		return s[:n], n, n > 0
	}
	var b strings.Builder
	for n = 1; n < len(s); n++ {
		switch {
		case s[n] == '"':
			return b.String(), n + 1, true
		case s[n] == '\\' && n+1 < len(s):
			n++
			b.WriteByte(s[n])
		default:
			b.WriteByte(s[n])
		}
	}
	return "", 0, false
}

// Parent gives the path without its last step, "" at the top.
func Parent(path string) string {
	last, quoted := 0, false
	for i := 0; i < len(path); i++ {
		switch c := path[i]; {
		case quoted && c == '\\':
			i++
		case c == '"':
			quoted = !quoted
		case !quoted && (c == '.' || c == '['):
			last = i
		}
	}
	return path[:last]
}

// Rows is how many rows a list of tables has: the [[fill]] of a file.
func (f *File) Rows(table string) (n int) {
	for {
		if _, ok := f.Entry(At(table, n)); !ok {
			return n
		}
		n++
	}
}
