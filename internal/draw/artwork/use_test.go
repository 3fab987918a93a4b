package artwork

import (
	"fmt"
	"math"
	"strings"
	"testing"
)

// TestCopies: a copy looks as if its element stood in its place with what holds there
// (SVG 2, 5.5 and 5.6): each pair of bodies draws the same.
func TestCopies(t *testing.T) {
	const leaf = `<path id="leaf" d="M0 0h10v10z"/>`
	for name, pair := range map[string][2]string{
		"a place":          {leaf + `<use href="#leaf" x="20" y="30"/>`, leaf + `<path transform="translate(20 30)" d="M0 0h10v10z"/>`},
		"before it stands": {`<use href="#leaf" x="20"/>` + leaf, `<path transform="translate(20)" d="M0 0h10v10z"/>` + leaf},
		"of SVG 1.1":       {`<defs>` + leaf + `</defs><use xmlns:l="http://www.w3.org/1999/xlink" l:href="#leaf" x="5"/>`, `<path transform="translate(5)" d="M0 0h10v10z"/>`},
		"turned first":     {`<defs>` + leaf + `</defs><use transform="scale(2)" href="#leaf" x="5" y="4"/>`, `<path transform="translate(10 8) scale(2)" d="M0 0h10v10z"/>`},
		"its colour":       {`<defs>` + leaf + `</defs><use fill="#9b2226" stroke="teal" href="#leaf"/>`, `<path fill="#9b2226" stroke="teal" d="M0 0h10v10z"/>`},
		"its own colour":   {`<defs><path id="a" fill="red" d="M0 0h10v10z"/></defs><g fill="blue"><use href="#a"/></g>`, `<path fill="red" d="M0 0h10v10z"/>`},
		"not its parent's": {`<g fill="red" transform="scale(9)" display="none">` + leaf + `</g><use href="#leaf"/>`, `<path d="M0 0h10v10z"/>`},
		"a group":          {`<defs><g id="g" transform="rotate(9)">` + leaf + `<circle r="3"/></g></defs><use href="#g" x="50" y="50"/>`, `<g transform="translate(50 50) rotate(9)"><path d="M0 0h10v10z"/><circle r="3"/></g>`},
		"a copy of a copy": {`<defs>` + leaf + `<g id="two"><use href="#leaf"/><use href="#leaf" x="20"/></g></defs><use href="#two" y="40"/>`, `<path transform="translate(0 40)" d="M0 0h10v10z"/><path transform="translate(20 40)" d="M0 0h10v10z"/>`},
		"the first of two": {`<defs>` + leaf + `<circle id="leaf" r="5"/></defs><use href="#leaf"/>`, `<path d="M0 0h10v10z"/>`},
		"a symbol":         {`<symbol id="s" viewBox="0 0 10 10">` + leaf + `</symbol><use href="#s" x="10" y="20" width="40" height="40"/>`, `<path transform="translate(10 20) scale(4)" d="M0 0h10v10z"/>`},
		"a wide symbol":    {`<symbol id="s" viewBox="0 0 10 10">` + leaf + `</symbol><use href="#s" width="60" height="40"/>`, `<path transform="translate(10 0) scale(4)" d="M0 0h10v10z"/>`},
		"a whole symbol":   {`<symbol id="s" viewBox="0 0 10 10">` + leaf + `</symbol><use href="#s"/>`, `<path transform="scale(10)" d="M0 0h10v10z"/>`},
		"a plain symbol":   {`<symbol id="s" fill="red">` + leaf + `</symbol><use href="#s" x="7" width="auto" height="100%"/>`, `<path fill="red" transform="translate(7)" d="M0 0h10v10z"/>`},
		"overflowing":      {`<symbol id="s" overflow="visible" viewBox="0 0 5 5">` + leaf + `</symbol><use href="#s" width="5" height="5"/>`, `<path d="M0 0h10v10z"/>`},
		"a class":          {`<style>.a{fill:red}</style><defs><path id="a" class="a" d="M0 0h10v10z"/></defs><use href="#a"/>`, `<path fill="red" d="M0 0h10v10z"/>`},
		"unseen":           {leaf + `<use display="none" href="#leaf"/><defs><use href="#none"/></defs>`, leaf},
	} {
		got, found := Read(drawing(pair[0]))
		want, l := Read(drawing(pair[1]))
		if len(found)+len(l) > 0 || len(got.Paths) != len(want.Paths) {
			t.Errorf("%s: %v %v", name, found, l)
			continue
		}
		for i, p := range got.Paths {
			q := want.Paths[i]
			if *p.Fill != *q.Fill || (p.Stroke == nil) != (q.Stroke == nil) || p.Stroke != nil && *p.Stroke != *q.Stroke || p.Width != q.Width || fmt.Sprint(p.Ops) != fmt.Sprint(q.Ops) {
				t.Errorf("%s: path %d differs", name, i)
			}
			for k := range p.Pts {
				if d := math.Hypot(float64(p.Pts[k].X-q.Pts[k].X), float64(p.Pts[k].Y-q.Pts[k].Y)); d > 1000 { // a micrometre
					t.Errorf("%s: path %d, point %d is %v, want %v", name, i, k, p.Pts[k], q.Pts[k])
					break
				}
			}
		}
	}
}

// TestCopiesHaveBounds: a copy that leads nowhere, back to itself, or to millions is told
// with its place, and soon.
func TestCopiesHaveBounds(t *testing.T) {
	const ok = `<path id="p" d="M0 0h9v9z"/>`
	many := ok
	for i := range 7 {
		from := "p"
		if i > 0 {
			from = fmt.Sprint("m", i-1)
		}
		many += fmt.Sprintf(`<defs><g id="m%d">%s</g></defs>`, i, strings.Repeat(`<use href="#`+from+`"/>`, 10))
	}
	deep := ok
	for i := range 12 {
		from := "p"
		if i > 0 {
			from = fmt.Sprint("d", i-1)
		}
		deep += fmt.Sprintf(`<defs><g id="d%d"><use href="#%s"/></g></defs>`, i, from)
	}
	for body, want := range map[string]string{
		"\n<use href='#none'/>":            "2:1 <use> copies what is not in the drawing: #none",
		"\n<use/>":                         "2:1 <use> copies from another file",
		"\n<use href='logo.svg#p'/>":       "2:1 <use> copies from another file: logo.svg#p",
		"\n<use href='#p' x='5%'/>":        "2:1 <use> has a place or size that is not read",
		"\n<use href='#p' width='-1'/>":    "2:1 <use> has a place or size that is not read",
		"<g id='a'>\n<use href='#a'/></g>": "2:1 <use> copies itself: #a",
		"<g id='a'><use href='#b'/></g>\n<g id='b'><use href='#a'/></g>":                                         "1:",
		many + "\n<use href='#m6'/>":                                                                             "1:",
		deep + "\n<use href='#d11'/>":                                                                            "1:",
		"<text id='t' display='none'>\nx</text>\n<symbol id='s'><text/></symbol><use href='#s'/>":                "3:16 <text> cannot be drawn",
		"\n<symbol id='s' viewBox='0 0 5 5'><path d='M0 0h9v9z'/></symbol><use href='#s' width='5' height='5'/>": "2:1 <symbol> reaches out of its box",
		"\n<symbol id='s' viewBox='0 0'>" + ok + "</symbol><use href='#s'/>":                                     "2:1 <symbol> has a viewBox",
		"\n<symbol id='s' refX='3'>" + ok + "</symbol><use href='#s'/>":                                          "2:1 <symbol> has a refX",
		"<svg id='s'/>\n": "1:",
	} {
		d, found := Read(drawing(ok + body))
		if d != nil || len(found) == 0 {
			t.Errorf("%.60q: drawn", body)
			continue
		}
		if got := fmt.Sprintf("%d:%d %s", found[0].Line, found[0].Column, found[0].What); !strings.HasPrefix(got, want) || found[0].Hint == "" {
			t.Errorf("%.60q: %q, want %q", body, got, want)
		}
	}
}
