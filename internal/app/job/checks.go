package job

import (
	"errors"

	"jarmark/internal/kit/diag"
)

// firstError gives the first error finding as an error: for built-in data,
// where a finding is a fault of the build.
func firstError(l diag.List) error {
	for _, d := range l {
		if d.Severity == diag.Error {
			return errors.New(d.File + ": " + d.Message)
		}
	}
	return nil
}
