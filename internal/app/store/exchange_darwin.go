package store

import "golang.org/x/sys/unix"

// exchange makes two folders trade names in one step (renamex_np(2)).
func exchange(a, b string) error { return unix.RenamexNp(a, b, unix.RENAME_SWAP) }
