package job

import (
	"io/fs"
	"path/filepath"
	"slices"

	"jarmark/internal/draw/press"
	"jarmark/internal/kit/diag"
)

// Also gives the batches of another kitchen, whose kitchen.toml lies in dir, the
// designs, sheets, typefaces and pictures of that folder. It is called before
// anything is loaded.
func (e *Env) Also(dir string, own fs.FS) (diag.List, error) {
	other, l, err := NewEnv(own)
	if err != nil {
		return nil, err
	}
	if e.homes == nil {
		e.homes = map[string]*Env{}
	}
	e.homes[filepath.Clean(dir)] = other
	return l, nil
}

// of is what the batches of one kitchen share.
func (e *Env) of(in Input) *Env {
	if other := e.homes[filepath.Dir(in.Kitchen.Name)]; other != nil && in.Kitchen.Name != "" {
		return other
	}
	return e
}

// sheaf is the labels of one kitchen.
type sheaf struct {
	env    *Env
	order  *press.Order // gives the documents their name
	first  *Batch
	stacks []press.Stack
}

// into is the sheaf of a kitchen, begun with its first labels.
func into(all *[]*sheaf, e *Env, b *Batch, o *press.Order) *sheaf {
	if i := slices.IndexFunc(*all, func(s *sheaf) bool { return s.env == e }); i >= 0 {
		return (*all)[i]
	}
	*all = append(*all, &sheaf{env: e, order: o, first: b})
	return (*all)[len(*all)-1]
}

// oneFile tells of labels that cannot lie in one file, which e draws: the
// typefaces of another kitchen are not its own.
func (e *Env) oneFile(all []*sheaf) (l diag.List) {
	for _, s := range all {
		if s.env != e && len(s.env.Press.Own) > 0 {
			l.Errorf("two-kitchens", diag.Command, "", "%s has typefaces of its own, and its labels cannot lie in one file with those of another kitchen", filepath.ToSlash(s.first.Input.Kitchen.Name)).
				Hinted("print the batches of each kitchen by themselves")
			return l
		}
	}
	return nil
}
