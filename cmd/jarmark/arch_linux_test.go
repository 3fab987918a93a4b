package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
)

// TestMachinesAgree: a 32-bit and an arm64 program make the demo's files byte
// for byte as this one does: no float, word size or fused operation shows. What
// cannot be run here is skipped: arm64 wants qemu-user, and so does 32-bit arm,
// which stands in where the kernel runs no 386 program.
func TestMachinesAgree(t *testing.T) {
	if testing.Short() {
		t.Skip("two programs are built")
	}
	dir, want := season(t)
	machines := map[string][]string{"386": nil, "arm64": {"qemu-aarch64"}}
	if runtime.GOARCH == "amd64" && !runs386(t) {
		delete(machines, "386")
		machines["arm"] = []string{"qemu-arm"}
	}
	for machine, under := range machines {
		t.Run(machine, func(t *testing.T) {
			if runtime.GOARCH != "amd64" {
				t.Skip("made to be run on amd64")
			}
			if len(under) > 0 {
				if _, err := exec.LookPath(under[0]); err != nil {
					t.Skip(err)
				}
			}
			program := filepath.Join(t.TempDir(), "jarmark")
			build := exec.Command("go", "build", "-o", program, ".")
			build.Env = append(os.Environ(), "GOARCH="+machine, "CGO_ENABLED=0")
			if out, err := build.CombinedOutput(); err != nil {
				t.Fatalf("%v\n%s", err, out)
			}
			args := append(append([]string{}, under...), program, "make", demoBatch, "--quiet", "-o", machine)
			cmd := exec.Command(args[0], args[1:]...)
			cmd.Dir, cmd.Env = dir, append(os.Environ(), "SOURCE_DATE_EPOCH=1790000000")
			if out, err := cmd.CombinedOutput(); err != nil {
				t.Fatalf("%v\n%s", err, tail(out))
			}
			got := tree(t, filepath.Join(dir, machine))
			if len(got) != len(want) {
				t.Errorf("%d files, want %d", len(got), len(want))
			}
			for name, data := range want {
				if !bytes.Equal(got[name], data) {
					t.Errorf("%s differs", name)
				}
			}
		})
	}
}

// runs386 reports whether the kernel runs 386 programs; some are built without.
func runs386(t *testing.T) bool {
	t.Helper()
	dir := t.TempDir()
	source, program := filepath.Join(dir, "main.go"), filepath.Join(dir, "small")
	if err := os.WriteFile(source, []byte("package main\n\nfunc main() {}\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	build := exec.Command("go", "build", "-o", program, source)
	build.Env = append(os.Environ(), "GOARCH=386", "CGO_ENABLED=0")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return !errors.Is(exec.Command(program).Run(), syscall.ENOEXEC)
}
