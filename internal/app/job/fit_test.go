package job

import (
	"fmt"
	"strings"
	"testing"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// TestCodeGivesWayToWords: where there is no room the code goes before any statement
// does. One that only repeats what the label says, because there is no website, goes
// with a note, one that opens a page with a warning that tells which pieces bear it.
func TestCodeGivesWayToWords(t *testing.T) {
	e, _, err := NewEnv(nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, u := range []struct {
		kitchen string
		as      diag.Severity
	}{{sampleKitchen, diag.Note}, {"record_url = \"https://plum.example/jam\"\n" + sampleKitchen, diag.Warning}} {
		in := Input{Kitchen: Doc{"kitchen.toml", []byte(u.kitchen)}, Batch: SampleDoc()}
		dropped, kept := 0, 0
		for h := 20; h <= 60; h += 2 {
			c := Choices{Pieces: []label.Piece{label.InfoLabel}, Sheet: "letter-plain", Size: fmt.Sprintf("60 x %d mm", h)}
			b := e.Load(in, c)
			runs, found := e.Labels(b, c)
			if len(runs) == 0 {
				continue
			}
			frame := runs[0].Doc.Pages[0].Places[0].Frame
			switch told := hasCode(found, "no-room-for-code"); {
			case told && codes(frame) == 0:
				dropped++
			case !told && codes(frame) == 1:
				kept++
			default:
				t.Errorf("%d mm: told %v with %d codes", h, told, codes(frame))
			}
			for _, d := range found {
				if d.Code == "no-room-for-code" && (d.Severity != u.as || u.as == diag.Warning && !strings.Contains(d.Hint, "case labels")) {
					t.Errorf("%d mm: %s: %s, hint %s", h, d.Severity, d.Message, d.Hint)
				}
			}
			if !strings.Contains(words(frame), "Plums") {
				t.Errorf("%d mm: the ingredients are gone", h)
			}
		}
		if dropped == 0 || kept == 0 {
			t.Errorf("as %s: dropped %d, kept %d: want some of both", u.as, dropped, kept)
		}
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
