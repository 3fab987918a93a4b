package design

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/law/label"
)

// Catalogue is every design known, the maker's own over the built-in ones.
type Catalogue struct {
	byID map[string]*Design
	ids  []string
}

// Load reads *.toml at the root of both folders; a maker's own file replaces
// the built-in design of the same name. A file with errors is left out, its
// findings returned. Either folder may be nil.
func Load(builtin, own fs.FS) (*Catalogue, diag.List) {
	c, l := new(Catalogue).With(builtin)
	c, more := c.With(own)
	return c, append(l, more...)
}

// With lays the designs of a folder, which may be nil, over these.
func (c *Catalogue) With(folder fs.FS) (*Catalogue, diag.List) {
	if folder == nil {
		return c, nil
	}
	out := &Catalogue{byID: map[string]*Design{}}
	maps.Copy(out.byID, c.byID)
	var l diag.List
	files, err := fs.Glob(folder, "*.toml")
	if err != nil {
		l.Errorf("unreadable-folder", "", "", "designs cannot be listed: %v", err)
	}
	for _, name := range files {
		l = append(l, out.read(folder, name)...)
	}
	out.ids = slices.Sorted(maps.Keys(out.byID))
	return out, l
}

func (c *Catalogue) read(folder fs.FS, name string) diag.List {
	data, err := fs.ReadFile(folder, name)
	if err != nil {
		var l diag.List
		l.Errorf("unreadable-file", name, "", "design cannot be read: %v", err)
		return l
	}
	d, l := Parse(name, data)
	if d != nil {
		c.byID[d.ID] = d
	}
	return l
}

// Get gives a design by id.
func (c *Catalogue) Get(id string) (*Design, bool) {
	if c == nil {
		return nil, false
	}
	d, ok := c.byID[id]
	return d, ok
}

// List gives all designs by id.
func (c *Catalogue) List() []*Design {
	if c == nil {
		return nil
	}
	out := make([]*Design, len(c.ids))
	for i, id := range c.ids {
		out[i] = c.byID[id]
	}
	return out
}

// Parse reads one design file. The design is nil when the file has an error.
func Parse(name string, data []byte) (*Design, diag.List) {
	f, l := source.Parse(name, data)
	if f == nil || l.HasErrors() {
		return nil, l
	}
	var raw rawDesign
	l = append(l, source.Decode(f, &raw)...)
	if l.HasErrors() {
		return nil, f.Locate(l)
	}
	r := reader{file: name}
	d := r.design(raw)
	d.ID = strings.TrimSuffix(path.Base(name), ".toml")
	l = append(l, r.found...)
	if l.HasErrors() {
		return nil, f.Locate(l)
	}
	return d, f.Locate(l)
}

// rawDesign is the file as written; absent values stay nil.
type rawDesign struct {
	Name   string              `toml:"name"`
	About  string              `toml:"about"`
	Season string              `toml:"season"`
	Use    []string            `toml:"use"`
	Voice  map[string]rawVoice `toml:"voice"`
	Look   rawLook             `toml:"look"`
	Piece  map[string]rawLook  `toml:"piece"`
}

type rawVoice struct {
	Face     *string   `toml:"face"`
	Bold     *string   `toml:"bold"`
	Narrow   []string  `toml:"narrow"`
	Case     *string   `toml:"case"`
	Tracking *float64  `toml:"tracking"`
	Leading  *float64  `toml:"leading"`
	Size     []float64 `toml:"size"`
	Colour   *string   `toml:"colour"`
}

type rawLook struct {
	Align       *string       `toml:"align"`
	Margin      *float64      `toml:"margin"`
	Paper       *string       `toml:"paper"`
	Info        *string       `toml:"info"`
	Frame       *string       `toml:"frame"`
	FrameColour *string       `toml:"frame_colour"`
	Rule        *string       `toml:"rule"`
	RuleColour  *string       `toml:"rule_colour"`
	Divider     *string       `toml:"divider"`
	Brand       *string       `toml:"brand"`
	Title       []float64     `toml:"title"`
	Band        *rawBand      `toml:"band"`
	Ornament    []rawOrnament `toml:"ornament"`
}

type rawBand struct {
	Edge    string  `toml:"edge"`
	Size    float64 `toml:"size"`
	Fill    string  `toml:"fill"`
	Pattern string  `toml:"pattern"`
}

type rawOrnament struct {
	Name    string  `toml:"name"`
	Spot    string  `toml:"spot"`
	Size    float64 `toml:"size"`
	Density float64 `toml:"density"`
	Reach   float64 `toml:"reach"`
	Seed    int64   `toml:"seed"`

	Instead *rawOrnament `toml:"instead"`
}

func knownPiece(p string) bool {
	for _, k := range label.Pieces {
		if string(k) == p {
			return true
		}
	}
	return false
}
