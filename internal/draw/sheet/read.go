package sheet

import (
	"errors"
	"fmt"
	"path"
	"regexp"
	"strings"
	"unicode"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/kit/unit"
)

// raw is a sheet file as written. Measures are texts with units: "4 in",
// "70 mm"; pairs are width x height: "4 x 2 in".
type raw struct {
	ID        string   `toml:"id"`
	Title     string   `toml:"title"`
	Note      string   `toml:"note"`
	Pieces    []string `toml:"pieces"`
	Paper     string   `toml:"paper"` // "letter", "a4" or a pair
	Landscape bool     `toml:"landscape"`
	Auto      bool     `toml:"auto"`
	Endless   bool     `toml:"endless"`
	Shape     string   `toml:"shape"`
	Cell      string   `toml:"cell"`
	Corner    string   `toml:"corner"`
	Cols      int      `toml:"cols"`
	Rows      int      `toml:"rows"`
	Pitch     string   `toml:"pitch"` // may be left out when cells touch
	Gutter    string   `toml:"gutter"`
	Safe      string   `toml:"safe"`
	Bleed     string   `toml:"bleed"`
	Symmetric bool     `toml:"symmetric"`
	Cut       bool     `toml:"cut"`
	Margin    struct {
		Left   string `toml:"left"`
		Top    string `toml:"top"`
		Right  string `toml:"right"`
		Bottom string `toml:"bottom"`
	} `toml:"margin"`
}

// papers are the named sizes: ANSI/ASME Y14.1 size A and ISO 216 A4.
var papers = map[string][2]unit.Length{
	"letter": {8.5 * 2 * unit.Inch / 2, 11 * unit.Inch},
	"a4":     {210 * unit.Millimetre, 297 * unit.Millimetre},
}

// pieces are the kinds of label a sheet may be meant for, in the words of
// package label.
var pieces = []string{"front", "info", "wrap", "lid", "tag", "strip", "bag", "case", "shelf", "allergens", "sign"}

var idShape = regexp.MustCompile(`^[a-z0-9]+([.-][a-z0-9]+)*$`)

// Parse reads one sheet file. The name is shown in findings, and must be
// ID.toml. With an error among the findings the sheet is nil.
func Parse(name string, data []byte) (*Sheet, diag.List) {
	f, l := source.Parse(name, data)
	if l.HasErrors() || f == nil {
		return nil, l
	}
	var w raw
	l = append(l, source.Decode(f, &w)...)
	if l.HasErrors() {
		return nil, f.Locate(l)
	}
	r := reader{file: name}
	s := r.sheet(w)
	if !r.l.HasErrors() {
		s.check(&r.l)
	}
	l = append(l, r.l...)
	if l.HasErrors() {
		s = nil
	}
	return s, f.Locate(l)
}

// reader turns the texts of one file into measures, noting what is wrong.
type reader struct {
	l    diag.List
	file string
}

func (r *reader) sheet(w raw) *Sheet {
	s := &Sheet{ID: w.ID, Title: w.Title, Note: w.Note, File: r.file, Auto: w.Auto, Symmetric: w.Symmetric, Cut: w.Cut || w.Auto && !w.Endless}
	if want := strings.TrimSuffix(path.Base(r.file), ".toml"); w.ID != want || !idShape.MatchString(w.ID) {
		r.l.Errorf("sheet-id", r.file, "id", "id %q is not the name of its file", w.ID).
			Hinted(fmt.Sprintf("write id = %q; small letters, digits, dots and hyphens", want))
	}
	if strings.TrimSpace(w.Title) == "" {
		r.l.Errorf("sheet-title", r.file, "title", "the sheet has no title").Hinted(`add title = "..."`)
	}
	s.Pieces = r.pieces(w.Pieces)
	s.PaperW, s.PaperH = r.paper(w.Paper)
	if w.Landscape {
		s.PaperW, s.PaperH = s.PaperH, s.PaperW
	}
	s.Left, s.Top = r.length("margin.left", w.Margin.Left), r.length("margin.top", w.Margin.Top)
	s.Right, s.Bottom = r.length("margin.right", w.Margin.Right), r.length("margin.bottom", w.Margin.Bottom)
	s.Safe = r.length("safe", w.Safe)
	if w.Auto {
		r.plain(s, w)
	} else {
		r.grid(s, w)
	}
	return s
}

// plain reads what paper without cells has.
func (r *reader) plain(s *Sheet, w raw) {
	for _, k := range []struct {
		key string
		set bool
	}{{"cell", w.Cell != ""}, {"cols", w.Cols != 0}, {"rows", w.Rows != 0}, {"pitch", w.Pitch != ""}, {"corner", w.Corner != ""}, {"shape", w.Shape != ""}} {
		if k.set {
			r.l.Errorf("sheet-auto", r.file, k.key, "%s has no meaning on paper that takes labels of any size", k.key).
				Hinted("remove it, or remove auto = true")
		}
	}
	s.Shape = page.Rectangle
	s.Gutter, s.Bleed, s.Endless = r.length("gutter", w.Gutter), r.length("bleed", w.Bleed), w.Endless
}

// grid reads the cells.
func (r *reader) grid(s *Sheet, w raw) {
	s.Shape = page.Shape(w.Shape)
	switch s.Shape {
	case "":
		s.Shape = page.Rectangle
	case page.Rectangle, page.Ellipse, page.TagShape:
	default:
		r.l.Errorf("sheet-shape", r.file, "shape", "no shape %q", w.Shape).Hinted("rectangle, ellipse or tag")
	}
	if w.Gutter != "" {
		r.l.Errorf("sheet-gutter", r.file, "gutter", "gutter is for plain paper").Hinted("say pitch: from a label's edge to the same edge of the next")
	}
	if w.Endless {
		r.l.Errorf("sheet-auto", r.file, "endless", "endless paper has no cells").Hinted("add auto = true and leave cell, cols and rows out")
	}
	s.W, s.H = r.pair("cell", w.Cell)
	s.Corner = r.length("corner", w.Corner)
	s.Cols, s.Rows = r.count("cols", w.Cols), r.count("rows", w.Rows)
	s.PitchX, s.PitchY = s.W, s.H
	if w.Pitch != "" {
		s.PitchX, s.PitchY = r.pair("pitch", w.Pitch)
	}
	r.closeGrid(s, w)
	s.Bleed = min(usualBleed, s.roomForBleed())
	if w.Bleed != "" {
		s.Bleed = r.length("bleed", w.Bleed)
	}
}

// closeGrid fills in the margins that were not given: what remains.
func (r *reader) closeGrid(s *Sheet, w raw) {
	gw := unit.Length(s.Cols-1)*s.PitchX + s.W
	gh := unit.Length(s.Rows-1)*s.PitchY + s.H
	remain := func(given, other string, paper, grid, otherLen unit.Length, v *unit.Length) {
		switch {
		case given != "":
		case other != "":
			*v = paper - grid - otherLen
		default:
			*v = (paper - grid) / 2
		}
	}
	remain(w.Margin.Left, w.Margin.Right, s.PaperW, gw, s.Right, &s.Left)
	remain(w.Margin.Right, "left", s.PaperW, gw, s.Left, &s.Right)
	remain(w.Margin.Top, w.Margin.Bottom, s.PaperH, gh, s.Bottom, &s.Top)
	remain(w.Margin.Bottom, "top", s.PaperH, gh, s.Top, &s.Bottom)
}

func (r *reader) pieces(list []string) []string {
	for i, p := range list {
		known := false
		for _, k := range pieces {
			known = known || k == p
		}
		if !known {
			r.l.Errorf("sheet-piece", r.file, fmt.Sprintf("pieces[%d]", i), "no kind of label %q", p).Hinted(strings.Join(pieces, ", "))
		}
	}
	if len(list) == 0 {
		return append([]string(nil), pieces...)
	}
	return list
}

func (r *reader) paper(s string) (w, h unit.Length) {
	if p, ok := papers[strings.ToLower(strings.TrimSpace(s))]; ok {
		return p[0], p[1]
	}
	if s == "" {
		r.l.Errorf("sheet-paper", r.file, "paper", "the paper is not given").Hinted(`write paper = "letter", "a4" or "WIDTH x HEIGHT mm"`)
		return 0, 0
	}
	if w, h = r.pair("paper", s); w != 0 && h != 0 && (w < minSide || h < minSide) {
		r.l.Errorf("sheet-paper", r.file, "paper", "paper of %s is less than 20 mm on a side", size(w, h)).Hinted("give width x height with a unit")
	}
	return w, h
}

func (r *reader) count(key string, n int) int {
	if n < 1 || n > 200 {
		r.l.Errorf("sheet-count", r.file, key, "%s is %d, want 1 to 200", key, n).Hinted("count the labels on one sheet")
		return 1
	}
	return n
}

// length reads one measure; "" is 0.
func (r *reader) length(key, s string) unit.Length {
	if s == "" {
		return 0
	}
	v, err := unit.ParseLength(s)
	if err != nil {
		d := r.l.Errorf("sheet-length", r.file, key, "%s", err)
		var pe *unit.ParseError
		if errors.As(err, &pe) {
			d.Hinted(pe.Hint)
		}
		return 0
	}
	if v < 0 || v > maxSide {
		r.l.Errorf("sheet-length", r.file, key, "%s of %.1f mm is outside 0 mm to 5 m", key, v.MM()).Hinted("check the unit")
		return 0
	}
	return v
}

// pair reads "WIDTH x HEIGHT"; one unit at the end does for both.
func (r *reader) pair(key, s string) (w, h unit.Length) {
	a, b, ok := cutPair(s)
	if !ok {
		r.l.Errorf("sheet-pair", r.file, key, "%s %q is not a width x height", key, s).Hinted(`write it like "4 x 2 in" or "70 x 36 mm"`)
		return 0, 0
	}
	if !strings.ContainsFunc(a, func(c rune) bool { return unicode.IsLetter(c) || c == '"' }) {
		a += " " + strings.TrimLeft(b, "0123456789./, ½¼¾")
	}
	w, h = r.length(key, a), r.length(key, b)
	if !r.l.HasErrors() && (w == 0 || h == 0) {
		r.l.Errorf("sheet-pair", r.file, key, "%s %q has a zero side", key, s).Hinted("measure the label from edge to edge")
	}
	return w, h
}

func cutPair(s string) (a, b string, ok bool) {
	for _, by := range []string{"×", " x ", "x", " by "} {
		if a, b, ok = strings.Cut(s, by); ok {
			a, b = strings.TrimSpace(a), strings.TrimSpace(b)
			return a, b, a != "" && b != ""
		}
	}
	return "", "", false
}
