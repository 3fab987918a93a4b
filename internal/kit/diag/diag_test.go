package diag

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	_ "jarmark/internal/kit/steady"
)

func TestPrint(t *testing.T) {
	files := map[string]string{
		"b.toml": "name = \"x\"\n\tamount = \"4 cupz\"\r\nname = \"苺ジャム\" # é\n",
	}
	var l List
	l.Warnf("w", "b.toml", "", "the name is wide").Hinted("keep it")
	l[0].Pos = Pos{3, 8, 14}
	l.Errorf("e", "b.toml", "", "%q is not a unit", "cupz").Hinted("did you mean cups?").Cited("NIST Handbook 44, Appendix C")
	l[1].Pos = Pos{2, 11, 19}
	l.Notef("n", "a.toml", "", "no place known")
	l.Errorf("n", "", "", "no file\x1b[31m known")
	l.Errorf("x", "b.toml", "", "past the end")
	l[4].Pos = Pos{99, 1, 0}
	l.Errorf("x", "b.toml", "", "past the line")
	l[5].Pos = Pos{3, 400, 500}
	var b strings.Builder
	if err := Print(&b, l, func(f string) string { return files[f] }); err != nil {
		t.Fatal(err)
	}
	want := `error: no file [31m known
a.toml: note: no place known
b.toml:2:11: error: "cupz" is not a unit
    2 |     amount = "4 cupz"
      |              ^^^^^^^^
hint: did you mean cups?
see: NIST Handbook 44, Appendix C
b.toml:3:8: warning: the name is wide
    3 | name = "苺ジャム" # é
      |        ^^^^^^^^^^
hint: keep it
b.toml:3:400: error: past the line
    3 | name = "苺ジャム" # é
      |                      ^
b.toml:99:1: error: past the end
`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", b.String(), want)
	}
	if l.Count(Error) != 4 || l.Count(Warning) != 1 || l.Count(Note) != 1 {
		t.Error("counts")
	}
}

func TestLongLinesAreCut(t *testing.T) {
	line := strings.Repeat("a", 5000) + "HERE" + strings.Repeat("b", 5000)
	l := List{{Severity: Error, File: "f", Message: "m", Pos: Pos{1, 5001, 5005}}}
	var b strings.Builder
	Print(&b, l, func(string) string { return line })
	rows := strings.Split(b.String(), "\n")
	if utf8.RuneCountInString(rows[1]) > 120 || strings.Index(rows[2], "^") != strings.Index(rows[1], "HERE")-len("…")+1 || !strings.Contains(rows[2], "^^^^") {
		t.Errorf("got\n%s", b.String())
	}
}

func TestPrintNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(-3, 300)
		l := List{{Severity: Severity(rapid.IntRange(0, 2).Draw(t, "s")), File: "f", Message: rapid.String().Draw(t, "m"),
			Pos: Pos{n.Draw(t, "line"), n.Draw(t, "col"), n.Draw(t, "end")}}}
		text := rapid.String().Draw(t, "text")
		var b strings.Builder
		Print(&b, l, func(string) string { return text })
		Print(&b, l, nil)
		if !utf8.ValidString(b.String()) {
			t.Fatal("output is not UTF-8")
		}
	})
}

func TestDidYouMean(t *testing.T) {
	options := []string{"name", "amount", "ingredient", "made", "market", "minutes", "temperature"}
	for word, want := range map[string]string{
		"nmae": "name", "amuont": "amount", "ingredients": "ingredient", "ingrediant": "ingredient", "Name": "name",
		"maed": "made", "temp": "temperature", "minute": "minutes",
		"": "", "zzz": "", "xy": "", "m": "",
	} {
		got, ok := DidYouMean(word, options)
		if got != want || ok != (want != "") {
			t.Errorf("%q: got %q, %v, want %q", word, got, ok, want)
		}
	}
	if _, ok := DidYouMean(strings.Repeat("x", 100000), options); ok {
		t.Error("a very long word has no near one")
	}
}

// What is the same is told some twenty times, then counted; what differs is
// kept, and errors stay errors.
func TestBrief(t *testing.T) {
	var l List
	for range 10_000 {
		l.Errorf("short", "a.csv", "", "one jar short")
	}
	l.Warnf("other", "a.csv", "", "a word")
	l.Errorf("short", "b.csv", "", "one jar short")
	got := l.Brief()
	if len(got) != Repeats+3 || got.Count(Error) != Repeats+2 || !strings.Contains(got[len(got)-1].Message, "9980 more") {
		t.Errorf("%d findings: %v", len(got), got[len(got)-1])
	}
	if few := l[9_995:]; len(few.Brief()) != len(few) {
		t.Error("a few findings are cut")
	}
}
