package typeset

import (
	"strings"
	"testing"

	"golang.org/x/text/unicode/bidi"
	"pgregory.net/rapid"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// TestOrderIsThatOfTheStandard compares which letters run from the right with
// golang.org/x/text/unicode/bidi, another implementation of UAX #9.
func TestOrderIsThatOfTheStandard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := strings.TrimSpace(rapid.StringOfN(rapid.SampledFrom([]rune("אבגתab 12-!,.&")), 1, 14, -1).Draw(t, "line"))
		if visual(s) == s && !strings.ContainsAny(s, "אבגת") {
			return
		}
		var p bidi.Paragraph
		if _, err := p.SetString(s); err != nil {
			t.Fatal(err)
		}
		o, err := p.Order()
		if err != nil {
			t.Fatal(err)
		}
		var want, got strings.Builder
		for i := range o.NumRuns() {
			run := o.Run(i)
			mark := map[bidi.Direction]string{bidi.LeftToRight: ">", bidi.RightToLeft: "<"}[run.Direction()]
			want.WriteString(strings.Repeat(mark, len([]rune(run.String()))))
		}
		for _, l := range levels([]rune(s)) {
			got.WriteString([]string{">", "<", ">"}[l])
		}
		if got.String() != want.String() {
			t.Fatalf("%q: %s, want %s", s, got.String(), want.String())
		}
	})
}

// Lines as they are seen, by hand.
func TestHebrewRunsFromTheRight(t *testing.T) {
	for said, seen := range map[string]string{
		"ריבה": "הביר", "ריבת תותים": "םיתות תביר", "ריבת תות 2026": "2026 תות תביר", "2026 ריבה": "הביר 2026",
		"Plum ריבה jam": "Plum הביר jam", "ריבת Plum": "Plum תביר", "jam (ריבה)": "jam (הביר)", "ריבה (1,5)": "(1,5) הביר", "jam": "jam", "": "",
	} {
		if got := visual(said); got != seen {
			t.Errorf("%q is seen as %q, want %q", said, got, seen)
		}
	}
	v := testVoice(t)
	line, _ := v.Line("identity", false, "ריבה", unit.Points(12), page.Point{})
	if line.String() != "ריבה" || line.Words() != "ריבה" || line.Segs[0].S[:2] != "ה" {
		t.Errorf("%v is said as %q", line.Segs, line.String())
	}
}
