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
	return (&Press{new(design.Catalogue), new(sheet.Catalogue), faces, nil, new(compose.Codes), new(compose.Drawings)}).With(builtin)
}

// With lays a folder over what there is: it may hold designs/*.toml and
// sheets/*.toml and typefaces in fonts/, and may be nil.
func (p *Press) With(own fs.FS) (*Press, diag.List) {
	designs, found := p.Designs.With(own)
	sheets, l := p.Sheets.With(own)
	found = append(found, l...)
	faces, by, l := ownFaces(own)
	return &Press{designs, sheets, p.Faces.With(faces), by, p.codes, p.drawings}, append(found, l...)
}
