package rule

import (
	"strings"

	"jarmark/internal/kitchen/pantry"
	"jarmark/internal/law/label"
)

// caution adds the honey line: no federal rule asks it, and doctors do.
func caution(p *pass) {
	for _, ln := range p.r.Lines {
		if !honeyed(ln.Key, ln.Name) && !honeyPart(ln.Contains) {
			continue
		}
		p.add(label.Block{Kind: label.Caution, Runs: p.say.Runs("us.honey"), Min: p.letterO(),
			Cite: "infant botulism advice; common practice, no federal rule (from memory, unverified)", Verified: "memory", Path: linePath(ln)})
		return
	}
}

func honeyed(key, name string) bool {
	return key == "honey" || strings.Contains(strings.ToLower(name), "honey") && !strings.Contains(strings.ToLower(name), "honeydew") && !strings.Contains(strings.ToLower(name), "honeyberr")
}

func honeyPart(parts []pantry.Part) bool {
	for _, x := range parts {
		if honeyed("", x.Name) {
			return true
		}
	}
	return false
}
