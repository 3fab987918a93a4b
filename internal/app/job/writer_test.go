package job_test

import (
	"bytes"
	"errors"
	"io"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/draw/pdf"
	"jarmark/internal/draw/png"
	"jarmark/internal/draw/svg"
)

var errFull = errors.New("the disk is full")

// full takes so many bytes and no more, as a disk does that fills up.
type full struct {
	room, got int
}

func (f *full) Write(p []byte) (int, error) {
	n := min(len(p), f.room-f.got)
	if f.got += n; n < len(p) {
		return n, errFull
	}
	return n, nil
}

// TestWriterFailsAtEachByte: wherever writing fails, the writers of PDF, SVG and
// PNG say so, and never that a file is whole.
func TestWriterFailsAtEachByte(t *testing.T) {
	env := builtin(t)
	b := env.Load(demoInput(t, "strawberry-rhubarb.toml"), job.Choices{Copies: 1})
	runs, found := env.Labels(b, job.Choices{Copies: 1})
	if found.HasErrors() || len(runs) == 0 {
		t.Fatal(found)
	}
	doc := runs[0].Doc
	img, err := png.Page(doc, 0, env.Faces, 40)
	if err != nil {
		t.Fatal(err)
	}
	for name, write := range map[string]func(io.Writer) error{
		"pdf": func(w io.Writer) error { return pdf.Write(w, doc, env.Faces) },
		"svg": func(w io.Writer) error { return svg.Page(w, doc, 0, env.Faces) },
		"png": func(w io.Writer) error { return png.Encode(w, img, 40) },
	} {
		var whole bytes.Buffer
		if err := write(&whole); err != nil {
			t.Fatal(name, err)
		}
		n := whole.Len()
		for room := range 41 {
			f := &full{room: (n - 1) * room / 40}
			if err := write(f); !errors.Is(err, errFull) {
				t.Errorf("%s of %d bytes, room for %d: %v", name, n, f.room, err)
			}
		}
		if err := write(&full{room: n}); err != nil {
			t.Errorf("%s: room enough, and %v", name, err)
		}
	}
}
