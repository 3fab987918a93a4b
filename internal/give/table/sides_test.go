package table

import (
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/place"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/batch"
)

// RFC 4180: lines end with CRLF, quotes are doubled, cells with commas quoted. A
// byte order mark stands first; a formula is kept from running (OWASP, CSV
// Injection: = + - @, after white space too), a number is none.
func TestListAsCSV(t *testing.T) {
	l := &List{Columns: []string{"a", "b"}, Parts: []Part{{Rows: []Row{
		{Cells: Cells{"a": "plum, \"ripe\"", "b": "2"}}, {What: "no cells"}, {Cells: Cells{"b": "=1+1"}, Not: OnPaper}, {Cells: Cells{"a": "hidden"}, Not: OnSheet}, {Cells: Cells{"a": " \t@x", "b": "-3.5"}},
	}}, {Not: OnSheet, Rows: []Row{{Cells: Cells{"a": "hidden"}}}}}}
	got := string(l.CSV())
	if want := "\uFEFFa,b\r\n\"plum, \"\"ripe\"\"\",2\r\n,'=1+1\r\n'  @x,-3.5\r\n"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if rows, err := csv.NewReader(strings.NewReader(strings.TrimPrefix(got, byteOrderMark))).ReadAll(); err != nil || len(rows) != 4 {
		t.Errorf("%v %v", rows, err)
	}
	for in, want := range map[string]string{"": "", " ": " ", "1": "1", "-1": "-1", "+x": "'+x", "-x": "'-x", "\n=x": "'\n=x", "\r@x": "'\r@x", "x=1": "x=1", "＝x": "'＝x", "＋x": "'＋x", "－x": "'－x", "＠x": "'＠x", "1e5": "1e5"} {
		if got := inert(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
}

// Control and direction marks stay out of a terminal (Unicode: bidirectional
// controls U+202A to U+202E, U+2066 to U+2069); breaks are blanks.
func TestCleanText(t *testing.T) {
	for in, want := range map[string]string{"a\nb\tc\rd": "a b c d", "a\x00b\x1bc\x7f": "abc", "\u202Aa\u202E": "a", "\u2029a\u202F": "\u2029a\u202F", "\u2066a\u2069": "a", "\u2065a\u206A": "\u2065a\u206A", "\u202Ca\u2067": "a", "a\uFFFDb": "ab", "Zoë": "Zoë"} {
		if got := clean(in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	for _, x := range []struct {
		s    string
		n    int
		want string
	}{{"plums", 5, "plums"}, {"plums", 4, "plu…"}, {"pl ums", 4, "pl…"}, {"plums", 1, "…"}, {"plums", 0, "plums"}, {"plums", 2, "p…"}, {"Zoës", 3, "Zo…"}} {
		if got := cut(x.s, x.n); got != x.want {
			t.Errorf("%s to %d: %q", x.s, x.n, got)
		}
	}
}

// A terminal of 80 columns: amount, words from column 24 on, details at the
// right edge; what does not fit is cut in the words, never in the details.
func TestRowsInEightyColumns(t *testing.T) {
	long := strings.Repeat("x", 100)
	for _, x := range []struct{ a, b, c, want string }{
		{"2", "plum", "", "  2" + strings.Repeat(" ", 21) + "plum"}, {"2", "plum", "ripe", "  2" + strings.Repeat(" ", 21) + "plum" + strings.Repeat(" ", 48) + "ripe"},
		{"2", long, "", "  2" + strings.Repeat(" ", 21) + long[:55] + "…"}, {"2", long, "ripe", "  2" + strings.Repeat(" ", 21) + long[:49] + "…  ripe"},
		{long, "plum", "", "  " + long[:33] + "…  plum"}, {long[:34], "plum", "", "  " + long[:34] + "  plum"}, {long[:21], "plum", "", "  " + long[:21] + "  plum"},
		{"2", long[:24], long[:30], "  2" + strings.Repeat(" ", 21) + long[:24] + "  " + long[:30]}, {"2", long[:24], long[:31], "  2" + strings.Repeat(" ", 21) + long[:24] + "\n" + strings.Repeat(" ", 24) + long[:31]},
		{"2", long[:23], long[:31], "  2" + strings.Repeat(" ", 21) + long[:23] + "  " + long[:31]}, {"2", long, long[:40], "  2" + strings.Repeat(" ", 21) + long[:55] + "…\n" + strings.Repeat(" ", 24) + long[:40]},
	} {
		w := &writer{}
		w.row(x.a, x.b, x.c)
		if got := w.b.String(); got != x.want+"\n" {
			t.Errorf("%.5s|%.5s|%.5s:\n%q, want\n%q", x.a, x.b, x.c, got, x.want+"\n")
		}
	}
	for _, x := range []struct{ indent, text, want string }{
		{"", "", ""}, {"  ", "a  b", "  a b"}, {"", long[:40] + " " + long[:39], long[:40] + " " + long[:39]}, {"", long[:40] + " " + long[:40], long[:40] + "\n" + long[:40]}, {"  ", long[:78] + " a", "  " + long[:78] + "\n  a"}, {"  ", "a " + long[:78], "  a\n  " + long[:78]},
	} {
		w := &writer{}
		w.wrap(x.indent, x.text)
		if got := w.b.String(); got != x.want+"\n" {
			t.Errorf("%q: %q", x.text, got)
		}
	}
	for _, x := range []struct{ title, right, want string }{
		{"By jam", "", "By jam"}, {"By jam", "12 jars", "By jam" + strings.Repeat(" ", 67) + "12 jars"}, {long, "12 jars", long[:70] + "…  12 jars"}, {long[:71], "12 jars", long[:71] + "  12 jars"},
	} {
		w := &writer{}
		w.head(x.title, x.right)
		if got := w.b.String(); got != "\n"+x.want+"\n" {
			t.Errorf("%q, want %q", got, x.want)
		}
	}
}

// Each kind of row as a terminal shows it.
func TestEachRowAsText(t *testing.T) {
	l := &List{Head: "head", Sum: "one\ntwo", Parts: []Part{
		{Title: "Part", Sum: "3", Rows: []Row{{Amount: "2", What: "plum", Note: "n"}, {Tick: true, Amount: "2", What: "plum"}, {Type: Say, What: "said"}, {Type: Aside, What: "aside"}, {Type: Alarm, What: "alarm"}, {Type: Crate, What: "box", Under: "under"}, {Type: Step, What: "step"}, {Type: Write, What: "never"}, {Type: Towers}}},
		{Flush: true, Rows: []Row{{Amount: "2", What: "flush"}, {Type: Say, What: "plain"}}}, {Title: "Hidden", Not: OnText, Rows: []Row{{What: "never"}}}, {Title: "Empty"}, {Rows: []Row{{What: "never", Not: OnText}}},
		{Title: "Table", Columns: []string{"jam", "made"}, Rows: []Row{{What: "plum", Figures: []string{"12", "over"}}}},
	}}
	gap := strings.Repeat(" ", 17)
	want := "head\none\ntwo\n\nPart" + strings.Repeat(" ", 75) + "3\n      2" + gap + "plum" + strings.Repeat(" ", 51) + "n\n  [ ] 2" + gap + "plum\n  said\n      aside\n  !!  alarm\n      box: under\n  [ ] step\n\n  2" + gap + "    flush\nplain\n\nEmpty\n\nTable\njam       made\nplum        12\n"
	if got := l.Text(); got != want {
		t.Errorf("%q\nwant %q", got, want)
	}
}

// Columns as wide as their widest figure and two blanks; names get what is left,
// eight letters at least, and a long one a line of its own.
func TestColumnsOfFigures(t *testing.T) {
	w := &writer{}
	if w.columns(nil, nil) != nil || w.b.Len() > 0 {
		t.Error("columns of nothing")
	}
	for _, x := range []struct {
		heads []string
		rows  []Row
		want  string
	}{
		{[]string{"jam", "made"}, []Row{{What: "plum", Figures: []string{"1"}}}, "[8 6]"}, {[]string{"jam", "made"}, []Row{{What: "plum and pear", Figures: []string{"123456"}}}, "[13 8]"},
		{[]string{"jam", strings.Repeat("m", 66)}, nil, "[8 68]"}, {[]string{"a long jam name", strings.Repeat("m", 66)}, nil, "[12 68]"}, {[]string{"a long jam name", strings.Repeat("m", 67)}, nil, "[12 68]"}, {[]string{"a long jam name", strings.Repeat("m", 40), strings.Repeat("m", 26)}, nil, "[12 41 27]"},
		{[]string{"a long jam name", strings.Repeat("m", 75)}, nil, "[8 76]"}, {[]string{"a long jam name", strings.Repeat("m", 30), strings.Repeat("m", 30)}, nil, "[15 32 32]"},
	} {
		if got := fmt.Sprint((&writer{}).columns(x.heads, x.rows)); got != x.want {
			t.Errorf("%q: %s, want %s", x.heads, got, x.want)
		}
	}
	for _, x := range []struct {
		name    string
		figures []string
		want    string
	}{{"plum", []string{"12"}, "plum       12"}, {"plum jam and pear", []string{"12"}, "plum jam and pear\n           12"}, {"plum jam and pear", nil, "plum jam…"}, {"plum", []string{"1234567"}, "plum      1234567"}, {"plum\n", []string{"1", "2", "3"}, "plum        1"}} {
		w := &writer{}
		w.figures(x.name, x.figures, []int{9, 4})
		if got := w.b.String(); got != x.want+"\n" {
			t.Errorf("%s %v: %q", x.name, x.figures, got)
		}
	}
}

// What a form shows, and what it leaves out.
func TestFormsOfAList(t *testing.T) {
	l := &List{}
	l.Add(Part{Title: "empty"})
	l.Add(Part{Title: "one", Rows: []Row{{What: "a"}, {What: "b", Not: OnScreen}}})
	l.Add(Part{Title: "none", Not: OnScreen, Rows: []Row{{What: "c"}}})
	if got := l.Screen(); len(l.Parts) != 2 || len(got) != 1 || len(got[0].Rows) != 1 || got[0].Rows[0].What != "a" || len(l.Parts[0].Rows) != 2 {
		t.Errorf("%+v", got)
	}
	if OnText != 1 || OnSheet != 2 || OnPaper != 4 || OnScreen != 8 || Jars(1) != "1 jar" || Jars(2) != "2 jars" || Jars(0) != "0 jars" {
		t.Error("forms or counts")
	}
	if got := Join(Said([]string{"a", " ", "", "b"})); got != "a, b" {
		t.Error(got)
	}
	if got := MoneyList([]unit.Money{{Minor: 150, Currency: "USD"}, {Minor: 100, Currency: "EUR"}}); got != "$1.50 + €1.00" {
		t.Error(got)
	}
}

// Lists speak the kitchen's language; dates in the United States put the month
// first in words. Months 1 to 12 have names, and no other.
func TestWordsAtTheirEnds(t *testing.T) {
	for want, k := range map[string]*batch.Kitchen{"en-us": {Place: place.Place{ID: "us-or"}, Language: "en"}, "de": {Place: place.Place{ID: "us-or"}, Language: "de"}, "en": {Place: place.Place{ID: "gb", Law: "eu"}, Language: "en"}} {
		if got := LanguageOf(k); got != want {
			t.Errorf("%+v: %s, want %s", k.Place, got, want)
		}
	}
	de, us, en := WordsIn("de-AT"), WordsIn("EN-US"), WordsIn("en")
	dec, none := unit.Date{Year: 2026, Month: 12, Day: 5}, unit.Date{}
	for got, want := range map[string]string{
		de.Month(1): "Januar", de.Month(12): "Dezember", de.Month(0): unit.MonthWord(0), de.Month(13): unit.MonthWord(13), en.Month(6): unit.MonthWord(6), us.Brief(dec): "Dec 5, 2026", us.Brief(none): none.String(), en.Brief(dec): "2026-12-05", de.Brief(none): none.String(),
		de.Day(unit.Date{Year: 2026, Month: 1, Day: 2}): "2. Januar 2026", de.Day(dec): "5. Dezember 2026", us.Day(dec): "Dec 5, 2026", de.Number("1.5.2"): "1,5.2", en.Number("1.5"): "1.5",
		en.And(nil): "", en.And([]string{"a"}): "a", en.And([]string{"a", "b"}): "a and b", en.And([]string{"a", "b", "c"}): "a, b and c", en.Boxes(1): "1 box", en.Boxes(2): "2 boxes", en.Say("100 %"): "100 %",
		de.Money([]unit.Money{{Minor: 150, Currency: "EUR"}, {Minor: 5, Currency: "EUR"}}): "1,50\u00a0€ + 0,05\u00a0€",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
	if !de.Knows("continued") || en.Knows("continued") || de.Knows("stardust") || Paper(unit.US) != "letter" || Paper(unit.Metric) != "a4" || Paper("") != "a4" {
		t.Error("words or paper")
	}
}

// A name no typeface draws gives way to its letters without pictures, else to
// where it stands, and is told once; a longer name is replaced before one in it.
func TestNamesNoFaceDraws(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := NewLayout(fs, "a4", "head")
	c.knowing([]Told{{Text: "日本", Instead: "(row 4)", File: "a.csv", Path: "to", Pos: diag.Pos{Line: 4}}, {Text: "日本 子", Instead: "(row 5)"}, {Text: "Ada \U0001F353", Instead: "(row 6)"}, {Text: "Ada", Instead: "(row 7)"}, {Text: " ", Instead: "(row 8)"}, {Text: "\U0001F353", Instead: "(row 9)"}})
	if len(c.hard) != 4 || c.hard[0].Instead != "(row 5)" {
		t.Fatalf("%+v", c.hard)
	}
	for in, want := range map[string]string{"for 日本 子": "for (row 5)", "for 日本": "for (row 4)", "for Ada \U0001F353!": "for Ada!", "for Ada": "for Ada", "\U0001F353": "(row 9)", "日本 and 日本 子": "(row 4) and (row 5)"} {
		if got := c.replaced(PlainFace, in); got != want {
			t.Errorf("%q: %q, want %q", in, got, want)
		}
	}
	if _, l := c.Finish("", ""); len(l) != 4 {
		t.Errorf("%d are told", len(l))
	} else {
		for _, d := range l {
			if strings.Contains(d.Message, "“日本”") && (d.File != "a.csv" || d.Path != "to" || d.Pos.Line != 4) {
				t.Errorf("%+v", d)
			}
		}
	}
	for r, out := range map[rune]bool{'a': false, '^': false, '¨': false, '\u02C4': true, '\u2603': true, '\uFE0F': true, '\u200d': true, '\u20e3': true, 'Γ': false, '\U0001F3FB': true, '\u200c': false} {
		if got := lettersOnly(r) < 0; got != out {
			t.Errorf("%U: left out %v", r, got)
		}
	}
	if _, l := NewLayout(fs, "a3", ""); len(l) != 1 || l[0].Code != "unknown-paper" {
		t.Errorf("%v", l)
	}
}
