package table

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
)

// TestNoOrphans: after a page break a long list goes on under its own heading
// with at least two rows, and no heading stands alone at the foot of a page.
func TestNoOrphans(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	for n := 1; n < 60; n++ {
		c, _ := NewLayout(fs, "a4", "head")
		g := Group{Head: HeadBand("Group", ""), Cont: HeadBand("Group, continued", "")}
		for i := range n {
			g.Rows = append(g.Rows, plainBand(Part{}, Row{Amount: fmt.Sprintf("row %d", i), Tick: true}))
		}
		for i := range n % 9 {
			c.Put(plainBand(Part{}, Row{Amount: fmt.Sprintf("before %d", i)}))
		}
		c.Group(g)
		rows := 0
		for i, p := range c.Pages {
			on, heads := 0, 0
			for _, m := range p.Marks {
				if x, ok := m.(*page.Text); ok {
					if strings.HasPrefix(x.String(), "row ") {
						on++
					}
					if strings.HasPrefix(x.String(), "Group") {
						heads++
					}
				}
			}
			rows += on
			if heads > 0 && on == 0 || on > 0 && heads != 1 || on == 1 && n > 2 {
				t.Errorf("%d rows: page %d has %d rows, %d headings", n, i+1, on, heads)
			}
		}
		if rows != n {
			t.Errorf("%d of %d rows are printed", rows, n)
		}
	}
}

// Room for notes begins no page of its own, and stands where a page has room.
func TestRoomForNotes(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	noted := 0
	for n := 1; n < 60; n++ {
		pages := map[int]int{}
		for _, space := range []int{0, 4} {
			c, _ := NewLayout(fs, "a4", "head")
			l := &List{Title: "List", Space: space}
			p := Part{}
			for i := range n {
				p.Rows = append(p.Rows, Row{Amount: fmt.Sprintf("row %d", i), Tick: true})
			}
			l.Parts = []Part{p}
			l.Put(c)
			pages[space] = len(c.Pages)
			for _, m := range c.Pages[len(c.Pages)-1].Marks {
				if x, ok := m.(*page.Text); ok && x.String() == "Notes" {
					noted++
				}
			}
		}
		if pages[0] != pages[4] {
			t.Errorf("%d rows: %d pages, %d with notes", n, pages[0], pages[4])
		}
	}
	if noted < 45 || noted == 59 {
		t.Errorf("notes on %d of 59 lists", noted)
	}
}

// Names with letters the sheets' own face lacks stand whole in every line and
// within its room, whoever speaks them; "e" with two accents after it (Unicode,
// decomposed) is the same letter.
func TestNamesAreWhole(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := NewLayout(fs, "a4", "head")
	name := "Nguyễn Thị Ánh and Ellen, Dora and William of Wimbledon, "
	room := Pt(90)
	for _, l := range c.Wrap(PlainFace, Pt(11), room, strings.Repeat(name, 3)) {
		if w := c.Width(PlainFace, Pt(11), l); w > room {
			t.Errorf("%q is %.1f mm wide, of %.1f", l, w.MM(), room.MM())
		}
	}
	cut := c.Short(BoldFace, Pt(11), room, "Wimbledon William Nguyễn Ánh")
	if w := c.Width(BoldFace, Pt(11), cut); w > room || cut == "" {
		t.Errorf("%q is %.1f mm wide, of %.1f", cut, w.MM(), room.MM())
	}
	c.Text(PlainFace, Pt(11), 0, 0, Ink, "Nguye\u0302\u0303n")
	marks := c.Pages[0].Marks
	if said := marks[len(marks)-1].(*page.Text).String(); said != "Nguyễn" {
		t.Errorf("%q", said)
	}
	if _, found := c.Finish("", ""); len(found) > 0 {
		t.Errorf("%v", found)
	}
}

// A last page with a few rows is taken in by setting the parts small; what is
// filled in by hand keeps its room, and a well filled last page stays.
func TestLastPageNotNearlyEmpty(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		rows, pages int
		under       string
	}{{20, 1, ""}, {30, 1, ""}, {42, 2, ""}, {18, 2, "to fill in by hand"}} {
		p := Part{Title: "Part"}
		for i := range c.rows {
			p.Rows = append(p.Rows, Row{Tick: true, Amount: "1 × 8 fl oz", What: fmt.Sprintf("jam %d", i), Under: c.under})
		}
		d, found := (&List{Title: "List", Parts: []Part{p}}).Doc(fs, "letter")
		if len(d.Pages) != c.pages || len(found) > 0 {
			t.Errorf("%d rows %q: %d pages, want %d; %v", c.rows, c.under, len(d.Pages), c.pages, found)
		}
	}
}
