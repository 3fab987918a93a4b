package design

import (
	"io/fs"
	"path"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
	"jarmark/internal/law/label"
)

// Catalogue is every design known, the maker's own over the built-in ones.
type Catalogue struct{ source.Catalogue[Design] }

// Builtin is the designs that come with the program, each read when it is asked for.
func Builtin(files fs.FS) (*Catalogue, diag.List) {
	all, l := source.Lazily(files, "designs", Parse)
	return &Catalogue{*all}, l
}

// With lays the designs/*.toml of a folder, which may be nil, over these.
func (c *Catalogue) With(files fs.FS) (*Catalogue, diag.List) {
	all, l := c.Catalogue.With(files, "designs", Parse)
	return &Catalogue{*all}, l
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
	Drawing     *string       `toml:"drawing"`
	Title       []float64     `toml:"title"`
	Band        *rawBand      `toml:"band"`
	Ornament    []rawOrnament `toml:"ornament"`
}

type rawBand struct {
	Edge    string  `toml:"edge"`
	Size    float64 `toml:"size"`
	Fill    string  `toml:"fill"`
	Pattern string  `toml:"pattern"`

	Instead *rawBand `toml:"instead"`
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

func knownPiece(p string) bool { return slices.Contains(label.Pieces, label.Piece(p)) }
