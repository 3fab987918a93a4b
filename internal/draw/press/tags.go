package press

import (
	"slices"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/cores"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// tagger composes the hang tags of one jar size.
type tagger struct {
	*work
	content *label.Content
	cell    compose.Cell
}

// drawTags composes one hang tag for each wording. A tag that cannot carry its
// words is printed with blanks for the hand, and stops no other.
func (w *work) drawTags(content *label.Content, cell compose.Cell, need []Tag) ([]sheet.Label, diag.List) {
	t := tagger{w, w.o.tagContent(content), cell}
	at := map[Tag]int{}
	var first []Tag
	for _, n := range need {
		if _, seen := at[n.Words()]; !seen {
			at[n.Words()] = len(first)
			first = append(first, n)
		}
	}
	tags, lists := make([]sheet.Label, len(first)), make([]diag.List, len(first))
	var g grounds
	cores.Each(len(first), func(i int) {
		if tags[i].Frame, lists[i] = t.tag(first[i]); tags[i].Frame != nil && len(first) > manyTags {
			tags[i] = g.share(tags[i].Frame)
		}
	})
	found := slices.Concat(lists...)
	out := make([]sheet.Label, len(need))
	for i, n := range need {
		if out[i] = tags[at[n.Words()]]; out[i].Frame == nil {
			return nil, found
		}
	}
	return out, found
}

// tagContent leaves the word on allergens on a tag where there are any.
func (o *Order) tagContent(c *label.Content) *label.Content {
	if o.Allergens {
		return c
	}
	out := *c
	out.Blocks = slices.DeleteFunc(slices.Clone(c.Blocks), func(k label.Block) bool { return k.Kind == label.Allergens })
	return &out
}

// tag composes a tag; with errors that are the words' fault, one without them.
func (t tagger) tag(n Tag) (*page.Frame, diag.List) {
	d, found := t.designFor(n)
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

// designFor is the gift's own; one that nobody knows is told at the gift, and the
// batch's stands in for it.
func (t tagger) designFor(n Tag) (*design.Design, diag.List) {
	d, l := t.work.design(n.Design)
	if d != nil || n.Design == "" {
		return d, l
	}
	d, more := t.work.design("")
	if d == nil {
		return nil, more
	}
	var found diag.List
	w := found.Warnf("gift-design", n.File, n.Path, "the tag for %s: no design %q; it is printed as %s", calledTo(n), n.Design, d.ID).Hinted(l[0].Hint)
	w.Pos = n.Pos
	return d, found
}

func (t tagger) set(n Tag, d *design.Design) (*page.Frame, diag.List) {
	content, opt := addressed(t.content, n), t.options()
	opt.Alone = false
	r, l := compose.Compose(content, d, label.Tag, t.cell, t.Faces, opt)
	if r.Frame != nil && !l.HasErrors() {
		l = append(l, inspect.Frame(r.Frame, content, t.Faces, inspect.Default())...)
	}
	return r.Frame, l
}

// lessWords is the tag with one, two and all of its words left to the hand,
// the message first.
func lessWords(n Tag) (out []Tag) {
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

func lacks(n, bare Tag) string {
	var out []string
	for _, w := range [][3]string{{n.To, bare.To, "the name"}, {n.From, bare.From, "the giver"}, {n.Message, bare.Message, "the message"}} {
		if w[0] != w[1] {
			out = append(out, w[2])
		}
	}
	return strings.Join(out, " and ")
}

func calledTo(n Tag) string {
	if n.To == "" {
		return "someone without a name"
	}
	return n.To
}
