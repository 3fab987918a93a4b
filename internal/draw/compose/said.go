package compose

import (
	"strings"

	"jarmark/internal/draw/typeset"
	"jarmark/internal/law/label"
)

// said remembers the paragraphs of one label and how they measure: its variants
// say the same words over and over. What it gives is only read.
type said struct {
	paras map[saying]typeset.Para
	soft  map[string]string // texts with their soft hyphens
}

// saying is all a paragraph of one block hangs on.
type saying struct {
	voice typeset.Voice
	block string
	text  string // of all runs, each after a mark of its weight
	exact bool
}

func newSaid() *said { return &said{map[saying]typeset.Para{}, map[string]string{}} }

// say is one block as a paragraph in a voice.
func (b *brief) say(v typeset.Voice, block string, runs []label.Run, exact bool) typeset.Para {
	key := saying{v, block, marked(runs), exact}
	p, ok := b.said.paras[key]
	if !ok {
		p = typeset.New(v, typeset.Say(block, runs, exact))
		b.said.paras[key] = p
	}
	return p
}

// marked tells runs apart by their words and their weight.
func marked(runs []label.Run) string {
	var s strings.Builder
	for _, r := range runs {
		if r.Bold {
			s.WriteByte(1)
		} else {
			s.WriteByte(2)
		}
		s.WriteString(r.Text)
	}
	return s.String()
}

// soften is a text with its soft hyphens, by the language of the label.
func (b *brief) soften(text string) string {
	soft, ok := b.said.soft[text]
	if !ok {
		soft = b.faces.Soften(text, b.content.Lang)
		b.said.soft[text] = soft
	}
	return soft
}
