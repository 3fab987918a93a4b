package edit

import (
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// AppendTable adds one element to a list of tables, "gift", with its keys in
// the given order: after the last one there is, else at the end of the file.
func AppendTable(text, name string, pairs []Pair) (string, diag.List) {
	e := newEditor(text)
	if e.l.HasErrors() {
		return text, e.l
	}
	name, steps, ok := e.read(name)
	if !ok {
		return text, e.l
	}
	if len(steps) != 1 {
		e.refuse(name, "%q is not the name of a list of tables", name)
		return text, e.l
	}
	if at, known := e.f.Entry(name); known && at.Type != source.Implied {
		return e.result(text, e.appendInline(at, name, pairs))
	}
	block := "[[" + name + "]]" + e.eol
	for _, p := range pairs {
		block += source.Join("", p.Key) + " = " + e.encode(p.Value, name, true) + e.eol
	}
	at := len(e.text)
	for _, s := range e.sections() {
		if under(s.path, name) {
			at = e.end(s)
		}
	}
	return e.result(text, e.block(at, block))
}

// appendInline adds to gift = [{ ... }].
func (e *editor) appendInline(at source.Entry, name string, pairs []Pair) string {
	if at.Type != source.Value || e.text[at.Value.Start] != '[' {
		e.refuse(name, "%s is not a list of tables", name).Hinted("write [[" + name + "]] with double brackets")
		return e.text
	}
	n := len(e.items(name))
	return e.addItem(source.At(name, n), []source.Step{{Key: name}, {Index: n, IsIndex: true}}, pairs)
}

// under reports whether a path is a table or stands below it.
func under(path, table string) bool {
	rest, ok := strings.CutPrefix(path, table)
	return ok && (rest == "" || rest[0] == '.' || rest[0] == '[')
}

// Delete takes out a key, a list item, or a table with all below it and the
// comment right above it.
func Delete(text, path string) (string, diag.List) {
	e := newEditor(text)
	if e.l.HasErrors() {
		return text, e.l
	}
	path, _, ok := e.read(path)
	if !ok {
		return text, e.l
	}
	at, ok := e.f.Entry(path)
	if !ok {
		e.refuse(path, "there is no %s", path)
		return text, e.l
	}
	var cuts []source.Range
	switch {
	case at.Type == source.Item || at.Type == source.Value && e.nested(at):
		cuts = []source.Range{e.innerCut(at)}
	case at.Type == source.Value:
		cuts = []source.Range{{Start: e.lineStart(at.Key.Start), End: e.lineEnd(at.Value.End)}}
	default:
		cuts = e.tableCuts(path)
	}
	out := e.text
	for i := len(cuts) - 1; i >= 0; i-- {
		out = out[:cuts[i].Start] + out[cuts[i].End:]
	}
	return e.result(text, out)
}

// innerCut is an item or pair inside brackets with the comma that parts it.
func (e *editor) innerCut(at source.Entry) source.Range {
	r := at.Value
	if at.Type == source.Value {
		r.Start = at.Key.Start
	}
	if after := e.skip(r.End); after < len(e.text) && e.text[after] == ',' {
		end := after + 1
		for end < len(e.text) && (e.text[end] == ' ' || e.text[end] == '\t') {
			end++
		}
		return source.Range{Start: r.Start, End: end}
	}
	before := r.Start
	for before > 0 && strings.IndexByte(" \t\r\n", e.text[before-1]) >= 0 {
		before--
	}
	if before > 0 && e.text[before-1] == ',' {
		return source.Range{Start: before - 1, End: r.End}
	}
	return r
}

// skip goes over white space and comments.
func (e *editor) skip(i int) int {
	for i < len(e.text) {
		switch e.text[i] {
		case ' ', '\t', '\r', '\n':
			i++
		case '#':
			i = e.lineEnd(i)
		default:
			return i
		}
	}
	return i
}

// tableCuts are the sections and dotted key lines of a table.
func (e *editor) tableCuts(path string) (cuts []source.Range) {
	for _, s := range e.sections() {
		if s.path != "" && under(s.path, path) {
			r := source.Range{Start: e.above(e.lineStart(s.head.Start)), End: e.end(s)}
			if r.End < len(e.text) && e.line(r.End) == "" {
				r.End = e.lineEnd(r.End)
			}
			cuts = append(cuts, r)
			continue
		}
		for _, k := range s.keys {
			if under(k.Path, path) {
				cuts = append(cuts, source.Range{Start: e.lineStart(k.Key.Start), End: e.lineEnd(k.Value.End)})
			}
		}
	}
	return cuts
}
