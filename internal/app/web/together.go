package web

import (
	"net/url"
	"path/filepath"
	"strings"

	"jarmark/internal/app/job"
	"jarmark/internal/app/store"
	"jarmark/internal/kit/diag"
)

// told is a finding as a list of the page shows it: with the way to its place,
// and the others that say the same of other places, folded away.
type told struct {
	job.Finding
	Link  string // empty: it can't be opened here
	Alike []told
}

// together puts findings of one kind and one hint under the first of them, so
// that nine slips alike don't push the list out of sight.
// root leads up to the first page.
func together(root string, found []job.Finding) (out []told) {
	first := map[string]int{}
	for _, f := range found {
		t := told{Finding: f}
		if at := placeOf(f); at != "" {
			t.Link = root + at
		}
		key := f.Severity + "\x00" + f.Code + "\x00" + f.Hint
		i, seen := first[key]
		if !seen {
			first[key] = len(out)
			out = append(out, t)
			continue
		}
		out[i].Alike = append(out[i].Alike, t)
	}
	return out
}

// placeOf is the address of a finding's place: the field or line in the editor
// of its file, a gift list, or the ledger. Files of other folders have none.
func placeOf(f job.Finding) string {
	at := ""
	if f.Path != "" || f.Line > 0 {
		q := url.Values{}
		if f.Path != "" {
			q.Set("field", f.Path)
		}
		if f.Line > 0 {
			q.Set("line", itoa(f.Line))
		}
		at = "#" + q.Encode()
	}
	switch {
	case f.File == "" || f.File == diag.Command || filepath.Dir(f.File) != ".":
		return ""
	case f.File == store.KitchenName:
		return "kitchen" + at
	case f.File == store.LedgerName:
		return "ledger/list.txt"
	case at == "": // about the file as a whole: it may not open at all
		return ""
	case store.IsBatchName(f.File):
		return "batch/" + url.PathEscape(f.File) + at
	case strings.EqualFold(filepath.Ext(f.File), ".csv"):
		return "gifts?list=" + url.QueryEscape(f.File)
	}
	return ""
}
