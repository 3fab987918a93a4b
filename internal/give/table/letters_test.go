package table

import (
	"strings"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Letters that no face draws are printed as question marks and told once, eight of
// them at most; a text that is known to hold such is replaced by what tells its row.
func TestLettersNoFaceDraws(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		text, printed, told string
		hard                []Told
	}{
		{"plum jam", "plum jam", "", nil}, {"for 李 and 李", "for ? and ?", `has no "李"`, nil}, {"李小龍", "???", `has no "李小龍"`, nil}, {"一二三四五六七八九十", "??????????", `has no "一二三四五六七八"`, nil},
		{"for 李小龍", "for row 4", "“李小龍”", []Told{{Text: "李小龍", Instead: "row 4"}}}, {"for 李", "for ?", `has no "李"`, []Told{{Text: "李小龍", Instead: "row 4"}}},
		{"Béla 🍓", "Béla", "“Béla 🍓”", []Told{{Text: "Béla 🍓", Instead: "row 5"}}}, {"Мария 🍓", "row 6", "“Мария 🍓”", []Told{{Text: "Мария 🍓", Instead: "row 6"}}},
	} {
		c, _ := NewLayout(fs, "a4", "head")
		c.knowing(x.hard)
		c.Text(PlainFace, Pt(11), Margin, Margin, Ink, x.text)
		c.Text(PlainFace, Pt(11), Margin, Margin, Ink, x.text)
		d, found := c.Finish("x", "y")
		var got []string
		for _, m := range d.Pages[0].Marks {
			if text, ok := m.(*page.Text); ok {
				line := ""
				for _, seg := range text.Segs {
					line += seg.S
				}
				got = append(got, line)
			}
		}
		if len(got) < 2 || got[0] != x.printed || got[1] != x.printed {
			t.Errorf("%q is printed as %q", x.text, got)
		}
		if x.told == "" != (len(found) == 0) || len(found) > 1 || len(found) == 1 && (found[0].Code != "unprintable-letter" || !strings.Contains(found[0].Message, x.told)) {
			t.Errorf("%q: %v", x.text, found)
		}
	}
}

// A text ends where its letters end, one of nothing where it begins; a line cut to its
// own width is whole, and wrapped lines fit their room.
func TestWidthsOfText(t *testing.T) {
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := NewLayout(fs, "a4", "head")
	for _, s := range []string{"plum jam", " ", ""} {
		want := Margin
		if s == "plum jam" {
			want += c.Width(PlainFace, Pt(11), s)
		}
		if got := c.Text(PlainFace, Pt(11), Margin, Margin, Ink, s); got != want {
			t.Errorf("%q ends at %v, want %v", s, got.MM(), want.MM())
		}
	}
	for _, s := range []string{"plum jam for a long winter", "Мария and a long winter", "李小龍 and a long winter"} {
		w := c.Width(PlainFace, Pt(11), s)
		if got := c.Short(PlainFace, Pt(11), w, s); c.Width(PlainFace, Pt(11), got) != w {
			t.Errorf("%q is cut to %q in a room of its own width", s, got)
		}
		for _, room := range []unit.Length{w, w / 2, w / 3, 20 * unit.Millimetre} {
			if cut := c.Short(PlainFace, Pt(11), room, s); c.Width(PlainFace, Pt(11), cut) > room {
				t.Errorf("%q is too wide for %.1f mm", cut, room.MM())
			}
			for _, l := range c.Wrap(PlainFace, Pt(11), room, s) {
				if c.Width(PlainFace, Pt(11), l) > room {
					t.Errorf("%q is too wide for %.1f mm", l, room.MM())
				}
			}
		}
	}
}
