package job

import (
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// The sample shown in the pickers while a batch can't be drawn yet. Invented.
const (
	sampleKitchen = `name = "Thornfield Lane Preserves"
address = ["14 Thornfield Lane", "Millbrook, OR 97000"]
place = "us"
`
	sampleBatch = `name = "Plum & anise jam"
kind = "jam"
made = 2026-09-05
[[ingredient]]
name = "plums"
amount = "2 kg"
[[ingredient]]
name = "sugar"
amount = "1.6 kg"
[[ingredient]]
name = "star anise"
amount = "2 g"
[process]
method = "boiling water"
minutes = 10
[[fill]]
jar = "8 fl oz"
count = 8
sealed = 8
declared = "9 oz"
[[gift]]
to = "Hedy"
from = "Wren"
message = "for the cold months"
jars = 1
`
)

// SampleDoc is the invented batch shown where there is none yet.
func SampleDoc() Doc { return Doc{"sample.toml", []byte(sampleBatch)} }

// SampleKitchen is the invented kitchen it was cooked in.
func SampleKitchen() Doc { return Doc{"kitchen.toml", []byte(sampleKitchen)} }

// Sample is the invented batch of the pickers.
func (e *Env) Sample() *Batch {
	return e.Load(Input{Kitchen: SampleKitchen(), Batch: SampleDoc()}, Choices{})
}

// DesignPicture draws the front label of a batch in a design; an empty id
// takes the batch's own. It gives nil with a finding when that can't be done.
func (e *Env) DesignPicture(b *Batch, id string, c Choices) ([]byte, diag.List) {
	if b.first() == nil {
		return nil, b.Findings
	}
	return e.Press.Picture(b.orderOf(c), id)
}

// PiecePicture draws a piece of a batch, as suits its jar.
func (e *Env) PiecePicture(b *Batch, p label.Piece, c Choices) ([]byte, diag.List) {
	c.Pieces, c.Copies = []label.Piece{p}, 1
	return e.picture(b, c)
}

// picture draws the first label of the first piece chosen.
func (e *Env) picture(b *Batch, c Choices) ([]byte, diag.List) {
	shown, l := e.Show(b, c)
	for _, s := range shown {
		if s.Piece == c.Pieces[0] {
			return s.SVG, l
		}
	}
	return nil, l
}
