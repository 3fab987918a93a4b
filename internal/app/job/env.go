// Package job wires the stages: files in, findings and finished outputs out.
// It reads no disk and no clock; cmd and web are two thin faces of it.
//
//	source -> batch -> cook -> rule -> compose -> sheet -> render
package job

import (
	"errors"
	"io/fs"
	"sync"

	"jarmark/fonts"
	"jarmark/internal/draw/face"
	"jarmark/internal/draw/press"
	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law"
	"jarmark/internal/law/place"
	"jarmark/templates"
)

// Env is what every batch shares: the tables, rule sets, designs, sheets and
// faces. It is read-only after NewEnv and safe for concurrent use.
type Env struct {
	Pantry *pantry.Pantry
	Book   *place.Book
	*press.Press
	own   *owned
	homes map[string]*Env // of other kitchens, by the folder of their kitchen.toml
}

// NewEnv loads the built-in data and lays the maker's own folder over it:
// own may hold designs/*.toml, sheets/*.toml, typefaces in fonts/ and the pictures the kitchen names,
// and may be nil. Findings are
// about the maker's own files; an error is a fault of the build.
func NewEnv(own fs.FS) (*Env, diag.List, error) {
	base, err := builtin()
	if err != nil {
		return nil, nil, err
	}
	if own == nil {
		return base, nil, nil
	}
	p, l := base.Press.With(own)
	return &Env{Pantry: base.Pantry, Book: base.Book, Press: p, own: &owned{fsys: own}}, l, nil
}

// Fault reads all designs and sheets and tells what is wrong with those that
// come with the program: else each is read when a batch asks for it.
func (e *Env) Fault() error { return faults(e.Press.Faults()) }

// builtin loads the embedded data once a process.
var builtin = sync.OnceValues(func() (*Env, error) {
	book, err := law.Load()
	faces, unread := face.Load(fonts.FS)
	p, l := press.Load(templates.FS, faces)
	if err := errors.Join(err, unread, faults(l)); err != nil {
		return nil, err
	}
	return &Env{Pantry: pantry.Default(), Book: book, Press: p, own: new(owned)}, nil
})
