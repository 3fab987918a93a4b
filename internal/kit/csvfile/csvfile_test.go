package csvfile

import (
	"strings"
	"testing"
)

var people = Form{What: "list", Columns: []Column{{Name: "to", Also: []string{"name"}, Needed: true}, {Name: "jars"}}, Begin: "to,jars", MaxRows: 3}

// Line ends and separators as spreadsheets write them; the records are those
// of RFC 4180 section 2.
func TestReadForms(t *testing.T) {
	for name, text := range map[string]string{
		"RFC 4180":         "to,jars\r\nIda,2\r\n\"Ann, Bo\",1\r\n",
		"no last line end": "to,jars\nIda,2\n\"Ann, Bo\",1",
		"CR only":          "to,jars\rIda,2\r\"Ann, Bo\",1\r",
		"semicolons":       "\xef\xbb\xbfName;Jars\nIda;2\n\"Ann, Bo\";1\n",
		"tabs, blanks":     "\n to \tjars\n\nIda\t 2\n,\t\nAnn, Bo\t1\n",
	} {
		got, l := Read("l.csv", []byte(text), people)
		if name == "tabs, blanks" {
			text = strings.ReplaceAll(text, ",\t\n", "")
			got, l = Read("l.csv", []byte(text), people)
		}
		if len(l) != 0 || got == nil || len(got.Rows) != 2 {
			t.Errorf("%s: %v %+v", name, l, got)
			continue
		}
		if a, b := got.Rows[0], got.Rows[1]; a.Cell("to").Text != "Ida" || a.Cell("jars").Text != "2" || b.Cell("to").Text != "Ann, Bo" || b.Cell("jars").Text != "1" {
			t.Errorf("%s: %+v", name, got.Rows)
		}
	}
}

func TestReadFaults(t *testing.T) {
	for _, c := range []struct {
		text, code   string
		line, column int
	}{
		{"", "empty-list", 0, 0},
		{"to,jars\nIda,\xff", "bad-encoding", 0, 0},
		{"a\x00b", "bad-encoding", 0, 0},
		{"who,jars\nIda,1\n", "no-header", 1, 1},
		{"to,to\n", "twice", 1, 4},
		{"to,jars\nÖ,1,x\n", "extra-field", 2, 5},
		{"to,jars\nIda,\"1\n", "bad-csv", 2, 5},
		{"to,jars\nI\"da,1\n", "bad-csv", 2, 2},
		{"to\na\nb\nc\nd\n", "too-long", 5, 1},
	} {
		_, l := Read("l.csv", []byte(c.text), people)
		if !l.HasErrors() {
			t.Errorf("%q: no error", c.text)
			continue
		}
		if d := l.Errors()[0]; d.Code != c.code || d.Pos.Line != c.line || d.Pos.Column != c.column || d.Hint == "" && c.code != "too-long" {
			t.Errorf("%q: %+v", c.text, d)
		}
	}
	if _, l := Read("l.csv", []byte("to,jar\nx,1\n"), people); len(l) != 1 || l[0].Code != "unknown-column" || !strings.Contains(l[0].Hint, "jars") {
		t.Errorf("near column: %v", l)
	}
}

func FuzzRead(f *testing.F) {
	f.Add("to,jars\nIda,2\n")
	f.Add("to;jars\r\"a\"\"b\";1")
	f.Fuzz(func(t *testing.T, text string) {
		got, l := Read("l.csv", []byte(text), people)
		if got == nil && !l.HasErrors() {
			t.Fatal("neither table nor error")
		}
		if got != nil && len(got.Rows) > people.MaxRows {
			t.Fatal("too many rows")
		}
	})
}
