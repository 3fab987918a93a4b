package press

import (
	"errors"
	"io/fs"
	"path"
	"strings"

	"jarmark/internal/draw/face"
	"jarmark/internal/draw/page"
	"jarmark/internal/draw/picture"
	"jarmark/internal/kit/diag"
)

// mostFaces bounds the typefaces of a maker's folder, some 2 MB each in memory.
const mostFaces = 40

// ownFaces reads the typefaces of a maker's folder, by file name in small
// letters. What cannot be used is told, and holds up nothing: it may not be
// wanted.
func ownFaces(own fs.FS) (faces []*face.Face, by map[string]page.Face, found diag.List) {
	by = map[string]page.Face{}
	if own == nil {
		return nil, by, nil
	}
	entries, _ := fs.ReadDir(own, face.OwnFolder) // mostly there is none
	for _, e := range entries {
		switch strings.ToLower(path.Ext(e.Name())) {
		case ".ttf", ".otf", ".ttc", ".woff", ".woff2":
		default:
			continue // a licence, a note
		}
		file := face.OwnFolder + "/" + e.Name()
		if len(faces) >= mostFaces {
			found.Warnf("bad-typeface", file, "", "there are more than %d typefaces; this and those after it are left out", mostFaces).Hinted("keep those you use")
			break
		}
		data, err := picture.Open(own, file, picture.MostBytes)
		var f *face.Face
		if err == nil {
			f, err = face.Own(e.Name(), data)
		}
		if err != nil {
			found.Warnf("bad-typeface", file, "", "the typeface is left out: %v", err).Hinted(helpOf(err))
			continue
		}
		faces = append(faces, f)
		by[strings.ToLower(e.Name())] = f.Name
	}
	return faces, by, found
}

func helpOf(err error) string {
	var p *picture.Problem
	var r *face.Refusal
	switch {
	case errors.As(err, &p):
		return p.Hint
	case errors.As(err, &r):
		return r.Hint
	}
	return ""
}
