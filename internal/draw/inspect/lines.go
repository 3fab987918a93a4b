package inspect

import (
	"strings"
	"unicode"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Line is one required statement as it was measured on the finished labels of
// a jar.
type Line struct {
	Block   label.Block
	Printed bool        // it stands on one of them
	Face    page.Face   // of its lowest letters
	Size    unit.Length // their type size
	Letter  string      // what is measured: "o", "x", "H", a figure; "" = the type size
	Got     unit.Length // height of that letter
}

// Short is how much lower the letters are than the law's least height, without
// any reserve; 0 = they meet it.
func (l Line) Short() unit.Length {
	if l.Block.Min.Length <= 0 || l.Got+rounding(l.Block.Min.Length) >= l.Block.Min.Length {
		return 0
	}
	return l.Block.Min.Length - l.Got
}

// Lines measures every required block on the labels that go on one jar, the
// lowest letters of each. What only repeats them (lids, tags) is not measured.
func Lines(frames []*page.Frame, c *label.Content, f *face.Set) []Line {
	var out []Line
	at := map[string]int{}
	for _, b := range c.Blocks {
		if b.Required && strings.TrimSpace(b.Text()) != "" {
			at[b.ID] = len(out)
			out = append(out, Line{Block: b})
		}
	}
	for _, fr := range frames {
		if courtesy(label.Piece(fr.Piece)) {
			continue
		}
		k := &inspector{fr: fr, c: c, faces: f, opt: Options{}}
		k.sort()
		said := k.said()
		for _, t := range k.texts {
			i, ok := at[t.Block]
			if !ok {
				continue
			}
			b, text := out[i].Block, said[voiceOf(t)]
			got := measured(b.Min.On, text, k.faces.Face(t.Face), t.Size)
			if !out[i].Printed || got < out[i].Got {
				out[i] = Line{Block: b, Printed: true, Face: t.Face, Size: t.Size, Letter: letterOf(b.Min.On, text), Got: got}
			}
		}
	}
	return out
}

// said gathers what is printed in each voice.
func (k *inspector) said() map[voice]string {
	out := map[voice]string{}
	for _, t := range k.texts {
		out[voiceOf(t)] += t.String()
	}
	return out
}

// letterOf names the letter a measure is taken on.
func letterOf(on label.Measure, said string) string {
	switch on {
	case label.XHeight:
		return "x"
	case label.Capital:
		return "H"
	case label.Digit:
		return digitsOf(said)[:1]
	case label.PointSize:
		return ""
	case label.AnyCase:
		if !strings.ContainsFunc(said, unicode.IsLower) {
			return "H"
		}
	}
	return "o"
}
