package edit

import (
	"strings"

	"jarmark/internal/kit/source"
)

// section is a table as it stands in the text: its header and the key lines
// below, up to the next header. The root has no header.
type section struct {
	path string
	head source.Range
	keys []source.Entry // own lines only, not those inside braces
}

// sections cuts the file into its sections, the root first.
func (e *editor) sections() []section {
	out := []section{{}}
	until := 0
	for _, x := range e.f.Entries() {
		switch {
		case x.Type == source.Table || x.Type == source.Element:
			out = append(out, section{path: x.Path, head: x.Value})
			until = x.Value.End
		case x.Type == source.Value && x.Value.Start >= until:
			s := &out[len(out)-1]
			s.keys = append(s.keys, x)
			until = x.Value.End
		}
	}
	return out
}

func (e *editor) section(path string) section {
	for _, s := range e.sections() {
		if s.path == path {
			return s
		}
	}
	return section{}
}

// nested reports whether an entry stands inside braces or brackets.
func (e *editor) nested(at source.Entry) bool {
	for _, s := range e.sections() {
		for _, k := range s.keys {
			if k.Value == at.Value {
				return false
			}
		}
	}
	return true
}

// lineStart and lineEnd give the line around a byte; the end is after its
// line feed.
func (e *editor) lineStart(i int) int { return strings.LastIndexByte(e.text[:i], '\n') + 1 }

func (e *editor) lineEnd(i int) int {
	if n := strings.IndexByte(e.text[i:], '\n'); n >= 0 {
		return i + n + 1
	}
	return len(e.text)
}

// line gives the text of the line that starts at a byte, without white space.
func (e *editor) line(start int) string { return strings.TrimSpace(e.text[start:e.lineEnd(start)]) }

// above gives the start of the comment block that stands right over a line.
func (e *editor) above(start int) int {
	for start > 0 {
		up := e.lineStart(start - 1)
		if !strings.HasPrefix(e.line(up), "#") {
			break
		}
		start = up
	}
	return start
}

// last gives the byte after a section's last key line.
func (e *editor) last(s section) int {
	switch {
	case len(s.keys) > 0:
		return e.lineEnd(s.keys[len(s.keys)-1].Value.End)
	case s.head.End > 0:
		return e.lineEnd(s.head.End)
	}
	return 0
}

// end gives the byte after a section, comments right below its last line
// included, unless they stand over the next header.
func (e *editor) end(s section) int {
	last := e.last(s)
	i := last
	for i < len(e.text) && strings.HasPrefix(e.line(i), "#") {
		i = e.lineEnd(i)
	}
	if i < len(e.text) && strings.HasPrefix(e.line(i), "[") {
		return last
	}
	return i
}

// addLine writes a key line after the last one of a section.
func (e *editor) addLine(s section, line string) string {
	at := e.last(s)
	if at == 0 {
		return e.first(line)
	}
	indent := ""
	if len(s.keys) > 0 {
		start := e.lineStart(s.keys[len(s.keys)-1].Key.Start)
		indent = e.text[start : start+len(e.text[start:])-len(strings.TrimLeft(e.text[start:], " \t"))]
	}
	return e.insertLine(at, indent+line+e.eol)
}

// first writes the only key line of the root: over the first table and the
// comment above it, or at the end.
func (e *editor) first(line string) string {
	secs := e.sections()
	if len(secs) < 2 {
		return e.insertLine(len(e.text), line+e.eol)
	}
	return e.insertLine(e.above(e.lineStart(secs[1].head.Start)), line+e.eol+e.eol)
}

// insertLine inserts whole lines, after a line feed where one is missing.
func (e *editor) insertLine(at int, lines string) string {
	if at > 0 && e.text[at-1] != '\n' {
		lines = e.eol + lines
	}
	return e.insert(at, lines)
}

// atEnd adds a block to the file, after an empty line.
func (e *editor) atEnd(block string) string { return e.block(len(e.text), block) }

// block inserts a block of lines with an empty line above.
func (e *editor) block(at int, block string) string {
	gap := ""
	before := strings.ReplaceAll(e.text[:at], "\r", "")
	if before != "" && !strings.HasSuffix(before, "\n\n") {
		gap = e.eol
	}
	if before != "" && !strings.HasSuffix(before, "\n") {
		gap += e.eol
	}
	if at < len(e.text) && e.line(at) != "" {
		block += e.eol
	}
	return e.insert(at, gap+block)
}
