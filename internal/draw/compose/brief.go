package compose

import (
	"strings"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// brief is what one label is to be. Once made it is only read.
type brief struct {
	content *label.Content
	name    string // what the label is called in lists
	design  string // its id
	voices  design.Voices
	piece   label.Piece // what it is laid out as
	as      label.Piece // and what it is
	cell    Cell
	faces   *face.Set
	opt     Options
	words
	scheme
	said *said
}

// newBrief checks the arguments; ok is false when nothing can be set.
func newBrief(c *label.Content, d *design.Design, p label.Piece, cell Cell, f *face.Set, o Options) (b brief, found diag.List, ok bool) {
	if o.Codes == nil {
		o.Codes = &Codes{}
	}
	b = brief{content: c, piece: p, as: p, faces: f, opt: o, said: newSaid()}
	if p == label.BagCard { // a front that says all
		b.piece, b.opt.Alone = label.Front, true
	}
	switch {
	case c == nil:
		found.Errorf("no-content", "", "", "there is nothing to print")
	case d == nil:
		found.Errorf("no-design", "", "label.design", "no design is chosen")
	case f == nil:
		found.Errorf("no-typeface", "", "", "no typefaces are loaded")
	case arrangements[b.piece] == nil:
		found.Errorf("unknown-kind", "", "", "unknown kind of label %q", p)
	default:
		b.cell, found = cell.checked()
	}
	if found.HasErrors() {
		b.cell = Cell{}
		return b, found, false
	}
	b.design, b.voices = d.ID, d.Voices
	if found = b.checkFaces(); found.HasErrors() {
		return b, found, false
	}
	b.voices = b.drawing(d.Voices)
	var more diag.List
	b.scheme, found = newScheme(c, o.InkSaver)
	b.words, more = readWords(c, p, b.voices, f)
	b.name = hard(b.title)
	return b, append(append(found, more...), b.checkJar()...), true
}

// drawing gives the voices a label speaks in: where a face lacks letters of
// what it is to say (a name, above all), its stand-in speaks.
func (b brief) drawing(v design.Voices) design.Voices {
	all := b.content.Title + b.content.Subtitle + b.content.AllergenWord + strings.Join(b.content.AllergenNames, "")
	for _, blk := range b.content.Blocks {
		for _, run := range blk.Runs {
			all += run.Text
		}
	}
	for _, x := range []*design.Voice{&v.Title, &v.Subtitle, &v.Brand, &v.Net, &v.Text, &v.Small, &v.Hand, &v.Price} {
		x.Face, x.Bold = b.faces.Drawing(x.Face, all), b.faces.Drawing(x.Bold, all)
	}
	return v
}

// checked refuses sizes no label has, before any arithmetic on them.
func (c Cell) checked() (Cell, diag.List) {
	const least, most = 8 * unit.Millimetre, 2 * unit.Metre
	var found diag.List
	if c.W < least || c.H < least || c.W > most || c.H > most {
		found.Errorf("cell-size", "", "label.sheet", "a label of %.1f x %.1f mm cannot be set", c.W.MM(), c.H.MM()).
			Hinted("labels may be from 8 mm to 2 m")
		return c, found
	}
	short := min(c.W, c.H)
	c.Safe = min(max(0, c.Safe), short/4)
	c.Corner = min(max(0, c.Corner), short/2)
	c.Bleed = min(max(0, c.Bleed), 20*unit.Millimetre)
	if c.Shape == "" {
		c.Shape = page.Rectangle
	}
	return c, found
}

// checkFaces refuses a design whose faces are not there.
func (b brief) checkFaces() (found diag.List) {
	v := b.voices
	for _, x := range []design.Voice{v.Title, v.Subtitle, v.Brand, v.Net, v.Text, v.Small, v.Hand, v.Price} {
		for _, name := range []page.Face{x.Face, x.Bold, x.Narrow.Face, x.Narrow.Bold} {
			if name == "" {
				continue
			}
			if _, err := b.faces.Open(name); err != nil {
				found.Errorf("unknown-typeface", "", "label.design", "design %q asks for a typeface that is not there: %v", b.design, err).
					Hinted("choose one from the fonts folder")
			}
		}
	}
	return found
}

// blank is the label with nothing on it, nil when it has no size.
func (b brief) blank() *page.Frame {
	if b.cell.W == 0 {
		return nil
	}
	c := b.cell
	return &page.Frame{W: c.W, H: c.H, Shape: c.Shape, Corner: c.Corner, Safe: c.Safe, Bleed: c.Bleed,
		Design: b.design, Piece: string(b.as), Name: b.name}
}

// within reports whether a box lies on the label, margin from its edge.
func (b brief) within(box page.Rect, margin unit.Length) bool {
	f := b.blank()
	f.Safe = margin
	return f.Within(box, 0)
}

// short is the shorter side of the piece, the measure of display sizes.
func (b brief) short() unit.Length { return min(b.cell.W, b.cell.H) }

// voice makes a design's voice speak on a ground.
func (b brief) voice(v design.Voice, on roles) typeset.Voice {
	out := typeset.Voice{
		Regular: b.faces.Face(v.Face), Track: int(v.Track * 1000),
		Leading: v.Leading, Colour: on.text(v.Colour, textContrast), KernMin: 4,
		Upper: v.Case == "upper", Lower: v.Case == "lower",
	}
	if v.Bold != "" {
		out.Bold = b.faces.Face(v.Bold)
	}
	return out
}
