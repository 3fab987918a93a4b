package law

import (
	"slices"

	"jarmark/internal/kit/diag"
	"jarmark/internal/kitchen/cook"
	"jarmark/internal/law/draft"
	"jarmark/internal/law/label"
	"jarmark/internal/law/place"
)

// second is the language that stands beside the first one; "" = one alone. A
// second one the place does not hold is left out, with a warning.
func second(r *cook.Result, s *place.Set, first string) (lang string, l diag.List) {
	if r.Kitchen == nil || r.Kitchen.Second == "" || r.Kitchen.Second == first {
		return "", nil
	}
	if slices.Contains(s.Languages, r.Kitchen.Second) {
		return r.Kitchen.Second, nil
	}
	file := "kitchen.toml"
	if r.Kitchen.File != nil {
		file = r.Kitchen.File.Name
	}
	l.Warnf("language", file, "second_language", "labels for %s can't be in %q beside %q", s.Name, r.Kitchen.Second, first).
		Hinted("one of: " + draft.Listed(s.Languages))
	return "", l
}

// beside declares once more in a second language and sets its words behind the
// first ones. What reads alike in both, such as figures, stands once.
func beside(lang string, first *label.Content, l diag.List, declare func(*cook.Result) (*label.Content, diag.List), r *cook.Result) (*label.Content, diag.List) {
	again, kitchen := *r, *r.Kitchen
	kitchen.Language, again.Kitchen = lang, &kitchen
	other, m := declare(&again)
	for i, b := range first.Blocks {
		at := slices.IndexFunc(other.Blocks, func(o label.Block) bool { return o.ID == b.ID })
		if at >= 0 && other.Blocks[at].Text() != b.Text() {
			first.Blocks[i].Runs = slices.Concat(b.Runs, []label.Run{{Text: " / ", Bold: b.Bold}}, other.Blocks[at].Runs)
		}
	}
	told := map[[2]string]bool{}
	for _, d := range l {
		told[[2]string{d.Code, d.Path}] = true
	}
	return first, append(l, slices.DeleteFunc(m, func(d diag.Diagnostic) bool { return told[[2]string{d.Code, d.Path}] })...)
}
