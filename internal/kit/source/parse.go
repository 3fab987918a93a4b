package source

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Limits of one file: far beyond any real batch, small enough that nothing
// hangs or runs out of memory.
const (
	MaxSize  = 8 << 20 // bytes; 100 000 ingredients fit
	MaxDepth = 64      // nested lists and tables, or parts of a dotted name
)

// Parse reads a file. With an error among the findings the File holds the text
// only (enough to show excerpts) and decodes to nothing.
func Parse(name string, data []byte) (*File, diag.List) {
	f := &File{Name: name}
	l := f.admit(data)
	f.lines = lineStarts(f.Text)
	if l.HasErrors() {
		return f, f.Locate(l)
	}
	if at, deep := tooDeep(f.Text); deep {
		d := l.Errorf("too-deep", name, "", "lists, tables or dotted names are nested more than %d deep", MaxDepth).
			Hinted("a batch file needs three levels at most")
		d.Pos = f.Pos(Range{at, at + 1})
		return f, l
	}
	if err := f.decode(); err != nil {
		f.tree = nil
		return f, append(l, f.syntax(err))
	}
	return f, l
}

// admit checks that the bytes are text of a sane size, and keeps the text.
func (f *File) admit(data []byte) (l diag.List) {
	if len(data) > MaxSize {
		l.Errorf("file-too-big", f.Name, "", "the file has %.1f MB, more than the %d MB read", float64(len(data))/(1<<20), MaxSize>>20).
			Hinted("a batch file is text of a few kilobytes; is this the right file?")
		return l
	}
	if s := string(data); strings.HasPrefix(s, "\xff\xfe") || strings.HasPrefix(s, "\xfe\xff") {
		l.Errorf("not-utf8", f.Name, "", "the file is UTF-16 text").Hinted("save it again with the encoding UTF-8")
		return l
	}
	text := strings.TrimPrefix(string(data), "\uFEFF")
	f.Text = strings.ToValidUTF8(text, "\uFFFD")
	f.lines = lineStarts(f.Text)
	if i := strings.IndexByte(text, 0); i >= 0 {
		f.Text, f.lines = "", []int{0}
		l.Errorf("not-text", f.Name, "", "the file is not text: it has a zero byte after %d bytes", i).
			Hinted("open a .toml file, not a picture or an office document")
		return l
	}
	if i := invalidAt(text); i >= 0 {
		d := l.Errorf("not-utf8", f.Name, "", "the file is not UTF-8 text").Hinted("save it again with the encoding UTF-8")
		d.Pos = f.Pos(Range{i, i + 1})
	}
	return l
}

// invalidAt gives the first byte that is no UTF-8, or -1.
func invalidAt(s string) int {
	for i, r := range s {
		if r == utf8.RuneError {
			if _, n := utf8.DecodeRuneInString(s[i:]); n == 1 {
				return i
			}
		}
	}
	return -1
}

// tooDeep finds the place where brackets or dots nest beyond MaxDepth. It works
// on any text, before the recursive reader sees it.
func tooDeep(s string) (at int, deep bool) {
	depth, dots := 0, 0
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '"', '\'':
			i = skipQuoted(s, i) - 1
		case '#':
			for i < len(s) && s[i] != '\n' {
				i++
			}
			dots = 0
		case '[', '{':
			depth++
			dots = 0
		case ']', '}':
			depth = max(depth-1, 0)
			dots = 0
		case '\n', '=', ',':
			dots = 0
		case '.':
			dots++
		}
		if depth > MaxDepth || dots >= MaxDepth {
			return i, true
		}
	}
	return 0, false
}

// decode runs the library; its own bugs become errors too.
func (f *File) decode() (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("the file cannot be read: %v", p)
		}
	}()
	f.tree = map[string]any{}
	_, err = toml.Decode(f.Text, &f.tree)
	return err
}

// syntax words an error of the library.
func (f *File) syntax(err error) diag.Diagnostic {
	d := diag.Diagnostic{Severity: diag.Error, Code: "syntax", File: f.Name, Pos: diag.Pos{Line: 1, Column: 1}}
	pe, ok := err.(toml.ParseError)
	if !ok {
		d.Message = "not TOML: " + strings.TrimPrefix(err.Error(), "toml: ")
		return d
	}
	d.Pos = f.Pos(Range{pe.Position.Start, pe.Position.Start + max(pe.Position.Len, 1)})
	if line := pe.Position.Line; line >= 1 && line <= len(f.lines) && line != d.Pos.Line {
		d.Pos = diag.Pos{Line: line, Column: 1}
	}
	d.Message, d.Hint = wording(pe.Message)
	if hint, _, ok := unit.DayHint(f.valueAt(d.Pos.Line)); ok {
		d.Hint = hint
		if !strings.HasPrefix(d.Message, "there is no day") {
			d.Message = "a day is written year-month-day, without quotes"
		}
	}
	if line := f.firstLine(pe.Position.Start); line > 0 && strings.HasSuffix(d.Message, "twice") {
		d.Hint = fmt.Sprintf("the first stands on line %d; %s", line, d.Hint)
	}
	return d
}

// valueAt is what stands behind the = of a line, its comment taken off.
func (f *File) valueAt(line int) string {
	if line < 1 || line > len(f.lines) {
		return ""
	}
	text, _, _ := strings.Cut(f.Text[f.lines[line-1]:], "\n")
	_, value, _ := strings.Cut(text, "=")
	value, _, _ = strings.Cut(value, "#")
	return value
}

// firstLine gives the line of the first of two keys, the second of which
// stands at a byte; 0 when there is none.
func (f *File) firstLine(at int) int {
	g := File{Text: f.Text, lines: f.lines}
	g.buildIndex()
	for _, e := range g.entries {
		if e.Type == Implied || e.Type == Item || at < e.Key.Start || at >= e.Key.End {
			continue
		}
		for _, path := range []string{e.Path, At(e.Path, 0)} {
			if first, ok := g.Entry(path); ok && first.Value.End <= e.Key.Start {
				return g.Pos(first.Value).Line
			}
		}
	}
	return 0
}

// wordings puts the library's commonest messages into a maker's words.
var wordings = []struct {
	find    *regexp.Regexp
	message string
	hint    string
}{
	{regexp.MustCompile(`^key '(.*)' has already been defined`), `$1 is written twice`, `keep one of them; a list of tables takes double brackets, like [[ingredient]]`},
	{regexp.MustCompile(`^key '(.*)' was already created`), `$1 is written in two ways`, `write it either as a list of tables, like [[ingredient]], or as one value`},
	{regexp.MustCompile(`^expected value but found "(.*)" instead`), `$1 is not in quotes`, `text stands in quotes: "$1"; true and false are written small`},
	{regexp.MustCompile(`^expected value but found '\\n' instead`), `the value is missing`, `write it after the =, or delete the line`},
	{regexp.MustCompile(`^expected value but found '([“”„‘’«])' instead`), `$1 is a typographic quote`, `use the plain quote " before and after the text`},
	{regexp.MustCompile(`^expected value but found '(.*)' instead`), `expected a value, found $1`, `text stands in quotes: name = "Plum jam"`},
	{regexp.MustCompile(`^expected a top-level item to end.*`), `there is more after the value`, `put the whole value in quotes: amount = "1.8 kg"`},
	{regexp.MustCompile(`^expected '\.' or '='.*|^expected '=' .*`), `expected = after the name`, `write name = "value"; a name with spaces stands in quotes`},
	{regexp.MustCompile(`^expected '\.' or '\]'.*|^unexpected end of table name.*`), `the table's name is not closed`, `write [cook] or [[ingredient]] on a line of its own`},
	{regexp.MustCompile(`^expected a comma \(','\) or array term.*`), `the list is not closed`, `put commas between the values and ] at the end`},
	{regexp.MustCompile(`^expected a comma or an inline table.*`), `the table is not closed`, `put commas between the values and } at the end`},
	{regexp.MustCompile(`^(strings cannot contain newlines|unexpected EOF.*expected '"+'.*)`), `the closing quote is missing`, `end the text with " on the same line; long text stands between """ and """`},
	{regexp.MustCompile(`(?i)^invalid escape.*`), `a backslash starts an escape that is not known`, `write \\ for a backslash, or put the text between ' and '`},
	{regexp.MustCompile(`^invalid datetime: (.*)`), `there is no day $1`, `write year-month-day, like 2026-06-14`},
	{regexp.MustCompile(`^(?:invalid|expected).*(?:float|integer|digit).*`), `$0`, `write a number like 12 or 65.5; dates like 2026-06-14; all else in quotes`},
	{regexp.MustCompile(`^TOML files cannot contain control characters: (.*)`), `a control character ($1) stands in the text`, `delete it`},
}

func wording(message string) (text, hint string) {
	message = lower(strings.TrimSuffix(strings.TrimSpace(message), "."))
	for _, w := range wordings {
		if w.find.MatchString(message) {
			m := w.find.FindString(message)
			return w.find.ReplaceAllString(m, w.message), w.find.ReplaceAllString(m, w.hint)
		}
	}
	return message, `each line reads name = "value", [table] or [[list]]`
}

// lower makes the first letter small, but leaves abbreviations.
func lower(s string) string {
	if len(s) > 1 && s[1] >= 'a' && s[1] <= 'z' {
		return strings.ToLower(s[:1]) + s[1:]
	}
	return s
}
