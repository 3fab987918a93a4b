package pack

import (
	"jarmark/internal/give/table"

	"bytes"
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/presstest"
	"jarmark/internal/kit/unit"
	"jarmark/internal/kitchen/cook"
)

// inspect checks what any sheet to carry must keep: nothing outside the
// paper, no two lines of text over one another, numbered pages.
func inspectPages(t *testing.T, name string, d *page.Doc) {
	t.Helper()
	for i, p := range d.Pages {
		var texts []*page.Text
		for _, m := range p.Marks {
			if x, ok := m.(*page.Text); ok {
				texts = append(texts, x)
			}
		}
		for k, a := range texts {
			if a.Box.X < 10*unit.Millimetre || a.Box.X+a.Box.W > p.W-10*unit.Millimetre || a.Box.Y < 0 || a.Box.Y+a.Box.H > p.H-8*unit.Millimetre {
				t.Errorf("%s, page %d: %q is at the edge of the paper", name, i+1, a)
			}
			if a.Size < table.Pt(8.5) {
				t.Errorf("%s: %q is set in %.1f pt", name, a, a.Size.Points())
			}
			for _, b := range texts[:k] {
				if overlap(a, b) {
					t.Errorf("%s, page %d: %q and %q overlap", name, i+1, a, b)
				}
			}
		}
		if last := texts[len(texts)-1].String(); last != fmt.Sprintf("%d / %d", i+1, len(d.Pages)) {
			t.Errorf("%s: page %d is numbered %q", name, i+1, last)
		}
	}
}

// overlap compares the letters' own heights, about 0.72 em above and 0.2 em
// below the baseline.
func overlap(a, b *page.Text) bool {
	top := func(t *page.Text) unit.Length { return t.At.Y - t.Size*72/100 }
	low := func(t *page.Text) unit.Length { return t.At.Y + t.Size/5 }
	return a.Box.X < b.Box.X+b.Box.W && b.Box.X < a.Box.X+a.Box.W && top(a) < low(b) && top(b) < low(a)
}

func TestDocs(t *testing.T) {
	fs := faces(t)
	rs := both()
	var list []Entry
	for i := range 90 {
		list = append(list, Entry{To: fmt.Sprintf("Friend %d %s", i, strings.Repeat("of a very long name ", i%7)), From: "Nell", Message: strings.Repeat("many words ", i%30), Jars: 1 + i%3})
	}
	rs[0].Jars[0].Count, rs[0].Jars[0].Sealed = 400, 390
	long, found := Build(rs, Options{List: list})
	if found.HasErrors() {
		t.Fatal(found)
	}
	h, _ := Trace("L26265-PL", rs, Options{List: list})
	var items []StallItem
	for range 40 {
		items = append(items, StallItem{Name: strings.Repeat("Plum ", 12), Lot: "L26265-PL", Advisory: strings.Repeat("almonds ", 30), Ingredients: strings.Repeat("plums ", 200)})
	}
	short, _ := Build(both(), Options{})
	for _, paper := range []string{"a4", "letter"} {
		for name, d := range map[string]*page.Doc{"long": doc(long.Doc(fs, paper)), "short": doc(short.Doc(fs, paper)), "recall": doc(h.RecallDoc(fs, paper)),
			"stall": doc(AllergenDoc(items, "Thornfield Lane Preserves", "us", fs, paper))} {
			inspectPages(t, paper+" "+name, d)
			var buf bytes.Buffer
			if err := pdf.Write(&buf, d, fs); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	if d := doc(long.Doc(fs, "a4")); len(d.Pages) < 8 {
		t.Errorf("%d pages", len(d.Pages))
	}
}

func doc(d *page.Doc, _ any) *page.Doc { return d }

// TestRead reads the printed list back with PDFium: names, lots and counts are
// text a person can search, and the boxes to tick are drawn.
func TestRead(t *testing.T) {
	fs := faces(t)
	rs := both()
	rs[0].Batch.Gifts[0].To = "Žofie 🍓 Ng"
	rs[0].Keeping.Class = cook.Cold
	p, _ := Build(rs, Options{})
	d, found := p.Doc(fs, "")
	if !has(found, "unprintable-letter", "🍓") || len(found) != 1 {
		t.Error(found)
	}
	var buf bytes.Buffer
	if err := pdf.Write(&buf, d, fs); err != nil {
		t.Fatal(err)
	}
	f := presstest.Open(t, buf.Bytes())
	flat := printed(f)
	for _, w := range []string{"Žofie Ng", "Jo & Sam", "Millbrook market, 5 Dec 2026", "L26265-PL", "best before 22 Sep 2027", "keep cold on the way", "came home", "did not seal", "hang tags", "1 / 2", "Notes"} {
		if !strings.Contains(flat, w) {
			t.Errorf("the printed list lacks %q", w)
		}
	}
	if w, _ := f.Size(0); w < unit.Inch*17/2-unit.Millimetre || w > unit.Inch*17/2+unit.Millimetre {
		t.Errorf("a US kitchen prints on Letter, not %v mm", w.MM())
	}
}
