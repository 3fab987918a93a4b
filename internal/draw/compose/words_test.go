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

// A size found for a letter height must give that height and no more than
// one unit of rounding less size may not.
func TestSizeForLetterHeight(t *testing.T) {
	f := testVoice(t).regular
	for _, on := range []label.Measure{label.XHeight, label.LowerO, label.Capital, label.Digit, label.AnyCase} {
		for _, text := range []string{"Net Wt 8 oz", "NET WT 8 OZ"} {
			h := label.Height{On: on, Length: unit.Inch / 16}
			size := sizeFor(h, text, f)
			n := letter(on, text, f)
			if at(n, size) < h.Length-unit.Micrometre || at(n, size-2*unit.Micrometre) >= h.Length {
				t.Errorf("measure %d %q: size %v gives %v", on, text, size, at(n, size))
			}
		}
	}
	// 21 CFR 101.7(h)(2): with no lower-case letter the capitals count.
	if letter(label.AnyCase, "NET WT", f) <= letter(label.AnyCase, "Net Wt", f) {
		t.Error("capitals are not measured as capitals")
	}
}
