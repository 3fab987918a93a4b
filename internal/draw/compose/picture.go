package compose

import (
	"fmt"
	"slices"

	"jarmark/internal/draw/design"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// Picture is the maker's own picture on a label.
type Picture struct {
	Image, Grey *page.Image   // Grey prints in black alone
	Spot        string        // "top", "left", "right", "corner"; "" = as the piece is shaped
	Size        unit.Length   // height at most; 0: a share of the piece
	Ornament    bool          // it stands for the design's drawings
	Name        bool          // it stands for the maker's sign
	On          []label.Piece // where it stands
}

const (
	ownPicture   = "picture" // its name among a look's drawings
	usualTop     = 0.3       // of the shorter side of the piece
	usualBeside  = 0.45
	widestBeside = 0.34 // of the piece, beside the name
	lowForTop    = 16   // how much wider than high a panel is, in tenths, on which it stands beside the name
	leastPicture = 5 * unit.Millimetre
	sharp        = 200 // dots per inch under which a picture prints blurred: common practice, no source
)

// wantsPicture reports whether the piece is to bear the maker's picture.
func (b brief) wantsPicture() bool {
	return b.opt.Picture != nil && slices.Contains(b.opt.Picture.On, b.piece)
}

// pictured is a look with the maker's picture among its drawings.
func (b brief) pictured(look design.Look) design.Look {
	if !b.wantsPicture() {
		return look
	}
	p := b.opt.Picture
	o := design.Ornament{Name: ownPicture, Spot: p.Spot, Own: true}
	if _, seal := b.wantsStamp(); seal && o.Spot == "corner" {
		o.Spot = "" // one corner, one thing
	}
	room := b.cell.W
	if b.piece == label.Wrap {
		room = share(room, usualPart)
	}
	switch {
	case o.Spot == "corner" && (b.piece == label.Lid || b.piece == label.Tag):
		o.Spot = "top"
	case o.Spot == "" && b.cell.Shape == page.Rectangle && room*10 > b.cell.H*lowForTop:
		o.Spot = "left"
	case o.Spot == "":
		o.Spot = "top"
	}
	high, wide := p.Size, unit.Length(0)
	switch {
	case high > 0:
	case o.Spot == "top":
		high = share(b.short(), usualTop)
	default:
		high = share(b.short(), usualBeside)
	}
	of := float64(p.Image.W) / float64(p.Image.H)
	switch o.Spot {
	case "top":
		high = min(high, share(room, 0.8/of), share(b.cell.H, 0.5))
	case "corner":
		wide = min(max(high, share(high, of)), share(room, widestBeside))
	default:
		wide = min(share(high, of), share(room, widestBeside))
	}
	o.Size = float64(max(high, 1)) / float64(b.short())
	if wide > 0 {
		o.Size = float64(wide) / float64(b.short())
	}
	if p.Ornament {
		look.Ornaments = nil
	}
	look.Ornaments = append(look.Ornaments[:len(look.Ornaments):len(look.Ornaments)], o)
	if brand, _ := b.block(label.Brand); p.Name && !brand.Required {
		look.Brand = "none"
	}
	return look
}

// pictures draws the maker's picture before all ornaments, clear of what keep
// holds, and keeps those away from it.
func (l *layout) pictures(keep []page.Rect) (drawn []page.Item, _ []page.Rect) {
	keep = append(keep, l.clear...)
	for _, p := range l.drawings {
		if p.o.Name != ownPicture {
			continue
		}
		if at, ok := l.spotFor(p, keep); ok {
			drawn = append(drawn, &page.Picture{At: at, Image: l.image()})
			keep = append(keep, at.Grow(unit.Millimetre, unit.Millimetre))
		}
	}
	l.drawings = slices.DeleteFunc(l.drawings, func(p drawing) bool { return p.o.Name == ownPicture })
	return drawn, keep
}

func (l *layout) image() *page.Image {
	if l.saver {
		return l.opt.Picture.Grey
	}
	return l.opt.Picture.Image
}

// leastPicture is the smallest a picture is drawn: one that is asked for small
// may be smaller.
func (l *layout) leastPicture() unit.Length {
	if s := l.opt.Picture.Size; s > 0 {
		return min(leastPicture, s/2)
	}
	return leastPicture
}

// spotFor is the largest box of the picture's proportions that the room kept
// for it holds.
func (l *layout) spotFor(p drawing, keep []page.Rect) (at page.Rect, ok bool) {
	m := l.image()
	room := p.box
	f := l.blank()
	for size := 1.0; ; size *= 0.95 {
		w := min(share(room.W, size), share(share(room.H, size), float64(m.W)/float64(m.H)))
		at = page.Rect{W: w, H: share(w, float64(m.H)/float64(m.W))}
		if max(at.W, at.H) < l.leastPicture() || min(at.W, at.H) < unit.Millimetre {
			return at, false
		}
		x, y := room.X+(room.W-at.W)/2, []unit.Length{room.Y + (room.H-at.H)/2, room.Y}
		switch p.o.Spot {
		case "top":
			y = append([]unit.Length{room.Y + room.H - at.H}, y...) // nearer the name, where a round label is wider
			if l.align() == typeset.Left {
				x = room.X
			}
		case "corner":
			x, y = room.X+room.W-at.W, []unit.Length{room.Y}
		}
		for _, at.Y = range y {
			if at.X = x; f.Within(at, 0) && !meets(at, keep) && !l.crossed(at) {
				return at, true
			}
		}
	}
}

// crossed reports whether a line of the frame runs through a box.
func (l *layout) crossed(r page.Rect) bool {
	return slices.ContainsFunc(l.items, func(it page.Item) bool {
		p, ok := it.(*page.Path)
		return ok && !p.Bleed && p.Crosses(r)
	})
}

// onPaper tells of a picture that has no room on a finished label, or prints
// blurred.
func (b brief) onPaper(f *page.Frame) (found diag.List) {
	if !b.wantsPicture() || f == nil {
		return nil
	}
	i := slices.IndexFunc(f.Items, func(it page.Item) bool { _, ok := it.(*page.Picture); return ok })
	if i < 0 {
		found.Warnf("no-room-for-picture", "", "picture.file", "the %s label has no room for your picture", b.as).
			Hinted("take a larger label, give the picture another place (where), or leave this label out of its list (on)")
		return found
	}
	p := f.Items[i].(*page.Picture)
	m := p.Image
	if len(m.Art) > 0 {
		return b.thin(p)
	}
	dots := float64(m.FullW) / (p.At.W.MM() / 25.4)
	if dots < sharp {
		wide := float64(m.FullW) / sharp * 25.4
		high := wide * float64(m.FullH) / float64(m.FullW)
		help := "take a picture of more pixels"
		if high >= 3 {
			help = fmt.Sprintf("it is sharp up to %.0f x %.0f mm: take a picture of more pixels, or write size = \"%.0f mm\"", wide, high, high)
		}
		found.Warnf("picture-coarse", "", "picture.file", "%s has %d x %d pixels: on the %s label, %.0f x %.0f mm, that is %.0f dots per inch, and under %d it prints blurred",
			m.Name, m.FullW, m.FullH, b.as, p.At.W.MM(), p.At.H.MM(), dots, sharp).
			Hinted(help)
	}
	return found
}

// thinnest is the least width of a drawing's lines, 0.25 pt: common practice, no
// source.
const thinnest = 88_194 * unit.Nanometre

// thin tells of a drawing whose lines print too thin.
func (b brief) thin(p *page.Picture) (found diag.List) {
	by := float64(p.At.W) / float64(unit.Length(p.Image.W)*page.ArtUnit)
	least := thinnest
	for _, path := range p.Image.Art {
		if path.Stroke != nil {
			least = min(least, unit.Length(float64(path.Width)*by))
		}
	}
	if least < thinnest {
		found.Warnf("picture-thin", "", "picture.file", "%s has lines that are %.2f mm wide on the %s label: under %.2f mm they may not print", p.Image.Name, least.MM(), b.as, thinnest.MM()).
			Hinted("draw them thicker, or let the picture be larger (size)")
	}
	return found
}
