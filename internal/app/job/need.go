package job

import (
	"fmt"
	"slices"

	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// MaxLabels bounds one print run, so that a slip of the keyboard cannot fill
// the memory: far more than a day's work of any printer.
const MaxLabels = 100_000

// needs lists the labels of a piece for one jar size: as many as sealed jars,
// named where they are gifts. Unsealed jars get none: they are not for keeping.
func (b *Batch) needs(p label.Piece, jar int, c Choices) []pack.Tag {
	j := b.Cooked.Jars[jar]
	switch p {
	case label.Tag:
		if len(b.Batch.Gifts)+len(c.List) > 0 {
			return b.tags(jar, c)
		}
	case label.CaseLabel:
		return blank(boxes(j.Sealed, b.Kitchen.Supplies.PerBox()), c)
	case label.Sign: // says nothing of the size
		if jar > 0 {
			return nil
		}
		return blank(1, c)
	case label.ShelfCard, label.AllergCard:
		return blank(1, c)
	}
	return blank(j.Sealed, c)
}

func blank(n int, c Choices) []pack.Tag {
	if c.Copies > 0 {
		n = c.Copies
	}
	return make([]pack.Tag, min(max(n, 0), MaxLabels))
}

// boxes is how many boxes jars need at `holds` a box.
func boxes(jars, holds int) int {
	return (jars + holds - 1) / holds
}

// tags gives one tag a gift jar of this size.
func (b *Batch) tags(jar int, c Choices) (out []pack.Tag) {
	for _, t := range c.tags {
		if t.Lot == b.Cooked.Lot && t.JarKey == b.Cooked.Jars[jar].Jar.Key {
			out = append(out, t)
		}
	}
	return out
}

// allot says which jars of the batches go to whom, when tags are to be
// printed: the batches' own gifts first, then a list kept apart. A jar that is
// promised twice is an error that names who goes without.
func (e *Env) allot(batches []*Batch, c *Choices) diag.List {
	if !slices.ContainsFunc(batches, func(b *Batch) bool { return slices.Contains(b.pieces(*c), label.Tag) }) {
		return nil
	}
	plan, l := e.Pack(batches, pack.Options{List: c.List})
	if plan != nil {
		c.tags = plan.Tags
	}
	return l.Errors()
}

func named(list []pack.Tag) bool {
	for _, r := range list {
		if r != (pack.Tag{}) {
			return true
		}
	}
	return false
}

// addressed is the content of a tag for one person. The words before a name
// ("for", "from") are the rule set's, in its language.
func addressed(c *label.Content, t pack.Tag) *label.Content {
	out := *c
	out.Blocks = append([]label.Block(nil), c.Blocks...)
	for _, f := range []struct {
		kind label.Kind
		text string
	}{{label.To, t.To}, {label.From, t.From}, {label.Message, t.Message}} {
		if f.text == "" {
			continue
		}
		b := label.Block{ID: string(f.kind), Kind: f.kind}
		if was, ok := c.Find(f.kind); ok {
			b.Runs = append(b.Runs, was.Runs[:min(1, len(was.Runs))]...)
		}
		b.Runs = append(b.Runs, label.Run{Text: f.text})
		out.Blocks = replace(out.Blocks, b)
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
