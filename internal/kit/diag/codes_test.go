package diag

import (
	"slices"
	"strings"
	"testing"
)

// TestRegister reads the register: sorted, each code once, words that are
// known, and only what can be an error stands in the way of anything.
func TestRegister(t *testing.T) {
	uses := []string{"nothing", "everything", string(Sale), string(Labels), string(Record), string(Packing), string(Scaling), string(Weighing)}
	last := ""
	for _, c := range Codes() {
		if c.Code <= last {
			t.Errorf("%s does not follow %s: sort the rows", c.Code, last)
		}
		last = c.Code
		what := strings.Fields(c.Blocks)
		if len(what) == 0 || c.Meaning == "" || strings.ContainsAny(c.Meaning, "\n.") && strings.HasSuffix(c.Meaning, ".") {
			t.Errorf("%s: blocks and meaning must be there, without a full stop", c.Code)
		}
		for _, w := range what {
			if !slices.Contains(uses, w) || len(what) > 1 && (w == "nothing" || w == "everything") {
				t.Errorf("%s blocks %q: one of %v", c.Code, c.Blocks, uses)
			}
		}
		for _, s := range strings.Fields(c.Severities) {
			if !slices.Contains([]string{"error", "warning", "note"}, s) {
				t.Errorf("%s: no severity %q", c.Code, s)
			}
		}
		if mayFail := strings.Contains(c.Severities, "error"); !mayFail && c.Blocks != "nothing" {
			t.Errorf("%s is never an error and blocks %s", c.Code, c.Blocks)
		}
	}
}

// TestAgainst: what a label lacks stops no page and no packing, in any place;
// a broken file stops all; a warning nothing; an unregistered code all.
func TestAgainst(t *testing.T) {
	var l List
	l.Errorf("net-not-weighed", "", "", "x")
	l.Errorf("no-net", "", "", "x")
	l.Errorf("brix-not-measured", "", "", "x")
	l.Warnf("syntax", "", "", "x")
	for use, want := range map[Use]int{Sale: 3, Labels: 0, Record: 0, Packing: 0, Weighing: 0} {
		if got := l.Against(use); len(got) != want {
			t.Errorf("%s: %d findings stand in the way, want %d: %v", use, len(got), want, got)
		}
	}
	l = nil
	l.Errorf("syntax", "", "", "x")
	l.Errorf("never-registered", "", "", "x")
	l.Errorf("does-not-fit", "", "", "x")
	for use, want := range map[Use]int{Sale: 3, Labels: 3, Record: 2, Packing: 2} {
		if got := l.Against(use); len(got) != want {
			t.Errorf("%s: %d findings stand in the way, want %d: %v", use, len(got), want, got)
		}
	}
}
