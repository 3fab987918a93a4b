//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package store

import (
	"errors"
	"io/fs"
	"os"
	"syscall"
)

// tryLock takes the lock of an open file unless another process holds it.
func tryLock(f *os.File) bool {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		if !errors.Is(err, syscall.EINTR) {
			return !errors.Is(err, syscall.EWOULDBLOCK)
		}
	}
}

// keepOwner gives a new file the owner and group of the old one, where the
// system permits it.
func keepOwner(path string, like fs.FileInfo) {
	if s, ok := like.Sys().(*syscall.Stat_t); ok {
		_ = os.Lchown(path, int(s.Uid), int(s.Gid))
	}
}

// names is how many names (hard links) a file has.
func names(st fs.FileInfo) int {
	if s, ok := st.Sys().(*syscall.Stat_t); ok {
		return int(s.Nlink)
	}
	return 1
}
