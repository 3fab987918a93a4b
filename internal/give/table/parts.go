package table

import "jarmark/internal/draw/page"

// part is what a band's words are to one who has the list read out: a heading, a cell,
// an entry (the standard structure types of ISO 32000-1, 14.8.4). It is told to the
// document with its first words, so that one without words is none.
type part struct {
	role  string // "": repeated on every page, not to be read
	up    *part
	cells string // each text is a cell of this role
	id    int32
}

// words is the number of what the next words of the part belong to: the part, or a cell
// of it.
func (p *part) words(c *Layout) int32 {
	if p != nil && p.cells != "" {
		p = &part{role: p.cells, up: p}
	}
	return p.number(c)
}

// number is the part's number among those of the document.
func (p *part) number(c *Layout) int32 {
	if p == nil || p.role == "" {
		return 0
	}
	if p.id == 0 {
		up := p.up.number(c)
		c.tags = append(c.tags, page.Tag{Role: p.role, Parent: up})
		p.id = int32(len(c.tags))
	}
	return p.id
}

// as says what bands are; what is one already stays so.
func as(p *part, bands ...Band) []Band {
	for i := range bands {
		if bands[i].part == nil {
			bands[i].part = p
		}
	}
	return bands
}

// entries gives a list's entries one after another, and begins another list where
// something else came between.
type entries struct{ list *part }

func (e *entries) next() *part {
	if e.list == nil {
		e.list = &part{role: "L"}
	}
	return &part{role: "LBody", up: &part{role: "LI", up: e.list}}
}

// inOrder puts the words of one band as they are read: line by line, from the left.
func inOrder(items []page.Item) {
	for i := range items { // a handful
		t, ok := items[i].(*page.Text)
		if !ok {
			continue
		}
		for k := range i {
			if b, ok := items[k].(*page.Text); ok && (t.At.Y < b.At.Y || t.At.Y == b.At.Y && t.At.X < b.At.X) {
				items[k], t = t, b
			}
		}
		items[i] = t
	}
}
