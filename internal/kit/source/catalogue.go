package source

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"jarmark/internal/kit/diag"
)

// Catalogue is what the TOML files of a folder say, by id: a file's name
// without its ending. Nil holds nothing.
type Catalogue[T any] struct{ byID map[string]*T }

// With lays the *.toml of a folder, such as "sheets", over what there is; files
// may be nil. A file with errors is left out, its findings returned.
func (c *Catalogue[T]) With(files fs.FS, folder string, parse func(string, []byte) (*T, diag.List)) (*Catalogue[T], diag.List) {
	if files == nil {
		return c, nil
	}
	out := &Catalogue[T]{byID: map[string]*T{}}
	if c != nil {
		maps.Copy(out.byID, c.byID)
	}
	var l diag.List
	names, err := fs.Glob(files, folder+"/*.toml")
	if err != nil {
		l.Errorf("unreadable-folder", folder, "", "the %s cannot be listed: %v", folder, err)
	}
	for _, name := range names {
		data, err := fs.ReadFile(files, name)
		if err != nil {
			l.Errorf("unreadable-file", name, "", "%s cannot be read: %v", path.Base(name), err)
			continue
		}
		v, found := parse(name, data)
		l = append(l, found...)
		if v != nil {
			out.byID[strings.TrimSuffix(path.Base(name), ".toml")] = v
		}
	}
	return out, l
}

// Get gives what has an id.
func (c *Catalogue[T]) Get(id string) (*T, bool) {
	if c == nil {
		return nil, false
	}
	v, ok := c.byID[id]
	return v, ok
}

// List gives everything in the order of the ids.
func (c *Catalogue[T]) List() (out []*T) {
	if c == nil {
		return nil
	}
	for _, id := range slices.Sorted(maps.Keys(c.byID)) {
		out = append(out, c.byID[id])
	}
	return out
}
