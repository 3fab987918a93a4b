package job

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// TestCodeGivesWayToWords: without a website the code only repeats what the
// label says, so where there is no room it goes before any statement does; a
// code that opens a page stays or is an error.
func TestCodeGivesWayToWords(t *testing.T) {
	e, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	in := Input{Kitchen: Doc{"kitchen.toml", []byte(sampleKitchen)}, Batch: SampleDoc()}
	dropped, kept := 0, 0
	for h := 20; h <= 60; h += 4 {
		c := Choices{Pieces: []label.Piece{label.InfoLabel}, Sheet: "letter-plain", Size: fmt.Sprintf("60 x %d mm", h)}
		b := e.Load(in, c)
		runs, found := e.Labels(b, c)
		if len(runs) == 0 {
			continue
		}
		frame := runs[0].Doc.Pages[0].Places[0].Frame
		switch note := hasCode(found, "no-room-for-code"); {
		case note && codes(frame) == 0:
			dropped++
		case !note && codes(frame) == 1:
			kept++
		default:
			t.Errorf("%d mm: note %v with %d codes", h, note, codes(frame))
		}
		if !strings.Contains(words(frame), "Plums") {
			t.Errorf("%d mm: the ingredients are gone", h)
		}
	}
	if dropped == 0 || kept == 0 {
		t.Errorf("dropped %d, kept %d: want some of both", dropped, kept)
	}
}

func hasCode(l diag.List, code string) bool {
	for _, d := range l {
		if d.Code == code {
			return true
		}
	}
	return false
}

func codes(f *page.Frame) (n int) {
	for _, it := range f.Items {
		if _, ok := it.(*page.Code); ok {
			n++
		}
	}
	return n
}

func words(f *page.Frame) string {
	var b strings.Builder
	for _, it := range f.Items {
		if t, ok := it.(*page.Text); ok {
			b.WriteString(t.String() + " ")
		}
	}
	return b.String()
}
