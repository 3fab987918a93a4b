package compose

import (
	"testing"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// A size found for a letter height gives that height with the print reserve in
// every typeface, the letter measured on its own drawing, and hardly more.
func TestSizeForLetterHeight(t *testing.T) {
	set, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	letters := map[label.Measure]string{label.XHeight: "x", label.LowerO: "o", label.Capital: "H", label.Digit: "0123456789"}
	for _, name := range set.Names() {
		f := set.Face(name)
		for on, letter := range letters {
			h := label.Height{On: on, Length: unit.Inch / 16}
			high := 1.0
			for _, r := range letter {
				over, under := 0.0, 0.0
				for _, p := range f.Outline(r).Pts {
					over, under = max(over, -p.Y), max(under, p.Y)
				}
				if on == label.XHeight || on == label.Capital {
					under = 0
				}
				high = min(high, over+under)
			}
			got, want := high*float64(sizeFor(h, "", f)), float64(h.Length)*1.03
			if got < want*0.998 || got > want*1.04 {
				t.Errorf("%s: %s is %.0f nm high, want %.0f", name, letter, got, want)
			}
		}
	}
	// 21 CFR 101.7(h)(2): with no lower-case letter the capitals count.
	f := set.Face("Figtree_400Regular")
	if letter(label.AnyCase, "NET WT", f) <= letter(label.AnyCase, "Net Wt", f) {
		t.Error("capitals are not measured as capitals")
	}
}
