package rule

import (
	"fmt"
	"strings"

	"jarmark/internal/kit/diag"
)

// wordingRule governs words of a label.
type wordingRule struct {
	ID     string   `toml:"id"`
	Words  []string `toml:"words"`
	In     []string `toml:"in"`     // "name" (what the food is called), "brand", "story" (all else)
	Unless []string `toml:"unless"` // phrases in which the word means something else
	Beside string   `toml:"beside"` // "sweetener": only where the batch holds one
	Level  string   `toml:"level"`  // "error", "warning", "note"
	Text   string   `toml:"text"`
	Hint   string   `toml:"hint"`
	Cite   string   `toml:"cite"`
	Origin
}

// namingRule governs what an ingredient may be called.
type namingRule struct {
	ID       string   `toml:"id"`
	Words    []string `toml:"words"`
	Unless   []string `toml:"unless"`    // phrases in which the word means something else
	Settled  []string `toml:"settled"`   // words anywhere in the name that settle it
	NameSays []string `toml:"name_says"` // words in the name of the food that settle it
	Level    string   `toml:"level"`
	Text     string   `toml:"text"`
	Hint     string   `toml:"hint"`
	Cite     string   `toml:"cite"`
	Origin
}

// checkWords reports rows that could never speak.
func (r rules) checkWords() error {
	for _, w := range r.Wordings {
		if err := known(w.Confidence); err != nil || !levelKnown(w.Level) || len(w.Words) == 0 || len(w.In) == 0 || w.Beside != "" && w.Beside != "sweetener" {
			return fmt.Errorf("wording %s: words, in, level, beside or confidence is not known", w.ID)
		}
	}
	for _, n := range r.Namings {
		if err := known(n.Confidence); err != nil || !levelKnown(n.Level) || len(n.Words) == 0 {
			return fmt.Errorf("naming %s: words, level or confidence is not known", n.ID)
		}
	}
	return nil
}

func levelKnown(s string) bool { return s == "error" || s == "warning" || s == "note" }

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
			if !has(w.In, t.as) {
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
			for _, name := range append([]string{e.name}, partNames(e)...) {
				if said(name, n.Words, n.Unless) != "" && said(name, n.Settled, nil) == "" {
					p.tell(n.Level, n.ID, p.BatchFile(), linePath(e.line), fmt.Sprintf("%q %s", name, n.Text)).Hinted(n.Hint).Cited(n.Cite)
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
