package compose

import (
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// slots takes the varying text of the reserved blocks off the frame and keeps
// its places. A block's last stretch of type varies ("07 / 12" after a bold
// "Jar"); what stands before it is printed on every copy.
func (l *layout) slots(f *page.Frame) {
	for _, k := range l.opt.Reserve {
		b, ok := l.block(k)
		if !ok {
			continue
		}
		last := -1
		for i, it := range f.Items {
			if t, ok := it.(*page.Text); ok && t.Block == b.ID {
				last = i
			}
		}
		if last < 0 {
			continue
		}
		t := f.Items[last].(*page.Text)
		f.Slots = append(f.Slots, page.Slot{
			Block: b.ID, Kind: string(k), Face: t.Face, Size: t.Size, At: t.At,
			Width: max(t.Box.W, l.room[b.ID]), Colour: t.Colour,
		})
		f.Items = append(f.Items[:last:last], f.Items[last+1:]...)
	}
}

// keepRoom notes how wide the varying text of a block may become.
func (l *layout) keepRoom(b label.Block, w unit.Length) {
	if l.room == nil {
		l.room = map[string]unit.Length{}
	}
	l.room[b.ID] = w
}

// Overlay sets text in a slot, smaller when it is too long, down to seven
// tenths of the slot's size. ok is false when it does not fit even so, or a
// character cannot be drawn: compose such a copy on its own instead.
func Overlay(slot page.Slot, text string, f *face.Set) (items []page.Item, ok bool) {
	fc := f.Face(slot.Face)
	if fc == nil {
		return nil, false
	}
	for _, r := range text {
		if !fc.Has(r) {
			return nil, false
		}
	}
	p := typeset.New(typeset.Voice{Regular: fc, KernMin: 4, Colour: slot.Colour}, typeset.Say(slot.Block, []label.Run{{Text: text}}, true))
	w := p.LineWidth(0, len(p.Words))
	if w <= 0 {
		return nil, true
	}
	size := min(slot.Size, slot.Width*1000/unit.Length(w))
	if size < slot.Size*7/10 {
		return nil, false
	}
	return p.SetLine(0, len(p.Words), size, slot.At), true
}
