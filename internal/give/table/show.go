package table

import (
	"strings"
)

// columnsWide is the width of the text output.
const columnsWide = 80

// Text shows the list for a terminal of 80 columns.
func (l *List) Text() string {
	w := &writer{}
	w.line("%s", l.Head)
	for _, s := range strings.Split(l.Sum, "\n") {
		w.wrap("", s)
	}
	for _, p := range l.Parts {
		rows := p.rows(OnText)
		switch {
		case p.Title != "" && on(p.Not, OnText):
			w.head(p.Title, p.Sum)
		case len(rows) > 0:
			w.line("")
		}
		wide := w.columns(p.Columns, rows)
		for _, r := range rows {
			w.show(p, r, wide)
		}
	}
	return w.b.String()
}

func (w *writer) show(p Part, r Row, wide []int) {
	const under = "      "
	switch r.Type {
	case Item:
		switch {
		case len(p.Columns) > 0:
			w.figures(r.What, r.Figures, wide)
		case r.Tick:
			w.row("[ ] "+r.Amount, r.What, r.Note)
		case p.Flush:
			w.row(r.Amount, r.What, r.Note)
		default:
			w.row("    "+r.Amount, r.What, r.Note)
		}
	case Say:
		if p.Title == "" {
			w.wrap("", r.What)
		} else {
			w.wrap("  ", r.What)
		}
	case Aside:
		w.wrap(under, r.What)
	case Alarm:
		w.wrap("  !!  ", r.What)
	case Crate:
		w.wrap(under, r.What+": "+r.Under)
	case Step:
		w.wrap("  [ ] ", r.What)
	}
}

// columns are the widths of figures: the first is what is left for names.
func (w *writer) columns(heads []string, rows []Row) []int {
	if len(heads) == 0 {
		return nil
	}
	wide := make([]int, len(heads))
	for i, h := range heads {
		wide[i] = width(h)
	}
	for _, r := range rows {
		for i, f := range r.Figures {
			if i+1 < len(wide) {
				wide[i+1] = max(wide[i+1], width(clean(f)))
			}
		}
		wide[0] = max(wide[0], width(clean(r.What)))
	}
	room := columnsWide
	for i, n := range wide[1:] {
		wide[i+1] = n + columnGap
		room -= wide[i+1]
	}
	for i := 1; room < leastName && i < len(wide); i++ { // long words of another language: the columns stand closer
		wide[i]--
		room++
	}
	wide[0] = max(min(wide[0], room), 8)
	w.figures(heads[0], heads[1:], wide)
	return wide
}

// columnGap stands between two columns, leastName is room for a short name.
const (
	columnGap = 2
	leastName = 12
)

// figures is a row of a table; a name too long for its column has a line of
// its own before them.
func (w *writer) figures(name string, figures []string, wide []int) {
	name = clean(name)
	if width(name) > wide[0] && len(figures) > 0 {
		w.line("%s", name)
		name = ""
	}
	name = cut(name, wide[0])
	line := name + strings.Repeat(" ", max(0, wide[0]-width(name)))
	for i, f := range figures {
		if i+1 < len(wide) {
			line += strings.Repeat(" ", max(1, wide[i+1]-width(clean(f)))) + clean(f)
		}
	}
	w.line("%s", line)
}
