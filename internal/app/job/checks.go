package job

import (
	"fmt"

	"jarmark/internal/kit/diag"
)

// firstError gives the first error finding as an error: for built-in data,
// where a finding is a fault of the build.
func firstError(l diag.List) error {
	for _, d := range l {
		if d.Severity == diag.Error {
			at := d.File
			if d.Pos.Line > 0 {
				at = fmt.Sprintf("%s:%d", d.File, d.Pos.Line)
			}
			return fmt.Errorf("%s: %s", at, d.Message)
		}
	}
	return nil
}
