package edit

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/kit/source"
	_ "jarmark/internal/kit/steady"
)

// genDoc writes a random valid file with comments everywhere.
func genDoc(t *rapid.T) string {
	var b strings.Builder
	indent := rapid.SampledFrom([]string{"", "  ", "\t"})
	comment := rapid.SampledFrom([]string{"", "", "# note\n", "\n", "# a = 1\n# b\n", "\n# [x]\n\n"})
	keys := func(n int, prefix string) {
		for i := range n {
			b.WriteString(comment.Draw(t, "c") + indent.Draw(t, "in"))
			key := rapid.SampledFrom([]string{"k%d", "k%d.sub", `"odd %d"`}).Draw(t, "key")
			fmt.Fprintf(&b, prefix+key+" %s %s%s\n", i, rapid.SampledFrom([]string{"=", " =  "}).Draw(t, "eq"), genValue(t), rapid.SampledFrom([]string{"", " # why"}).Draw(t, "tail"))
		}
	}
	keys(rapid.IntRange(0, 3).Draw(t, "root"), "")
	for _, table := range []string{"cook", "label"} {
		if rapid.Bool().Draw(t, table) {
			b.WriteString(comment.Draw(t, "c") + "[" + table + "] # head\n")
			keys(rapid.IntRange(0, 3).Draw(t, "n"), "")
		}
		for range rapid.IntRange(0, 3).Draw(t, "gifts") {
			name := "gift" + table
			b.WriteString(comment.Draw(t, "c") + "[[" + name + "]]\n")
			keys(rapid.IntRange(0, 2).Draw(t, "n"), "")
			if rapid.Bool().Draw(t, "inner") {
				b.WriteString("[" + name + ".inner]\n")
				keys(1, "")
			}
		}
	}
	b.WriteString(comment.Draw(t, "c"))
	text := b.String()
	if rapid.Bool().Draw(t, "cut") {
		text = strings.TrimSuffix(text, "\n")
	}
	if rapid.Bool().Draw(t, "crlf") {
		text = strings.ReplaceAll(text, "\n", "\r\n")
	}
	return text
}

func genValue(t *rapid.T) string {
	return rapid.SampledFrom([]string{
		`"text # no comment"`, "'lit'", "12", "6.5", "true", "2026-06-14", "[]", "{}", `["a", "b"]`, "[ 1, # one\n  2,\n]",
		`{ a = 1, b = "x, y" }`, `[{ a = 1 }, { a = 2, b = [3] }]`, "\"\"\"two\nlines\"\"\"",
	}).Draw(t, "v")
}

func tree(t *rapid.T, text string) map[string]any {
	f, l := source.Parse("f", []byte(text))
	if l.HasErrors() {
		t.Fatalf("%v\n%s", l, text)
	}
	m := map[string]any{}
	source.Decode(f, &m)
	return m
}

// paths lists every value of a file.
func paths(text string, kinds ...source.EntryType) (out []string) {
	f, _ := source.Parse("f", []byte(text))
	for _, e := range f.Entries() {
		if slices.Contains(kinds, e.Type) {
			out = append(out, e.Path)
		}
	}
	return out
}

// put changes a decoded tree; a nil value takes the thing out.
func put(x any, steps []source.Step, v any) any {
	s := steps[0]
	if s.IsIndex {
		items := reflect.ValueOf(x)
		out := reflect.MakeSlice(items.Type(), 0, items.Len()+1)
		for i := range items.Len() {
			item := items.Index(i)
			switch {
			case i != s.Index:
			case len(steps) > 1:
				item = reflect.ValueOf(put(item.Interface(), steps[1:], v))
			case v == nil:
				continue
			default:
				item = reflect.ValueOf(v)
			}
			out = reflect.Append(out, item)
		}
		return out.Interface()
	}
	m, _ := x.(map[string]any)
	if m == nil {
		m = map[string]any{}
	}
	switch {
	case len(steps) > 1:
		m[s.Key] = put(m[s.Key], steps[1:], v)
	case v == nil:
		delete(m, s.Key)
	default:
		m[s.Key] = v
	}
	return m
}

func lines(text string) []string { return strings.Split(strings.TrimRight(text, "\r\n"), "\n") }

// within reports whether a is b with lines left out. Empty lines don't count.
func within(a, b []string) bool {
	i := 0
	for _, line := range b {
		for i < len(a) && strings.TrimSpace(a[i]) == "" {
			i++
		}
		if i < len(a) && strings.TrimRight(a[i], "\r") == strings.TrimRight(line, "\r") {
			i++
		}
	}
	for i < len(a) && strings.TrimSpace(a[i]) == "" {
		i++
	}
	return i == len(a)
}

func same(t *rapid.T, got string, want map[string]any, old string) {
	if g := tree(t, got); fmt.Sprint(g) != fmt.Sprint(want) {
		t.Fatalf("got\n%v\nwant\n%v\nold text:\n%s\nnew text:\n%s", g, want, old, got)
	}
}

func TestReplaceChangesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old := genDoc(t)
		ps := paths(old, source.Value, source.Item)
		if len(ps) == 0 {
			t.Skip()
		}
		path := rapid.SampledFrom(ps).Draw(t, "path")
		value := rapid.String().Draw(t, "text")
		got, l := Set(old, path, value)
		if len(l) > 0 {
			t.Fatal(l)
		}
		steps, _ := source.SplitPath(path)
		same(t, got, put(tree(t, old), steps, value).(map[string]any), old)
		f, _ := source.Parse("f", []byte(old))
		at, _ := f.Entry(path)
		if !strings.HasPrefix(got, old[:at.Value.Start]) || !strings.HasSuffix(got, old[at.Value.End:]) {
			t.Fatalf("more than the value changed:\n%s\n%s", old, got)
		}
		back, l := Set(got, path, value)
		if back != got || len(l) > 0 {
			t.Fatalf("setting it twice changes the text")
		}
	})
}

func TestNewKeyChangesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old := genDoc(t)
		tables := append(paths(old, source.Table, source.Element), "", "fresh", "cook", "a.b")
		table := rapid.SampledFrom(tables).Draw(t, "table")
		path := source.Join(table, "zz")
		got, l := Set(old, path, 7)
		if len(l) > 0 {
			t.Fatalf("%s: %v\n%s", path, l, old)
		}
		steps, _ := source.SplitPath(path)
		same(t, got, put(tree(t, old), steps, int64(7)).(map[string]any), old)
		if !within(lines(old), lines(got)) {
			t.Fatalf("old lines changed:\n%s\n%s", old, got)
		}
	})
}

func TestAppendTableChangesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old := genDoc(t)
		name := rapid.SampledFrom([]string{"giftcook", "giftlabel", "market"}).Draw(t, "name")
		got, l := AppendTable(old, name, []Pair{{"to", "x\ny"}, {"n", 1.5}})
		if len(l) > 0 {
			t.Fatal(l)
		}
		want := tree(t, old)
		list, _ := want[name].([]map[string]any)
		want[name] = append(list, map[string]any{"to": "x\ny", "n": 1.5})
		same(t, got, want, old)
		if !within(lines(old), lines(got)) {
			t.Fatalf("old lines changed:\n%s\n%s", old, got)
		}
	})
}

func TestDeleteChangesNothingElse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old := genDoc(t)
		ps := paths(old, source.Value, source.Item, source.Table, source.Element)
		if len(ps) == 0 {
			t.Skip()
		}
		path := rapid.SampledFrom(ps).Draw(t, "path")
		got, l := Delete(old, path)
		if len(l) > 0 {
			t.Fatalf("%s: %v\n%s", path, l, old)
		}
		f, _ := source.Parse("f", []byte(old))
		if at, _ := f.Entry(path); (at.Type == source.Table || at.Type == source.Element) && !within(lines(got), lines(old)) {
			t.Fatalf("%s: other lines changed:\n%s\n%s", path, old, got)
		}
		steps, _ := source.SplitPath(path)
		want := put(tree(t, old), steps, nil).(map[string]any)
		if g := prune(tree(t, got)); fmt.Sprint(g) != fmt.Sprint(prune(want)) {
			t.Fatalf("%s: got\n%v\nwant\n%v\nold text:\n%s\nnew text:\n%s", path, g, want, old, got)
		}
	})
}

// prune drops tables and lists of tables left empty: a deleted last key takes
// its implied tables along.
func prune(x any) any {
	switch v := x.(type) {
	case map[string]any:
		for k, y := range v {
			if y = prune(y); y == nil {
				delete(v, k)
			} else {
				v[k] = y
			}
		}
		if len(v) == 0 {
			return nil
		}
	case []map[string]any:
		if len(v) == 0 {
			return nil
		}
		for _, m := range v {
			prune(m)
		}
	}
	return x
}

func FuzzSet(f *testing.F) {
	f.Add(doc, "cook.minutes", "25")
	f.Add("a = {b=[1,{c=2}]}", "a.b[1].c", "x")
	f.Fuzz(func(t *testing.T, text, path, value string) {
		for _, try := range []func() (string, bool){
			func() (string, bool) { s, l := Set(text, path, value); return s, l.HasErrors() },
			func() (string, bool) { s, l := Delete(text, path); return s, l.HasErrors() },
			func() (string, bool) {
				s, l := AppendTable(text, path, []Pair{{"k", value}})
				return s, l.HasErrors()
			},
		} {
			got, refused := try()
			if refused && got != text {
				t.Fatal("a refused edit must leave the text alone")
			}
			if _, l := source.Parse("f", []byte(got)); !refused && l.HasErrors() {
				t.Fatalf("%q %q %q: gives %q: %v", text, path, value, got, l)
			}
		}
	})
}
