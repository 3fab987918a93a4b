package pdf

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"

	"jarmark/internal/draw/page"
)

// tree is the logical structure of a document (ISO 32000-1, 14.7): its parts in the
// order they are read, and where on which page each stands.
type tree struct {
	tags  []page.Tag
	kids  [][]mark  // by tag
	pages [][]int32 // by page: the tag of each marked piece
}

// mark is one marked piece of content: its page, and its number there.
type mark struct{ page, id int }

// treeOf is the tree of a document that can be tagged: one whose pages are words and
// lines alone. Labels and pictures are not.
func treeOf(d *page.Doc, s *survey) *tree {
	if len(d.Tags) == 0 || len(s.frames)+len(s.images)+len(s.arts) > 0 {
		return nil
	}
	return &tree{tags: d.Tags, kids: make([][]mark, len(d.Tags)+1), pages: make([][]int32, len(d.Pages))}
}

// tagged draws items with the part of the document each belongs to; what belongs to
// none, lines and what is repeated on every page, is marked as not to be read.
func (c *content) tagged(s space, list []page.Item, t *tree, at int) {
	open := int32(-1)
	for i, it := range list {
		tag := int32(0)
		if x, ok := it.(*page.Text); ok && int(x.Tag) <= len(t.tags) {
			tag = max(0, x.Tag)
		}
		if tag != open {
			if i > 0 {
				c.op("EMC")
			}
			c.begin(t, tag, at)
			open = tag
		}
		if x, ok := it.(*page.Text); ok && tag > 0 {
			blank := c.fonts[c.fonts[x.Face].Owner(' ')]
			c.text(s, spaced(x, blank != nil && blank.Glyph(' ') > 0))
			continue
		}
		c.items(s, list[i:i+1])
	}
	if len(list) > 0 {
		c.op("EMC")
	}
}

// spaced gives words to be read with a blank behind them, or those of a row are read out
// as one. A face without a blank goes without.
func spaced(t *page.Text, can bool) *page.Text {
	if t.Tag <= 0 || !can || len(t.Segs) == 0 {
		return t
	}
	u := *t
	u.Segs = slices.Clone(t.Segs)
	u.Segs[len(u.Segs)-1].S += " "
	return &u
}

// begin opens a piece of a page (ISO 32000-1, 14.6).
func (c *content) begin(t *tree, tag int32, at int) {
	if tag == 0 {
		c.op("/Artifact BMC")
		return
	}
	id := len(t.pages[at])
	t.pages[at] = append(t.pages[at], tag)
	t.kids[tag] = append(t.kids[tag], mark{at, id})
	c.b = append(append(c.b, '/'), t.tags[tag-1].Role...)
	c.b = append(c.b, " <</MCID "...)
	c.b = strconv.AppendInt(c.b, int64(id), 10)
	c.op(">> BDC")
}

// finish adds the tree to the file, and gives its entries of the catalog. Parts of which
// nothing is on these pages are left out.
func (t *tree) finish(f *file) (string, error) {
	pages, err := t.toPages(f)
	if err != nil {
		return "", err
	}
	below := make([][]int32, len(t.tags)+1) // 0 is the whole document
	kept := make([]bool, len(t.tags)+1)
	for n := len(t.tags); n > 0; n-- {
		if kept[n] = kept[n] || len(t.kids[n]) > 0; kept[n] {
			kept[t.tags[n-1].Parent] = true
		}
	}
	number := make([]int, len(t.tags)+1)
	root := f.add(nil)
	for n := range number {
		if n == 0 || kept[n] {
			number[n] = f.add(nil)
		}
		if n > 0 && kept[n] {
			below[t.tags[n-1].Parent] = append(below[t.tags[n-1].Parent], int32(n))
		}
	}
	f.set(number[0], t.element("Document", root, nil, below[0], number, pages))
	for n := 1; n < len(number); n++ {
		if kept[n] {
			tag := t.tags[n-1]
			f.set(number[n], t.element(tag.Role, number[tag.Parent], t.kids[n], below[n], number, pages))
		}
	}
	parents := f.add(t.parents(number))
	f.set(root, fmt.Appendf(nil, "<</Type /StructTreeRoot /K %d 0 R /ParentTree %d 0 R /ParentTreeNextKey %d>>", number[0], parents, len(t.pages)))
	return fmt.Sprintf("/MarkInfo <</Marked true>>\n/StructTreeRoot %d 0 R\n", root), nil
}

// element is one part: what stands in it, then the parts below it.
func (t *tree) element(role string, parent int, kids []mark, below []int32, number, pages []int) []byte {
	b := fmt.Appendf(nil, "<</Type /StructElem /S /%s /P %d 0 R", role, parent)
	if role == "TH" {
		b = append(b, " /A <</O /Table /Scope /Column>>"...)
	}
	b = append(b, " /K ["...)
	for _, k := range kids {
		b = fmt.Appendf(b, "<</Type /MCR /Pg %d 0 R /MCID %d>> ", pages[k.page], k.id)
	}
	for _, n := range below {
		b = fmt.Appendf(b, "%d 0 R ", number[n])
	}
	return append(b, "]>>"...)
}

// parents leads from each piece of each page back to its part.
func (t *tree) parents(number []int) []byte {
	b := []byte("<</Nums [")
	for i, tags := range t.pages {
		b = fmt.Appendf(b, "%d [", i)
		for _, n := range tags {
			b = fmt.Appendf(b, "%d 0 R ", number[n])
		}
		b = append(b, "] "...)
	}
	return append(b, "]>>"...)
}

// toPages tells every page of its parts, packs its content, and gives the numbers of the
// pages' objects.
func (t *tree) toPages(f *file) (pages []int, err error) {
	const leaf, content, stream, end = "<</Type /Page\n", "<</Length ", "stream\n", "\nendstream"
	for i := range f.objects {
		o := &f.objects[i]
		switch {
		case o.is(leaf):
			o.insert(len(leaf), fmt.Sprintf("/StructParents %d /Tabs /S\n", len(pages)))
			pages = append(pages, o.number)
		case o.is(content):
			_, data, ok := bytes.Cut(o.parts[0], []byte(stream))
			data, whole := bytes.CutSuffix(data, []byte(end))
			if !ok || !whole {
				return nil, errLayout
			}
			packed, err := deflate(nil, data)
			if err != nil {
				return nil, err
			}
			o.parts = [][]byte{fmt.Appendf(nil, "<</Filter /FlateDecode /Length %d>>\nstream\n", len(packed)), packed, []byte(end)}
		}
	}
	if len(pages) != len(t.pages) {
		return nil, errLayout
	}
	return pages, nil
}

// set gives a numbered object its bytes.
func (f *file) set(number int, body []byte) { f.objects[f.at[number]].parts = [][]byte{body} }
