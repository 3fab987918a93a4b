package store

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// tryLock takes the lock of an open file unless another process holds it.
func tryLock(f *os.File) bool {
	err := windows.LockFileEx(windows.Handle(f.Fd()), windows.LOCKFILE_EXCLUSIVE_LOCK|windows.LOCKFILE_FAIL_IMMEDIATELY, 0, 1, 0, &windows.Overlapped{})
	return !errors.Is(err, windows.ERROR_LOCK_VIOLATION)
}
