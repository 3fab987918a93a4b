package design

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
)

// reader turns a raw file into a design, collecting findings.
type reader struct {
	file  string
	found diag.List
}

func (r *reader) design(raw rawDesign) *Design {
	d := &Design{Name: raw.Name, About: raw.About, looks: map[label.Piece]Look{}}
	if strings.TrimSpace(raw.Name) == "" {
		r.found.Errorf("missing-name", r.file, "name", "design has no name").Hinted(`add name = "..."`)
	}
	d.Season = r.word("season", raw.Season, "all year", Seasons)
	for i, u := range raw.Use {
		d.Use = append(d.Use, r.word(fmt.Sprintf("use[%d]", i), u, "market", Uses))
	}
	d.Voices = defaultVoices
	r.voices(&d.Voices, raw.Voice)
	base := r.look("look", defaultLook, raw.Look)
	d.looks[""] = base
	for _, name := range slices.Sorted(maps.Keys(raw.Piece)) {
		at := "piece." + name
		if !knownPiece(name) {
			r.unknown("unknown-piece", at, name, pieceWords())
			continue
		}
		d.looks[label.Piece(name)] = r.look(at, base, raw.Piece[name])
	}
	return d
}

func pieceWords() []string {
	var out []string
	for _, p := range label.Pieces {
		out = append(out, string(p))
	}
	return out
}

func (r *reader) voices(v *Voices, raw map[string]rawVoice) {
	byName := map[string]*Voice{
		"title": &v.Title, "subtitle": &v.Subtitle, "brand": &v.Brand, "net": &v.Net,
		"text": &v.Text, "small": &v.Small, "hand": &v.Hand, "price": &v.Price,
	}
	for _, name := range slices.Sorted(maps.Keys(raw)) {
		at := "voice." + name
		to, ok := byName[name]
		if !ok {
			r.unknown("unknown-voice", at, name, slices.Sorted(maps.Keys(byName)))
			continue
		}
		r.voice(at, to, raw[name])
	}
}

// boldOf is the bold face of a face's family, for words the law wants bold
// (the name of the food, 21 CFR 101.3(d)): of an italic the bold italic. Empty
// where the family has none.
func boldOf(name string) page.Face {
	family, italic := familyOf(name)
	switch {
	case (family == "Fraunces" || family == "Fraunces144pt") && italic:
		return page.Face(family + "_700Bold_Italic")
	case family == "Fraunces", family == "Fraunces144pt", family == "Figtree", family == "AsapCondensed":
		return page.Face(family + "_700Bold")
	}
	return ""
}

// narrowOf is the narrow pair that goes with a face's family; empty where there
// is none.
func narrowOf(name string) Pair {
	switch family, italic := familyOf(name); {
	case family == "Fraunces" && italic:
		return Pair{displayItalic, displayItalic}
	case family == "Fraunces":
		return Pair{displayBold, displayBold}
	case family == "Figtree" && !italic:
		if strings.Contains(name, "Bold") {
			return Pair{narrowBold, narrowBold}
		}
		return Pair{narrowPlain, narrowBold}
	}
	return Pair{}
}

func familyOf(name string) (family string, italic bool) {
	family, _, _ = strings.Cut(name, "_")
	return family, strings.HasSuffix(name, "_Italic")
}

func (r *reader) voice(at string, v *Voice, raw rawVoice) {
	if raw.Face != nil {
		v.Face, v.Bold = page.Face(*raw.Face), boldOf(*raw.Face)
	}
	if raw.Bold != nil {
		v.Bold = page.Face(*raw.Bold)
	}
	switch len(raw.Narrow) {
	case 0:
		if raw.Narrow != nil || raw.Face != nil {
			v.Narrow = narrowOf(string(v.Face))
		}
	case 1, 2:
		v.Narrow = Pair{page.Face(raw.Narrow[0]), page.Face(raw.Narrow[len(raw.Narrow)-1])}
	default:
		r.found.Errorf("out-of-range", r.file, at+".narrow", "%d narrow faces", len(raw.Narrow)).
			Hinted(`one face, or a plain and a bold one: narrow = ["AsapCondensed_400Regular", "AsapCondensed_700Bold"]`)
	}
	v.Case = r.optWord(at+".case", raw.Case, v.Case, Cases)
	v.Colour = r.optWord(at+".colour", raw.Colour, v.Colour, Colours)
	v.Track = r.number(at+".tracking", raw.Tracking, v.Track, -0.05, 0.5)
	v.Leading = r.number(at+".leading", raw.Leading, v.Leading, 0.9, 2)
	v.Size = r.sizes(at+".size", raw.Size, v.Size)
}

func (r *reader) look(at string, l Look, raw rawLook) Look {
	l.Align = r.optWord(at+".align", raw.Align, l.Align, Aligns)
	l.Margin = r.number(at+".margin", raw.Margin, l.Margin, 0, 0.25)
	l.Paper = r.optWord(at+".paper", raw.Paper, l.Paper, Colours)
	l.Info = r.optWord(at+".info", raw.Info, l.Info, Colours)
	l.Frame = r.optWord(at+".frame", raw.Frame, l.Frame, Frames)
	l.FrameColour = r.optWord(at+".frame_colour", raw.FrameColour, l.FrameColour, Colours)
	l.Rule = r.optWord(at+".rule", raw.Rule, l.Rule, Rules)
	l.RuleColour = r.optWord(at+".rule_colour", raw.RuleColour, l.RuleColour, Colours)
	l.Divider = r.optWord(at+".divider", raw.Divider, l.Divider, Dividers)
	l.Brand = r.optWord(at+".brand", raw.Brand, l.Brand, Brands)
	l.Drawing = r.optWord(at+".drawing", raw.Drawing, l.Drawing, Drawings)
	l.Title = r.sizes(at+".title", raw.Title, l.Title)
	if raw.Band != nil {
		l.Band = r.band(at+".band", *raw.Band)
	}
	if raw.Ornament != nil {
		l.Ornaments = nil
		for i, o := range raw.Ornament {
			l.Ornaments = append(l.Ornaments, r.ornament(fmt.Sprintf("%s.ornament[%d]", at, i), o))
		}
	}
	return l
}

func (r *reader) band(at string, raw rawBand) Band {
	size := raw.Size
	b := Band{
		Edge:    r.word(at+".edge", raw.Edge, "none", Edges),
		Size:    r.number(at+".size", &size, 0.1, 0, 0.4),
		Fill:    r.word(at+".fill", raw.Fill, "main", Colours),
		Pattern: r.word(at+".pattern", raw.Pattern, "plain", Patterns),
	}
	if raw.Instead != nil {
		other := *raw.Instead
		other.Instead = nil // one step is enough
		b.Instead = new(r.band(at+".instead", other))
	}
	return b
}

func (r *reader) ornament(at string, raw rawOrnament) Ornament {
	size, reach, density := raw.Size, raw.Reach, raw.Density
	o := Ornament{
		Name:    r.word(at+".name", raw.Name, "", drawings()),
		Spot:    r.word(at+".spot", raw.Spot, "top", Spots),
		Size:    r.number(at+".size", &size, 0.2, 0, 3),
		Reach:   r.number(at+".reach", &reach, 0, 0, 3),
		Density: r.number(at+".density", &density, 0, 0, 2),
		Seed:    raw.Seed,
	}
	if raw.Instead != nil {
		other := *raw.Instead
		other.Instead = nil // one step is enough
		o.Instead = new(r.ornament(at+".instead", other))
	}
	if o.Name == "" && raw.Name == "" {
		r.found.Errorf("missing-name", r.file, at, "ornament has no name").Hinted("one of " + strings.Join(drawings(), ", "))
	}
	return o
}

// word checks a word against those allowed; empty takes the default.
func (r *reader) word(at, s, otherwise string, allowed []string) string {
	if s == "" {
		return otherwise
	}
	if !slices.Contains(allowed, s) {
		r.unknown("unknown-word", at, s, allowed)
		return otherwise
	}
	return s
}

func (r *reader) optWord(at string, s *string, otherwise string, allowed []string) string {
	if s == nil {
		return otherwise
	}
	if *s == "" {
		r.unknown("unknown-word", at, *s, allowed)
		return otherwise
	}
	return r.word(at, *s, otherwise, allowed)
}

func (r *reader) unknown(code, at, got string, allowed []string) {
	r.found.Errorf(code, r.file, at, "unknown %s %q", strings.TrimPrefix(code, "unknown-"), got).
		Hinted("one of " + strings.Join(allowed, ", "))
}

func (r *reader) number(at string, v *float64, otherwise, lo, hi float64) float64 {
	if v == nil {
		return otherwise
	}
	if math.IsNaN(*v) || *v < lo || *v > hi {
		r.found.Errorf("out-of-range", r.file, at, "%g is out of range", *v).
			Hinted(fmt.Sprintf("give a number from %g to %g", lo, hi))
		return otherwise
	}
	return *v
}

// sizes reads [least, best].
func (r *reader) sizes(at string, v []float64, otherwise Range) Range {
	if v == nil {
		return otherwise
	}
	if len(v) != 2 || !(v[0] > 0) || !(v[1] >= v[0]) || v[1] > 200 {
		r.found.Errorf("out-of-range", r.file, at, "size must be [least, best], both above 0, at most 200").
			Hinted("size = [6, 8.5] for text in points, size = [0.10, 0.18] for display")
		return otherwise
	}
	return Range{v[0], v[1]}
}
