package job

import (
	"slices"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/give/pack"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// tagger composes the hang tags of one jar size.
type tagger struct {
	e       *Env
	b       *Batch
	c       Choices
	content *label.Content
	cell    compose.Cell
}

// drawTags composes one hang tag for each wording. A tag that cannot carry its
// words is printed with blanks for the hand, and stops no other.
func (e *Env) drawTags(b *Batch, content *label.Content, cell compose.Cell, need []pack.Tag, c Choices) ([]sheet.Label, diag.List) {
	t := tagger{e, b, c, b.tagContent(content), cell}
	at := map[pack.Tag]int{}
	var first []pack.Tag
	for _, n := range need {
		if _, seen := at[n.Words()]; !seen {
			at[n.Words()] = len(first)
			first = append(first, n)
		}
	}
	frames, lists := make([]*page.Frame, len(first)), make([]diag.List, len(first))
	each(len(first), func(i int) { frames[i], lists[i] = t.tag(first[i]) })
	found := slices.Concat(lists...)
	out := make([]sheet.Label, len(need))
	for i, n := range need {
		if out[i].Frame = frames[at[n.Words()]]; out[i].Frame == nil {
			return nil, found
		}
	}
	return out, found
}

// tagContent leaves the word on allergens on a tag where there are any.
func (b *Batch) tagContent(c *label.Content) *label.Content {
	if len(b.Cooked.Allergy().Found) > 0 {
		return c
	}
	out := *c
	out.Blocks = slices.DeleteFunc(slices.Clone(c.Blocks), func(k label.Block) bool { return k.Kind == label.Allergens })
	return &out
}

// tag composes a tag; with errors that are the words' fault, one without them.
func (t tagger) tag(n pack.Tag) (*page.Frame, diag.List) {
	d, found := t.design(n)
	if d == nil {
		return nil, found
	}
	fr, l := t.set(n, d)
	if !l.HasErrors() {
		return fr, append(found, l...)
	}
	for _, bare := range lessWords(n) {
		if fr, less := t.set(bare, d); !less.HasErrors() {
			w := found.Warnf("tag-by-hand", n.File, n.Path, "the tag for %s is printed with a blank for %s: %s", calledTo(n), lacks(n, bare), l.Errors()[0].Message).
				Hinted("write it by hand, or choose shorter words in letters the typefaces have")
			w.Pos = n.Pos
			return fr, append(found, less...)
		}
	}
	return nil, append(found, l...)
}

// design is the gift's own; one that nobody knows is told at the gift, and the
// batch's stands in for it.
func (t tagger) design(n pack.Tag) (*design.Design, diag.List) {
	d, l := t.e.design(t.b, n.Design, t.c)
	if d != nil || n.Design == "" {
		return d, l
	}
	d, more := t.e.design(t.b, "", t.c)
	if d == nil {
		return nil, more
	}
	var found diag.List
	w := found.Warnf("gift-design", n.File, n.Path, "the tag for %s: no design %q; it is printed as %s", calledTo(n), n.Design, d.ID).Hinted(l[0].Hint)
	w.Pos = n.Pos
	return d, found
}

func (t tagger) set(n pack.Tag, d *design.Design) (*page.Frame, diag.List) {
	content := addressed(t.content, n)
	r, l := compose.Compose(content, d, label.Tag, t.cell, t.e.Faces, compose.Options{InkSaver: t.b.inkSaver(t.c), Codes: &t.b.codes, Drawings: &t.b.drawings})
	if r.Frame != nil && !l.HasErrors() {
		l = append(l, inspect.Frame(r.Frame, content, t.e.Faces, inspect.Default())...)
	}
	return r.Frame, l
}

// lessWords is the tag with one, two and all of its words left to the hand,
// the message first.
func lessWords(n pack.Tag) (out []pack.Tag) {
	for _, cut := range [][3]bool{{false, false, true}, {true, false, false}, {false, true, false}, {true, false, true}, {false, true, true}, {true, true, false}, {true, true, true}} {
		less := n
		for i, s := range []*string{&less.To, &less.From, &less.Message} {
			if cut[i] {
				*s = ""
			}
		}
		if less != n {
			out = append(out, less)
		}
	}
	return out
}

func lacks(n, bare pack.Tag) string {
	var out []string
	for _, w := range [][3]string{{n.To, bare.To, "the name"}, {n.From, bare.From, "the giver"}, {n.Message, bare.Message, "the message"}} {
		if w[0] != w[1] {
			out = append(out, w[2])
		}
	}
	return strings.Join(out, " and ")
}

func calledTo(n pack.Tag) string {
	if n.To == "" {
		return "someone without a name"
	}
	return n.To
}
