package table

import (
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
)

// readOut is a document as a screen reader has it: each part with its role, words in the
// order they come on the pages.
func readOut(d *page.Doc) string {
	words := make([]string, len(d.Tags)+1)
	for _, p := range d.Pages {
		for _, m := range p.Marks {
			if t, ok := m.(*page.Text); ok {
				words[t.Tag] += t.String() + "|"
			}
		}
	}
	var b strings.Builder
	var say func(n int32)
	say = func(n int32) {
		for i, t := range d.Tags {
			if t.Parent == n {
				b.WriteString(t.Role + "(" + words[i+1])
				say(int32(i + 1))
				b.WriteString(")")
			}
		}
	}
	say(0)
	return b.String()
}

// TestListsSayWhatIsWhat: titles are headings, rows of figures a table under its column
// heads, rows to tick a list, and a row is read from the left; the head and the number of
// a page belong to none.
func TestListsSayWhatIsWhat(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	l := &List{Title: "Packing list", Sum: "3 jars", Head: "list", Parts: []Part{
		{Title: "Ottilie", Sum: "2 jars", Rows: []Row{
			{Tick: true, Amount: "2", What: "Plum jam", Note: "L1"}, {Tick: true, Amount: "1", What: "Curd", Note: "L2"},
			{Type: Say, What: "with love"}, {Tick: true, Amount: "1", What: "Box"}}},
		{Title: "Season", Columns: []string{"jam", "jars"}, Rows: []Row{{What: "Plum", Figures: []string{"12"}}}},
	}}
	d, found := l.Doc(fs, "a4")
	if len(found) > 0 {
		t.Fatal(found)
	}
	want := "H1(Packing list|)P(3 jars|)H2(Ottilie|2 jars|)" +
		"L(LI(LBody(2|Plum jam|L1|))LI(LBody(1|Curd|L2|)))P(with love|)L(LI(LBody(1|Box|)))" +
		"H2(Season|)Table(TR(TH(jam|)TH(jars|))TR(TD(Plum|)TD(12|)))"
	if got := readOut(d); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
}

// TestRepeatedHeadsAreSaidOnce: what a second page repeats is not read out again, and
// small parts beside their names are read name first.
func TestRepeatedHeadsAreSaidOnce(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	l := &List{Title: "Packing list", Head: "repeated head", Parts: []Part{{Title: "All"}, {Title: "Bram", Sum: "1 jar", Beside: true,
		Rows: []Row{{Tick: true, Amount: "1", What: "Plum jam", Note: "L1"}, {Type: Alarm, What: "nuts"}}}}}
	for range 60 {
		l.Parts[0].Rows = append(l.Parts[0].Rows, Row{Tick: true, Under: "below", Amount: "1", What: "jam", Count: "1", Size: "8 fl oz"})
	}
	d, _ := l.Doc(fs, "a4")
	got := readOut(d)
	if len(d.Pages) < 2 || strings.Contains(got, "repeated") || strings.Contains(got, "All,") || strings.Count(got, "H2(All|)") != 1 || strings.Count(got, "LI(") != 61 {
		t.Errorf("%d pages: %s", len(d.Pages), got)
	}
	if want := "H2(Bram|1 jar|)L(LI(LBody(1  |Plum jam|L1|)))P(nuts|)"; !strings.HasSuffix(got, want) {
		t.Errorf("%s\nshould end\n%s", got[max(0, len(got)-200):], want)
	}
}
