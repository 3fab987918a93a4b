package place

import (
	"fmt"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kit/source"
)

// decode reads a built-in file strictly; any finding is a fault of the build.
func decode(name string, data []byte, into any) error {
	f, l := source.Parse(name, data)
	l = append(l, source.Decode(f, into)...)
	for _, d := range l {
		if d.Severity != diag.Note {
			return fmt.Errorf("%s:%d: %s: %s", name, d.Pos.Line, d.Path, d.Message)
		}
	}
	return nil
}
