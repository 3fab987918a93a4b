package job

import (
	"fmt"

	"jarmark/internal/label"
)

// maxLabels bounds one print run, so that a slip of the keyboard cannot fill
// the memory: far more than a day's work of any printer.
const maxLabels = 100_000

// needs lists the labels of a piece for one jar size: as many as sealed jars,
// named where they are gifts. Unsealed jars get none: they are not for keeping.
func (b *Batch) needs(p label.Piece, jar int, c Choices) []Recipient {
	j := b.Cooked.Jars[jar]
	switch p {
	case label.Tag:
		if names := b.recipients(jar, c); len(names) > 0 {
			return names
		}
	case label.CaseLabel:
		return blank(boxes(j.Sealed, b.Kitchen.Supplies.BoxHolds), c)
	case label.ShelfCard, label.AllergCard:
		return blank(1, c)
	}
	return blank(j.Sealed, c)
}

func blank(n int, c Choices) []Recipient {
	if c.Copies > 0 {
		n = c.Copies
	}
	return make([]Recipient, min(max(n, 0), maxLabels))
}

// boxes is how many boxes jars need at `holds` a box.
func boxes(jars, holds int) int {
	if holds <= 0 {
		holds = 12
	}
	return (jars + holds - 1) / holds
}

// recipients gives one entry a gift jar of this size, in file order; a gift
// that names no size is taken from the first. A list given apart goes first.
func (b *Batch) recipients(jar int, c Choices) []Recipient {
	if len(c.Recipient) > 0 {
		if jar > 0 {
			return nil
		}
		return c.Recipient
	}
	var out []Recipient
	for _, g := range b.Batch.Gifts {
		if !b.sameJar(g.Jar, jar) {
			continue
		}
		for range min(max(g.Jars, 1), maxLabels-len(out)) {
			out = append(out, Recipient{g.To, g.From, g.Message, g.Occasion, firstNonEmpty(g.Design, occasionDesign(g.Occasion))})
		}
	}
	return out
}

func (b *Batch) sameJar(words string, jar int) bool {
	if words == "" {
		return jar == 0
	}
	j, ok := b.Pantry.Jar(words)
	return ok && j.Key == b.Cooked.Jars[jar].Jar.Key
}

func named(list []Recipient) bool {
	for _, r := range list {
		if r != (Recipient{}) {
			return true
		}
	}
	return false
}

// addressed is the content of a tag for one person.
func addressed(c *label.Content, r Recipient) *label.Content {
	out := *c
	out.Blocks = append([]label.Block(nil), c.Blocks...)
	for _, f := range []struct {
		kind label.Kind
		text string
	}{{label.To, r.To}, {label.From, r.From}, {label.Message, r.Message}} {
		if f.text != "" {
			out.Blocks = replace(out.Blocks, label.Block{ID: string(f.kind), Kind: f.kind, Runs: []label.Run{{Text: f.text}}})
		}
	}
	return &out
}

// replace puts a block in the place of the one of its kind, or at the end.
func replace(blocks []label.Block, nb label.Block) []label.Block {
	for i, b := range blocks {
		if b.Kind == nb.Kind {
			blocks[i] = nb
			return blocks
		}
	}
	return append(blocks, nb)
}

func (b *Batch) serials(c Choices) bool  { return c.Serials || b.Batch.Label.Serials }
func (b *Batch) inkSaver(c Choices) bool { return c.InkSaver || b.Batch.Label.InkSaver }

// frontAlone: a front label without an info label must say everything.
func (b *Batch) frontAlone(c Choices) bool {
	for _, p := range b.pieces(c) {
		if p == label.InfoLabel || p == label.Wrap {
			return false
		}
	}
	return true
}

// withSerial adds the widest jar number, so that its place is kept free.
func withSerial(c *label.Content, n int, on bool) *label.Content {
	if !on {
		return c
	}
	out := *c
	out.Blocks = replace(append([]label.Block(nil), c.Blocks...),
		label.Block{ID: "serial", Kind: label.Serial, Runs: []label.Run{{Text: serialText(n, n)}}})
	return &out
}

// serialText numbers a jar with leading zeros: "07 / 12".
func serialText(i, n int) string {
	return fmt.Sprintf("%0*d / %d", len(fmt.Sprint(n)), i, n)
}
