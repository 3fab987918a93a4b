package pack

import (
	"fmt"
	"strconv"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
)

// Edit is one value to write into a batch file. Carried out by the edit
// package it keeps comments and all else as the maker wrote it.
type Edit struct {
	File  string
	Path  string // "market[0].came_home"
	Value int
}

// CameHome turns what came home from an event into edits of the batch files.
// counts is one number when a single lot was there, else one a lot:
// "L26165-SR=3, L26201-AP=0". Zero is a count too: all were sold.
func CameHome(results []*cook.Result, event, counts string) ([]Edit, diag.List) {
	var found diag.List
	at := stalls(results, event)
	if len(at) == 0 {
		b := builder{o: Options{Event: event}}
		b.noEvent(events(results))
		return nil, b.found
	}
	want, ok := readCounts(counts, &found)
	if !ok {
		return nil, found
	}
	if n, single := want[""]; single {
		if len(at) > 1 {
			found.Errorf("which-lot", diag.Command, "", "%s had jars of several lots, and %d came home of which is not said", event, n).
				Hinted("write " + example(at))
			return nil, found
		}
		want = map[string]int{foldName(at[0].lot): n}
	}
	return edits(at, want, event, found)
}

// stall is one [[market]] table of an event.
type stall struct {
	lot, file, path string
	jars            int
}

func stalls(results []*cook.Result, event string) []stall {
	var out []stall
	for _, r := range results {
		if r == nil || r.Batch == nil {
			continue
		}
		for _, m := range r.Batch.Markets {
			if sameName(m.Event, event) {
				out = append(out, stall{r.Lot, fileName(r), m.Path, m.Jars})
			}
		}
	}
	return out
}

func events(results []*cook.Result) []string {
	var out []string
	for _, r := range results {
		if r == nil || r.Batch == nil {
			continue
		}
		for _, m := range r.Batch.Markets {
			out = append(out, m.Event)
		}
	}
	return unique(out)
}

func example(at []stall) string {
	var out []string
	for _, s := range at {
		out = append(out, s.lot+"=N")
	}
	return `"` + strings.Join(unique(out), ", ") + `"`
}

// readCounts reads "5" (key "") or "LOT=5, LOT=0" (folded lots).
func readCounts(s string, found *diag.List) (map[string]int, bool) {
	bad := func(word string) (map[string]int, bool) {
		found.Errorf("bad-count", diag.Command, "", "%q is not a number of jars", word).Hinted("write a whole number, or LOT=NUMBER for each lot")
		return nil, false
	}
	out := map[string]int{}
	for _, f := range strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ';' }) {
		lot, num, named := strings.Cut(f, "=")
		if !named {
			lot, num = "", f
		}
		n, err := strconv.Atoi(strings.TrimSpace(num))
		if err != nil || n < 0 || n > maxJars {
			return bad(strings.TrimSpace(num))
		}
		if _, twice := out[foldName(lot)]; twice {
			return bad(strings.TrimSpace(s))
		}
		out[foldName(lot)] = n
	}
	if _, single := out[""]; len(out) == 0 || single && len(out) > 1 {
		return bad(strings.TrimSpace(s))
	}
	return out, true
}

func edits(at []stall, want map[string]int, event string, found diag.List) ([]Edit, diag.List) {
	var out []Edit
	used := map[string]bool{}
	for _, s := range at {
		n, said := want[foldName(s.lot)]
		if !said {
			continue
		}
		if used[foldName(s.lot)] {
			found.Errorf("which-stall", s.file, s.path, "lot %s stands twice under %s", s.lot, event).
				Hinted("write came_home into the right [[market]] by hand")
			continue
		}
		used[foldName(s.lot)] = true
		if n > s.jars {
			found.Errorf("came-home", s.file, s.path+".jars", "%d jars of lot %s came home from %s, but only %d went", n, s.lot, event, s.jars).
				Hinted("check the count, or correct jars")
			continue
		}
		out = append(out, Edit{s.file, s.path + ".came_home", n})
	}
	for _, lot := range sortedLots(want) {
		if !used[lot] {
			found.Errorf("unknown-lot", diag.Command, "", "no jars of lot %q went to %s", strings.ToUpper(lot), event).Hinted(fmt.Sprintf("write %s", example(at)))
		}
	}
	if found.HasErrors() {
		return nil, found
	}
	return out, found
}

func sortedLots(m map[string]int) []string {
	set := map[string]bool{}
	for k := range m {
		set[k] = true
	}
	return sortedKeys(set)
}
