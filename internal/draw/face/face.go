// Package face measures type: advances, kerning, the heights laws measure,
// and outlines, all from the TrueType files themselves. It knows nothing of
// labels or layout. A Set may be used from several goroutines at once.
//
// Advances are rounded to 1/1000 em as fpdf v0.9.0 rounds them
// (utf8fontfile.go, parseHMTXTable), so a line measured here is as wide in
// the PDF.
package face

import (
	"fmt"
	"io/fs"
	"path"
	"sort"
	"strings"
	"sync"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Set is a folder of typefaces. Each file is read at first use.
type Set struct {
	fsys  fs.FS
	names []page.Face
	faces map[page.Face]*entry

	standIns map[page.Face]page.Face
	patterns sync.Map // hyphens of a language, see Soften
}

type entry struct {
	file string
	make func() (*Face, error) // instead of a file
	once sync.Once
	face *Face
	err  error
}

// Load lists the *.ttf files at the root of fsys; a file is parsed when its
// face is first asked for.
func Load(fsys fs.FS) (*Set, error) {
	if fsys == nil {
		return nil, fmt.Errorf("no typefaces given")
	}
	files, err := fs.Glob(fsys, "*.ttf")
	if err != nil {
		return nil, err
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("no *.ttf typefaces found")
	}
	s := &Set{fsys: fsys, faces: map[page.Face]*entry{}}
	for _, f := range files {
		name := page.Face(strings.TrimSuffix(path.Base(f), ".ttf"))
		s.names = append(s.names, name)
		s.faces[name] = &entry{file: f}
	}
	sort.Slice(s.names, func(i, j int) bool { return s.names[i] < s.names[j] })
	return s, s.loadStandIns()
}

// Names lists the faces of the set in alphabetical order.
func (s *Set) Names() []page.Face {
	if s == nil {
		return nil
	}
	return append([]page.Face(nil), s.names...)
}

// Has reports whether the set has a face of that name.
func (s *Set) Has(name page.Face) bool {
	if s == nil {
		return false
	}
	_, ok := s.faces[name]
	return ok
}

// Face gives a face, or nil when there is none of that name or its file is
// damaged; Open says which.
func (s *Set) Face(name page.Face) *Face {
	f, _ := s.Open(name)
	return f
}

// Open gives a face, or why it cannot.
func (s *Set) Open(name page.Face) (*Face, error) {
	if s == nil {
		return nil, fmt.Errorf("no typefaces loaded")
	}
	e, ok := s.faces[name]
	if !ok {
		return nil, fmt.Errorf("no typeface %q", name)
	}
	e.once.Do(func() {
		if e.make != nil {
			e.face, e.err = e.make()
		} else {
			e.face, e.err = open(s.fsys, e.file, name)
		}
	})
	return e.face, e.err
}

// Bytes gives the whole font file of a face; renderers embed a Subset.
func (s *Set) Bytes(name page.Face) ([]byte, error) {
	f, err := s.Open(name)
	if err != nil {
		return nil, err
	}
	return f.data, nil
}

// scale turns thousandths of an em into a length at a size.
func scale(thousandths int, size unit.Length) unit.Length {
	return unit.Length(int64(thousandths) * int64(size) / 1000)
}
