package press

import (
	"io/fs"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
)

// Load reads the designs and sheets that come with the program. Findings there
// are a fault of the build.
func Load(builtin fs.FS, faces *face.Set) (*Press, diag.List) {
	return (&Press{new(design.Catalogue), new(sheet.Catalogue), faces, new(compose.Codes), new(compose.Drawings)}).With(builtin)
}

// With lays a folder over what there is: it may hold designs/*.toml and
// sheets/*.toml, and may be nil.
func (p *Press) With(own fs.FS) (*Press, diag.List) {
	designs, found := p.Designs.With(own)
	sheets, l := p.Sheets.With(own)
	return &Press{designs, sheets, p.Faces, p.codes, p.drawings}, append(found, l...)
}
