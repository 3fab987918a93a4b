package source

import "strings"

// scanner indexes text that is already known to be valid TOML. It never
// refuses anything; on text it doesn't understand it stops early.
type scanner struct {
	f      *File
	s      string
	i      int
	arrays map[string]int // elements seen of each array of tables
	table  string         // path of the table the lines belong to
}

// buildIndex fills entries and index from the text.
func (f *File) buildIndex() {
	sc := scanner{f: f, s: f.Text, arrays: map[string]int{}}
	f.index = map[string]int{}
	for sc.blank(); sc.i < len(sc.s); sc.blank() {
		before := sc.i
		if sc.s[sc.i] == '[' {
			sc.header()
		} else {
			sc.pair(sc.table)
		}
		if sc.i == before {
			return
		}
	}
}

// add records an entry; the first of a path wins, but a written table takes
// over from an implied one.
func (sc *scanner) add(e Entry) int {
	f := sc.f
	old, known := f.index[e.Path]
	f.entries = append(f.entries, e)
	if n := len(f.entries) - 1; !known || f.entries[old].Type == Implied && e.Type != Implied {
		f.index[e.Path] = n
	}
	return len(f.entries) - 1
}

// imply records a table that only a dotted name or header makes.
func (sc *scanner) imply(path string, at Range) {
	if _, known := sc.f.index[path]; !known {
		sc.add(Entry{Path: path, Type: Implied, Key: at, Value: at})
	}
}

// blank skips white space, line ends and comments.
func (sc *scanner) blank() {
	for sc.i < len(sc.s) {
		switch sc.s[sc.i] {
		case ' ', '\t', '\r', '\n':
			sc.i++
		case '#':
			for sc.i < len(sc.s) && sc.s[sc.i] != '\n' {
				sc.i++
			}
		default:
			return
		}
	}
}

func (sc *scanner) spaces() {
	for sc.i < len(sc.s) && (sc.s[sc.i] == ' ' || sc.s[sc.i] == '\t') {
		sc.i++
	}
}

func (sc *scanner) at(c byte) bool { return sc.i < len(sc.s) && sc.s[sc.i] == c }

// header reads [a.b] or [[a.b]].
func (sc *scanner) header() {
	start, kind := sc.i, Table
	sc.i++
	if sc.at('[') {
		kind = Element
		sc.i++
	}
	parts, at := sc.key()
	for range 2 {
		if sc.at(']') && (kind == Element || sc.s[sc.i-1] != ']') {
			sc.i++
		}
	}
	whole := Range{start, sc.i}
	path := ""
	for n, p := range parts {
		path = Join(path, p)
		if n < len(parts)-1 {
			path = sc.last(path)
			sc.imply(path, whole)
		}
	}
	if kind == Element {
		sc.imply(path, whole)
		n := sc.arrays[path]
		sc.arrays[path] = n + 1
		path = At(path, n)
	}
	sc.table = path
	sc.add(Entry{Path: path, Type: kind, Key: at, Value: whole})
}

// last leads into the newest element of an array of tables.
func (sc *scanner) last(path string) string {
	if n := sc.arrays[path]; n > 0 {
		return At(path, n-1)
	}
	return path
}

// pair reads key = value inside a table.
func (sc *scanner) pair(table string) {
	parts, at := sc.key()
	path := table
	for n, p := range parts {
		path = Join(path, p)
		if n < len(parts)-1 {
			sc.imply(path, at)
		}
	}
	sc.spaces()
	if !sc.at('=') {
		return
	}
	sc.i++
	sc.spaces()
	n := sc.add(Entry{Path: path, Type: Value, Key: at})
	sc.f.entries[n].Value = sc.value(path)
}

// key reads a name with its dots: a."b c".d
func (sc *scanner) key() (parts []string, at Range) {
	sc.spaces()
	at.Start = sc.i
	for {
		part, ok := sc.keyPart()
		if !ok {
			return parts, at
		}
		parts = append(parts, part)
		at.End = sc.i
		sc.spaces()
		if !sc.at('.') {
			return parts, at
		}
		sc.i++
		sc.spaces()
	}
}

func (sc *scanner) keyPart() (string, bool) {
	start := sc.i
	if sc.at('"') || sc.at('\'') {
		quote := sc.s[sc.i]
		sc.quoted()
		text := sc.s[start+1 : max(sc.i-1, start+1)]
		if quote == '"' {
			text = unescape(text)
		}
		return text, true
	}
	for sc.i < len(sc.s) && bareByte(sc.s[sc.i]) {
		sc.i++
	}
	return sc.s[start:sc.i], sc.i > start
}

// value reads any value and gives its range.
func (sc *scanner) value(path string) Range {
	start := sc.i
	switch {
	case sc.i >= len(sc.s):
	case sc.s[sc.i] == '"' || sc.s[sc.i] == '\'':
		sc.quoted()
	case sc.s[sc.i] == '[':
		sc.list(path)
	case sc.s[sc.i] == '{':
		sc.inline(path)
	default:
		for sc.i < len(sc.s) && !strings.ContainsRune(",]}#\r\n", rune(sc.s[sc.i])) {
			sc.i++
		}
		return Range{start, start + len(strings.TrimRight(sc.s[start:sc.i], " \t"))}
	}
	return Range{start, sc.i}
}

func (sc *scanner) list(path string) {
	sc.each(']', func(n int) {
		item := At(path, n)
		e := sc.add(Entry{Path: item, Type: Item})
		sc.f.entries[e].Value = sc.value(item)
	})
}

func (sc *scanner) inline(path string) { sc.each('}', func(int) { sc.pair(path) }) }

// each reads what stands between brackets, parted by commas; it ends where one
// makes no step.
func (sc *scanner) each(close byte, one func(n int)) {
	sc.i++
	for n := 0; ; n++ {
		sc.blank()
		if sc.i >= len(sc.s) || sc.at(close) {
			sc.i = min(sc.i+1, len(sc.s))
			return
		}
		before := sc.i
		one(n)
		sc.blank()
		if sc.at(',') {
			sc.i++
		}
		if sc.i == before {
			return
		}
	}
}
