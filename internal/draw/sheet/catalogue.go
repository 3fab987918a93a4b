package sheet

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"sort"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/unit"
)

// Catalogue is all sheets at hand, by id.
type Catalogue struct {
	byID map[string]*Sheet
	ids  []string
}

// Load reads sheets/*.toml of the built-in folder and of the maker's own,
// either of which may be nil. An own sheet replaces a built-in one of the
// same id. A file with errors is left out, and the findings say why.
func Load(builtin, own fs.FS) (*Catalogue, diag.List) {
	c, l := new(Catalogue).With(builtin)
	c, more := c.With(own)
	return c, append(l, more...)
}

// With lays the sheets of a folder, which may be nil, over these.
func (c *Catalogue) With(folder fs.FS) (*Catalogue, diag.List) {
	if folder == nil {
		return c, nil
	}
	out := &Catalogue{byID: map[string]*Sheet{}}
	maps.Copy(out.byID, c.byID)
	l := out.add(folder)
	out.ids = slices.Sorted(maps.Keys(out.byID))
	return out, l
}

func (c *Catalogue) add(from fs.FS) diag.List {
	var l diag.List
	names, err := fs.Glob(from, "sheets/*.toml")
	if err != nil {
		l.Errorf("unreadable", "sheets", "", "cannot list the sheets: %v", err)
		return l
	}
	for _, name := range names {
		data, err := fs.ReadFile(from, name)
		if err != nil {
			l.Errorf("unreadable", name, "", "cannot read %s: %v", path.Base(name), err)
			continue
		}
		s, found := Parse(name, data)
		l = append(l, found...)
		if s != nil {
			c.byID[s.ID] = s
		}
	}
	return l
}

// Get gives the sheet of an id.
func (c *Catalogue) Get(id string) (*Sheet, bool) {
	s, ok := c.byID[id]
	return s, ok
}

// List gives every sheet in the order of the ids.
func (c *Catalogue) List() []*Sheet {
	out := make([]*Sheet, len(c.ids))
	for i, id := range c.ids {
		out[i] = c.byID[id]
	}
	return out
}

// For gives the sheets meant for a piece ("front", "lid"), label sheets before
// plain paper.
func (c *Catalogue) For(piece string) []*Sheet {
	var grids, plain []*Sheet
	for _, s := range c.List() {
		switch {
		case !s.Takes(piece):
		case s.Auto:
			plain = append(plain, s)
		default:
			grids = append(grids, s)
		}
	}
	return append(grids, plain...)
}

// Room gives the sheets meant for a piece whose cells hold a label of a size,
// either way round, the closest cell first and plain paper last: what to offer
// when a label is too full for its cell.
func (c *Catalogue) Room(piece string, w, h unit.Length) []*Sheet {
	var out []*Sheet
	for _, s := range c.For(piece) {
		if s.holds(w, h) {
			out = append(out, s)
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.Auto != b.Auto {
			return b.Auto
		}
		return a.W.MM()*a.H.MM() < b.W.MM()*b.H.MM()
	})
	return out
}

func (s *Sheet) holds(w, h unit.Length) bool {
	if w < leastLabel || h < leastLabel {
		return false
	}
	if s.Auto {
		g := plan(s, &page.Frame{W: w, H: h, Bleed: s.Bleed})
		return g.cols > 0 && g.rows > 0
	}
	return w <= s.W && h <= s.H || h <= s.W && w <= s.H
}
