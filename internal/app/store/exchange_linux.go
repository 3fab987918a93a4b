package store

import (
	"os"
	"path/filepath"
	"strings"

	"golang.org/x/sys/unix"
)

// exchange makes two folders trade names in one step (renameat2(2)).
func exchange(a, b string) error {
	return unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
}

// mounted reports whether a folder is a mount or has one below it, which would
// go along with the old folder (proc_pid_mountinfo(5), the fifth field).
func mounted(dir string) bool {
	data, err := os.ReadFile("/proc/self/mountinfo")
	if err != nil {
		return false
	}
	plain := strings.NewReplacer(`\040`, " ", `\011`, "\t", `\012`, "\n", `\134`, `\`)
	for line := range strings.Lines(string(data)) {
		if f := strings.Fields(line); len(f) > 4 {
			if at := plain.Replace(f[4]); at == dir || strings.HasPrefix(at, dir+string(filepath.Separator)) {
				return true
			}
		}
	}
	return false
}
