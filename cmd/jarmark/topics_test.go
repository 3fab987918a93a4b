package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"jarmark/internal/app/job"
)

// jarmark help batch, kitchen, gifts and ledger name every key their reader
// knows, with an example; `help ledger` tells of the command as well.
func TestHelpNamesEveryKey(t *testing.T) {
	for _, topic := range job.Topics() {
		out := helpOn(t, topic.Name)
		for _, p := range topic.Parts {
			for _, r := range p.Rows {
				if !strings.Contains(out, "  "+r[0]+" ") || !strings.Contains(out, r[3]) || r[1] == "" {
					t.Errorf("help %s says nothing of %s", topic.Name, r[0])
				}
			}
		}
	}
	if out := helpOn(t, "ledger"); !strings.Contains(out, "usage: jarmark ledger") {
		t.Error("help ledger leaves out the command")
	}
}

// A slip in the name of a file is told as that file's help, not as a command.
func TestSuggestsTopics(t *testing.T) {
	for word, want := range map[string]string{"gift": "jarmark help gifts", "kitchn": "jarmark help kitchen", "ledgr": "did you mean ledger", "labls": "did you mean labels"} {
		if got := suggest(word); !strings.Contains(got, want) {
			t.Errorf("%s: %s", word, got)
		}
	}
}

func helpOn(t *testing.T, name string) string {
	t.Helper()
	var out, errs bytes.Buffer
	a := &app{out: &out, err: &errs, getenv: os.Getenv}
	if code := a.run([]string{"help", name}); code != exitOK || errs.Len() > 0 {
		t.Fatalf("help %s: exit %d, %s", name, code, errs.String())
	}
	return out.String()
}
