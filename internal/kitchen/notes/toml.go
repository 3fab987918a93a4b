package notes

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"jarmark/internal/kit/unit"
)

// Head is what stands at the top of a batch and not in the notes: what it is
// called, its kind, and the day to write where the notes name none.
// ProductBy says where the kind is from, when the name does not say it.
type Head struct{ Name, Product, ProductBy, Made string }

// TOML writes the reading as a batch file. Every line of the notes stands in it
// as a comment, above what was read of it, or at the end with why it was not.
func (r Reading) TOML(h Head) []byte {
	w := &writer{r: r}
	w.head(h)
	w.ingredients()
	w.table("cook")
	w.table("process")
	w.fills()
	w.unread()
	return []byte(w.b.String())
}

type writer struct {
	r Reading
	b strings.Builder
}

func (w *writer) f(format string, args ...any) { fmt.Fprintf(&w.b, format, args...) }

// comment writes a text as one line of comment: no sign in it can end it.
func (w *writer) comment(mark, s string) {
	w.f("# %s%s\n", mark, strings.Map(func(c rune) rune {
		if unicode.IsControl(c) && c != '\t' || c == '\uFFFE' || c == '\uFFFF' {
			return unicode.ReplacementChar
		}
		return c
	}, s))
}

// source writes the line of the notes, how it was read, and what is asked.
func (w *writer) source(l Line) {
	w.comment(fmt.Sprintf("line %d: ", l.No), l.Text)
	for _, s := range l.Says {
		w.comment("        ", s)
	}
	for _, s := range l.Asks {
		w.comment("  asked: ", s)
	}
}

func (w *writer) head(h Head) {
	w.f("# Read from notes: each line stands above what was read of it.\n")
	if n := w.r.Asked(); n > 0 {
		w.f("# %s to settle: look for \"asked\".\n", plural(n, "thing"))
	}
	w.f("name = %s\nkind = %s", quoted(h.Name), quoted(h.Product))
	if h.ProductBy != "" {
		w.f("          # %s", h.ProductBy)
	}
	w.f("\n")
	w.keys("made")
	if !w.r.has("made") { // a day that is asked about is not outdone by today
		w.f("made = %s          # not settled by the notes: the day this file was begun\n", h.Made)
	}
	w.keys("lot")
}

// has reports a line with the key of a path, asked or not.
func (r Reading) has(path string) bool {
	return slices.ContainsFunc(r.Lines, func(l Line) bool { return l.find(path) != nil })
}

// keys writes the keys of a path that is no table.
func (w *writer) keys(path string) {
	for _, l := range w.r.Lines {
		if l.find(path) == nil {
			continue
		}
		w.source(l)
		for _, k := range l.Keys {
			if k.Path == path {
				w.pair(path, k)
			}
		}
	}
}

func (w *writer) pair(name string, k Key) {
	if k.Asked {
		w.f("# ")
	}
	w.f("%s = %s\n", name, k.Value)
}

func (w *writer) ingredients() {
	for _, l := range w.r.Lines {
		for i, in := range l.Ingredients {
			w.f("\n")
			if i == 0 {
				w.source(l)
			}
			w.f("[[ingredient]]\n")
			w.either("name", in.Name, in.Names)
			w.either("amount", in.Amount, in.Amounts)
			if in.Form != "" {
				w.f("form = %s\n", quoted(in.Form))
			}
		}
	}
}

// either writes a value, or the values to choose from as comments: check asks
// for the missing key until one is chosen.
func (w *writer) either(key, value string, choices []string) {
	switch {
	case value != "":
		w.f("%s = %s\n", key, quoted(value))
	case len(choices) == 0:
		w.f("# %s = \"\"\n", key)
	}
	for _, c := range choices {
		w.f("# %s = %s\n", key, quoted(c))
	}
}

// table writes [cook] or [process], each line of notes once.
func (w *writer) table(name string) {
	w.f("\n[%s]\n", name)
	for _, l := range w.r.Lines {
		first := true
		for _, k := range l.Keys {
			key, ours := strings.CutPrefix(k.Path, name+".")
			if !ours {
				continue
			}
			if first {
				w.source(l)
				first = false
			}
			w.pair(key, k)
		}
	}
}

func (w *writer) fills() {
	for _, l := range w.r.Lines {
		for i, f := range l.Fills {
			w.f("\n")
			if i == 0 {
				w.source(l)
			}
			if f.Outdone {
				continue // stands above as a comment
			}
			w.f("[[fill]]\n")
			if f.Jar == "" {
				w.size(f.Said)
			} else {
				w.f("jar = %s\n", quoted(f.Jar))
			}
			w.count(f)
		}
	}
}

// size writes what was said of jars that are not in the table, to choose from.
func (w *writer) size(said string) {
	_, err := unit.ParseMass(said)
	switch {
	case said == "":
		w.f("# jar = \"8 fl oz\"\n")
	case err == nil:
		w.f("# jar = \"8 fl oz\"\n# declared = %s\n", quoted(said))
	default:
		w.f("# jar = %s\n", quoted(said))
	}
}

// count writes counted jars; what a recipe promises is no count.
func (w *writer) count(f Fill) {
	low, high := strconv.Itoa(int(f.Low)), strconv.Itoa(int(f.High))
	switch {
	case f.Planned && low != high:
		w.f("# count = 0             # the recipe says %s to %s\n", low, high)
	case f.Planned:
		w.f("# count = 0             # the recipe says %s\n", low)
	case f.High > f.Low:
		w.f("# count = %s\n# count = %s\n", low, high)
	default:
		w.f("count = %s\n", low)
	}
	if f.Sealed >= 0 {
		w.f("sealed = %d\n", f.Sealed)
	}
}

// unread writes the lines that gave no key.
func (w *writer) unread() {
	begun := false
	for _, l := range w.r.Lines {
		if l.Read() {
			continue
		}
		if !begun {
			w.f("\n# Not in the keys above:\n")
			begun = true
		}
		w.source(l)
	}
}

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}

// quoted writes a basic string of TOML v1.0.0.
func quoted(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case unicode.IsControl(r) || r == unicode.ReplacementChar:
			fmt.Fprintf(&b, `\u%04X`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}
