//go:build !(linux || darwin || freebsd || netbsd || openbsd || dragonfly)

package store

import "io/fs"

// keepOwner is for systems where a new file has its folder's owner.
func keepOwner(string, fs.FileInfo) {}

// names is how many names a file has; it cannot be asked here.
func names(fs.FileInfo) int { return 1 }
