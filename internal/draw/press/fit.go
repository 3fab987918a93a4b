package press

import (
	"slices"
	"strings"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// fit composes one label, and where it has no room says less rather than
// nothing, in two cases: a code that only repeats words of the label, because
// there is no website, is left out; and a front label that should carry every
// statement because it is alone on its jar carries the display panel, with a
// warning that the jar needs an information label too. It also gives the
// content that was set.
func (w *work) fit(c *label.Content, d *design.Design, p label.Piece, cell compose.Cell, opt compose.Options) (compose.Result, *label.Content, diag.List) {
	r, found := compose.Compose(c, d, p, cell, w.Faces, opt)
	if len(r.Overflow) > 0 && c.QR.Payload != "" && !strings.HasPrefix(c.QR.Payload, "http") {
		bare := codeless(c)
		if less, l := compose.Compose(bare, d, p, cell, w.Faces, opt); len(less.Overflow) == 0 {
			l.Notef("no-room-for-code", w.o.File, "label.sheet", "the %s label has no room for a code, which would only repeat its words", p).
				Hinted("with record_url in kitchen.toml the code opens the page of the batch, and is smaller")
			return less, bare, l
		}
	}
	if len(r.Overflow) > 0 && p == label.Front && opt.Alone {
		opt.Alone = false
		r, found = compose.Compose(c, d, p, cell, w.Faces, opt)
		if len(r.Overflow) == 0 {
			found.Warnf("front-not-all", w.o.File, "label.kind", "the front label has no room for ingredients, maker and storage").
				Hinted("print --kind front,info and put an information label on every jar, or choose --kind wrap")
		}
	}
	w.suggest(found, r.Overflow, c, d, p, cell)
	return r, c, found
}

// codeless is the content without its code and the caption of it.
func codeless(c *label.Content) *label.Content {
	out := *c
	out.QR = label.QR{}
	out.Blocks = slices.DeleteFunc(slices.Clone(c.Blocks), func(b label.Block) bool { return b.Kind == label.Caption })
	return &out
}
