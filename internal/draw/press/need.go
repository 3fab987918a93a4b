package press

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"jarmark/internal/law/label"
)

// needs lists the labels of a piece for one jar size: as many as sealed jars,
// named where they are gifts. Unsealed jars get none: they are not for keeping.
func (o *Order) needs(p label.Piece, jar int) []Tag {
	j := o.Jars[jar]
	switch p {
	case label.Tag:
		if o.Tagged {
			return j.Tags
		}
	case label.CaseLabel:
		return o.blank(boxes(j.Sealed, o.PerBox))
	case label.Sign: // says nothing of the size
		if jar > 0 {
			return nil
		}
		return o.blank(1)
	case label.ShelfCard, label.AllergCard:
		return o.blank(1)
	}
	return o.blank(j.Sealed)
}

// MadeFor are the labels a jar gets from a sheet: a wrap-around where it takes one
// or nobody knows it, else the front with the information label that says the
// rest, else what the sheet is for above all.
func (p *Press) MadeFor(id string) []label.Piece {
	s, ok := p.Sheets.Get(id)
	switch {
	case !ok || s.Takes(string(label.Wrap)) || len(s.Pieces) == 0:
		return []label.Piece{label.Wrap}
	case s.Takes(string(label.Front)) && s.Takes(string(label.InfoLabel)):
		return []label.Piece{label.Front, label.InfoLabel}
	}
	return []label.Piece{label.Piece(s.Pieces[0])}
}

func (o *Order) blank(n int) []Tag {
	if o.Copies > 0 {
		n = o.Copies
	}
	return make([]Tag, min(max(n, 0), MaxLabels))
}

// boxes is how many boxes jars need at `holds` a box.
func boxes(jars, holds int) int {
	return (jars + holds - 1) / holds
}

func named(list []Tag) bool {
	return slices.ContainsFunc(list, func(t Tag) bool { return t != (Tag{}) })
}

// addressed is the content of a tag for one person. The words before a name
// ("for", "from") are the rule set's, in its language.
func addressed(c *label.Content, t Tag) *label.Content {
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

// withSerial adds the widest jar number, so that its place is kept free.
func withSerial(c *label.Content, n int) *label.Content {
	out := *c
	out.Blocks = replace(append([]label.Block(nil), c.Blocks...),
		label.Block{ID: "serial", Kind: label.Serial, Runs: []label.Run{{Text: serialText(n, n)}}})
	return &out
}

// wants reports whether the label of a jar's number is to be printed.
func (o *Order) wants(number int) bool {
	return len(o.Numbers) == 0 || slices.Contains(o.Numbers, number)
}

// ParseNumbers reads jar numbers as one writes them: "17, 20-22".
func ParseNumbers(s string) (out []int, err error) {
	for _, part := range strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ' ' }) {
		from, to, ranged := strings.Cut(strings.ReplaceAll(part, "\u2013", "-"), "-")
		if !ranged {
			to = from
		}
		a, err1 := strconv.Atoi(from)
		b, err2 := strconv.Atoi(to)
		if err1 != nil || err2 != nil || a < 1 || b < a || b > MaxLabels {
			return nil, fmt.Errorf("%q is no number of a jar", part)
		}
		for n := a; n <= b; n++ {
			out = append(out, n)
		}
	}
	if len(out) == 0 {
		return nil, errors.New("no jar is named")
	}
	return out, nil
}

// serialText numbers a jar with leading zeros: "07 / 12".
func serialText(i, n int) string {
	return fmt.Sprintf("%0*d / %d", len(fmt.Sprint(n)), i, n)
}
