package compose

import (
	"slices"

	"jarmark/internal/draw/page"
	"jarmark/internal/draw/typeset"
	"jarmark/internal/kit/unit"
	"jarmark/internal/law/label"
)

// codeBox is where a QR code stands with its caption.
type codeBox struct {
	box, hole page.Rect
	caption   []page.Item
}

// codeSpot finds the code that suits the text beside it: in the upper right
// corner of the region, its caption under it. It has the size usual on such a
// label in every design; where that would cost the text too much, the next of
// a few smaller ones.
func (l *layout) codeSpot(p codePlan, in region, ps []passage, on roles) (codeBox, bool) {
	sides := l.codeSides(p)
	var spots []codeBox
	var eases []float64
	for _, side := range sides {
		sp, ease, ok := l.codeBeside(p, in, ps, side, on)
		if !ok {
			ease = -1
		}
		spots, eases = append(spots, sp), append(eases, ease)
	}
	for i, ease := range eases {
		if ease >= 0 && ease >= goodEase*slices.Max(eases) {
			return spots[i], true
		}
	}
	return codeBox{}, false
}

// goodEase is how much of the size it might have text keeps beside a code of
// the usual size (our own taste).
const goodEase = 0.8

// codeBeside is a code of one size and how easily the text beside it is read.
func (l *layout) codeBeside(p codePlan, in region, ps []passage, side unit.Length, on roles) (best codeBox, ease float64, ok bool) {
	most := -1.0
	for _, column := range []bool{true, false} {
		try, fits := l.codeAt(p, in, side, column, on)
		if !fits {
			continue
		}
		f := fitFlow(ps, in.less(try.hole), typeset.Left)
		if !f.fits {
			continue
		}
		e := easeOf(ps, f.scale)
		score := 2 * e
		if len(try.caption) > 0 {
			score += 0.15
		}
		if column {
			score += 0.05
		}
		if score > most {
			best, ease, ok, most = try, e, true, score
		}
	}
	return best, ease, ok
}

// codeModules are the sizes a module of a code may have, largest first: few, so
// that the codes of a set and of several designs are alike.
var codeModules = []unit.Length{600 * unit.Micrometre, 500 * unit.Micrometre, 420 * unit.Micrometre}

// codeSides are the sizes to try for a code, by the label alone and never by
// the design: at most a third of its height and a fifth of its width, of an
// information label a sixth, which may lose as much to a frame; on a low label up
// to half its height.
func (l *layout) codeSides(p codePlan) []unit.Length {
	low := min(share(l.cell.H, 0.5), 25*unit.Millimetre/2)
	wide := 0.2
	if l.piece == label.InfoLabel {
		wide = 0.175
	}
	most := min(max(low, share(l.cell.H, 0.36)), share(l.cell.W, wide))
	var out []unit.Length
	for _, m := range codeModules {
		if side := p.side(m); side > p.least && side <= most {
			out = append(out, side)
		}
	}
	return append(out, p.least)
}

// easeOf says how easy text is to read at a scale, up to 1: its size, and a
// little its line spacing.
func easeOf(ps []passage, t float64) float64 {
	size, most := unit.Length(0), unit.Length(1)
	for _, p := range ps {
		at, _ := p.sized(t)
		size += at
		most += p.best
	}
	return 0.85*float64(size)/float64(most) + 0.15*max(0, t)
}

// codeAt places a code of a side in the upper right corner, in a column of its
// own or with text running on below it.
func (l *layout) codeAt(p codePlan, in region, side unit.Length, column bool, on roles) (codeBox, bool) {
	quiet := p.blank(side)
	if in.oval.W > 0 {
		return l.codeInOval(p, in, side)
	}
	// The margin outside the region is blank and may be part of the quiet zone.
	edge := max(0, quiet-l.blankBeside(in))
	wide := side
	if column {
		wide = max(side, min(l.captionWidth(p, on), side*5/4))
	}
	box := page.Rect{X: in.X + in.W - edge - (wide+side)/2, Y: in.Y + edge, W: side, H: side}
	sp := codeBox{box: box, hole: box.Grow(quiet, quiet)}
	lead := max(quiet, (wide-side)/2+share(quiet, 0.7))
	sp.hole.X, sp.hole.W = box.X-lead-share(quiet, 0.4), in.X+in.W+quiet-box.X+lead
	if !l.codeFits(box, quiet) || sp.hole.X < in.X || sp.hole.Y+sp.hole.H > in.Y+in.H+quiet {
		return sp, false
	}
	if p.hasCap && side >= 11*unit.Millimetre {
		sp.caption = l.captionUnder(p, box, quiet, in, wide, on)
		if cap := l.inkOf(sp.caption); cap.W > 0 {
			sp.hole.H = max(sp.hole.H, cap.Y+cap.H+quiet/2-sp.hole.Y)
		}
	}
	if column {
		sp.hole.H = in.Y + in.H + quiet - sp.hole.Y
	}
	return sp, true
}

// captionWidth is how wide a caption is in two lines of its best size.
func (l *layout) captionWidth(p codePlan, on roles) unit.Length {
	if !p.hasCap {
		return 0
	}
	q := typeset.New(l.voice(l.voices.Small, on), typeset.Say(p.caption.ID, p.caption.Runs, p.caption.Exact))
	return typeset.At(typeset.Narrowest(q.Boxes(), 2), unit.Points(l.voices.Small.Size.Best)) + unit.Millimetre/2
}

func (l *layout) codeInOval(p codePlan, in region, side unit.Length) (codeBox, bool) {
	quiet := p.blank(side)
	mid := in.oval.Y + in.oval.H/2
	y := min(max(mid-side/2, in.Y+quiet), in.Y+in.H-side-quiet)
	half := min(halfChord(in.oval, y-quiet), halfChord(in.oval, y+side+quiet))
	x1 := min(in.X+in.W, in.oval.X+in.oval.W/2+half)
	box := page.Rect{X: x1 - side - quiet, Y: y, W: side, H: side}
	return codeBox{box: box, hole: box.Grow(quiet, quiet)}, box.X > in.X+in.W/4 && y-quiet >= in.Y && l.codeFits(box, quiet)
}

// codeFits reports whether a code lies in the safe area and its quiet zone on
// the label.
func (l *layout) codeFits(box page.Rect, quiet unit.Length) bool {
	edge := unit.Length(0)
	if l.piece != label.Wrap { // whose facts stand outside frame and ring
		if line := l.innerLine(l.short()); line > 0 {
			edge = line + hairline
		}
		edge = max(edge, l.ringWidth())
	}
	return l.within(box, l.cell.Safe) && l.within(box.Grow(quiet, quiet), edge)
}

// blankBeside is the blank between a region and the trim at its upper right.
func (l *layout) blankBeside(in region) unit.Length {
	return max(0, min(in.Y-l.open.Y, l.open.X+l.open.W-in.X-in.W))
}

// captionUnder sets the caption in small type centred under a code, in two
// lines where they are wide enough.
func (l *layout) captionUnder(p codePlan, box page.Rect, quiet unit.Length, in region, wide unit.Length, on roles) []page.Item {
	v := l.voice(l.voices.Small, on)
	v.Leading = 1.25
	least := max(legible, leastSize(v, p.caption, p.caption.Text()))
	q := typeset.New(v, typeset.Say(p.caption.ID, p.caption.Runs, p.caption.Exact))
	past := min(quiet, in.X+in.W-box.X-box.W+quiet, l.cell.W-l.cell.Safe-box.X-box.W)
	past = max(past, (wide-box.W)/2)
	room := region{Rect: page.Rect{X: box.X - past, Y: box.Y + box.H + quiet, W: box.W + 2*past, H: in.Y + in.H - box.Y - box.H - quiet}}
	size := max(least, unit.Points(l.voices.Small.Size.Least), min(unit.Points(l.voices.Small.Size.Best), box.W/6))
	if two := room.W * 1000 / unit.Length(max(1, typeset.Narrowest(q.Boxes(), 2)+20)); two >= least {
		size = min(size, two)
	}
	f := flow([]passage{{para: q, least: least, best: size, ragged: typeset.Balanced}}, room, typeset.Centre)
	if !f.fits {
		return nil
	}
	return f.items
}
