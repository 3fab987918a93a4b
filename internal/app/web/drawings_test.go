package web

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/internal/law/label"
)

// rebuilt is what drawing.js makes of an answer: the lines of the base, by runs,
// and the new ones.
func rebuilt(t testing.TB, base []string, parts []any) (out []string) {
	t.Helper()
	for _, p := range parts {
		switch p := p.(type) {
		case string:
			out = append(out, p)
		case [2]int:
			out = append(out, base[p[0]:p[0]+p[1]]...)
		case []any: // as JSON gives it
			from, n := int(p[0].(float64)), int(p[1].(float64))
			out = append(out, base[from:from+n]...)
		default:
			t.Fatalf("%T in an answer", p)
		}
	}
	return out
}

// Whatever two drawings hold, lines twice and in any order too, the second is
// made of what is sent, and no line of the first is sent again.
func TestSinceTellsEveryLine(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		list := rapid.SliceOf(rapid.SampledFrom(strings.Split("abcdefgh", "")))
		base, lines := list.Draw(r, "base"), list.Draw(r, "lines")
		parts := since(base, lines)
		if got := rebuilt(t, base, parts); !slices.Equal(got, lines) {
			r.Fatalf("%q of %q came as %q", lines, base, got)
		}
		for _, p := range parts {
			if s, fresh := p.(string); fresh && slices.Contains(base, s) {
				r.Fatalf("%q is sent, and was there", s)
			}
		}
	})
}

// Of a drawing that follows one the browser holds, a small part is sent, from
// which the same drawing is made, for every piece; without one, or when the
// program was started anew, all of it.
func TestOnlyWhatChangedIsSent(t *testing.T) {
	dir := kitchenDir(t)
	h := handlerOf(t, dir)
	ask := lookAsk{File: "plum.toml", Text: plum}
	for _, p := range label.Pieces {
		ask.Pieces = append(ask.Pieces, string(p))
	}
	look := func(name string, have ...string) []picture {
		ask.Changes, ask.Have = []change{{Do: "set", Path: "name", Value: name}}, have
		return call[lookAnswer](t, h, "/do/look", ask, 200).Labels
	}
	held := map[string][]string{}
	var have []string
	for _, p := range look("Plum jam") {
		if !strings.HasPrefix(p.SVG, "<svg") || p.Lines != nil {
			t.Fatalf("%s: the first is not sent whole", p.Piece)
		}
		held[p.Mark], have = strings.Split(strings.TrimSpace(p.SVG), "\n"), append(have, p.Mark)
	}
	sent, all := 0, 0
	for i, p := range look("Plum jam x", have...) {
		want := look("Plum jam x")[i]
		got := strings.Join(rebuilt(t, held[p.Base], p.Lines), "\n") + "\n"
		if p.SVG != "" || held[p.Base] == nil || got != want.SVG || p.Mark != want.Mark {
			t.Errorf("%s is not made of what was sent, from %q", p.Piece, p.Base)
		}
		sent, all = sent+len(fmt.Sprint(p.Lines...)), all+len(want.SVG)
	}
	if sent > all*2/3 {
		t.Errorf("%d of %d bytes are sent", sent, all)
	}
	for i, p := range look("Plum jam", have...) {
		if p.Mark != have[i] || p.SVG != "" || p.Lines != nil {
			t.Errorf("%s is sent, and was there", p.Piece)
		}
	}
	h = handlerOf(t, dir)
	for _, p := range look("Plum jam y", have...) {
		if !strings.HasPrefix(p.SVG, "<svg") {
			t.Errorf("%s: a new program answers by what an old one sent", p.Piece)
		}
	}
}

// What is remembered is bounded.
func TestDrawingsAreForgotten(t *testing.T) {
	var d drawings
	svg := []byte(strings.Repeat("<p/>\n", 20_000))
	for i := range 200 {
		p := picture{Piece: "lid", Mark: fmt.Sprint(i)}
		d.send(&p, svg, []string{fmt.Sprint(i - 1)})
		if (i == 0) != (p.SVG != "") {
			t.Fatalf("%d: sent whole: %v", i, p.SVG != "")
		}
	}
	if d.bytes > maxDrawings || len(d.held) != len(d.marks) || len(d.held) != maxDrawings/len(svg) {
		t.Errorf("%d bytes in %d drawings", d.bytes, len(d.held))
	}
	old := picture{Piece: "lid", Mark: "new"}
	if d.send(&old, svg, []string{"0"}); old.SVG == "" {
		t.Error("told by what is forgotten")
	}
}
