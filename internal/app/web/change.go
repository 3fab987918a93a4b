package web

import (
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/edit"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// change is one thing done in the form.
type change struct {
	Do    string `json:"do"` // "set", "add", "remove", "up", "down", "restore"
	Path  string `json:"path"`
	Value string `json:"value"`        // of "restore": the text of the row
	ID    int    `json:"id,omitempty"` // of "remove": asks for the text taken out
}

// apply makes changes to a text one after another; what cannot be done leaves
// the text as it is and a finding.
func apply(text string, changes []change, sections []section) (string, diag.List) {
	var found diag.List
	for _, c := range changes {
		now, l := applyOne(text, c, sections)
		text = now
		found = append(found, l...)
	}
	return text, found
}

func applyOne(text string, c change, sections []section) (string, diag.List) {
	f, ok := fieldAt(c.Path, sections)
	switch c.Do {
	case "set":
		if ok {
			return set(text, c, f)
		}
	case "add":
		if isRows(c.Path, sections) {
			return edit.AppendTable(text, c.Path, nil)
		}
	case "restore":
		if table, _, ok := rowOf(c.Path); ok && isRows(table, sections) {
			return restoreRow(text, c.Path, c.Value)
		}
	case "remove":
		return edit.Delete(text, c.Path)
	case "up":
		return moveUp(text, c.Path)
	case "down":
		table, i, ok := rowOf(c.Path)
		if ok {
			return moveUp(text, source.At(table, i+1))
		}
	}
	var l diag.List
	l.Errorf("edit-refused", "", c.Path, "the form has no %s", c.Path).Hinted("load the page again")
	return text, l
}

var index = regexp.MustCompile(`\[\d+\]`)

// fieldAt finds the field of the form for a path.
func fieldAt(path string, sections []section) (field, bool) {
	bare := index.ReplaceAllString(path, "")
	for _, s := range sections {
		for _, g := range s.Groups {
			for _, f := range g.Fields {
				if strings.TrimPrefix(g.Table+"."+f.Key, ".") == bare {
					return f, true
				}
			}
		}
	}
	return field{}, false
}

func isRows(table string, sections []section) bool {
	for _, s := range sections {
		for _, g := range s.Groups {
			if g.Rows && g.Table == table {
				return true
			}
		}
	}
	return false
}

// set writes one field; an emptied one leaves the file, unless it is needed.
func set(text string, c change, f field) (string, diag.List) {
	if strings.TrimSpace(c.Value) != "" || f.Needed {
		return edit.Set(text, c.Path, encode(f.As, c.Value))
	}
	file, l := source.Parse("", []byte(text))
	_, there := file.Entry(c.Path)
	switch {
	case !there:
		return text, l
	case f.As == yes:
		return edit.Set(text, c.Path, false)
	}
	return edit.Delete(text, c.Path)
}

// encode makes a TOML value of what was typed. What is not a number or a day
// stays a text, so that nothing typed is lost and the finding tells.
func encode(as entry, s string) any {
	trimmed := strings.TrimSpace(s)
	switch as {
	case day:
		if d, err := unit.ParseDate(trimmed); err == nil {
			return d
		}
	case count:
		if n, err := strconv.Atoi(ungrouped(trimmed)); err == nil {
			return n
		}
	case number:
		if n, err := strconv.Atoi(trimmed); err == nil {
			return n
		}
		if v, err := strconv.ParseFloat(pointed(trimmed), 64); err == nil && v-v == 0 {
			return v
		}
	case yes:
		return trimmed == "true"
	case choice: // between true and false, where the default is true
		if trimmed == "true" || trimmed == "false" {
			return trimmed == "true"
		}
	case series:
		return parts(s, comma)
	case lines:
		return parts(s, func(r []rune, i int) bool { return r[i] == '\n' })
	}
	if as == prose {
		return strings.ReplaceAll(s, "\r\n", "\n")
	}
	return s
}

var (
	thousands   = regexp.MustCompile(`^\d{1,3}(,\d{3})+$`)
	commaNumber = regexp.MustCompile(`^-?\d+,(\d{1,2}|\d{4,})$`)
)

// ungrouped reads a count as people write it: 1,000.
func ungrouped(s string) string {
	if thousands.MatchString(s) {
		return strings.ReplaceAll(s, ",", "")
	}
	return s
}

// pointed reads a decimal comma: 65,5. Three digits after it may as well be
// thousands, so they stay as typed and are asked about.
func pointed(s string) string {
	if commaNumber.MatchString(s) {
		return strings.Replace(s, ",", ".", 1)
	}
	return s
}

// comma ends a part of a series, but not inside a number such as 10,5.
func comma(r []rune, i int) bool {
	if r[i] == ';' || r[i] == '\n' {
		return true
	}
	inNumber := i > 0 && i+1 < len(r) && unicode.IsDigit(r[i-1]) && unicode.IsDigit(r[i+1])
	return r[i] == ',' && !inNumber
}

// parts splits a text where ends says so, and drops blanks.
func parts(s string, ends func(r []rune, i int) bool) []string {
	out := []string{}
	r := []rune(s)
	start := 0
	keep := func(to int) {
		if p := strings.TrimSpace(string(r[start:to])); p != "" {
			out = append(out, p)
		}
		start = to + 1
	}
	for i := range r {
		if ends(r, i) {
			keep(i)
		}
	}
	keep(len(r))
	return out
}
