package press

import (
	"slices"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// setting is what a label is composed from, whatever its cell.
type setting struct {
	content *label.Content
	design  *design.Design
	piece   label.Piece
	opt     compose.Options
}

// composed is a label as it was set, what was set, and the findings.
type composed struct {
	compose.Result
	content *label.Content
	found   diag.List
}

func (w *work) compose(x *setting, cell compose.Cell) *composed {
	r, l := w.kept.compose(x, cell, w.Faces)
	return &composed{r, x.content, l}
}

// fit takes a label, composed already where first is not nil, and where it has
// no room says less rather than nothing, in two cases: a code is left out before
// any word is, with a warning where it says more than those words; and a front
// label that should carry every statement because it is alone on its jar carries
// the display panel, with a warning that the jar needs an information label too.
func (w *work) fit(x setting, cell compose.Cell, first *composed) *composed {
	if first == nil {
		first = w.compose(&x, cell)
	}
	full := first.Overflow
	lone := x.piece == label.Front && x.opt.Alone // it gets an information label beside it, and the code there
	if len(full) > 0 && x.content.QR.Payload != "" && !(lone && opensPage(x.content)) {
		bare := x
		bare.content = codeless(x.content)
		less := w.compose(&bare, cell)
		if len(less.Overflow) == 0 {
			w.tellCodeless(less, x)
			return less
		}
		if !lone { // the code goes before any word does, so it is not what lacks room
			first = less
		}
	}
	if len(full) == 0 && lone && (first.Bare || first.Small) {
		first.found.Warnf("front-crowded", w.o.File, "label.kind", "the front label bears every statement, which leaves its name and its ornament little room").
			Hinted("print --kind front,info: the front keeps the name, the back takes the rest")
	}
	if len(full) > 0 && lone {
		x.opt.Alone = false
		first = w.compose(&x, cell)
		if len(first.Overflow) == 0 {
			first.found.Warnf("front-not-all", w.o.File, "label.kind", "the front label has no room for ingredients, maker and storage").
				Hinted("print --kind front,info and put an information label on every jar, or choose --kind wrap")
		}
	}
	w.suggest(first, x.design, x.piece, cell)
	return first
}

// tellCodeless says that a label goes without its code, and where one stands.
func (w *work) tellCodeless(less *composed, x setting) {
	if !opensPage(x.content) {
		less.found.Notef("no-room-for-code", w.o.File, "label.sheet", "the %s label has no room for a code, which would only repeat its words", x.piece).
			Hinted("with record_url in kitchen.toml the code opens the page of the batch, and is smaller")
		return
	}
	hint := "shelf cards and case labels bear it; a larger label has room for it on the jar"
	if x.piece == label.Wrap {
		hint += ", as has --kind front,info"
	}
	less.found.Warnf("no-room-for-code", w.o.File, "label.sheet", "the %s label has no room for the code that opens the page of the batch", x.piece).Hinted(hint)
}

// opensPage reports whether the code of a label opens a page.
func opensPage(c *label.Content) bool { return strings.HasPrefix(c.QR.Payload, "http") }

// codeless is the content without its code and the caption of it.
func codeless(c *label.Content) *label.Content {
	out := *c
	out.QR = label.QR{}
	out.Blocks = slices.DeleteFunc(slices.Clone(c.Blocks), func(b label.Block) bool { return b.Kind == label.Caption })
	return &out
}
