package source

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"

	"jarmark/internal/kit/diag"
)

// Catalogue is what the TOML files of a folder say, by id: a file's name
// without its ending. Nil holds nothing.
type Catalogue[T any] struct{ byID map[string]reading[T] }

// reading gives what a file says, and what is wrong with it.
type reading[T any] func() (*T, diag.List)

// Parser reads one file; with an error among the findings it gives nil.
type Parser[T any] func(name string, data []byte) (*T, diag.List)

// Lazily is the catalogue of a folder, such as "sheets", of files that come with
// the program: each is read when it is asked for. What is wrong with one is
// told by [Catalogue.Faults].
func Lazily[T any](files fs.FS, folder string, parse Parser[T]) (*Catalogue[T], diag.List) {
	out := &Catalogue[T]{byID: map[string]reading[T]{}}
	names, l := list(files, folder)
	for _, name := range names {
		out.byID[id(name)] = sync.OnceValues(func() (*T, diag.List) { return parse.file(files, name) })
	}
	return out, l
}

// With lays the *.toml of a folder over what there is; files may be nil. A file
// with errors is left out, its findings returned.
func (c *Catalogue[T]) With(files fs.FS, folder string, parse Parser[T]) (*Catalogue[T], diag.List) {
	if files == nil {
		return c, nil
	}
	out := &Catalogue[T]{byID: map[string]reading[T]{}}
	if c != nil {
		maps.Copy(out.byID, c.byID)
	}
	names, l := list(files, folder)
	for _, name := range names {
		v, found := parse.file(files, name)
		l = append(l, found...)
		if v != nil {
			out.byID[id(name)] = func() (*T, diag.List) { return v, nil }
		}
	}
	return out, l
}

func list(files fs.FS, folder string) (names []string, l diag.List) {
	names, err := fs.Glob(files, folder+"/*.toml")
	if err != nil {
		l.Errorf("unreadable-folder", folder, "", "the %s cannot be listed: %v", folder, err)
	}
	return names, l
}

func id(name string) string { return strings.TrimSuffix(path.Base(name), ".toml") }

func (parse Parser[T]) file(files fs.FS, name string) (*T, diag.List) {
	data, err := fs.ReadFile(files, name)
	if err != nil {
		var l diag.List
		l.Errorf("unreadable-file", name, "", "%s cannot be read: %v", path.Base(name), err)
		return nil, l
	}
	return parse(name, data)
}

// Get gives what has an id.
func (c *Catalogue[T]) Get(id string) (*T, bool) {
	if c == nil {
		return nil, false
	}
	read, ok := c.byID[id]
	if !ok {
		return nil, false
	}
	v, _ := read()
	return v, v != nil
}

// List gives everything in the order of the ids.
func (c *Catalogue[T]) List() []*T { return c.Beginning("") }

// Beginning gives all whose id begins with a text, in the order of the ids; no
// other file is read for it.
func (c *Catalogue[T]) Beginning(with string) (out []*T) {
	for _, id := range c.IDs() {
		if !strings.HasPrefix(id, with) {
			continue
		}
		if v, ok := c.Get(id); ok {
			out = append(out, v)
		}
	}
	return out
}

// IDs lists the ids in order, and reads no file.
func (c *Catalogue[T]) IDs() []string {
	if c == nil {
		return nil
	}
	return slices.Sorted(maps.Keys(c.byID))
}

// Faults reads all files and tells what is wrong with those of the program.
func (c *Catalogue[T]) Faults() (l diag.List) {
	for _, id := range c.IDs() {
		_, found := c.byID[id]()
		l = append(l, found...)
	}
	return l
}
