package table

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/marktest"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// every is a list with all kinds of rows and parts, short and too long, in more
// than a page. The jams and people are our own invention.
func every() *List {
	long := strings.Repeat("a long name of a jam ", 8)
	bars := func(v ...float64) []Bar { return []Bar{{Name: "Jun\n2026", Parts: v, Note: "9"}} }
	rows := []Row{
		{Tick: true, Amount: "2 × 8 fl oz", What: "plum", Note: "shelf"}, {Amount: "3", What: long, Note: "note"}, {Type: Say, What: long}, {Type: Say, What: "strong", Strong: true}, {Type: Aside, What: "aside"}, {Type: Alarm, What: "alarm"}, {Type: Crate, What: "box 1", Under: long, Note: "12 jars"},
		{Type: Step, What: long}, {Type: Write, What: "by hand", Lines: 2}, {Type: Write, What: "one line", Lines: 1}, {Tick: true, Count: "12", Size: "8 fl oz", What: "tall", Under: "under", Fields: []string{"came home"}}, {What: long, Under: long, Fields: []string{"taken", "came home", "a long name of a field"}},
	}
	small := append([]Row(nil), rows...)
	figures := []Row{{What: "plum", Figures: []string{"12", "$3.50"}, Bars: bars(3, 0, 2, 1)}, {What: long, Figures: []string{"7", "123456789012345678901234567890", "over"}, Bars: bars(9)}, {What: "all", Figures: []string{"19", "–"}, Strong: true}}
	l := &List{Head: "List, head", Title: "List", Maker: "Fernhollow Kitchen", Sum: "20 jars", Space: 4, Parts: []Part{
		{Rows: []Row{{Type: Towers, Group: 2, Legend: []string{"sold", "given", "lost", "made"}, Bars: append(bars(0, 0, 0, 9), Bar{Parts: []float64{2, 3, 1}, Note: "6"}, Bar{Name: "Jul\n2026", Parts: []float64{-1, 0, 4}}, Bar{Parts: []float64{5}})}}},
		{Title: "All kinds", Sum: "12 jars", Rows: rows}, {Title: "Small", Sum: "12 jars", Compact: true, Rows: small}, {Title: "Figures", Columns: []string{"jam", "made", "takings"}, Barred: true, Compact: true, Legend: []string{"sold", "given"}, Rows: figures},
		{Title: "Large figures", Columns: []string{"jam", "made", "takings"}, Rows: figures}, {Title: "Beside, with a title of several lines", Sum: "2 jars", Beside: true, Rows: rows}, {Title: "Empty"}, {Title: "Hidden", Not: OnPaper, Rows: rows}, {Rows: []Row{{Type: Aside, What: "words between"}}},
		{Title: "Towers alone", Rows: []Row{{Type: Towers, Bars: bars(1, 2)}}},
	}}
	for i := range 30 {
		l.Parts[1].Rows = append(l.Parts[1].Rows, Row{Tick: true, Amount: fmt.Sprint(i), What: "row"})
	}
	return l
}

// Where each mark of a list stands, as it was looked at and found right; titles
// too long, headings over a page's end and a list that is set small with them.
func TestWhereEachMarkStands(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	few := &List{Title: strings.Repeat("A title of some length ", 4), Head: "few", Parts: []Part{{Title: "Part"}}}
	for i := range 30 {
		few.Parts[0].Rows = append(few.Parts[0].Rows, Row{Tick: true, Amount: "1 × 8 fl oz", What: fmt.Sprintf("jam %d", i)})
	}
	for _, l := range []*List{every(), few, {Title: "Sum alone", Sum: "3 jars", Space: 40}, {Title: "Maker alone", Maker: "Fernhollow Kitchen", Space: 1}} {
		for _, paper := range []string{"letter", "a4"} {
			d, found := l.Doc(fs, paper)
			if len(found) > 0 {
				t.Error(found)
			}
			all.WriteString(marktest.Drawn(d))
		}
	}
	marktest.Same(t, "testdata/sheet.txt", all.String())
}

// All that stands on a sheet stands within its margins, and no words on others.
func TestMarksStandApart(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	d, _ := every().Doc(fs, "a4")
	for i, p := range d.Pages {
		var before []*page.Text
		for _, m := range p.Marks {
			x, ok := m.(*page.Text)
			if !ok {
				continue
			}
			if x.Box.X < Margin-unit.Micrometre || x.Box.X+x.Box.W > p.W-Margin+unit.Millimetre || x.Box.Y+x.Box.H > p.H-Margin/2 {
				t.Errorf("page %d: %q leaves the paper", i+1, x)
			}
			for _, y := range before {
				if wide, high := min(x.Box.X+x.Box.W, y.Box.X+y.Box.W)-max(x.Box.X, y.Box.X), min(x.At.Y, y.At.Y)-max(x.At.Y-x.Size/2, y.At.Y-y.Size/2); wide > unit.Millimetre/10 && high > 0 {
					t.Errorf("page %d: %q stands on %q", i+1, x, y)
				}
			}
			before = append(before, x)
		}
	}
}
