package face

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"unicode/utf8"

	"jarmark/internal/draw/page"
)

// standInFile names, beside the typefaces, which face sets a text that another
// has not all letters for. It may be missing.
const standInFile = "stand-ins.csv"

func (s *Set) loadStandIns() error {
	data, err := fs.ReadFile(s.fsys, standInFile)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	r := csv.NewReader(strings.NewReader(string(data)))
	r.Comment, r.FieldsPerRecord = '#', 2
	rows, err := r.ReadAll()
	if err != nil {
		return fmt.Errorf("%s: %w", standInFile, err)
	}
	s.standIns = map[page.Face]page.Face{}
	for i, row := range rows {
		face, other := page.Face(row[0]), page.Face(row[1])
		switch {
		case i == 0: // headings
		case s.faces[face] == nil || s.faces[other] == nil:
			line, _ := r.FieldPos(0)
			return fmt.Errorf("%s: row %d (of %d lines): no typeface %q or %q", standInFile, i, line, face, other)
		default:
			s.standIns[face] = other
		}
	}
	return nil
}

// Drawing gives the face to set a text in: name, or its stand-in where that
// draws letters which name lacks and lacks none which name draws.
func (s *Set) Drawing(name page.Face, text string) page.Face {
	if s == nil || s.standIns[name] == "" {
		return name
	}
	own, other := s.Face(name), s.Face(s.standIns[name])
	if own == nil || other == nil {
		return name
	}
	more := false
	for _, r := range text {
		if r < utf8.RuneSelf {
			continue // each face has those
		}
		switch has := own.Has(r); {
		case has && !other.Has(r):
			return name
		case !has && other.Has(r):
			more = true
		}
	}
	if more {
		return other.Name
	}
	return name
}
