package edit

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// list gives the items of a list value.
func list(value any) (items []any, ok bool) {
	switch v := value.(type) {
	case []any:
		return v, true
	case []string:
		for _, s := range v {
			items = append(items, s)
		}
		return items, true
	case []int:
		for _, n := range v {
			items = append(items, n)
		}
		return items, true
	}
	return nil, false
}

// encode writes a value as TOML. Long allows a text over several lines.
func (e *editor) encode(value any, path string, long bool) string {
	switch v := value.(type) {
	case string:
		return e.quoted(v, path, long)
	case bool:
		return strconv.FormatBool(v)
	case int:
		return strconv.Itoa(v)
	case int64:
		return strconv.FormatInt(v, 10)
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			e.refuse(path, "%v is not a number", v)
			return "0"
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	case unit.Date:
		return v.String()
	case []Pair:
		return e.braces(v, path)
	}
	items, ok := list(value)
	if !ok {
		e.refuse(path, "a %T can't be written", value)
		return `""`
	}
	parts := make([]string, len(items))
	for i, item := range items {
		parts[i] = e.encode(item, source.At(path, i), false)
	}
	return "[" + strings.Join(parts, ", ") + "]"
}

func (e *editor) braces(pairs []Pair, path string) string {
	if len(pairs) == 0 {
		return "{}"
	}
	parts := make([]string, len(pairs))
	for i, p := range pairs {
		parts[i] = source.Join("", p.Key) + " = " + e.encode(p.Value, source.Join(path, p.Key), false)
	}
	return "{ " + strings.Join(parts, ", ") + " }"
}

// quoted writes a text: on one line, or between """ when it has line ends and
// the file ends its lines with a line feed alone (else the value would change).
func (e *editor) quoted(s, path string, long bool) string {
	if !utf8.ValidString(s) {
		e.refuse(path, "the text is not UTF-8")
		return `""`
	}
	if long && e.eol == "\n" && strings.Contains(s, "\n") {
		return `"""` + "\n" + escape(s, true) + `"""`
	}
	return `"` + escape(s, false) + `"`
}

func escape(s string, lines bool) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\n' && lines || r == '\t' && lines:
			b.WriteRune(r)
		case r == '\n':
			b.WriteString(`\n`)
		case r == '\t':
			b.WriteString(`\t`)
		case r == '\r':
			b.WriteString(`\r`)
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case unicode.IsControl(r):
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
