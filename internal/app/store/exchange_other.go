//go:build !linux && !darwin

package store

import "errors"

// exchange is not to be had here: swap takes two steps.
func exchange(a, b string) error { return errors.ErrUnsupported }
