package press

import (
	"io/fs"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
)

// Load finds the designs and sheets that come with the program: there are many,
// and a batch asks for few, so each is read then. Findings are a fault of the
// build, and so is what [Press.Faults] tells.
func Load(builtin fs.FS, faces *face.Set) (*Press, diag.List) {
	designs, found := design.Builtin(builtin)
	sheets, l := sheet.Builtin(builtin)
	return &Press{designs, sheets, faces, nil, new(compose.Codes), new(compose.Drawings), new(kept)}, append(found, l...)
}

// Faults reads all designs and sheets and tells what is wrong with those that
// come with the program.
func (p *Press) Faults() diag.List { return append(p.Designs.Faults(), p.Sheets.Faults()...) }

// With lays a folder over what there is: it may hold designs/*.toml and
// sheets/*.toml and typefaces in fonts/, and may be nil.
func (p *Press) With(own fs.FS) (*Press, diag.List) {
	designs, found := p.Designs.With(own)
	sheets, l := p.Sheets.With(own)
	found = append(found, l...)
	faces, by, l := ownFaces(own)
	return &Press{designs, sheets, p.Faces.With(faces), by, p.codes, p.drawings, p.kept}, append(found, l...)
}
