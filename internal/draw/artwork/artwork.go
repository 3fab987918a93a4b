// Package artwork reads a maker's own drawing, an SVG file, as paths that print
// sharp at any size. It reads what a logo is made of: paths, the basic shapes,
// groups, transforms, copies and symbols, fills and strokes of one colour, and fills that
// go from one to the next. Whatever it cannot draw as a browser does is a problem with
// its line and column, never left out in silence.
//
// It follows SVG 2 (W3C Candidate Recommendation, 4 October 2018). The file is
// taken as hostile: encoding/xml reads it without entities of its own, nothing is
// fetched or run, and bytes, depth, elements, points and numbers have limits.
//
// Why no library: oksvg, the one that would fit, has had no change since October
// 2022, keeps points in 1/64 of a unit, says nothing of what it leaves out, has no
// limits, and makes the program of the static site 0.40 MB larger as brotli, which
// is past its bound; this reader costs a tenth of that.
package artwork

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"unicode/utf8"

	"jarmark/internal/draw/page"
	"jarmark/internal/kit/unit"
)

// Limits of a drawing; a logo has some hundred points in some kilobytes.
const (
	MostBytes    = 1 << 20
	mostDepth    = 64
	mostElements = 10_000
	mostPoints   = 40_000
	mostProblems = 5
	largest      = 1e7 // a number in the file, either sign
)

// long is the longer side of the box a drawing is brought to; its points keep a
// ten-millionth of that.
const long = 100 * unit.Millimetre

// Drawing is a drawing in a box of W x H, whose upper left corner is the origin.
// What reaches out of the box is not seen.
type Drawing struct {
	W, H  unit.Length
	Paths []*page.Path
}

// Problem is what cannot be drawn, where (from 1, in characters; 0 = the file as a
// whole), and what helps.
type Problem struct {
	What, Hint   string
	Line, Column int
}

// Is reports whether a file looks like an SVG drawing.
func Is(data []byte) bool {
	head := bytes.TrimLeft(bytes.TrimPrefix(data[:min(len(data), 1<<16)], []byte("\xef\xbb\xbf")), " \t\r\n")
	return bytes.HasPrefix(head, []byte("<")) && bytes.Contains(bytes.ToLower(head), []byte("<svg"))
}

const asPicture = "turn everything into plain paths and save it as plain SVG, or export it as PNG, 2000 pixels wide, with a clear ground"

// Read reads an SVG file. With a problem there is no drawing.
func Read(data []byte) (*Drawing, []Problem) {
	if len(data) > MostBytes {
		return nil, []Problem{{What: fmt.Sprintf("the drawing has %d kB, more than %d", (len(data)+1023)>>10, MostBytes>>10), Hint: asPicture}}
	}
	r := &reader{data: data, xml: xml.NewDecoder(bytes.NewReader(data))}
	r.walk()
	if len(r.found) == 0 && len(r.out.Paths) == 0 {
		r.at = 0
		r.problem(asPicture, "there is nothing to draw in it")
	}
	if len(r.found) > 0 {
		return nil, r.found
	}
	return &r.out, nil
}

// reader is one reading of one file.
type reader struct {
	data     []byte
	xml      *xml.Decoder
	at       int64 // where the element begins that is read
	root     bool  // the outermost element was met
	space    string
	stack    []state
	rules    []rule
	elements int
	points   int
	work     int        // spent on gradients
	view     [2]float64 // of the drawing, in its units
	tokens   []token    // of the whole file, where something is copied
	ids      map[string]int
	using    []string // what is being copied
	out      Drawing
	found    []Problem
}

// problem tells of the element that is read; after some, no more.
func (r *reader) problem(hint, format string, args ...any) {
	if r.full() {
		return
	}
	p := Problem{What: fmt.Sprintf(format, args...), Hint: hint}
	before := r.data[:min(int64(len(r.data)), r.at)]
	p.Line = 1 + bytes.Count(before, []byte("\n"))
	p.Column = 1 + utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:])
	r.found = append(r.found, p)
}

func (r *reader) full() bool { return len(r.found) >= mostProblems }

// stop ends the reading: what follows is not looked at.
func (r *reader) stop(hint, format string, args ...any) {
	r.problem(hint, format, args...)
	for len(r.found) < mostProblems {
		r.found = append(r.found, Problem{})
	}
}

// walk goes through the file.
func (r *reader) walk() {
	for !r.full() {
		r.at = r.xml.InputOffset()
		t, err := r.xml.Token()
		if err != nil {
			if !errors.Is(err, io.EOF) {
				r.stop("save it anew as plain SVG", "the SVG file is broken: %s", plain(err))
			}
			break
		}
		switch t := t.(type) {
		case xml.StartElement:
			r.open(t)
		case xml.EndElement:
			r.stack = r.stack[:len(r.stack)-1]
		case xml.CharData:
			if n := len(r.stack); n > 0 && r.stack[n-1].sheet {
				r.styleSheet(string(t))
			}
		case xml.Directive:
			if bytes.ContainsAny(t, "[%&") || bytes.Contains(bytes.ToUpper(t), []byte("ENTITY")) {
				r.stop("save it anew as plain SVG", "the file declares entities of its own, which are not read")
			}
		}
	}
	for i, p := range r.found {
		if p == (Problem{}) {
			r.found = r.found[:i]
			break
		}
	}
}

func plain(err error) string {
	var s *xml.SyntaxError
	if errors.As(err, &s) {
		return s.Msg
	}
	return err.Error()
}
