package job_test

import (
	"bytes"
	"slices"
	"testing"

	"jarmark/internal/app/job"
	"jarmark/internal/law/label"
)

// A maker who names a sheet and no kind gets the labels the sheet is for, on
// the command line and in the batch file; one who names both gets what is named.
func TestKindsFollowTheSheet(t *testing.T) {
	env := builtin(t)
	for _, c := range []struct {
		flag, file string
		kinds      []label.Piece
		want       []label.Piece
	}{
		{"letter-2x5-4x2in", "", nil, []label.Piece{label.Front, label.InfoLabel}},
		{"letter-round-2in-4x5", "", nil, []label.Piece{label.Lid}},
		{"letter-oval-3.25x2in-2x4", "", nil, []label.Piece{label.Front}},
		{"letter-tag-2x3.25in-3x3", "", nil, []label.Piece{label.Tag}},
		{"letter-wrap-210x60", "", nil, []label.Piece{label.Wrap}},
		{"letter-plain", "", nil, []label.Piece{label.Wrap}},
		{"", "", nil, []label.Piece{label.Wrap}},
		{"", "a4-2x4-96x63.5", nil, []label.Piece{label.Front, label.InfoLabel}},
		{"a4-round-60", "a4-2x4-96x63.5", nil, []label.Piece{label.Lid}},
		{"letter-round-2.5in-3x4", "", []label.Piece{label.Front}, []label.Piece{label.Front}},
	} {
		in := demoInput(t, demoBatches[0])
		if c.file != "" {
			in.Batch.Data = bytes.Replace(in.Batch.Data, []byte("[label]\n"), []byte("[label]\nsheet = \""+c.file+"\"\n"), 1)
		}
		choice := job.Choices{Sheet: c.flag, Pieces: c.kinds, Place: "us"}
		b := load(t, env, in, choice)
		runs, found := env.Labels(b, choice)
		var got []label.Piece
		for _, r := range runs {
			got = append(got, r.Piece)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%+v: %v, want %v: %v", c, got, c.want, found.Errors())
		}
	}
}
