package pack

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
)

// Forty people, each with words, are three pages, with all that goes with each.
func TestFortyGifts(t *testing.T) {
	fs := faces(t)
	rs := both()
	rs[0].Batch.Gifts, rs[0].Batch.Markets, rs[1].Batch.Markets = nil, nil, nil
	rs[0].Jars[0].Count, rs[0].Jars[0].Sealed, rs[1].Jars[0].Count, rs[1].Jars[0].Sealed = 40, 40, 40, 40
	var list []Entry
	for i := range 40 {
		list = append(list, Entry{To: fmt.Sprintf("Friend %02d", i), From: "Nell", Message: fmt.Sprintf("words %02d", i), Jars: 1, Jam: []string{"plum", "apricot"}[i%2]})
	}
	p, found := Build(rs, Options{List: list})
	if found.HasErrors() {
		t.Fatal(found)
	}
	for _, paper := range []string{"a4", "letter"} {
		d, _ := p.Doc(fs, paper)
		var buf bytes.Buffer
		if err := pdf.Write(&buf, d, fs); err != nil {
			t.Fatal(err)
		}
		f := presstest.Open(t, buf.Bytes())
		if n := f.Pages(); n > 3 {
			t.Errorf("%s: %d pages", paper, n)
		}
		inspectPages(t, "gifts", d)
		flat := printed(f)
		for i := range 40 {
			words := fmt.Sprintf("from Nell, “words %02d”", i)
			if i%2 == 1 {
				words = "contains almond · " + words
			}
			for _, w := range []string{fmt.Sprintf("Friend %02d", i), words} {
				if !strings.Contains(flat, w) {
					t.Errorf("%s lacks %q:\n%s", paper, w, flat)
				}
			}
		}
		if strings.Count(flat, "L26265-PL") < 20 || strings.Count(flat, "L26201-AP") < 20 {
			t.Errorf("%s: a lot is not beside each jar", paper)
		}
	}
}
