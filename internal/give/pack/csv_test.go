package pack

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"
)

// TestCSV reads the file back by RFC 4180 rules and looks for cells that a
// spreadsheet would run: = + - @ at the start, the signs OWASP names under
// "CSV Injection" (as quoted in the advisory CVE-2021-41270).
func TestCSV(t *testing.T) {
	rs := both()
	rs[0].Batch.Gifts[0].To = `=HYPERLINK("http://x.example","a")`
	rs[0].Batch.Gifts[0].Message = "line one\r\nline, \"two\""
	rs[0].Batch.Gifts[1].From = "\t@SUM(A1)"
	rs[0].Batch.Name = "-plum"
	p, _ := Build(rs, Options{})
	data := p.CSV()
	if n := bytes.Count(data, []byte("\n")); n != bytes.Count(data, []byte("\r\n")) {
		t.Error("lines must end in CRLF (RFC 4180 section 2, rule 1)")
	}
	data, marked := bytes.CutPrefix(data, []byte("\xEF\xBB\xBF"))
	if !marked {
		t.Error("no mark says that the text is UTF-8 (RFC 3629, section 6)")
	}
	rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll() // every row as long as the header
	if err != nil {
		t.Fatal(err)
	}
	sum := 0
	for _, r := range rows[1:] {
		for _, cell := range r {
			if s := strings.TrimSpace(cell); s != "" && strings.ContainsRune("=+-@", rune(s[0])) {
				t.Errorf("a live cell: %q", cell)
			}
		}
		var n int
		fmt.Sscan(r[6], &n)
		if r[0] == "gift" || r[0] == "market" || r[0] == "left" || r[0] == "sold" || r[0] == "refrigerator" {
			sum += n
		}
	}
	if sum != 36 { // as many as were filled
		t.Errorf("the rows hold %d jars", sum)
	}
	if rows[1][13] != `line one  line, "two"` {
		t.Errorf("message %q", rows[1][13])
	}
}
