package place

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
	"testing"

	"jarmark/internal/kit/unit"

	"jarmark/templates"
)

// What nobody has read stands in one list, the oldest look first.
func TestMemoryOldestFirst(t *testing.T) {
	b, _ := book()
	list := b.Memory(unit.Date{Year: 2026, Month: 11, Day: 26})
	seen := map[string]bool{}
	for i, m := range list {
		seen[m.Place+" "+m.Value] = true
		if i > 0 && list[i-1].Since > m.Since {
			t.Errorf("%s before %s", list[i-1].Since, m.Since)
		}
	}
	if !seen["gb price.tenths"] || seen["us price"] || seen["us-me home-kitchen"] || seen["us-or home-kitchen"] || seen["us-me price"] {
		t.Errorf("the list has %v", seen)
	}
}

var fromMemory = regexp.MustCompile(`(?i)from memory|\(memory\)|unverified|aus dem gedächtnis|de mémoire`)

// TestNoMemoryHides: who writes that a value stands from memory marks it as
// data, so that the list of such values holds it. A comment, a source or a note
// that says so in words fails; a row's `memory` and `confidence` are the marks.
func TestNoMemoryHides(t *testing.T) {
	b, _ := book()
	listed := b.Memory(unit.Date{Year: 2026, Month: 11, Day: 27})
	for _, pattern := range []string{"places/*.toml", "places/quotes/*.toml", "languages/*.toml"} {
		names, err := fs.Glob(templates.FS, pattern)
		if err != nil || len(names) == 0 {
			t.Fatalf("%s: %v", pattern, err)
		}
		for _, name := range names {
			text, err := fs.ReadFile(templates.FS, name)
			if err != nil {
				t.Fatal(err)
			}
			for _, problem := range hidden(string(text), listed) {
				t.Errorf("%s: %s", name, problem)
			}
		}
	}
}

var tableHead = regexp.MustCompile(`(?m)^\[`)

// hidden names what a file says in words to be from memory and does not mark,
// and what it marks and the list lacks.
func hidden(text string, listed []Unread) (out []string) {
	said := map[string]bool{}
	for _, u := range listed {
		said[u.Text] = true
	}
	cuts := append([][]int{{0, 0}}, tableHead.FindAllStringIndex(text, -1)...)
	for i, cut := range cuts {
		end := len(text)
		if i+1 < len(cuts) {
			end = cuts[i+1][0]
		}
		out = append(out, hiddenIn(text[cut[0]:end], said)...)
	}
	return out
}

func hiddenIn(table string, said map[string]bool) (out []string) {
	marked, inList := strings.Contains(table, `confidence = "memory"`) || regexp.MustCompile(`(?m)^memory = \[`).MatchString(table), false
	for _, line := range strings.Split(table, "\n") {
		inList = inList && line != "]" || strings.HasPrefix(line, "memory = [")
		if inList {
			for _, part := range regexp.MustCompile(`"[^"]+"`).FindAllString(line, -1) {
				if !said[strings.Trim(part, `"`)] {
					out = append(out, fmt.Sprintf("%s is not in the list", part))
				}
			}
			inList = !strings.HasSuffix(line, "]")
			continue
		}
		if fromMemory.MatchString(strings.ReplaceAll(line, "unverified = []", "")) && (!marked || strings.Contains(line, "#")) && !strings.HasPrefix(line, `"cite.words"`) {
			out = append(out, line)
		}
	}
	return out
}

// The guard above catches each way a value was hidden before.
func TestHiddenMemoryIsFound(t *testing.T) {
	listed := []Unread{{Text: "a"}, {Text: "b c"}}
	for text, want := range map[string]int{
		"[x]\nsource = \"Act 1, from memory\"\nconfidence = \"primary\"\n":                 0,
		"[x]\nsource = \"Act 1\"\n[y]\nsource = \"Act 2, from memory\"\n":                  1,
		"# the name: from memory, unverified\n":                                            1,
		"[x]\nnote = \"the older rule (memory)\"\n":                                        1,
		"[x]\nmemory = [\"a\", \"b c\"]\n":                                                 0,
		"[x]\nmemory = [\n  \"a\",\n  \"d\",\n]\n":                                         1,
		"[x]\nnote = \"all from memory\"\nmemory = [\"a\"]\n":                              0,
		"[x]\nnote = \"all from memory\"\n[y]\nconfidence = \"memory\"\n":                  1,
		"[x]\nconfidence = \"memory\"\n# the figure: from memory\n":                        1,
		"[x]\nsource = \"Act 1, from memory\"\nconfidence = \"memory\"\nunverified = []\n": 0,
	} {
		if strings.Contains(text, "primary") {
			want = 1 // said in the source, marked as read
		}
		if got := hidden(text, listed); len(got) != want {
			t.Errorf("%q: %q", text, got)
		}
	}
}
