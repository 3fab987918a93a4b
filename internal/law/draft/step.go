package draft

import (
	"slices"

	"jarmark/internal/kit/diag"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// Step is one kind of statement of a law: it adds blocks and findings to the
// law's own case T. Phrases lists the keys it cannot do without in every
// language of a set that uses it.
type Step[T any] struct {
	Name    string
	Doc     string
	Phrases []string
	Run     func(T)
}

// NewStep makes a row of a law's table of steps.
func NewStep[T any](name, doc string, phrases []string, run func(T)) Step[T] {
	return Step[T]{name, doc, phrases, run}
}

// Take runs the steps a set names, in its order, and gives what they made of
// the draft.
func Take[T any](d *Draft, steps []Step[T], t T) (*label.Content, diag.List) {
	for _, name := range d.Set.Kinds {
		for _, s := range steps {
			if s.Name == name {
				s.Run(t)
			}
		}
	}
	return d.C, d.heard()
}

// StatementTypes says what a set may name of a law's steps.
func StatementTypes[T any](steps []Step[T]) (out []place.StatementType) {
	for _, s := range steps {
		out = append(out, place.StatementType{Name: s.Name, Phrases: s.Phrases})
	}
	return out
}

// heard leaves out what the rules say of a batch file that has to be mended
// first.
func (p *Draft) heard() diag.List {
	if !p.O.Broken {
		return p.L
	}
	return slices.DeleteFunc(p.L, func(d diag.Diagnostic) bool { return d.File == p.BatchFile() })
}
