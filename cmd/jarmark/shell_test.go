package main

import (
	"bytes"
	"os/exec"
	"runtime/debug"
	"strings"
	"testing"
)

// TestVersionIsTheCommits: all that version prints comes out of the build, so
// one commit has one text, and a changed tree says so.
func TestVersionIsTheCommits(t *testing.T) {
	info := &debug.BuildInfo{Main: debug.Module{Version: "v1.2.3"}, Deps: []*debug.Module{{Path: "a.example/b", Version: "v2.0.0"},
		{Path: "a.example/c", Version: "v0.1.0", Replace: &debug.Module{Path: "a.example/d", Version: "v0.2.0"}}},
		Settings: []debug.BuildSetting{{Key: "vcs.revision", Value: "abc123"}, {Key: "vcs.time", Value: "2026-06-14T10:00:00Z"}, {Key: "vcs.modified", Value: "true"}}}
	b := buildOf(info)
	for _, want := range []string{"jarmark v1.2.3\n", "commit abc123 of 2026-06-14T10:00:00Z, with changes\n", "built with go"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in:\n%s", want, b)
		}
	}
	if got := strings.Join(b.Modules, ", "); got != "a.example/b v2.0.0, a.example/d v0.2.0" {
		t.Errorf("modules %s", got)
	}
	if got := buildOf(nil).Version; got != "unknown" {
		t.Errorf("without build facts: %q", got)
	}
}

// TestEveryFlagIsCompletedAndInTheManual: the three shells and the manual page
// come from the command table, so none can miss a command or a flag.
func TestEveryFlagIsCompletedAndInTheManual(t *testing.T) {
	texts := map[string]string{"bash": bash(), "zsh": zsh(), "fish": fish(), "manual": manual()}
	for _, c := range commands() {
		for where, text := range texts {
			if !strings.Contains(text, c.name) {
				t.Errorf("%s does not know %s", where, c.name)
			}
			for _, o := range c.options() {
				name := o.name
				switch {
				case where == "manual":
					name = troff(name)
				case where == "fish":
					name = strings.TrimPrefix(strings.TrimPrefix(name, "--"), "-")
				}
				if !strings.Contains(text, name) {
					t.Errorf("%s does not know %s %s", where, c.name, o.name)
				}
			}
		}
	}
}

// TestShellsReadTheirCompletion: each shell that is here takes its script, and
// bash completes with it; groff has nothing to say against the manual.
func TestShellsReadTheirCompletion(t *testing.T) {
	for _, c := range []struct {
		program, text, want string
		args                []string
	}{
		{"bash", bash() + "\nCOMP_WORDS=(jarmark ch) COMP_CWORD=1; _jarmark; echo \"<${COMPREPLY[*]}>\"\n", "<check>", nil},
		{"bash", bash() + "\nCOMP_WORDS=(jarmark labels --ink) COMP_CWORD=2; _jarmark; echo \"<${COMPREPLY[*]}>\"\n", "<--ink-saver>", nil},
		{"bash", bash() + "\nCOMP_WORDS=(jarmark help ver) COMP_CWORD=2; _jarmark; echo \"<${COMPREPLY[*]}>\"\n", "<version>", nil},
		{"zsh", zsh(), "", []string{"-n"}},
		{"fish", fish(), "", []string{"--no-execute"}},
		{"groff", manual(), "the maker's files; 2 wrong usage.", []string{"-man", "-Tascii", "-ww", "-P-c"}},
	} {
		if _, err := exec.LookPath(c.program); err != nil {
			t.Logf("no %s here", c.program)
			continue
		}
		var complaints bytes.Buffer
		cmd := exec.Command(c.program, c.args...)
		cmd.Stdin, cmd.Stderr = strings.NewReader(c.text), &complaints
		out, err := cmd.Output()
		if err != nil || complaints.Len() > 0 || !strings.Contains(strings.ReplaceAll(string(out), "\n       ", " "), c.want) {
			t.Errorf("%s: %v\n%s\n%s", c.program, err, complaints.String(), tail(out))
		}
	}
}

func tail(b []byte) string { return string(b[max(0, len(b)-1500):]) }
