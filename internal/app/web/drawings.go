package web

import (
	"strings"
	"sync"
)

// drawings remembers what browsers were sent, so that of a drawing that follows
// one they hold only the lines that changed are sent: a key pressed changes a
// line or two of hundreds.
type drawings struct {
	sync.Mutex
	held  map[string]drawing // by mark
	marks []string           // oldest first
	bytes int
}

// drawing is a label's drawing, an element a line (svg.Frame).
type drawing struct {
	piece string
	lines []string
	bytes int
}

// maxDrawings bounds what is remembered, in bytes: some ten rounds of every
// piece. Of what is forgotten the next drawing is sent whole.
const maxDrawings = 6 << 20

func (d *drawings) keep(mark, piece string, lines []string, bytes int) {
	d.Lock()
	defer d.Unlock()
	if _, known := d.held[mark]; known || bytes > maxDrawings {
		return
	}
	if d.held == nil {
		d.held = map[string]drawing{}
	}
	d.held[mark] = drawing{piece, lines, bytes}
	d.marks = append(d.marks, mark)
	for d.bytes += bytes; d.bytes > maxDrawings; d.marks = d.marks[1:] {
		d.bytes -= d.held[d.marks[0]].bytes
		delete(d.held, d.marks[0])
	}
}

// nearest is the drawing of a piece, among those a browser has, that shares
// most lines with a new one; "" for none.
func (d *drawings) nearest(piece string, lines, have []string) (mark string, base []string) {
	now := map[string]bool{}
	for _, l := range lines {
		now[l] = true
	}
	d.Lock()
	defer d.Unlock()
	best := -1
	for _, m := range have {
		b, known := d.held[m]
		if !known || b.piece != piece {
			continue
		}
		n := 0
		for _, l := range b.lines {
			if now[l] {
				n++
			}
		}
		if n > best {
			best, mark, base = n, m, b.lines
		}
	}
	return mark, base
}

// since tells the lines of a drawing by those of another: runs of its lines,
// [from, count], and lines that are new.
func since(base, lines []string) (out []any) {
	at := map[string]int{}
	for i, l := range base {
		at[l] = i
	}
	next, run := -1, [2]int{}
	end := func() {
		if run[1] > 0 {
			out = append(out, run)
		}
		run = [2]int{}
	}
	for _, l := range lines {
		i, known := at[l]
		switch {
		case next >= 0 && next < len(base) && base[next] == l:
			run[1]++
			next++
		case known:
			end()
			run, next = [2]int{i, 1}, i+1
		default:
			end()
			next = -1
			out = append(out, l)
		}
	}
	end()
	return out
}

// send gives a label's drawing as it goes to a browser: nothing of one it has,
// of another what changed since the nearest it has, or all.
func (d *drawings) send(p *picture, svg []byte, have []string) {
	lines := strings.Split(strings.TrimSuffix(string(svg), "\n"), "\n")
	for _, m := range have {
		if m == p.Mark {
			return
		}
	}
	base, was := d.nearest(p.Piece, lines, have)
	d.keep(p.Mark, p.Piece, lines, len(svg))
	if base == "" {
		p.SVG = string(svg)
		return
	}
	p.Base, p.Lines = base, since(was, lines)
}
