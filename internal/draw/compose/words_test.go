package compose

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

func testVoice(t testing.TB) voice {
	t.Helper()
	s, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return voice{regular: s.Face("Figtree_400Regular"), bold: s.Face("Figtree_700Bold"), leading: 1.4, kernMin: 4}
}

func TestParagraphKeepsEveryWord(t *testing.T) {
	v := testVoice(t)
	rapid.Check(t, func(t *rapid.T) {
		v.track = rapid.SampledFrom([]int{0, 120}).Draw(t, "track")
		var runs []label.Run
		for range rapid.IntRange(1, 5).Draw(t, "runs") {
			runs = append(runs, label.Run{
				Text: rapid.StringMatching(`[a-z0-9,.()/ \-]{0,30}`).Draw(t, "text"),
				Bold: rapid.Bool().Draw(t, "bold"),
			})
		}
		p := newPara(v, said{"x", runs, rapid.Bool().Draw(t, "exact")})
		size := unit.Points(9)
		ends, ok := breakLines(p.boxes(), func(int) int { return 40000 }, running, 0)
		if !ok {
			t.Fatal("does not fit an endless line")
		}
		got, from := "", 0
		for _, to := range ends {
			for _, it := range p.setLine(from, to, size, page.Point{}) {
				got += it.(*page.Text).String()
			}
			from = to
		}
		want := strings.Join(strings.Fields(plain(runs)), "")
		if strings.ReplaceAll(got, " ", "") != want {
			t.Fatalf("set %q, want %q", got, want)
		}
	})
}

// Segments must stand where plain advances plus kerning put them, so that a
// renderer that knows nothing of kerning draws the line as wide as measured.
func TestSegmentsAddUpToTheLine(t *testing.T) {
	v := testVoice(t)
	for _, text := range []string{"To Wa. AV fjord", "plum", "Yes, TAVY"} {
		size := unit.Points(30)
		segs, w := v.segs(false, text, size)
		last := segs[len(segs)-1]
		end := last.X + v.regular.Width(last.S, size)
		if d := end - at(w, size); d > unit.Micrometre || d < -unit.Micrometre {
			t.Errorf("%q ends at %v, measured %v", text, end, at(w, size))
		}
		if w != v.width(false, text) {
			t.Errorf("%q: %d while setting, %d while measuring", text, w, v.width(false, text))
		}
	}
}

func TestNumbersKeepTheirUnits(t *testing.T) {
	v := testVoice(t)
	for text, words := range map[string]int{
		"net 10 oz of it": 4, "45 g fruit": 2, "14 Thornfield Lane": 2, "about 30 minutes": 2, "room 1234567 shed": 3,
	} {
		if p := newPara(v, said{"", []label.Run{{Text: text}}, false}); len(p.words) != words {
			t.Errorf("%q: %d boxes, want %d", text, len(p.words), words)
		}
	}
}

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
	f := testVoice(t).regular
	if letter(label.AnyCase, "NET WT", f) <= letter(label.AnyCase, "Net Wt", f) {
		t.Error("capitals are not measured as capitals")
	}
}
