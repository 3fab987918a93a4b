package source

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/kit/diag"
)

type inner struct {
	A *string    `toml:"a"`
	N *int       `toml:"n"`
	F *float64   `toml:"f"`
	B *bool      `toml:"b"`
	L []string   `toml:"l"`
	D *Loose     `toml:"d"`
	M OneOrMore  `toml:"m"`
	S []struct{} `toml:"s"`
}

type outer struct {
	Name string           `toml:"name"`
	In   *inner           `toml:"in"`
	Row  []inner          `toml:"row"`
	Map  map[string]inner `toml:"map"`
}

func decodeAll(t *testing.T, text string) (outer, string) {
	t.Helper()
	f, l := Parse("f", []byte(text))
	var o outer
	l = append(l, Decode(f, &o)...)
	var b strings.Builder
	for _, d := range l {
		fmt.Fprintf(&b, "%d:%d-%d %s %s; %s\n", d.Pos.Line, d.Pos.Column, d.Pos.EndColumn, d.Code, d.Message, d.Hint)
	}
	return o, b.String()
}

func TestDecode(t *testing.T) {
	o, l := decodeAll(t, `name = "x"
[in]
a = "t"
n = 3
f = 4
b = true
l = ["p", "q"]
d = 2026-06-14
m = "one"
[[row]]
d = 9.50
m = [1, "2 oz"]
[[row]]
d = "z"
[map.k]
n = 1
`)
	if l != "" {
		t.Fatal(l)
	}
	in := o.In
	if o.Name != "x" || *in.A != "t" || *in.N != 3 || *in.F != 4 || !*in.B || len(in.L) != 2 || *in.D != "2026-06-14" || in.M[0] != "one" {
		t.Errorf("%+v", in)
	}
	if *o.Row[0].D != "9.50" || o.Row[0].M[0] != "1" || o.Row[0].M[1] != "2 oz" || *o.Row[1].D != "z" || *o.Map["k"].N != 1 {
		t.Errorf("%+v", o.Row)
	}
}

// Every wrong thing is found in one run, at its exact place, in file order.
func TestDecodeFindsAll(t *testing.T) {
	_, got := decodeAll(t, `nmae = "x"
name = 4
in = 3
[[row]]
a = 1.8
n = "3"
f = "65.5"
b = "yes"
[[row]]
n = 2.5
f = nan
l = "p"
d = 2026-06-14T10:00:00
m = [1, true]
s = [1]
name = "y"
zzz = 1
[map.k]
l = ["a", 2]
`)
	want := `1:1-5 unknown-key "nmae" is not known at the top of the file; did you mean name?
2:8-9 wrong-type name must be text, not a number; write it in quotes: "4"
3:6-7 wrong-type in must be a table, not a number; write [in] on a line of its own, its values below
5:5-8 wrong-type a must be text, not a number; write it in quotes: "1.8"
6:5-8 wrong-type n must be a whole number, not text; write it without quotes: 3
7:5-11 wrong-type f must be a number, not text; write it without quotes: 65.5
8:5-10 wrong-type b must be true or false, not text; write true or false, without quotes
10:5-8 wrong-type n must be a whole number without a point, not a number; write a whole number like 12
11:5-8 wrong-type f must be a number, not nan or inf; write a number like 65.5
12:5-8 wrong-type l must be a list, not text; write it in square brackets, like ["p"]
13:5-24 wrong-type d must be a day, not a date; write the day alone, like 2026-06-14
14:9-13 wrong-type m must be text, not true or false; write one value in quotes
15:6-7 wrong-type s must be a table, not a number; write it in braces, like { name = "pectin" }
16:1-5 unknown-key "name" is not known in [[row]]; name belongs at the top of the file, above the first [table]; move it there
17:1-4 unknown-key "zzz" is not known in [[row]]; known here: a, b, d, f, l, m, n, s
19:11-12 wrong-type l must be text, not a number; write it in quotes: "2"
`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestBracketsMixedUp(t *testing.T) {
	_, got := decodeAll(t, "[[in]]\na='x'\n[row]\na='y'\n")
	want := "1:1-7 wrong-type in must be a table, not a list; write [in] with single brackets, once\n" +
		"3:1-6 wrong-type row must be a list, not a table; write [[row]] with double brackets\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestSyntaxErrors(t *testing.T) {
	for _, c := range []struct{ text, place, message string }{
		{"name = \"a\"\nname = \"b\"\n", "2:1", "name is written twice"},
		{"[[f]]\nn=1\n[[f]]\nn=1\nn=2\n", "5:1", "f.n is written twice"},
		{"[a]\nx=1\n[a]\n", "3:2", "a is written twice"},
		{"name = plum\n", "1:8", "plum is not in quotes"},
		{"name = \n", "1:8", "the value is missing"},
		{"name = \"abc\nb=1\n", "1:12", "the closing quote is missing"},
		{"amount = 1.8 kg\n", "1:13", "there is more after the value"},
		{"name = “plum”\n", "1:8", "“ is a typographic quote"},
		{"made = 2026-02-30\n", "1:8", `there is no day "2026-02-30"`},
		{"made = 9/5/2026 # fair\n", "1:9", "a day is written year-month-day"},
		{"made = Sept 5, 2026\n", "1:8", "a day is written year-month-day"},
		{"x = [1, 2\ny=3\n", "2:1", "the list is not closed"},
		{"x\x00y", "1:1", "the file is not text"},
		{"é\nx = \"\xff\"", "2:6", "the file is not UTF-8 text"},
		{"\xff\xfex\x00", "1:1", "the file is UTF-16 text"},
		{"x = " + strings.Repeat("[", 100_000), "1:69", "nested more than 64 deep"},
		{strings.Repeat("a.", 100_000) + "a = 1", "1:128", "nested more than 64 deep"},
		{"x = " + strings.Repeat("{a=", 100_000), "1:", "nested more than 64 deep"},
		{"x = [\"[[[" + strings.Repeat("[", 200) + "\"]\n!", "2:1", "expected = after the name"},
		{strings.Repeat("#", MaxSize+1), "1:1", "more than the 8 MB"},
	} {
		f, l := Parse("f", []byte(c.text))
		l = f.Locate(l)
		if len(l) != 1 || !strings.HasPrefix(fmt.Sprintf("%d:%d", l[0].Pos.Line, l[0].Pos.Column), c.place) || !strings.Contains(l[0].Message, c.message) || l[0].Hint == "" {
			t.Errorf("%.60q: got %+v, want %s %s", c.text, l, c.place, c.message)
		}
		var o outer
		if more := Decode(f, &o); len(more) > 0 {
			t.Errorf("%.60q: a file with errors decodes to nothing, got %v", c.text, more)
		}
	}
}

func TestTheFirstOfTwoIsNamed(t *testing.T) {
	for text, line := range map[string]string{
		"a = 1\nb = 2\na = 3\n": "line 1;", "[[f]]\nn=1\n[[f]]\n\nn=1\nn=2\n": "line 5;", "[a]\nx=1\n[a]\n": "line 1;",
		"[[a]]\n[a]\n": "line 1;", "\nx = { a = 1, a = 2 }": "line 2;", "a.b = 1\na.b = 2": "line 1;",
	} {
		_, l := Parse("f", []byte(text))
		if len(l) != 1 || !strings.Contains(l[0].Hint, "the first stands on "+line) {
			t.Errorf("%q: got %+v, want %s", text, l, line)
		}
	}
}

func TestFindingsAreCapped(t *testing.T) {
	f, _ := Parse("f", []byte(strings.Repeat("[[row]]\nbad = 1\n", 100_000)))
	var o outer
	l := Decode(f, &o)
	if len(l) != MaxFindings+1 || !strings.Contains(l[MaxFindings].Message, "99500 more") || l[MaxFindings].Severity != diag.Error {
		t.Errorf("%d findings, last %+v", len(l), l[len(l)-1])
	}
}

// BenchmarkParse shows that time grows in line with the file, not with its
// square: one long line of tables, and eight times as many.
func BenchmarkParse(b *testing.B) {
	for _, n := range []int{3_000, 24_000} {
		text := []byte("x = [" + strings.Repeat(`{a = "1 g", n = 1},`, n) + "]\n")
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			for b.Loop() {
				Parse("f", text)
			}
		})
	}
}

// TestLongLines: places on one very long line are exact to its end.
func TestLongLines(t *testing.T) {
	const n = 24_000
	f, l := Parse("f", []byte("x = ["+strings.Repeat(`{a = "1 g", n = 1},`, n)+"]\n"))
	if got, want := f.Span(At("x", n-1)+".n").Column, 6+(n-1)*19+16; l.HasErrors() || got != want {
		t.Fatal(l, got, want)
	}
}
