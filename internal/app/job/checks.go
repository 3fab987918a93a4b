package job

import (
	"errors"
	"fmt"

	"jarmark/internal/kit/diag"
)

// faults gives the error findings as one error: for built-in data, where a
// finding is a fault of the build.
func faults(l diag.List) (err error) {
	for _, d := range l.Errors() {
		at := d.File
		if d.Pos.Line > 0 {
			at = fmt.Sprintf("%s:%d", d.File, d.Pos.Line)
		}
		err = errors.Join(err, fmt.Errorf("%s: %s", at, d.Message))
	}
	return err
}
