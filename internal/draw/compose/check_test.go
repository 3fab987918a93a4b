package compose_test

import (
	"testing"

	"jarmark/internal/draw/compose"
	"jarmark/internal/draw/inspect"
	"jarmark/internal/kit/diag"
)

// TestUsualPieces: every design, every usual piece, in colour and in black:
// nothing is left out and the finished frame passes its own inspection.
func TestUsualPieces(t *testing.T) {
	fs := typefaces(t)
	codes := &compose.Codes{}
	for _, d := range designs(t) {
		for _, u := range usual {
			for _, saver := range []bool{false, true} {
				c := strawberry()
				fr, l := compose.Label(c, d, u.piece, u.cell, fs, compose.Options{InkSaver: saver, Codes: codes, Alone: u.alone})
				l = append(l, inspect.Frame(fr, c, fs, inspect.Default())...)
				for _, f := range l {
					if f.Severity == diag.Error {
						t.Errorf("%s %s %s saver=%v: %s: %s", d.ID, u.piece, u.name, saver, f.Code, f.Message)
					}
				}
			}
		}
	}
}
