package us

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
	"jarmark/internal/law/draft"
)

// tell adds a finding of a level; on gifts an error is a note.
func (p *pass) tell(level, code, file, path, text string) *diag.Diagnostic {
	switch level {
	case "error":
		return p.Duty(code, file, path, "%s", text)
	case "warning":
		return p.L.Warnf(code, file, path, "%s", text)
	}
	return p.L.Notef(code, file, path, "%s", text)
}

// wordings reports words a rule governs in the maker's own texts.
func (p *pass) wordings() {
	for _, w := range p.Set.Wordings {
		held := ""
		if w.Beside == "sweetener" {
			if held = p.sweetened(); held == "" {
				continue
			}
		}
		for _, t := range p.ownTexts() {
			if !draft.Has(w.In, t.as) {
				continue
			}
			if word := said(t.text, w.Words, w.Unless); word != "" {
				level := w.Level
				if held != "" {
					level = "error"
				}
				p.tell(level, w.ID, t.file, t.path, fmt.Sprintf("%q %s", word, strings.ReplaceAll(w.Text, "{ingredient}", held))).Hinted(w.Hint).Cited(w.Cite)
			}
		}
	}
}

// namings reports ingredients, and parts of them, that are not called as they
// must be.
func (p *pass) namings() {
	for _, n := range p.Set.Namings {
		if len(n.NameSays) > 0 && said(p.B.Name, n.NameSays, nil) != "" {
			continue
		}
		for _, e := range p.list {
			for i, name := range append([]string{e.name}, partNames(e)...) {
				of := name // a whole is settled by its parts too: food coloring (Blue 1)
				if i == 0 {
					of += " " + strings.Join(partNames(e), ", ")
				}
				if said(name, n.Words, n.Unless) != "" && said(of, n.Settled, nil) == "" {
					p.tell(n.Level, n.ID, p.BatchFile(), draft.LinePath(e.line), fmt.Sprintf("%q %s", name, n.Text)).Hinted(n.Hint).Cited(n.Cite)
					break
				}
			}
		}
	}
}

func partNames(e entry) (out []string) {
	for _, part := range e.line.Contains {
		out = append(out, part.Name)
	}
	return out
}

// said finds a word in a text, at word borders, outside of the phrases that
// make it something else.
func said(text string, words, unless []string) string {
	plain := spaced(text)
	for _, u := range unless {
		plain = strings.ReplaceAll(plain, spaced(u), " | ")
	}
	for _, w := range words {
		if strings.Contains(plain, spaced(w)) {
			return w
		}
	}
	return ""
}
