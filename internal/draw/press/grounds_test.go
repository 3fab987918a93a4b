package press

import (
	"bytes"
	"fmt"
	"testing"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// TestGroundsAreHeldOnce: tags whose words alone differ share one frame; other
// paper, another drawing or another size does not, and nothing is lost.
func TestGroundsAreHeldOnce(t *testing.T) {
	wreath, other := &page.Path{Ops: []page.Op{page.MoveTo}, Pts: []page.Point{{X: 1}}}, &page.Path{Ops: []page.Op{page.MoveTo}, Pts: []page.Point{{X: 1}}}
	wreath.Seal()
	other.Seal()
	tag := func(w unit.Length, shade uint8, drawn *page.Path, words string) *page.Frame {
		return &page.Frame{W: w, H: 9, Name: "plum", Items: []page.Item{
			&page.Path{Ops: []page.Op{page.MoveTo}, Pts: []page.Point{{X: w}}, Fill: &page.Colour{R: shade}},
			drawn, &page.Text{Segs: []page.Seg{{S: words}}}, &page.Path{Block: "line"}}}
	}
	var g grounds
	first := g.share(tag(5, 1, wreath, "Ann"))
	if got := g.share(tag(5, 1, wreath, "Bea")); got.Frame != first.Frame || len(got.Overlay) != 2 || got.Overlay[0].(*page.Text).String() != "Bea" {
		t.Errorf("Bea's tag is %v", got)
	}
	if len(first.Frame.Items) != 2 || first.Overlay[0].(*page.Text).String() != "Ann" {
		t.Errorf("Ann's tag is %v", first)
	}
	for what, fr := range map[string]*page.Frame{"size": tag(6, 1, wreath, "Ann"), "paper": tag(5, 2, wreath, "Ann"), "drawing": tag(5, 1, other, "Ann")} {
		if got := g.share(fr); got.Frame == first.Frame {
			t.Errorf("a tag of another %s shares the frame", what)
		}
	}
}

// TestLongRunsArePartedEvenly: every page is in one file, in order.
func TestLongRunsArePartedEvenly(t *testing.T) {
	p := &Press{Faces: new(face.Set)}
	for pages, want := range map[int][]int{1: {1}, 4: {4}, 5: {2, 3}, 9: {3, 3, 3}} {
		d := &page.Doc{Created: 1}
		for range pages {
			d.Pages = append(d.Pages, page.Page{W: 100 * unit.Millimetre, H: 100 * unit.Millimetre})
		}
		files, err := p.pdfs(d, "tags", 4)
		if err != nil || len(files) != len(want) {
			t.Fatalf("%d pages: %d files, %v", pages, len(files), err)
		}
		for i, f := range files {
			if got := bytes.Count(f.Data, []byte("/Type /Page\n")); got != want[i] {
				t.Errorf("%d pages: %d of them in %s, want %d", pages, got, f.Name, want[i])
			}
		}
		if name := files[len(files)-1].Name; len(want) > 1 && name != fmt.Sprintf("tags-%d.pdf", len(want)) {
			t.Errorf("the last file is %s", name)
		}
	}
}
