package pack

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/png"
	"jarmark/internal/kit/unit"
)

func faces(t *testing.T) *face.Set {
	t.Helper()
	fs, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return fs
}

// TestWritePreview keeps pages to look at when JARMARK_PREVIEW names a folder.
func TestWritePreview(t *testing.T) {
	dir := os.Getenv("JARMARK_PREVIEW")
	if dir == "" {
		t.Skip("JARMARK_PREVIEW is not set")
	}
	fs := faces(t)
	p, _ := Build(both(), Options{})
	h, _ := Trace("L26265-PL", both(), Options{})
	plan, l := p.Doc(fs, "")
	fmt.Println(l)
	recall, l := h.RecallDoc(fs, "a4")
	fmt.Println(l)
	var items []Product
	for _, r := range both() {
		items = append(items, Product{Result: r})
	}
	stall, l := AllergenDoc(Allergens(items, "Millbrook market"), p.Maker, unit.US, fs, "")
	fmt.Println(l)
	for name, d := range map[string]*page.Doc{"plan": plan, "recall": recall, "stall": stall} {
		for i := range d.Pages {
			img, err := png.Page(d, i, fs, 70)
			if err != nil {
				t.Fatal(err)
			}
			f, _ := os.Create(filepath.Join(dir, fmt.Sprintf("%s-%d.png", name, i+1)))
			png.Encode(f, img, 80)
			f.Close()
		}
	}
}
