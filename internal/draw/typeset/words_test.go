package typeset

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	_ "jarmark/internal/kit/steady"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

func testVoice(t testing.TB) Voice {
	t.Helper()
	s, err := face.Load(fonts.FS)
	if err != nil {
		t.Fatal(err)
	}
	return Voice{Regular: s.Face("Figtree_400Regular"), Bold: s.Face("Figtree_700Bold"), Leading: 1.4, KernMin: 4}
}

func TestParagraphKeepsEveryWord(t *testing.T) {
	v := testVoice(t)
	rapid.Check(t, func(t *rapid.T) {
		v.Track = rapid.SampledFrom([]int{0, 120}).Draw(t, "track")
		var runs []label.Run
		for range rapid.IntRange(1, 5).Draw(t, "runs") {
			runs = append(runs, label.Run{
				Text: rapid.StringMatching(`[a-z0-9,.()/ \-]{0,30}`).Draw(t, "text"),
				Bold: rapid.Bool().Draw(t, "bold"),
			})
		}
		p := New(v, Say("x", runs, rapid.Bool().Draw(t, "exact")))
		size := unit.Points(9)
		ends, ok := Break(p.Boxes(), func(int) int { return 40000 }, Running, 0)
		if !ok {
			t.Fatal("does not fit an endless line")
		}
		got, from := "", 0
		for _, to := range ends {
			for _, it := range p.SetLine(from, to, size, page.Point{}) {
				got += it.(*page.Text).String()
			}
			from = to
		}
		want := strings.Join(strings.Fields(label.Block{Runs: runs}.Text()), "")
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
		segs, w := v.Segs(false, text, size)
		last := segs[len(segs)-1]
		end := last.X + v.Regular.Width(last.S, size)
		if d := end - At(w, size); d > unit.Micrometre || d < -unit.Micrometre {
			t.Errorf("%q ends at %v, measured %v", text, end, At(w, size))
		}
		if w != v.Width(false, text) {
			t.Errorf("%q: %d while setting, %d while measuring", text, w, v.Width(false, text))
		}
	}
}

func TestNumbersKeepTheirUnits(t *testing.T) {
	v := testVoice(t)
	for text, words := range map[string]int{
		"net 10 oz of it": 4, "45 g fruit": 2, "14 Thornfield Lane": 2, "about 30 minutes": 2, "room 1234567 shed": 3,
	} {
		if p := New(v, Say("", []label.Run{{Text: text}}, false)); len(p.Words) != words {
			t.Errorf("%q: %d boxes, want %d", text, len(p.Words), words)
		}
	}
}

// Lines of plain text keep every letter and never pass the room, however
// narrow it is and however long a word.
func TestLinesKeepTheirRoom(t *testing.T) {
	v := testVoice(t)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`([a-zA-Z0-9/-]{1,30} ){1,8}[a-z]`).Draw(t, "text")
		size := unit.Points(rapid.Float64Range(6, 20).Draw(t, "size"))
		room := unit.MM(rapid.Float64Range(12, 120).Draw(t, "room"))
		lines := v.Lines(text, size, room)
		got := strings.ReplaceAll(strings.Join(lines, ""), " ", "")
		if want := strings.ReplaceAll(text, " ", ""); got != want {
			t.Fatalf("%q is broken into %q", text, lines)
		}
		for _, l := range lines {
			if w := v.Measure(l, size); w > room+unit.Micrometre {
				t.Fatalf("%q is %.2f mm wide in %.2f mm", l, w.MM(), room.MM())
			}
			if s := v.Short(text, size, room); v.Measure(s, size) > room {
				t.Fatalf("%q is longer than %.2f mm", s, room.MM())
			}
		}
	})
}

// Lines of Chinese and Japanese end between letters, but never before a small kana, a
// sound mark or a closing bracket, nor after an opening one (W3C, Requirements for
// Japanese Text Layout, 3.1.7 and 3.1.8); prescribed words and those of other scripts
// do not part so.
func TestIdeographsPart(t *testing.T) {
	v := testVoice(t)
	for text, want := range map[string]string{
		"完熟苺ジャム": "完|熟|苺|ジャ|ム", "ルバーブ「春」、苺": "ル|バー|ブ|「春」、|苺", "苺 2個": "苺|2個", "苺jam": "苺|jam", "草莓酱": "草|莓|酱", "jam": "jam", "딸기잼": "딸기잼",
	} {
		said := func(exact bool) string {
			var words []string
			for _, w := range New(v, Say("", []label.Run{{Text: text}}, exact)).Words {
				s := ""
				for _, f := range w.Frags {
					s += f.S
				}
				words = append(words, s)
			}
			return strings.Join(words, "|")
		}
		if got := said(false); got != want {
			t.Errorf("%s parts as %s, want %s", text, got, want)
		}
		if got := strings.ReplaceAll(said(true), "|", ""); got != strings.ReplaceAll(text, " ", "") || strings.Count(said(true), "|") != strings.Count(text, " ") {
			t.Errorf("prescribed, %s parts as %s", text, said(true))
		}
	}
}
