// Package edit changes the text of a TOML file by path and keeps everything
// else: comments, order, spacing, line ends. It knows TOML, not batches.
//
// Every function gives the new text, or the old text with findings; a result
// always reads as TOML again.
package edit

import (
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// Pair is one key with its value, in the order to be written.
type Pair struct {
	Key   string
	Value any
}

const bom = "\uFEFF"

// editor is one text being changed.
type editor struct {
	f    *source.File
	text string // without a byte order mark
	bom  string
	eol  string // "\n" or "\r\n"
	l    diag.List
}

func newEditor(text string) *editor {
	e := &editor{eol: "\n"}
	e.f, e.l = source.Parse("", []byte(text))
	e.text = strings.TrimPrefix(text, bom)
	e.bom = text[:len(text)-len(e.text)]
	if n := strings.Index(e.text, "\n"); n > 0 && e.text[n-1] == '\r' {
		e.eol = "\r\n"
	}
	return e
}

func (e *editor) refuse(path, format string, args ...any) *diag.Diagnostic {
	return e.l.Errorf("edit-refused", "", path, format, args...)
}

// result reads the new text once more; what doesn't read is not handed out.
func (e *editor) result(old, text string) (string, diag.List) {
	if e.l.HasErrors() {
		return old, e.l
	}
	if _, l := source.Parse("", []byte(text)); l.HasErrors() {
		e.refuse("", "the change does not fit the file: %s", l[0].Message).Hinted("edit the text itself")
		return old, e.l
	}
	return e.bom + text, nil
}

// splice replaces a range of the text.
func (e *editor) splice(r source.Range, with string) string {
	return e.text[:r.Start] + with + e.text[r.End:]
}

// Set writes a value at a path such as "cook.minutes" or "market[0].came_home":
// an existing value is replaced where it stands, a missing key is added to its
// table, a missing table to the end. Values are strings, numbers, bools,
// unit.Date, []string, []any and []Pair (a table in braces).
func Set(text, path string, value any) (string, diag.List) {
	e := newEditor(text)
	if e.l.HasErrors() {
		return text, e.l
	}
	path, steps, ok := e.read(path)
	if !ok {
		return text, e.l
	}
	return e.result(text, e.set(path, steps, value))
}

// read takes a path apart and gives it back as the index spells it, with
// quotes only where a key needs them: two spellings of a key are one key.
func (e *editor) read(path string) (same string, steps []source.Step, ok bool) {
	if steps, ok = source.SplitPath(path); !ok {
		e.refuse(path, "%q is not a path", path)
		return path, nil, false
	}
	for _, s := range steps {
		if s.IsIndex {
			same = source.At(same, s.Index)
		} else {
			same = source.Join(same, s.Key)
		}
	}
	return same, steps, true
}

func (e *editor) set(path string, steps []source.Step, value any) string {
	at, known := e.f.Entry(path)
	switch {
	case known && at.Type == source.Value:
		return e.replace(at, path, value)
	case known && at.Type == source.Item:
		return e.splice(at.Value, e.encode(value, path, false))
	case known:
		e.refuse(path, "%s is a table, not a value", path).Hinted("set one of its keys")
		return e.text
	case steps[len(steps)-1].IsIndex:
		return e.addItem(path, steps, value)
	}
	return e.addKey(path, steps, value)
}

// replace changes a value in place. A list of the same length is changed item
// by item, which keeps the comments between them.
func (e *editor) replace(at source.Entry, path string, value any) string {
	items, ok := list(value)
	old := e.items(path)
	if !ok || len(items) == 0 || len(items) != len(old) || e.text[at.Value.Start] != '[' {
		return e.splice(at.Value, e.encode(value, path, !e.nested(at)))
	}
	text := e.text
	for i := len(items) - 1; i >= 0; i-- {
		r := old[i].Value
		text = text[:r.Start] + e.encode(items[i], source.At(path, i), false) + text[r.End:]
	}
	return text
}

// items gives the entries of a list.
func (e *editor) items(path string) (out []source.Entry) {
	for n := 0; ; n++ {
		it, ok := e.f.Entry(source.At(path, n))
		if !ok || it.Type != source.Item {
			return out
		}
		out = append(out, it)
	}
}

// addItem puts one more item at the end of a list.
func (e *editor) addItem(path string, steps []source.Step, value any) string {
	parent := source.Parent(path)
	at, ok := e.f.Entry(parent)
	old := e.items(parent)
	if !ok || e.text[at.Value.Start] != '[' || at.Type != source.Value && at.Type != source.Item || steps[len(steps)-1].Index != len(old) {
		e.refuse(path, "there is no %s", path).Hinted("a list grows at its end")
		return e.text
	}
	item := e.encode(value, path, false)
	if len(old) == 0 {
		return e.insert(at.Value.Start+1, item)
	}
	return e.insert(old[len(old)-1].Value.End, ", "+item)
}

func (e *editor) insert(at int, s string) string {
	return e.splice(source.Range{Start: at, End: at}, s)
}

// addKey writes a key that isn't there yet, into the nearest table that is.
func (e *editor) addKey(path string, steps []source.Step, value any) string {
	owner, left := e.owner(path, steps)
	for _, s := range left {
		if s.IsIndex {
			e.refuse(path, "there is no %s", path).Hinted("add the table first")
			return e.text
		}
	}
	if in, ok := e.f.Entry(owner); ok && (in.Type == source.Value || in.Type == source.Item) {
		return e.addInline(in, owner, left, value)
	}
	sec := e.section(owner)
	if owner == "" && len(left) > 1 && !e.dotted(left[0].Key) {
		return e.addTable(left, value)
	}
	return e.addLine(sec, dottedKey(left)+" = "+e.encode(value, path, true))
}

// owner finds the deepest table on the way to a path that is written as such,
// and the steps left from there.
func (e *editor) owner(path string, steps []source.Step) (owner string, left []source.Step) {
	n := len(steps)
	for owner = source.Parent(path); owner != ""; owner = source.Parent(owner) {
		n--
		if at, ok := e.f.Entry(owner); ok && at.Type != source.Implied {
			return owner, steps[n:]
		}
	}
	return "", steps
}

// dotted reports whether a table is made by dotted keys (cook.minutes = 5), not
// by headers below it.
func (e *editor) dotted(table string) bool {
	at, ok := e.f.Entry(source.Join("", table))
	return ok && at.Type == source.Implied && e.text[at.Value.Start] != '['
}

func dottedKey(steps []source.Step) string {
	key := ""
	for _, s := range steps {
		key = source.Join(key, s.Key)
	}
	return key
}

// addInline puts a key into a table in braces.
func (e *editor) addInline(in source.Entry, path string, left []source.Step, value any) string {
	if e.text[in.Value.Start] != '{' {
		e.refuse(path, "%s is a value, not a table", path).Hinted("delete it first")
		return e.text
	}
	pair := dottedKey(left) + " = " + e.encode(value, path, false)
	end := -1
	for _, x := range e.f.Entries() {
		if x.Type == source.Value && x.Value.Start > in.Value.Start && x.Value.End < in.Value.End {
			end = max(end, x.Value.End)
		}
	}
	if end < 0 {
		return e.insert(in.Value.Start+1, " "+pair+" ")
	}
	return e.insert(end, ", "+pair)
}

// addTable writes [table] with one key at the end of the file.
func (e *editor) addTable(left []source.Step, value any) string {
	n := len(left) - 1
	key := source.Join("", left[n].Key)
	return e.atEnd("[" + dottedKey(left[:n]) + "]" + e.eol + key + " = " + e.encode(value, key, true) + e.eol)
}
