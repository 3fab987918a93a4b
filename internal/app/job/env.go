// Package job wires the stages: files in, findings and finished outputs out.
// It reads no disk and no clock; cmd and web are two thin faces of it.
//
//	source -> batch -> cook -> rule -> compose -> sheet -> render
package job

import (
	"io/fs"
	"sync"

	"jarmark/fonts"
	"jarmark/internal/draw/design"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/sheet"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/rule"
	"jarmark/templates"
)

// Env is what every batch shares: the tables, rule sets, designs, sheets and
// faces. It is read-only after NewEnv and safe for concurrent use.
type Env struct {
	Pantry  *pantry.Pantry
	Book    *rule.Book
	Designs *design.Catalogue
	Sheets  *sheet.Catalogue
	Faces   *face.Set
}

// NewEnv loads the built-in data and lays the maker's own folder over it:
// own may hold designs/*.toml and sheets/*.toml, and may be nil. Findings are
// about the maker's own files; an error is a fault of the build.
func NewEnv(own fs.FS) (*Env, diag.List, error) {
	base, err := builtin()
	if err != nil {
		return nil, nil, err
	}
	if own == nil {
		return base, nil, nil
	}
	env := *base
	var l, m diag.List
	env.Designs, l = design.Load(folder(templates.FS, "designs"), folder(own, "designs"))
	for i := range l {
		l[i].File = "designs/" + l[i].File // as the maker's folder has it
	}
	env.Sheets, m = sheet.Load(templates.FS, own)
	return &env, append(l, m...), nil
}

// builtin loads the embedded data once a process.
var builtin = sync.OnceValues(func() (*Env, error) {
	book, err := rule.Load()
	if err != nil {
		return nil, err
	}
	faces, err := face.Load(fonts.FS)
	if err != nil {
		return nil, err
	}
	designs, l := design.Load(folder(templates.FS, "designs"), nil)
	sheets, m := sheet.Load(templates.FS, nil)
	if err := firstError(append(l, m...)); err != nil {
		return nil, err
	}
	return &Env{Pantry: pantry.Default(), Book: book, Designs: designs, Sheets: sheets, Faces: faces}, nil
})

// folder is one folder of a file system, nil when it is not there.
func folder(f fs.FS, dir string) fs.FS {
	if st, err := fs.Stat(f, dir); err != nil || !st.IsDir() {
		return nil
	}
	sub, err := fs.Sub(f, dir)
	if err != nil {
		return nil
	}
	return sub
}
